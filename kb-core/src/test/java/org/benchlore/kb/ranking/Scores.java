package org.benchlore.kb.ranking;

/**
 * Scoring rules over cases. Log-loss in nats with probabilities floored at 1e-6 (for the log only); Brier in its first,
 * multi-class form (Monthly Weather Review 78, 1950; range 0 to 2); ECE over 15 equal bins of the first cause's probability
 * (Guo et al., ICML 2017).
 */
final class Scores {
    private static final int BINS = 15;
    private static final double FLOOR = 1e-6;

    private final double[] confidence = new double[BINS];
    private final double[] hits = new double[BINS];
    private double n;
    private double first;
    private double firstThree;
    private double logLoss;
    private double brier;

    private final double[] runs = new double[5];
    private int ended;

    void add(double[] shares, int truth) {
        int top = 0;
        int above = 0;
        double squares = 0;
        for (int c = 0; c < shares.length; c++) {
            top = shares[c] > shares[top] ? c : top;
            above += shares[c] > shares[truth] ? 1 : 0;
            double off = shares[c] - (c == truth ? 1 : 0);
            squares += off * off;
        }
        n++;
        first += top == truth ? 1 : 0;
        firstThree += above < 3 ? 1 : 0;
        logLoss -= Math.log(Math.max(FLOOR, shares[truth]));
        brier += squares;
        int bin = Math.min(BINS - 1, (int) (shares[top] * BINS));
        confidence[bin] += shares[top];
        hits[bin] += top == truth ? 1 : 0;
    }

    /** top-1, top-3, log-loss, Brier, ECE. */
    double[] means() {
        double ece = 0;
        for (int b = 0; b < BINS; b++) {
            ece += Math.abs(hits[b] - confidence[b]) / n;
        }
        return new double[] {first / n, firstThree / n, logLoss / n, brier / n, ece};
    }

    /** Takes in the means of one whole run, as of one seed. */
    void endRun(double[] means) {
        for (int k = 0; k < runs.length; k++) {
            runs[k] += means[k];
        }
        ended++;
    }

    double[] runMeans() {
        double[] means = runs.clone();
        for (int k = 0; k < means.length; k++) {
            means[k] /= ended;
        }
        return means;
    }

    /** Shares that sum to 1, in place. */
    static double[] normalise(double[] score) {
        double largest = Double.NEGATIVE_INFINITY;
        for (double s : score) {
            largest = Math.max(largest, s);
        }
        double sum = 0;
        for (int c = 0; c < score.length; c++) {
            score[c] = Math.exp(score[c] - largest);
            sum += score[c];
        }
        for (int c = 0; c < score.length; c++) {
            score[c] /= sum;
        }
        return score;
    }
}
