package org.benchlore.kb.importing;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseRecord;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.importing.ImportDraft.Item;
import org.benchlore.kb.importing.ImportDraft.Likeness;
import org.benchlore.kb.importing.ImportDraft.Told;
import org.benchlore.kb.knowledge.Knowledge;

/**
 * Ties a case of a unit that is said to be back to the last case of that unit in the same source: if that one ended well and
 * the fault is none that it never had, it came back. The ending is an event of the first case with an id made of the second
 * one's, so that a diary that has grown adds it to what is stored. For one source and one thread; works in linear time.
 */
final class Comebacks {
    /** Says that the unit is back, and nothing of what ails it. */
    private static final String SAME_FAULT_BACK = "same-fault-back";

    private static final Duration STEP = Duration.ofMinutes(1);

    private final Knowledge knowledge;
    private final List<Visit> visits = new ArrayList<>();

    Comebacks(Knowledge knowledge) {
        this.knowledge = knowledge;
    }

    /**
     * How a case names its unit.
     *
     * @param line where the case begins
     * @param caseId the case
     * @param names terms of make and model, or of what is said to be back; empty where nothing names it
     * @param person whose it is, or empty
     * @param back the words that say it is back, or empty
     */
    record Visit(long line, String caseId, Set<String> names, String person, String back) {
        /** Whether it may be another visit of the same unit. */
        boolean sameUnit(Visit other) {
            boolean others = !person.isEmpty() && !other.person.isEmpty() && !person.equals(other.person);
            return !others && (names.containsAll(other.names) || other.names.containsAll(names));
        }
    }

    void add(Visit visit) {
        visits.add(visit);
    }

    /** The drafts, in order of line, those that came back with their new ending, and those that are a second visit with the first. */
    List<ImportDraft> tie(List<ImportDraft> drafts) {
        visits.sort(Comparator.comparingLong(Visit::line));
        List<ImportDraft> tied = new ArrayList<>(drafts);
        Map<String, Integer> latest = new HashMap<>();
        for (int i = 0; i < visits.size(); i++) {
            Visit visit = visits.get(i);
            Optional<Integer> before = visit.back().isEmpty() ? Optional.empty() : before(visit, latest);
            if (before.isPresent()) {
                int first = before.get();
                tied.set(i, tied.get(i).like(likenesses(tied.get(i), tied.get(first))));
                if (cured(tied.get(first)) && sameFault(tied.get(first), tied.get(i))) {
                    tied.set(first, cameBack(tied.get(first), tied.get(i), visit.back()));
                }
            }
            for (String term : visit.names()) {
                latest.put(term, i);
            }
        }
        return tied;
    }

    private Optional<Integer> before(Visit visit, Map<String, Integer> latest) {
        return visit.names().stream()
                .flatMap(term -> Stream.ofNullable(latest.get(term)))
                .distinct()
                .filter(i -> visits.get(i).sameUnit(visit))
                .max(Integer::compare);
    }

    private static List<Likeness> likenesses(ImportDraft draft, ImportDraft first) {
        double share = WordSketch.share(WordSketch.pairs(draft.events()), WordSketch.pairs(first.events()));
        List<Likeness> all = new ArrayList<>();
        all.add(new Likeness(first.caseId(), first.line(), share, true, false));
        draft.likenesses().stream()
                .filter(l -> !l.caseId().equals(first.caseId()) || l.duplicate())
                .forEach(all::add);
        return all;
    }

    private static boolean cured(ImportDraft draft) {
        return draft.told().stream()
                .filter(t -> t.item() == Item.OUTCOME)
                .reduce((a, b) -> b)
                .filter(t -> t.id().equals(Outcome.FIXED.id()) || t.id().equals(Outcome.FIXED_AND_PROVEN.id()))
                .isPresent();
    }

    /** Whether both tell of one fault, or one of them tells of none that was understood. */
    private boolean sameFault(ImportDraft first, ImportDraft second) {
        Set<String> before = faults(first);
        Set<String> now = faults(second);
        return before.isEmpty() || now.isEmpty() || before.stream().anyMatch(now::contains);
    }

    /** Symptoms that are not as they should be. */
    private Set<String> faults(ImportDraft draft) {
        Set<String> faults = new HashSet<>();
        for (Told told : draft.told()) {
            int sign = told.id().indexOf('=');
            if (told.item() == Item.FINDING && sign > 0) {
                String symptom = told.id().substring(0, sign);
                boolean normal = knowledge.normal(symptom, told.id().substring(sign + 1));
                if (!normal && !symptom.equals(SAME_FAULT_BACK)) {
                    faults.add(symptom);
                }
            }
        }
        return faults;
    }

    private static ImportDraft cameBack(ImportDraft first, ImportDraft second, String words) {
        Instant from = first.events().get(first.events().size() - 1).head().at();
        Instant to = second.events().get(0).head().at();
        Optional<Integer> days = first.date()
                .flatMap(a -> second.date()
                        .map(b -> (int) ChronoUnit.DAYS.between(a, b))
                        .filter(n -> n >= 0));
        Instant at = to.isAfter(from) ? to : from.plus(STEP);
        CaseEvent.Ended ended = new CaseEvent.Ended(
                new CaseEvent.Head(second.caseId() + ":back", first.caseId(), at),
                Outcome.CAME_BACK,
                days.orElse(null),
                words);
        List<CaseRecord> records = new ArrayList<>(first.records());
        records.add(new CaseRecord(second.line(), List.of(ended), Set.of()));
        List<Told> told = new ArrayList<>(first.told());
        told.add(new Told(Item.OUTCOME, Outcome.CAME_BACK.id(), Wording.cut(words)));
        return first.with(records, told);
    }
}
