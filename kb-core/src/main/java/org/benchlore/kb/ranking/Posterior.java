package org.benchlore.kb.ranking;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The arithmetic of the posterior: add logarithms, exponentiate once after subtracting the largest.
 *
 * <p>Findings of one unit travel together and packs err, so all of them together may count for less than they seem.
 * The posterior is therefore a mixture over powers η of the likelihood, P(c) = Σ π_η P_η(c), P_η(c) ∝ prior(c) · L(c)^η, with
 * η = 1 in all but the share {@link RankingSettings#doubt} of it; a fix that failed where one cause seemed all but certain
 * then speaks for the smaller powers, too. The likelihood is that of findings, wording and codes together: a note's words and
 * what was read from them are of one hand. Power likelihoods: Grünwald, "The safe Bayesian", ALT 2012, from memory.
 */
final class Posterior {
    /** Findings after which what a note leaves out counts half. */
    private static final double TERSE = 6;

    /** Each the square root of the next, see {@link #believed}. */
    static final double[] POWERS = {0.125, 0.25, 0.5, 1};

    /** Shares of the doubt for the powers below 1. */
    private static final double[] DOUBTS = {1 / 7.0, 2 / 7.0, 4 / 7.0};

    private Posterior() {}

    /** Shares of the causes, given the powers and links of the findings, or null where each counts in full by itself. */
    static double[] of(
            Outset outset,
            List<Catalogue.Observation> observations,
            boolean fromNote,
            Dependence.@Nullable Together together,
            RankingSettings settings) {
        ScopeView view = outset.coded();
        double[] evidence = outset.told();
        if (fromNote) {
            addUnmentioned(evidence, outset, observations, settings.aside());
        }
        for (int i = 0; i < observations.size(); i++) {
            Catalogue.Observation observation = observations.get(i);
            double power = together == null ? 1 : together.power(i);
            addFinding(evidence, view.column(observation.symptom), observation, power);
        }
        if (together != null) {
            together.addLinks(evidence);
        }
        return believed(outset, evidence, settings.doubt());
    }

    /**
     * Shares over all powers.
     *
     * @param evidence ln of the likelihood of all that is known, up to a constant
     */
    private static double[] believed(Outset outset, double[] evidence, double doubt) {
        double[] untried = outset.scope().prior;
        double[] tried = outset.tried().prior;
        int unlisted = untried.length - 1;
        double largest = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < untried.length; c++) {
            largest = untried[c] > 0 ? Math.max(largest, evidence[c]) : largest;
        }
        double[] power = new double[untried.length];
        for (int c = 0; c < untried.length; c++) {
            power[c] = untried[c] > 0 ? Math.exp(POWERS[0] * (evidence[c] - largest)) : 0;
        }
        double[] shares = new double[untried.length];
        for (int k = 0; k < POWERS.length; k++) {
            double plain = power[unlisted];
            power[unlisted] *= outset.unlistedAt(k);
            double sum = 0;
            for (int c = 0; c < power.length; c++) {
                sum += untried[c] * power[c];
            }
            double part = (k < DOUBTS.length ? doubt * DOUBTS[k] : 1 - doubt) / sum;
            for (int c = 0; c < power.length; c++) {
                shares[c] += part * tried[c] * power[c];
                power[c] *= power[c];
            }
            power[unlisted] = plain * plain;
        }
        double sum = 0;
        for (double share : shares) {
            sum += share;
        }
        for (int c = 0; c < shares.length; c++) {
            shares[c] /= sum;
        }
        return shares;
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

    /**
     * What a note leaves out. Silence counts the more, the more the note says: three findings are no account of a unit. And a
     * unit is brought in for what its fault did: a cause to which nothing in the note can be put down keeps only the
     * share {@code aside}.
     */
    static void addUnmentioned(double[] score, Outset outset, List<Catalogue.Observation> observations, double aside) {
        ScopeView view = outset.coded();
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
        if (aside < 1 && !observations.isEmpty()) {
            double[] otherwise = otherwise(outset, observations);
            for (int c = 0; c < score.length; c++) {
                score[c] += Math.log(1 - (1 - aside) * otherwise[c]);
            }
        }
    }

    /**
     * The chance that all a note tells would be told without the cause: of each finding, and of its wording and codes, the
     * share not attributable to the cause, 1/LR against the unlisted one where that is over 1 (attributable fraction among the
     * exposed: Rothman, Modern Epidemiology, from memory).
     */
    private static double[] otherwise(Outset outset, List<Catalogue.Observation> observations) {
        ScopeView view = outset.coded();
        int unlisted = view.prior.length - 1;
        double[] otherwise = new double[view.prior.length];
        double told = view.prior[unlisted] / outset.tried().prior[unlisted];
        for (int c = 0; c < otherwise.length; c++) {
            double before = outset.tried().prior[c];
            otherwise[c] = before > 0 ? Math.min(1, told * before / view.prior[c]) : 1;
        }
        for (Catalogue.Observation observation : observations) {
            double[][] p = view.column(observation.symptom).p;
            double background = observation.given(p, unlisted);
            for (int c = 0; c < otherwise.length; c++) {
                otherwise[c] *= Math.min(1, background / observation.given(p, c));
            }
        }
        return otherwise;
    }
}
