package org.benchlore.kb.ranking;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The arithmetic of the posterior: add logarithms, exponentiate once after subtracting the largest. */
final class Posterior {
    /** Findings after which what a note leaves out counts half. */
    private static final double TERSE = 6;

    private Posterior() {}

    /** Shares of the causes, given the powers and links of the findings, or null where each counts in full by itself. */
    static double[] of(
            ScopeView view,
            List<Catalogue.Observation> observations,
            boolean fromNote,
            Dependence.@Nullable Together together) {
        double[] score = view.logPrior.clone();
        if (fromNote) {
            addUnmentioned(score, view, observations);
        }
        for (int i = 0; i < observations.size(); i++) {
            Catalogue.Observation observation = observations.get(i);
            double power = together == null ? 1 : together.power(i);
            addFinding(score, view.column(observation.symptom), observation, power);
        }
        if (together != null) {
            together.addLinks(score);
        }
        return normalise(score);
    }

    private static void addFinding(
            double[] score, ScopeView.Column column, Catalogue.Observation observation, double power) {
        int sole = observation.soleState();
        if (sole >= 0) {
            double[] log = column.logP[sole];
            for (int c = 0; c < score.length; c++) {
                score[c] += power * log[c];
            }
            return;
        }
        for (int c = 0; c < score.length; c++) {
            score[c] += power * Math.log(observation.given(column.p, c));
        }
    }

    /** Silence counts the more, the more the note says: three findings are no account of a unit. */
    static void addUnmentioned(double[] score, ScopeView view, List<Catalogue.Observation> observations) {
        double power = observations.size() / (observations.size() + TERSE);
        double[] all = view.unmentioned();
        for (int c = 0; c < score.length; c++) {
            score[c] += power * all[c];
        }
        for (Catalogue.Observation observation : observations) {
            double[] log = view.column(observation.symptom).logUnmentioned;
            for (int c = 0; log != null && c < score.length; c++) {
                score[c] -= power * log[c];
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
