package org.benchlore.kb.planning;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.PowerOff;

/**
 * Why nothing is proposed that powers the unit, and what that leaves out.
 *
 * @param reasons what stands, at least one, by id of the rule
 * @param tests how many tests that could tell something are left out
 * @param fixes how many fixes for likely causes are left out
 * @param firstTest the test to do first, since what it reads may lift a reason
 * @param fixesInOrder where no such test is known, the fixes that together lift what fixes can, each the one that lifts most of what
 *     stands and cures likeliest; what takes a bad pack out is the first. Before it comes a test that pays, where several
 *     would do and it is no pack. No other fix is tried meanwhile: whether it helped only power can tell
 */
public record PowerHold(
        List<Reason> reasons, int tests, int fixes, Optional<String> firstTest, List<String> fixesInOrder) {
    public PowerHold {
        reasons = List.copyOf(reasons);
        fixesInOrder = List.copyOf(fixesInOrder);
    }

    /** The first of the fixes in order; empty where a test comes first, or nothing helps. */
    public Optional<String> firstFix() {
        return fixesInOrder.stream().findFirst();
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
     * @param until looks still to be made, each with what it must find; all of them lift it. Empty where none does any more, or
     *     ever
     * @param fixes ids of the fixes that lift it and that this kind of unit can have, the likeliest cure first; words that tell
     *     of one count as well ({@link org.benchlore.kb.knowledge.Fix#done})
     */
    public record Reason(
            String ruleId,
            String symptomId,
            String stateId,
            String why,
            List<PowerOff.Sign> until,
            List<String> fixes) {
        public Reason {
            until = List.copyOf(until);
            fixes = List.copyOf(fixes);
        }
    }
}
