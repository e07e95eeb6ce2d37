package org.benchlore.kb.cases;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
 * @param outcome the last ending, or null while the case is open
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

    public CaseHistory {
        events = List.copyOf(events);
        findings = List.copyOf(findings);
    }

    /**
     * The last fix, while nothing after it says that it failed: the case is open since, or ended well. Empty if there is none.
     */
    public Optional<CaseEvent.FixApplied> cure() {
        CaseEvent.FixApplied cure = null;
        for (CaseEvent event : events) {
            if (event instanceof CaseEvent.FixApplied fix) {
                cure = fix;
            } else if (event instanceof CaseEvent.Ended ended && FAILED.contains(ended.outcome())) {
                cure = null;
            }
        }
        return Optional.ofNullable(cure);
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
     * Folds the events of one case, given in any order.
     *
     * @return empty if there is no opening event among them
     */
    public static Optional<CaseHistory> fold(List<CaseEvent> events) {
        return CaseFold.fold(events);
    }
}
