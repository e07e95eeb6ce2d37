package org.benchlore.kb.importing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.cases.CaseRecord;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.importing.ImportDraft.Item;
import org.benchlore.kb.importing.RawRecord.Part;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Reader;

/** Makes drafts of records. For one source and one thread. */
final class CaseTeller {
    /** What a record must tell one of, to be a case; a make or model and its kind will do, too. */
    private static final Set<Item> SUBSTANCE = EnumSet.of(Item.UNIT, Item.FINDING, Item.CAUSE, Item.FIX, Item.OUTCOME);

    private final Knowledge knowledge;
    private final Reader reader;
    private final Vocabulary vocabulary;
    private final ImportSettings settings;
    private final RecordIds ids;
    private final Comebacks comebacks;

    /** Names of the packs, made once and shared. */
    record Vocabulary(Names names, DeviceNames devices, UnitNames units) {
        static Vocabulary of(Knowledge knowledge) {
            Names names = new Names(knowledge);
            return new Vocabulary(names, new DeviceNames(knowledge), new UnitNames(knowledge, names));
        }
    }

    /** @param comebacks is told how each case names its unit */
    CaseTeller(
            Knowledge knowledge,
            Reader reader,
            Vocabulary vocabulary,
            ImportSettings settings,
            String source,
            Comebacks comebacks) {
        this.comebacks = comebacks;
        this.knowledge = knowledge;
        this.reader = reader;
        this.vocabulary = vocabulary;
        this.settings = settings;
        this.ids = new RecordIds(source);
    }

    /** The draft of a record; empty if nothing of a case is in it. */
    Optional<ImportDraft> tell(RawRecord record) {
        Heading heading = Heading.of(record, vocabulary, settings);
        ActReader reading = new ActReader(vocabulary.names(), heading.scope());
        Map<Part, List<Act>> acts = new LinkedHashMap<>();
        for (Part part : record.parts()) {
            if (part.field().wordy()) {
                acts.put(part, reading.read(part));
            }
        }
        Optional<LocalDate> date = record.date()
                .or(() ->
                        record.parts().stream().flatMap(p -> p.date().stream()).findFirst())
                .or(heading::date)
                .or(settings::undated);
        Instant opened =
                date.map(d -> d.atStartOfDay(ZoneOffset.UTC).toInstant()).orElse(Instant.EPOCH);
        Story story =
                new Story(knowledge, reader, vocabulary.names(), heading, ids.of(record, date), record.line(), opened);
        date.ifPresent(story::date);
        story.tell(acts, reading.othersWorked());
        Set<Item> unknown = story.unknown();
        boolean unit = !story.kinds().isEmpty() && story.told().stream().anyMatch(t -> t.item() == Item.DEVICE);
        boolean nothing = !unit && story.told().stream().noneMatch(t -> SUBSTANCE.contains(t.item()));
        if (nothing && (settings.kind() == ImportKind.DIARY || unknown.contains(Item.DEVICE))) {
            return Optional.empty();
        }
        comebacks.add(UnitVisits.of(record, acts, heading, story.caseId(), vocabulary.units()));
        return Optional.of(new ImportDraft(
                record.line(),
                story.caseId(),
                List.of(new CaseRecord(record.line(), story.events(), Set.of())),
                story.told(),
                story.kinds(),
                unknown,
                story.unread(),
                List.of(),
                false));
    }

    /** Endings that say of the work before them that it did not help. */
    static boolean failed(Outcome outcome) {
        return switch (outcome) {
            case NOT_FIXED, CAME_BACK, MADE_WORSE, NOT_WORTH_IT, GIVEN_UP -> true;
            case FIXED_AND_PROVEN, FIXED, RECOVERED_BY_ITSELF, NO_FAULT_FOUND -> false;
        };
    }

    static boolean cured(Outcome outcome) {
        return outcome == Outcome.FIXED || outcome == Outcome.FIXED_AND_PROVEN;
    }
}
