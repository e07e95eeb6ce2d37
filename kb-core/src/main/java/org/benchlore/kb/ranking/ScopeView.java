package org.benchlore.kb.ranking;

import java.util.List;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.benchlore.kb.knowledge.DeviceScope;
import org.jspecify.annotations.Nullable;

/**
 * The model as seen from one device scope: prior shares and, per symptom, a column of P(state | cause) over all causes,
 * made on first use. Counts count once each, at the innermost scope that a case shares with this one, and each inner level
 * is shrunk to the level around it. Thread-safe: columns are pure functions, so making one twice does no harm.
 */
final class ScopeView {
    private final Catalogue catalogue;
    private final RankingSettings settings;
    private final Counts[] counts;
    private final Dependence dependence;
    private final Reporting reporting;
    private final List<DeviceScope> lineage;
    final double[] prior;
    final double[] logPrior;
    private final AtomicReferenceArray<@Nullable Column> columns;
    private volatile double @Nullable [] unmentioned;

    ScopeView(Catalogue catalogue, Counts[] counts, Dependence dependence, DeviceScope scope) {
        this.catalogue = catalogue;
        this.settings = catalogue.settings();
        this.counts = counts;
        this.dependence = dependence;
        this.reporting = dependence.reporting(catalogue);
        this.lineage = scope.lineage();
        this.columns = new AtomicReferenceArray<>(catalogue.symptoms());
        this.prior = prior(scope);
        this.logPrior = new double[prior.length];
        for (int c = 0; c < prior.length; c++) {
            logPrior[c] = prior[c] > 0 ? Math.log(prior[c]) : Double.NEGATIVE_INFINITY;
        }
    }

    /** The same view with other shares before any finding. */
    private ScopeView(ScopeView of, double[] factors) {
        this.catalogue = of.catalogue;
        this.settings = of.settings;
        this.counts = of.counts;
        this.dependence = of.dependence;
        this.reporting = of.reporting;
        this.lineage = of.lineage;
        this.columns = of.columns;
        this.unmentioned = of.unmentioned();
        this.prior = of.prior.clone();
        this.logPrior = new double[prior.length];
        double sum = 0;
        for (int c = 0; c < prior.length; c++) {
            prior[c] *= factors[c];
            sum += prior[c];
        }
        for (int c = 0; c < prior.length; c++) {
            prior[c] /= sum;
            logPrior[c] = prior[c] > 0 ? Math.log(prior[c]) : Double.NEGATIVE_INFINITY;
        }
    }

    /** The same with each cause's share taken times its factor, such as the chance that what was tried would have failed. */
    ScopeView after(double[] factors) {
        return new ScopeView(this, factors);
    }

    /**
     * The same of a unit that cannot have some of the causes: their shares fall to a fraction, which all listed causes take
     * over in proportion, so that the unlisted one is as likely as before. This view itself where it can have all of them.
     *
     * @param held per cause, whether it can have it
     */
    ScopeView lacking(boolean[] held) {
        int unlisted = catalogue.unlisted();
        double before = 0;
        double after = 0;
        double[] factors = new double[held.length];
        for (int c = 0; c < unlisted; c++) {
            factors[c] = held[c] ? 1 : RankingSettings.LACKING;
            before += prior[c];
            after += factors[c] * prior[c];
        }
        if (after == before) {
            return this;
        }
        for (int c = 0; c < unlisted; c++) {
            factors[c] *= before / after;
        }
        factors[unlisted] = 1;
        return after(factors);
    }

    /** P(state | cause) of one symptom for all causes, and what the numbers rest on. */
    static final class Column {
        /** [state][cause]. */
        final double[][] p;

        final double[][] logP;
        /** Per cause, cases that the numbers are worth in all; 0 where the shared background stands unlearnt. */
        final double[] worth;
        /** Per state, how much the causes differ on it: 0 not at all, near 1 by a large factor. */
        final double[] spread;
        /** Per cause, ln of P(not mentioned | cause) over the same for the background; null if silence says nothing. */
        final double @Nullable [] logUnmentioned;

        Column(double[][] p, double[] worth, double @Nullable [] logUnmentioned, double[] spread) {
            this.p = p;
            this.spread = spread;
            this.worth = worth;
            this.logUnmentioned = logUnmentioned;
            this.logP = new double[p.length][];
            for (int x = 0; x < p.length; x++) {
                logP[x] = new double[p[x].length];
                for (int c = 0; c < p[x].length; c++) {
                    logP[x][c] = Math.log(p[x][c]);
                }
            }
        }
    }

    /** Shares of the causes that apply here, summing to 1; 0 for those that do not. */
    private double[] prior(DeviceScope scope) {
        int size = catalogue.causes();
        int unlisted = catalogue.unlisted();
        double[] shares = new double[size];
        double total = 0;
        for (int c = 0; c < unlisted; c++) {
            if (catalogue.applies(c, scope)) {
                shares[c] = catalogue.share(c);
                total += shares[c];
            }
        }
        for (int c = 0; c < unlisted; c++) {
            shares[c] *= total == 0 ? 0 : (1 - settings.unlistedShare()) / total;
        }
        shares[unlisted] = total == 0 ? 1 : settings.unlistedShare();
        for (int level = 0; level < lineage.size(); level++) {
            double[] n = new double[size];
            for (int c = 0; c < size; c++) {
                n[c] = shares[c] > 0 ? casesAt(c, level) : 0;
            }
            shares = Shrinkage.shrink(shares, n);
        }
        return shares;
    }

    /** Cases of a cause that share exactly this level of the lineage. */
    private double casesAt(int c, int level) {
        double here = counts[c].weight(lineage.get(level));
        return level + 1 < lineage.size() ? here - counts[c].weight(lineage.get(level + 1)) : here;
    }

    Column column(int s) {
        Column column = columns.get(s);
        if (column == null) {
            column = makeColumn(s);
            columns.set(s, column);
        }
        return column;
    }

    private Column makeColumn(int s) {
        int size = catalogue.causes();
        int states = catalogue.symptom(s).states().size();
        double[][] p = new double[states][size];
        double[] worth = new double[size];
        double[] background = background(s);
        for (int c = 0; c < size; c++) {
            double[] given = pooled(c, s, base(c, s, background), worth);
            for (int x = 0; x < states; x++) {
                p[x][c] = given[x];
            }
        }
        return new Column(p, worth, logUnmentioned(s, background), spread(p));
    }

    /**
     * Per cause, ln of P(not mentioned | cause) over the same for the background; null if silence says nothing. Only causes
     * that speak of the symptom differ from the background, so a whole column is not needed.
     */
    private double @Nullable [] logUnmentioned(int s, double[] background) {
        if (!reporting.tells(s)) {
            return null;
        }
        double[] log = new double[catalogue.causes()];
        double[] worth = new double[log.length];
        double silentBackground = reporting.unsaid(s, background);
        for (int c : catalogue.speaking(s)) {
            double[] given = pooled(c, s, base(c, s, background), worth);
            log[c] = Math.log(reporting.unsaid(s, given) / silentBackground);
        }
        return log;
    }

    /** What a cause that says nothing of the symptom shows, learnt from the cases of all such causes. */
    double[] background(int s) {
        double[] packs = catalogue.background(s);
        double[] n = new double[packs.length];
        double cases = 0;
        double seen = 0;
        for (int c = 0; c < catalogue.unlisted(); c++) {
            if (counts[c].isEmpty() || catalogue.speaks(c, s)) {
                continue;
            }
            cases += counts[c].weight(DeviceScope.ANY);
            long[] own = counts[c].states(DeviceScope.ANY, s);
            for (int x = 0; own != null && x < n.length; x++) {
                n[x] += own[x] / (double) Lesson.WHOLE;
                seen += own[x] / (double) Lesson.WHOLE;
            }
        }
        if (seen == 0) {
            return packs;
        }
        double total = settings.backgroundCases() + seen + reporting.addSilent(s, n, cases - seen, packs);
        double[] learnt = new double[packs.length];
        for (int x = 0; x < learnt.length; x++) {
            learnt[x] = (settings.backgroundCases() * packs[x] + n[x]) / total;
        }
        return learnt;
    }

    private double[] base(int c, int s, double[] background) {
        if (c == catalogue.unlisted()) {
            return catalogue.unlistedOpinion(s, background);
        }
        return catalogue.speaks(c, s) ? catalogue.opinion(c, s) : background;
    }

    /** Per state, 1 - least / largest probability over the listed causes that apply; 0 for what says nothing. */
    private double[] spread(double[][] p) {
        double[] spread = new double[p.length];
        for (int x = 0; x < p.length; x++) {
            double least = 1;
            double largest = 0;
            for (int c = 0; c < catalogue.unlisted(); c++) {
                if (prior[c] > 0) {
                    least = Math.min(least, p[x][c]);
                    largest = Math.max(largest, p[x][c]);
                }
            }
            spread[x] = largest > 0 ? 1 - least / largest : 0;
        }
        return spread;
    }

    private double[] pooled(int c, int s, double[] base, double[] worth) {
        double[] p = base;
        double strength = catalogue.worth(c, s) * dependence.worth(catalogue.speaks(c, s), s);
        worth[c] = catalogue.speaks(c, s) ? strength : 0;
        if (counts[c].isEmpty()) {
            return p;
        }
        boolean learnt = false;
        for (int level = 0; level < lineage.size(); level++) {
            double[] n = statesAt(c, s, level, p.length);
            double seen = 0;
            for (double x : n) {
                seen += x;
            }
            if (seen == 0 && (!reporting.tells(s) || !catalogue.speaks(c, s))) {
                continue;
            }
            double m = learnt ? settings.scopeCases() : strength;
            double silentCases = reporting.addSilent(s, n, casesAt(c, level) - seen, p);
            double total = m + seen + silentCases;
            double[] next = new double[p.length];
            for (int x = 0; x < p.length; x++) {
                next[x] = (m * p[x] + n[x]) / total;
            }
            p = next;
            worth[c] = total;
            learnt = true;
        }
        return p;
    }

    private double[] statesAt(int c, int s, int level, int states) {
        double[] n = new double[states];
        long[] here = counts[c].states(lineage.get(level), s);
        long[] inner = level + 1 < lineage.size() ? counts[c].states(lineage.get(level + 1), s) : null;
        if (here != null) {
            for (int x = 0; x < states; x++) {
                n[x] = (here[x] - (inner == null ? 0 : inner[x])) / (double) Lesson.WHOLE;
            }
        }
        return n;
    }

    /**
     * States that the cases of a cause showed, those inferred from silence among them; empty when none mentioned the
     * symptom. For the scope any.
     */
    double[] seenOf(int c, int s) {
        long[] own = counts[c].states(DeviceScope.ANY, s);
        if (own == null) {
            return new double[0];
        }
        double[] n = new double[own.length];
        double seen = 0;
        for (int x = 0; x < n.length; x++) {
            n[x] = own[x] / (double) Lesson.WHOLE;
            seen += n[x];
        }
        reporting.addSilent(s, n, counts[c].weight(DeviceScope.ANY) - seen, catalogue.opinion(c, s));
        return n;
    }

    /** Per cause, ln of what a note that mentions nothing at all says for it. */
    double[] unmentioned() {
        double[] sum = unmentioned;
        if (sum == null) {
            sum = new double[catalogue.causes()];
            for (int s = 0; s < catalogue.symptoms(); s++) {
                Column column = columns.get(s);
                double[] log = column == null ? logUnmentioned(s, background(s)) : column.logUnmentioned;
                for (int c = 0; log != null && c < sum.length; c++) {
                    sum[c] += log[c];
                }
            }
            unmentioned = sum;
        }
        return sum;
    }

    /** Cases learnt of a cause anywhere along the lineage, weighted. */
    double learnt(int c) {
        return counts[c].weight(lineage.get(0));
    }
}
