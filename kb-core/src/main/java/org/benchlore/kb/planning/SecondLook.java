package org.benchlore.kb.planning;

import java.util.List;
import java.util.Optional;

/**
 * Doubts about the leading cause.
 *
 * @param leader the likeliest cause, or "unlisted"
 * @param probability its probability
 * @param against findings that speak against it, the strongest first
 * @param overturning the one observation not yet made that would lower it most, of those that are not far-fetched; empty if
 *     nothing is left to look at
 * @param fitsOneCause whether some single cause makes the findings together at least as likely as they are on a unit of
 *     unknown cause
 * @param pairs two faults at once that explain the findings better than any single cause, the likeliest first; empty if none
 */
public record SecondLook(
        String leader,
        double probability,
        List<Against> against,
        Optional<Overturning> overturning,
        boolean fitsOneCause,
        List<Pair> pairs) {
    public SecondLook {
        against = List.copyOf(against);
        pairs = List.copyOf(pairs);
    }

    /**
     * A finding against the leader.
     *
     * @param decibans its weight for the leader, below 0
     * @param betterFor the likely cause that it speaks for most
     */
    public record Against(String symptomId, String stateId, double decibans, String betterFor) {}

    /**
     * An observation that would hurt the leader.
     *
     * @param testIds tests that reveal it
     * @param expected how likely that state is as things stand
     * @param leaderAfter the leader's probability if it is seen
     * @param newLeader the likeliest cause then
     * @param newProbability its probability then
     */
    public record Overturning(
            String symptomId,
            String stateId,
            List<String> testIds,
            double expected,
            double leaderAfter,
            String newLeader,
            double newProbability) {
        public Overturning {
            testIds = List.copyOf(testIds);
        }

        /** Whether the leader would lose its place. */
        public boolean overturns() {
            return newProbability > leaderAfter;
        }
    }

    /**
     * Two faults at once.
     *
     * @param oddsOverBestSingle posterior odds of the pair over the best single cause
     * @param onlyFirst findings that the first alone makes likelier than the second does
     * @param onlySecond the other way round
     */
    public record Pair(
            String firstId,
            String secondId,
            double oddsOverBestSingle,
            List<String> onlyFirst,
            List<String> onlySecond) {
        public Pair {
            onlyFirst = List.copyOf(onlyFirst);
            onlySecond = List.copyOf(onlySecond);
        }
    }
}
