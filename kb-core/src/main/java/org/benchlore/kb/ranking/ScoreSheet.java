package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.List;

/**
 * Scoring rules over cases, in the order in which they come. Log-loss in nats, with probabilities floored at
 * {@value #FLOOR} for the logarithm only; Brier in its first, multi-class form (Monthly Weather Review 78, 1950; range 0 to
 * 2); expected calibration error over equal bins of the first cause's probability, lower edge included, 1 in the top bin
 * (Guo et al., ICML 2017).
 */
final class ScoreSheet {
    static final double FLOOR = 1e-6;

    private final double[] confidence;
    private final double[] hits;
    private final int[] sizes;
    private final List<Double> logLosses = new ArrayList<>();
    private final List<Double> briers = new ArrayList<>();
    private int first;
    private int firstThree;

    ScoreSheet(int bins) {
        confidence = new double[bins];
        hits = new double[bins];
        sizes = new int[bins];
    }

    /**
     * Scores one forecast.
     *
     * @param shares probability of each cause
     * @param truth number of the true one
     */
    void add(double[] shares, int truth) {
        int top = 0;
        int above = 0;
        double brier = 0;
        for (int c = 0; c < shares.length; c++) {
            top = shares[c] > shares[top] ? c : top;
            above += shares[c] > shares[truth] || (shares[c] == shares[truth] && c < truth) ? 1 : 0;
            double off = shares[c] - (c == truth ? 1 : 0);
            brier += off * off;
        }
        boolean hit = above == 0;
        first += hit ? 1 : 0;
        firstThree += above < 3 ? 1 : 0;
        logLosses.add(-Math.log(Math.max(FLOOR, shares[truth])));
        briers.add(brier);
        addToBin(shares[top], hit);
    }

    void addToBin(double probability, boolean hit) {
        int bin = bin(probability, sizes.length);
        confidence[bin] += probability;
        hits[bin] += hit ? 1 : 0;
        sizes[bin]++;
    }

    /** The lower edge belongs to the bin; the edges are the doubles nearest k / bins, so that 0.6 opens the fourth of five. */
    private static int bin(double probability, int bins) {
        int bin = Math.min(bins - 1, (int) (probability * bins));
        while (bin + 1 < bins && probability >= (bin + 1) / (double) bins) {
            bin++;
        }
        while (bin > 0 && probability < bin / (double) bins) {
            bin--;
        }
        return bin;
    }

    int size() {
        return logLosses.size();
    }

    int first() {
        return first;
    }

    int firstThree() {
        return firstThree;
    }

    List<Double> logLosses() {
        return logLosses;
    }

    List<Double> briers() {
        return briers;
    }

    /** Sum over bins of their share of the cases times |share right - mean probability|; 0 without cases. */
    double calibrationError() {
        double error = 0;
        double n = 0;
        for (int b = 0; b < sizes.length; b++) {
            error += Math.abs(hits[b] - confidence[b]);
            n += sizes[b];
        }
        return n == 0 ? 0 : error / n;
    }

    /** The bins that hold a case, from low to high. */
    List<Evaluation.Bin> bins() {
        List<Evaluation.Bin> bins = new ArrayList<>();
        for (int b = 0; b < sizes.length; b++) {
            if (sizes[b] > 0) {
                bins.add(new Evaluation.Bin(
                        b / (double) sizes.length,
                        (b + 1) / (double) sizes.length,
                        sizes[b],
                        confidence[b] / sizes[b],
                        Estimate.share((int) hits[b], sizes[b])));
            }
        }
        return bins;
    }
}
