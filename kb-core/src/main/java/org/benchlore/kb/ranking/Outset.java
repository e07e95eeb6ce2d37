package org.benchlore.kb.ranking;

import java.util.Arrays;

/** Shares of the causes before any finding, each view on top of the one before. Immutable. */
final class Outset {
    private final ScopeView scope;
    private final ScopeView tried;
    private final ScopeView worded;
    private final ScopeView coded;
    private final double[] told;
    private final double[] unlistedAt;

    /**
     * Puts the views together.
     *
     * @param scope by base frequency and cases
     * @param tried with what was tried in vain held against its causes
     * @param worded with what the wording of the note lends to each cause
     * @param coded with what past cases teach of codes that no pack knows
     */
    Outset(ScopeView scope, ScopeView tried, ScopeView worded, ScopeView coded) {
        this.scope = scope;
        this.tried = tried;
        this.worded = worded;
        this.coded = coded;
        told = new double[coded.prior.length];
        for (int c = 0; coded != tried && c < told.length; c++) {
            told[c] = coded.prior[c] > 0 ? coded.logPrior[c] - tried.logPrior[c] : 0;
        }
        unlistedAt = Arrays.stream(Posterior.POWERS).map(this::lift).toArray();
    }

    ScopeView scope() {
        return scope;
    }

    ScopeView tried() {
        return tried;
    }

    ScopeView worded() {
        return worded;
    }

    ScopeView coded() {
        return coded;
    }

    /**
     * What wording and codes say of each cause beside the findings.
     *
     * @return ln of their factors, up to a constant; the caller's own
     */
    double[] told() {
        return told.clone();
    }

    /**
     * A factor for the unlisted cause where all that is known counts to a power of {@link Posterior#POWERS}. Wording shares out
     * what the listed causes have among them and leaves the unlisted one as it was, whose own factor is for that the mean of
     * theirs; to a power it must be the mean of their powers.
     */
    double unlistedAt(int power) {
        return unlistedAt[power];
    }

    private double lift(double power) {
        if (worded == tried || power == 1) {
            return 1;
        }
        double before = 0;
        double whole = 0;
        double doubted = 0;
        for (int c = 0; c < tried.prior.length - 1; c++) {
            if (tried.prior[c] > 0) {
                before += tried.prior[c];
                whole += worded.prior[c];
                doubted += tried.prior[c] * Math.pow(worded.prior[c] / tried.prior[c], power);
            }
        }
        return doubted / before / Math.pow(whole / before, power);
    }
}
