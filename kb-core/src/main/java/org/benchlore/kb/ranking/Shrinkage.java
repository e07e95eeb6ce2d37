package org.benchlore.kb.ranking;

import org.apache.commons.numbers.gamma.LogGamma;

/**
 * Shares of causes from counts, shrunk to a parent's shares: (κ·parent + n) / (κ + N), the m-estimate (Cestnik, ECAI 1990;
 * the hierarchical Dirichlet of MacKay and Peto, Natural Language Engineering 1(3), 1995). How much the parent is worth, κ,
 * is not fixed: the estimate is averaged over {@link #WORTH} in proportion to how well each would have predicted these very
 * counts, one case after the other (the Dirichlet-multinomial evidence, which does not depend on their order; Dawid, JRSS-A
 * 147, 1984). So a bench that sees what the packs expect keeps to them, and one that does not lets go of them quickly.
 */
final class Shrinkage {
    /** Cases that the parent may be worth. */
    private static final double[] WORTH = {1, 5, 20, 80, 320, 1280};

    /** How likely each is before any case: a textbook that is worth next to nothing is possible but rare. */
    private static final double[] BELIEF = {0.01, 0.04, 0.2, 0.25, 0.25, 0.25};

    private Shrinkage() {}

    /**
     * The shares that counts and the parent together speak for.
     *
     * @param parent shares summing to 1
     * @param n cases per cause, none negative
     * @return shares summing to 1; {@code parent} itself when there are no cases
     */
    static double[] shrink(double[] parent, double[] n) {
        double total = 0;
        for (double x : n) {
            total += x;
        }
        if (total == 0) {
            return parent;
        }
        double[] logEvidence = new double[WORTH.length];
        double largest = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < WORTH.length; k++) {
            logEvidence[k] = Math.log(BELIEF[k]) + logEvidence(WORTH[k], parent, n, total);
            largest = Math.max(largest, logEvidence[k]);
        }
        double norm = 0;
        for (int k = 0; k < WORTH.length; k++) {
            logEvidence[k] = Math.exp(logEvidence[k] - largest);
            norm += logEvidence[k];
        }
        double[] shares = new double[parent.length];
        for (int k = 0; k < WORTH.length; k++) {
            double weight = logEvidence[k] / norm / (WORTH[k] + total);
            for (int c = 0; c < shares.length; c++) {
                shares[c] += weight * (WORTH[k] * parent[c] + n[c]);
            }
        }
        return shares;
    }

    /** ln of the probability of the counts, one after the other, under a Dirichlet of that worth around the parent. */
    static double logEvidence(double worth, double[] parent, double[] n, double total) {
        double sum = LogGamma.value(worth) - LogGamma.value(worth + total);
        for (int c = 0; c < n.length; c++) {
            if (n[c] > 0) {
                double a = worth * parent[c];
                sum += LogGamma.value(a + n[c]) - LogGamma.value(a);
            }
        }
        return sum;
    }
}
