package org.benchlore.kb.ranking;

import java.util.Arrays;

/**
 * The plain forecaster that any other has to beat: what was most often the cause will be it again, whatever is found. Each
 * cause that can apply has (n + 1) / (N + k), k of them and n of N earlier cases (Laplace's rule of succession, 1814). Not
 * thread-safe: one replay counts with it.
 */
final class CauseFrequency {
    private final double[] cases;

    /**
     * Has seen no case.
     *
     * @param causes how many there are, the unlisted one among them
     */
    CauseFrequency(int causes) {
        cases = new double[causes];
    }

    /**
     * What the cases so far let one expect.
     *
     * @param applies above 0 for causes that can apply to the unit, 0 for others
     * @return one per cause, summing to 1; 0 for what cannot apply
     */
    double[] probabilities(double[] applies) {
        double[] shares = new double[cases.length];
        for (int c = 0; c < shares.length; c++) {
            shares[c] = applies[c] > 0 ? cases[c] + 1 : 0;
        }
        double sum = Arrays.stream(shares).sum();
        for (int c = 0; c < shares.length; c++) {
            shares[c] /= sum;
        }
        return shares;
    }

    /** Counts one case, or a part of one, for a cause. */
    void count(int cause, long millionths) {
        cases[cause] += millionths / (double) Lesson.WHOLE;
    }
}
