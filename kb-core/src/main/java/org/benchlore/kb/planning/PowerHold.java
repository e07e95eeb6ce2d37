package org.benchlore.kb.planning;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Why nothing is proposed that powers the unit, and what that leaves out.
 *
 * @param reasons what stands, at least one, by id of the rule
 * @param tests how many tests that could tell something are left out
 * @param fixes how many fixes for likely causes are left out
 * @param firstTest the test to do first, since what it reads may lift a reason
 * @param firstFix the fix to do first, likewise, where no such test is known
 */
public record PowerHold(
        List<Reason> reasons, int tests, int fixes, Optional<String> firstTest, Optional<String> firstFix) {
    public PowerHold {
        reasons = List.copyOf(reasons);
    }

    /** What forbids power, for people: each clause once, without a full stop. */
    public String why() {
        return reasons.stream().map(Reason::why).distinct().collect(Collectors.joining("; "));
    }

    /**
     * A finding that forbids power.
     *
     * @param ruleId the pack's rule, see {@link org.benchlore.kb.knowledge.PowerOff}
     * @param symptomId the symptom found
     * @param stateId in this state
     * @param why for people, one clause without a full stop
     */
    public record Reason(String ruleId, String symptomId, String stateId, String why) {}
}
