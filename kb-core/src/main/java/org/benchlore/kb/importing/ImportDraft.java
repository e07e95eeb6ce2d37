package org.benchlore.kb.importing;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseRecord;
import org.benchlore.kb.knowledge.DeviceScope;

/**
 * A case as it was understood, before it is stored.
 *
 * @param line where it begins in the source, from 1
 * @param caseId made from the source's name and the record's words, so that the same record gives the same case; as given
 *     in lines of JSON
 * @param records what will be stored; each wholly or not at all
 * @param told what was understood, with the words it was told by, in order; a device that no pack knows has no id
 * @param kinds ids of the device classes that its words name, as {@link org.benchlore.kb.reading.Reading#kinds}; that of the
 *     device alone where it is known, none for lines of JSON without one
 * @param unknown what a case has and this one does not tell
 * @param unread words with meaning that led to nothing; at most {@link #MOST_UNREAD}
 * @param likenesses cases like it, stored or earlier in the source, the most alike first
 * @param stored whether the case is stored already
 */
public record ImportDraft(
        long line,
        String caseId,
        List<CaseRecord> records,
        List<Told> told,
        List<String> kinds,
        Set<Item> unknown,
        List<String> unread,
        List<Likeness> likenesses,
        boolean stored) {
    /** Most stretches of {@link #unread} kept. */
    public static final int MOST_UNREAD = 12;

    /** What a case can tell. */
    public enum Item {
        DATE,
        DEVICE,
        UNIT,
        FINDING,
        TEST,
        CAUSE,
        FIX,
        OUTCOME
    }

    /**
     * Something understood.
     *
     * @param item what it is about
     * @param id of the entry, state, outcome or scope; empty when the words name none of those known
     * @param words it was told by; may be empty for lines of JSON
     */
    public record Told(Item item, String id, String words) {}

    /**
     * A case like it.
     *
     * @param caseId the other case
     * @param line of the other case where it is in the same source, else 0
     * @param share of the words that both have, of those that either has, in [0,1] (Jaccard index of pairs of words)
     * @param sameUnit whether both bear the same serial number
     * @param duplicate whether it is the same case told again, by the rule in {@code docs/importing.md}
     */
    public record Likeness(String caseId, long line, double share, boolean sameUnit, boolean duplicate) {}

    public ImportDraft {
        records = List.copyOf(records);
        told = List.copyOf(told);
        kinds = List.copyOf(kinds);
        EnumSet<Item> items = EnumSet.noneOf(Item.class);
        items.addAll(unknown);
        unknown = Collections.unmodifiableSet(items);
        unread = List.copyOf(unread);
        likenesses = List.copyOf(likenesses);
    }

    /** Its events, in order. */
    public List<CaseEvent> events() {
        return records.stream().flatMap(r -> r.events().stream()).toList();
    }

    /** Whether it is another case told again. */
    public boolean duplicate() {
        return likenesses.stream().anyMatch(Likeness::duplicate);
    }

    /** The same with other records, and what they tell. */
    ImportDraft with(List<CaseRecord> others, List<Told> more) {
        return new ImportDraft(line, caseId, others, more, kinds, unknown, unread, likenesses, stored);
    }

    /** The same with the cases like it. */
    ImportDraft like(List<Likeness> others) {
        return new ImportDraft(line, caseId, records, told, kinds, unknown, unread, others, stored);
    }

    /** The same as a case that is stored already. */
    ImportDraft asStored() {
        return new ImportDraft(line, caseId, records, told, kinds, unknown, unread, likenesses, true);
    }

    /** The day it came in, where told. */
    public Optional<LocalDate> date() {
        return first(Item.DATE).map(t -> LocalDate.parse(t.id()));
    }

    /** What it is, where told and known. */
    public Optional<DeviceScope> device() {
        return told.stream()
                .filter(t -> t.item() == Item.DEVICE && !t.id().isEmpty())
                .findFirst()
                .map(t -> DeviceScope.parse(t.id()));
    }

    /** Its serial number or tag, where told. */
    public Optional<String> unit() {
        return first(Item.UNIT).map(Told::id);
    }

    private Optional<Told> first(Item item) {
        return told.stream().filter(t -> t.item() == item).findFirst();
    }
}
