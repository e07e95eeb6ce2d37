package org.benchlore.kb.planning;

import java.util.List;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.cases.TriedFix;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * What was done to one unit, and how it went; a pure function of the case.
 *
 * @param fixes fixes that a pack knows or knew and whose result is told, in order
 * @param tests tests done, in order
 */
public record CaseWork(List<Trial> fixes, List<Use> tests) {
    public CaseWork {
        fixes = List.copyOf(fixes);
        tests = List.copyOf(tests);
    }

    /**
     * A fix tried once.
     *
     * @param fixId the fix
     * @param causeId the cause it was meant for
     * @param causeStood whether that cause was still the one concluded when the case ended
     * @param scope what the unit was
     * @param origin whose case it was
     * @param result how it went, not untold
     * @param minutes bench time, where kept
     */
    public record Trial(
            String fixId,
            String causeId,
            boolean causeStood,
            DeviceScope scope,
            String origin,
            TriedFix.Result result,
            Optional<Double> minutes) {}

    /**
     * A test done once.
     *
     * @param testId the test
     * @param findings what it read
     * @param causeId the cause that the case proved, where it proved one
     * @param minutes bench time, where kept
     */
    public record Use(String testId, List<Finding> findings, Optional<String> causeId, Optional<Double> minutes) {
        public Use {
            findings = List.copyOf(findings);
        }
    }

    /** Reads a case; a withdrawn one says nothing. */
    public static CaseWork of(CaseHistory history) {
        if (history.withdrawn()) {
            return new CaseWork(List.of(), List.of());
        }
        Optional<String> proven = Optional.ofNullable(history.causeId()).filter(c -> proves(history));
        return new CaseWork(
                history.fixes().stream()
                        .filter(tried -> tried.result() != TriedFix.Result.UNTOLD)
                        .filter(tried -> !tried.fix().fixId().equals(CaseEvent.FixApplied.UNLISTED))
                        .map(tried -> trial(history, tried))
                        .toList(),
                history.events().stream()
                        .filter(CaseEvent.Tested.class::isInstance)
                        .map(CaseEvent.Tested.class::cast)
                        .map(test ->
                                new Use(test.testId(), test.findings(), proven, Optional.ofNullable(test.minutes())))
                        .toList());
    }

    private static boolean proves(CaseHistory history) {
        Outcome outcome = history.outcome();
        return history.certainty() == Certainty.PROVEN || (outcome != null && outcome.cured());
    }

    private static Trial trial(CaseHistory history, TriedFix tried) {
        String concluded = history.causeId();
        CaseEvent.FixApplied fix = tried.fix();
        return new Trial(
                fix.fixId(),
                fix.causeId(),
                concluded == null || concluded.equals(fix.causeId()),
                history.scope(),
                history.origin(),
                tried.result(),
                Optional.ofNullable(fix.minutes()));
    }
}
