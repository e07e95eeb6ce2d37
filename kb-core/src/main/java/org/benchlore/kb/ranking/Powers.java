package org.benchlore.kb.ranking;

/**
 * What a fit learns. With n effective findings, finding j counts with the powers
 * <pre>
 *   own part         g_j / (1 + (n - 1) rho)
 *   dependence part  kappa h_j / (1 + (n - 1) rho)
 * </pre>
 * The denominator is the design effect of n equally correlated observations (Kish, Survey Sampling, 1965, from memory):
 * one finding counts in full, many that repeat each other count for fewer. It is a power on the likelihood (Grunwald &amp;
 * van Ommen, Bayesian Analysis 12, 2017), so the prior is not flattened.
 */
final class Powers {

    private final Trust trust;
    private final double rho;
    private final double[] own;
    private final double[] dependence;
    private final Gains gains;

    Powers(Trust trust, double rho, double[] own, double[] dependence, Gains gains) {
        this.trust = trust;
        this.rho = rho;
        this.own = own;
        this.dependence = dependence;
        this.gains = gains;
    }

    /** How far opinions and backgrounds are trusted. */
    Trust trust() {
        return trust;
    }

    double temper(double effective) {
        return 1 / (1 + Math.max(0, effective - 1) * rho);
    }

    double rho() {
        return rho;
    }

    double own(int symptom) {
        return own[symptom];
    }

    double dependence(int symptom) {
        return dependence[symptom];
    }

    Gains gains() {
        return gains;
    }
}
