package org.benchlore.kb.planning;

import java.util.List;
import java.util.Optional;

/**
 * The whole repair as a decision tree, and what it costs beside simpler ways. All minutes are expected, parts
 * ({@link org.benchlore.kb.knowledge.Fix#price}) and an unrepaired unit counted at their cost.
 *
 * @param root what to do first
 * @param minutes by this plan
 * @param swapByLikelihood trying the first-named fix of each cause, the likeliest first, without a test
 * @param fixedOrderTesting testing suspect by suspect until one is 90 % sure, then as above
 * @param repairsOnly the best order of repairs without a test, by chance over minutes
 * @param order those repairs
 * @param orderIsOptimal whether the p/c rule's assumptions hold for them, as far as the packs can tell: each cause is cured
 *     by one fix, each fix cures one cause, and no two of them share the opening of the unit
 * @param withheld as {@link NextStep#withheld}
 * @param solved probability that the plan ends with a repaired unit
 * @param hold why nothing in it powers the unit; empty where it may be powered. The plan then is one step, which makes the unit
 *     safe if the packs know how, else tells most without power; behind it all is planned anew, and minutes and order
 *     count as if what needs no power could be tried
 */
public record Plan(
        Step root,
        double minutes,
        double swapByLikelihood,
        double fixedOrderTesting,
        double repairsOnly,
        List<NextStep.FixChoice> order,
        boolean orderIsOptimal,
        List<NextStep.Withheld> withheld,
        double solved,
        Optional<PowerHold> hold) {
    public Plan {
        order = List.copyOf(order);
        withheld = List.copyOf(withheld);
    }

    /** What is done at a node. */
    public enum Action {
        /** Do the test, then follow the branch that was read. */
        TEST,
        /** Apply the fix; if the fault is still there, go on with the only branch. */
        FIX,
        /** What is left is not worth its minutes: send it on, or hand it back as it is. While power is off: nothing to do without. */
        STOP,
        /** Too rare or too far to print: ask again with what is known by then. */
        ASK_AGAIN
    }

    /**
     * A node.
     *
     * @param action what to do
     * @param id of the test or fix, else empty
     * @param minutes bench time of the test or fix, else 0
     * @param openingMinutes what opening the unit adds here, 0 if it is open by then or need not be
     * @param priceMinutes what its parts cost, in minutes that the money would buy; not in the minutes; 0 for a test
     * @param reached probability that the plan comes here
     * @param leadingCause the likeliest cause here
     * @param leading its probability here
     * @param cures for a fix, probability that it cures, once here; else empty
     * @param branches what may follow; none for the two endings
     */
    public record Step(
            Action action,
            String id,
            double minutes,
            double openingMinutes,
            double priceMinutes,
            double reached,
            String leadingCause,
            double leading,
            Optional<Double> cures,
            List<Branch> branches) {
        public Step {
            branches = List.copyOf(branches);
        }
    }

    /**
     * One way on.
     *
     * @param readings what the test read, any one of them; empty after a fix that did not cure
     * @param probability of this branch, once at its node
     * @param step what to do then
     */
    public record Branch(List<Reading> readings, double probability, Step step) {
        public Branch {
            readings = List.copyOf(readings);
        }
    }

    /**
     * States read together.
     *
     * @param states per symptom the state, in the order of the test
     */
    public record Reading(List<Seen> states) {
        public Reading {
            states = List.copyOf(states);
        }
    }

    /** A symptom and the state that the test read. */
    public record Seen(String symptomId, String stateId) {}
}
