package org.benchlore.kb.ranking;

import java.util.Arrays;

/** The terms of one case, worked out without it, for the causes that still matter; the true one always among them. */
final class LeftOut {

    /** Causes kept per case, best first by naive Bayes: the others hold next to no probability. */
    static final int CANDIDATES = 32;

    final double weight;
    final int truth; // index among the candidates
    final int[] symptoms;
    final double effective;
    final double[] logPrior; // per candidate
    final double[][] own; // [finding][candidate]
    final double[][] dependence;

    /** Call while the case is taken out of {@code counts}. */
    LeftOut(CaseRow row, FindingCounts counts, BaseMeasure base, Trust trust, Gains gains, double share) {
        LogTerms terms = new LogTerms(counts, base, trust);
        int n = row.symptoms.length;
        weight = share * row.weight();
        symptoms = new int[n];
        int[] states = new int[n];
        long[] sorted = new long[n];
        for (int i = 0; i < n; i++) {
            sorted[i] = (long) row.symptoms[i] << 32 | row.states[i];
        }
        Arrays.sort(sorted);
        double[] prior = base.logPrior();
        double[] score = prior.clone();
        double[][] all = new double[n][];
        double spread = 0;
        for (int j = 0; j < n; j++) {
            symptoms[j] = (int) (sorted[j] >> 32);
            states[j] = (int) sorted[j];
            LogTerms.Own term = terms.own(symptoms[j], states[j]);
            all[j] = term.logs();
            spread += term.spread();
            for (int c = 0; c < score.length; c++) {
                score[c] += all[j][c];
            }
        }
        effective = spread;
        int[] candidates = best(score, row.cause);
        truth = Arrays.binarySearch(candidates, row.cause);
        logPrior = pick(prior, candidates);
        own = new double[n][];
        dependence = new double[n][candidates.length];
        Structure structure = Structure.among(symptoms, gains);
        for (int j = 0; j < n; j++) {
            own[j] = pick(all[j], candidates);
            Structure.Leaning leaning = structure.leaning(j);
            for (int k = 0; k < leaning.parents().length; k++) {
                int p = leaning.parents()[k];
                LogTerms.Link link = terms.computeLink(symptoms[p], states[p], symptoms[j], states[j]);
                for (int i = 0; i < link.causes().length; i++) {
                    int at = Arrays.binarySearch(candidates, link.causes()[i]);
                    if (at >= 0) {
                        dependence[j][at] += leaning.shares()[k] * link.logs()[i];
                    }
                }
            }
        }
    }

    private static int[] best(double[] score, int truth) {
        int keep = Math.min(CANDIDATES, score.length);
        double[] sorted = score.clone();
        Arrays.sort(sorted);
        double least = sorted[score.length - keep];
        int[] kept = new int[score.length];
        int n = 0;
        for (int c = 0; c < score.length; c++) {
            if (score[c] >= least || c == truth) {
                kept[n++] = c;
            }
        }
        return Arrays.copyOf(kept, n);
    }

    private static double[] pick(double[] from, int[] which) {
        double[] picked = new double[which.length];
        for (int i = 0; i < which.length; i++) {
            picked[i] = from[which[i]];
        }
        return picked;
    }
}
