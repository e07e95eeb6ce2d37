package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * What was done to one unit, and how it went; a pure function of the case.
 *
 * @param fixes fixes whose result is known, in order
 * @param tests tests done, in order
 */
public record CaseWork(List<Trial> fixes, List<Use> tests) {
    public CaseWork {
        fixes = List.copyOf(fixes);
        tests = List.copyOf(tests);
    }

    /** How a fix went. */
    public enum Result {
        WORKED,
        FAILED,
        CAME_BACK,
        MADE_WORSE
    }

    /**
     * A fix tried once.
     *
     * @param fixId the fix
     * @param causeId the cause it was meant for
     * @param causeStood whether that cause was still the one concluded when the case ended
     * @param scope what the unit was
     * @param origin whose case it was
     * @param result how it went
     * @param minutes bench time, where kept
     */
    public record Trial(
            String fixId,
            String causeId,
            boolean causeStood,
            DeviceScope scope,
            String origin,
            Result result,
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

    /**
     * Reads a case. A fix that was followed by another did not cure alone, so it failed; the last one is judged by the
     * latest ending or failed check. A unit that recovered by itself or showed no fault says nothing of its fixes, nor does an open case.
     */
    public static CaseWork of(CaseHistory history) {
        if (history.withdrawn()) {
            return new CaseWork(List.of(), List.of());
        }
        List<Trial> fixes = new ArrayList<>();
        List<Use> tests = new ArrayList<>();
        Optional<String> proven = Optional.ofNullable(history.causeId()).filter(c -> proves(history));
        CaseEvent.FixApplied last = null;
        Outcome ending = null;
        for (CaseEvent event : history.events()) {
            if (event instanceof CaseEvent.FixApplied fix) {
                if (last != null) {
                    fixes.add(trial(
                            history,
                            last,
                            judged(ending == null ? Outcome.NOT_FIXED : ending).orElse(Result.FAILED)));
                }
                last = fix;
                ending = null;
            } else if (event instanceof CaseEvent.Ended ended) {
                ending = ended.outcome();
            } else if (event instanceof CaseEvent.Checked checked
                    && checked.result() == CaseEvent.Checked.Result.FAILED) {
                ending = ending == null || judged(ending).equals(Optional.of(Result.WORKED))
                        ? Outcome.NOT_FIXED
                        : ending;
            } else if (event instanceof CaseEvent.Tested test) {
                tests.add(new Use(test.testId(), test.findings(), proven, Optional.ofNullable(test.minutes())));
            }
        }
        if (last != null && ending != null) {
            CaseEvent.FixApplied fix = last;
            judged(ending).ifPresent(result -> fixes.add(trial(history, fix, result)));
        }
        return new CaseWork(fixes, tests);
    }

    private static boolean proves(CaseHistory history) {
        return history.certainty() == Certainty.PROVEN
                || history.outcome() == Outcome.FIXED_AND_PROVEN
                || history.outcome() == Outcome.FIXED;
    }

    private static Trial trial(CaseHistory history, CaseEvent.FixApplied fix, Result result) {
        String concluded = history.causeId();
        return new Trial(
                fix.fixId(),
                fix.causeId(),
                concluded == null || concluded.equals(fix.causeId()),
                history.scope(),
                history.origin(),
                result,
                Optional.ofNullable(fix.minutes()));
    }

    private static Optional<Result> judged(Outcome outcome) {
        return switch (outcome) {
            case FIXED, FIXED_AND_PROVEN -> Optional.of(Result.WORKED);
            case CAME_BACK -> Optional.of(Result.CAME_BACK);
            case MADE_WORSE -> Optional.of(Result.MADE_WORSE);
            case NOT_FIXED, NOT_WORTH_IT, GIVEN_UP -> Optional.of(Result.FAILED);
            case RECOVERED_BY_ITSELF, NO_FAULT_FOUND -> Optional.empty();
        };
    }
}
