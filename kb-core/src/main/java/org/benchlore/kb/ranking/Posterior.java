package org.benchlore.kb.ranking;

import java.util.List;

/** The arithmetic of the posterior: add logarithms, exponentiate once after subtracting the largest. */
final class Posterior {
    private Posterior() {}

    static double[] of(ScopeView view, List<Catalogue.Observation> observations, boolean fromNote) {
        double[] score = view.logPrior.clone();
        if (fromNote) {
            addUnmentioned(score, view, observations);
        }
        for (Catalogue.Observation observation : observations) {
            addFinding(score, view.column(observation.symptom), observation);
        }
        return normalise(score);
    }

    static void addFinding(double[] score, ScopeView.Column column, Catalogue.Observation observation) {
        int certain = observation.certainState();
        if (certain >= 0) {
            double[] log = column.logP[certain];
            for (int c = 0; c < score.length; c++) {
                score[c] += log[c];
            }
            return;
        }
        for (int c = 0; c < score.length; c++) {
            score[c] += Math.log(observation.given(column.p, c));
        }
    }

    static void addUnmentioned(double[] score, ScopeView view, List<Catalogue.Observation> observations) {
        double[] all = view.unmentioned();
        for (int c = 0; c < score.length; c++) {
            score[c] += all[c];
        }
        for (Catalogue.Observation observation : observations) {
            double[] log = view.column(observation.symptom).logUnmentioned;
            for (int c = 0; log != null && c < score.length; c++) {
                score[c] -= log[c];
            }
        }
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
