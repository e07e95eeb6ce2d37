package org.benchlore.kb.cases;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.jspecify.annotations.Nullable;

/**
 * One unit's history, folded from its events; a pure function of the set of events.
 *
 * @param id the case
 * @param openedAt when the unit came in
 * @param scope what it is
 * @param complaint the owner's words, or empty
 * @param unit serial number or tag, or empty
 * @param origin "bench" for one's own, else the import it came with
 * @param workedOnBefore whether somebody had been inside
 * @param events those that count, corrections applied, in order of time and id
 * @param findings the latest finding of each symptom, in order of symptom id
 * @param causeId the cause concluded last, or null
 * @param certainty how sure, or null when nothing was concluded
 * @param outcome the last ending, or null while the case is open; not fixed where a check failed after an ending as fixed
 * @param withdrawn whether the whole case was taken back
 */
public record CaseHistory(
        String id,
        Instant openedAt,
        DeviceScope scope,
        String complaint,
        String unit,
        String origin,
        boolean workedOnBefore,
        List<CaseEvent> events,
        List<Finding> findings,
        @Nullable String causeId,
        @Nullable Certainty certainty,
        @Nullable Outcome outcome,
        boolean withdrawn) {
    /** The origin of the bench's own cases. */
    public static final String OWN = "bench";

    /** Endings that say of a fix before them that it did not hold. */
    private static final Set<Outcome> FAILED =
            Set.of(Outcome.NOT_FIXED, Outcome.CAME_BACK, Outcome.MADE_WORSE, Outcome.NOT_WORTH_IT, Outcome.GIVEN_UP);

    /** Endings that say that it held. */
    static final Set<Outcome> FIXED = Set.of(Outcome.FIXED, Outcome.FIXED_AND_PROVEN);

    public CaseHistory {
        events = List.copyOf(events);
        findings = List.copyOf(findings);
    }

    /**
     * The last fix, while nothing after it says that it failed: no ending and no failed check, or an ending as fixed after
     * them. Empty if there is none.
     */
    public Optional<CaseEvent.FixApplied> cure() {
        CaseEvent.FixApplied last = null;
        boolean stands = false;
        for (CaseEvent event : events) {
            if (event instanceof CaseEvent.FixApplied fix) {
                last = fix;
                stands = true;
            } else if (event instanceof CaseEvent.Ended ended) {
                stands = (stands || FIXED.contains(ended.outcome())) && !FAILED.contains(ended.outcome());
            } else if (event instanceof CaseEvent.Checked checked) {
                stands = stands && checked.result() != CaseEvent.Checked.Result.FAILED;
            }
        }
        return stands ? Optional.ofNullable(last) : Optional.empty();
    }

    /** Whether an ending says of a fix before it that it did not hold. */
    public static boolean failed(Outcome ending) {
        return FAILED.contains(ending);
    }

    /** Whether there is still something to do: no ending yet, or one after which the fault is still there. */
    public boolean unfinished() {
        return !withdrawn && (outcome == null || outcome == Outcome.NOT_FIXED || outcome == Outcome.CAME_BACK);
    }

    /** Fixes that were applied and did not cure, as far as is known, in order: all but the {@link #cure}. */
    public List<CaseEvent.FixApplied> failedFixes() {
        Optional<CaseEvent.FixApplied> cure = cure();
        return events.stream()
                .filter(CaseEvent.FixApplied.class::isInstance)
                .map(CaseEvent.FixApplied.class::cast)
                .filter(fix -> cure.isEmpty() || !fix.equals(cure.get()))
                .toList();
    }

    /**
     * Findings on the unit as it was faulty, in order of symptom id. What was seen after the {@link #cure} is left out: it
     * tells whether the fix helped, not what the cause was.
     */
    public List<Finding> findingsOfFault() {
        Optional<CaseEvent.FixApplied> cure = cure();
        if (cure.isEmpty()) {
            return findings;
        }
        return fold(events.subList(0, events.indexOf(cure.get())))
                .map(CaseHistory::findings)
                .orElse(List.of());
    }

    /**
     * What was said of the unit as it was faulty: the complaint and the notes before the {@link #cure}, each once, since the
     * first note mostly repeats the complaint.
     */
    public List<String> textsOfFault() {
        return texts(events.subList(0, cure().map(events::indexOf).orElse(events.size())));
    }

    /** The complaint and all notes, each once. */
    public List<String> texts() {
        return texts(events);
    }

    private List<String> texts(List<CaseEvent> told) {
        return Stream.concat(
                        Stream.of(complaint),
                        told.stream()
                                .filter(CaseEvent.Noted.class::isInstance)
                                .map(event -> ((CaseEvent.Noted) event).text()))
                .filter(text -> !text.isBlank())
                .distinct()
                .toList();
    }

    /**
     * Folds the events of one case, given in any order.
     *
     * @return empty if there is no opening event among them
     */
    public static Optional<CaseHistory> fold(List<CaseEvent> events) {
        return CaseFold.fold(events);
    }
}
