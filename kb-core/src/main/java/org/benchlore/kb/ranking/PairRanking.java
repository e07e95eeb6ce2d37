package org.benchlore.kb.ranking;

import java.util.List;

/**
 * Two faults at once beside single faults.
 *
 * @param probability that two of the causes known here are present
 * @param pairs the likeliest, ties by ids; their probabilities are among all single causes and all pairs
 */
public record PairRanking(double probability, List<Pair> pairs) {
    public PairRanking {
        pairs = List.copyOf(pairs);
    }

    /**
     * Two causes at once.
     *
     * @param firstId the one whose id comes first
     * @param secondId the other
     * @param probability of exactly these two, among all single causes and all pairs
     * @param overSingle how many times likelier than the better of the two alone
     */
    public record Pair(String firstId, String secondId, double probability, double overSingle) {}
}
