package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.numbers.gamma.Trigamma;
import org.benchlore.kb.ranking.Ranking.Evidence;
import org.benchlore.kb.ranking.Ranking.Interval;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.analysis.Token;
import org.jspecify.annotations.Nullable;

/**
 * Turns a posterior into a ranking with its reasons.
 *
 * <p>Weights are I. J. Good's: W(c : e) = 10 log10 P(e | c) / P(e | not c), where "not c" is the mix of all other causes in
 * proportion to their prior. Each finding is weighed alone; what they gain or lose by being taken together, doubt included, is the overlap,
 * so that prior + wording + codes + weights + unmentioned + overlap = 10 log10 of the posterior odds.
 *
 * <p>Intervals: each number behind the posterior has a variance on the log scale (a Dirichlet share: ψ′(aₓ) − ψ′(a); a base
 * frequency: ψ′({@value #PRIOR_CASES} + cases), which before any case is a factor of about two); those of one cause add up,
 * and the log odds of a cause vary with its own sum and with its rivals' in proportion to their squared shares.
 */
final class Explanation {
    /** A pack's base frequency is off by a factor of about two (one standard deviation 0.80 in ln): worth two cases. */
    static final double PRIOR_CASES = 2;

    /**
     * Once powers and links are learnt they are uncertain too; their variance is not worked out but taken as this share of
     * the rest. Set by the coverage on simulated benches, see docs/ranking.md.
     */
    private static final double FITTED = 1.7;

    /** A posterior so near 0 or 1 that a double cannot tell is shown as this far from it. */
    private static final double EDGE = 1e-15;

    /** Words of the note that are named for a cause. */
    private static final int WORDS = 4;

    /** From this probability on a cause's words are named. */
    private static final double NAMED = 0.01;

    private static final double DECIBANS = 10 / Math.log(10);

    private final Catalogue catalogue;
    private final Outset outset;
    private final ScopeView view;
    private final Counts[] counts;
    private final RankingQuery query;
    private final List<Catalogue.Observation> observations;
    private final Dependence.@Nullable Together together;
    private final double[] posterior;
    private final List<Token> telling;

    Explanation(
            Catalogue catalogue,
            Outset outset,
            Counts[] counts,
            RankingQuery query,
            List<Catalogue.Observation> observations,
            Dependence.@Nullable Together together) {
        this.catalogue = catalogue;
        this.outset = outset;
        this.view = outset.coded();
        this.counts = counts;
        this.query = query;
        this.observations = observations;
        this.together = together;
        this.telling = Likeness.telling(query.words());
        this.posterior = Posterior.of(outset, observations, query.fromNote(), together, catalogue.settings());
    }

    Ranking ranking() {
        double[][] weights = weights();
        double[] unmentioned = unmentioned();
        Interval[] intervals = intervals();
        List<RankedCause> causes = new ArrayList<>();
        for (int c = 0; c < posterior.length; c++) {
            if (view.prior[c] > 0) {
                causes.add(explained(c, weights, unmentioned[c], intervals[c]));
            }
        }
        RankedCause unlisted = causes.remove(causes.size() - 1);
        causes.sort(
                Comparator.comparingDouble(RankedCause::probability).reversed().thenComparing(RankedCause::id));
        List<Finding> findings = observations.stream().map(o -> o.finding).toList();
        return new Ranking(query.scope(), query.kinds(), findings, causes, unlisted);
    }

    private RankedCause explained(int c, double[][] weights, double unmentioned, Interval interval) {
        double prior = priorDecibans(outset.tried(), c);
        double wording = priorDecibans(outset.worded(), c) - prior;
        double codes = priorDecibans(view, c) - prior - wording;
        List<Evidence> evidence = new ArrayList<>(observations.size());
        double sum = prior + wording + codes + unmentioned;
        for (int i = 0; i < observations.size(); i++) {
            Finding finding = observations.get(i).finding;
            evidence.add(new Evidence(finding.symptomId(), finding.state(), weights[i][c]));
            sum += weights[i][c];
        }
        double odds = DECIBANS * Math.log(inside(posterior[c]) / inside(rest(posterior, c)));
        boolean listed = c != catalogue.unlisted();
        return new RankedCause(
                listed ? catalogue.cause(c).id() : RankingModel.UNLISTED,
                listed ? catalogue.cause(c).name() : "none of the causes known here",
                inside(posterior[c]),
                interval,
                counts[c].cases,
                catalogue.lacking(c, query.kinds()),
                prior,
                wording,
                words(c, wording),
                codes,
                evidence,
                unmentioned,
                odds - sum);
    }

    private List<String> words(int c, double wording) {
        return wording > 0 && posterior[c] >= NAMED && c != catalogue.unlisted()
                ? catalogue.likeness().words(telling, c, outset.tried().prior, WORDS)
                : List.of();
    }

    private static double priorDecibans(ScopeView of, int c) {
        return DECIBANS * (of.logPrior[c] - Math.log(inside(rest(of.prior, c))));
    }

    private static double inside(double p) {
        return Math.min(1 - EDGE, Math.max(EDGE, p));
    }

    /** 1 − p[c], summed from the others so that nothing cancels. */
    private static double rest(double[] p, int c) {
        double sum = 0;
        for (int k = 0; k < p.length; k++) {
            sum += k == c ? 0 : p[k];
        }
        return sum;
    }

    /** Per finding and cause, in decibans. */
    private double[][] weights() {
        double[][] weights = new double[observations.size()][];
        for (int i = 0; i < weights.length; i++) {
            Catalogue.Observation o = observations.get(i);
            ScopeView.Column column = view.column(o.symptom);
            double[] given = new double[posterior.length];
            for (int c = 0; c < given.length; c++) {
                given[c] = o.given(column.p, c);
            }
            weights[i] = against(given);
        }
        return weights;
    }

    /** Decibans of each cause against the rest, given P(e | cause). */
    private double[] against(double[] given) {
        double all = 0;
        for (int c = 0; c < given.length; c++) {
            all += view.prior[c] * given[c];
        }
        double[] weights = new double[given.length];
        for (int c = 0; c < given.length; c++) {
            double others = (all - view.prior[c] * given[c]) / (1 - view.prior[c]);
            weights[c] = others > 0 ? DECIBANS * Math.log(given[c] / others) : 0;
        }
        return weights;
    }

    private double[] unmentioned() {
        double[] log = new double[posterior.length];
        if (!query.fromNote()) {
            return log;
        }
        Posterior.addUnmentioned(log, outset, observations, catalogue.settings().aside());
        for (int c = 0; c < log.length; c++) {
            log[c] = Math.exp(log[c]);
        }
        return against(log);
    }

    private Interval[] intervals() {
        double[] variance = new double[posterior.length];
        double all = 0;
        for (int c = 0; c < variance.length; c++) {
            variance[c] = Trigamma.value(PRIOR_CASES + view.learnt(c));
            for (int i = 0; i < observations.size(); i++) {
                Catalogue.Observation o = observations.get(i);
                double power = together == null ? 1 : together.power(i);
                variance[c] += power * power * variance(view.column(o.symptom), o, c);
            }
            all += posterior[c] * posterior[c] * variance[c];
        }
        Interval[] intervals = new Interval[variance.length];
        for (int c = 0; c < intervals.length; c++) {
            double p = inside(posterior[c]);
            double others = inside(rest(posterior, c));
            double rivals = Math.max(0, all - posterior[c] * posterior[c] * variance[c]) / (others * others);
            double logit = Math.log(p / others);
            double reach = Estimate.Z90 * Math.sqrt((variance[c] + rivals) * (together == null ? 1 : FITTED));
            intervals[c] = new Interval(inside(logistic(logit - reach)), inside(logistic(logit + reach)));
        }
        return intervals;
    }

    /** Variance of ln P(e | c); the states' shares of what was observed weigh theirs. */
    private static double variance(ScopeView.Column column, Catalogue.Observation o, int c) {
        double worth = column.worth[c];
        if (worth == 0) {
            return 0;
        }
        double whole = Trigamma.value(worth);
        double given = o.given(column.p, c);
        double variance = 0;
        for (int x = 0; x < o.likelihood.length; x++) {
            if (o.likelihood[x] > 0) {
                double share = o.likelihood[x] * column.p[x][c] / given;
                variance += share * share * (Trigamma.value(worth * column.p[x][c]) - whole);
            }
        }
        return variance;
    }

    private static double logistic(double x) {
        return 1 / (1 + Math.exp(-x));
    }
}
