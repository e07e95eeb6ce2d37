package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.benchlore.kb.ranking.PairRanking.Pair;
import org.jspecify.annotations.Nullable;

/**
 * Every single cause and every pair of listed causes, exactly.
 *
 * <p>Prior: with probability π a unit has two faults, a pair in proportion to the product of its causes' shares; else one,
 * by the shares. Likelihood: the leaky noisy-OR (Pearl 1988, section 4.3.2; the leak after Henrion 1987) on "not normal",
 * the leak being what a cause that says nothing of the symptom shows. With N(c) = P(normal | c) and N0 that of the leak,
 * <pre>  N(a, b) = N(a) N(b) / N0, at most the larger of N(a), N(b)</pre>
 * so that a cause without a say leaves the other's number as it is, and two faults never make a symptom rarer than both do
 * alone. How the rest is shared among the abnormal states goes by how often each cause brings it about, 1 - N(c) / N0.
 */
final class Pairs {
    /** Two independent faults in one unit that nobody has opened. From memory of the trade, no source; an opinion. */
    static final double TWO_FAULTS = 0.03;

    /** The same once somebody has been inside and may have added one. From memory of the trade, no source; an opinion. */
    static final double TWO_FAULTS_WORKED_ON = 0.15;

    private final Catalogue catalogue;
    private final ScopeView view;
    private final List<Catalogue.Observation> observations;
    private final Dependence.@Nullable Together together;
    /** Per cause, the chance that what was tried would have failed; beside a second fault it fails anyway. */
    private final double[] failed;

    Pairs(
            Catalogue catalogue,
            ScopeView view,
            List<Catalogue.Observation> observations,
            Dependence.@Nullable Together together,
            double[] failed) {
        this.catalogue = catalogue;
        this.view = view;
        this.observations = observations;
        this.together = together;
        this.failed = failed;
    }

    PairRanking rank(boolean workedOnBefore, int limit) {
        double two = workedOnBefore ? TWO_FAULTS_WORKED_ON : TWO_FAULTS;
        int[] listed = listed();
        if (listed.length < 2) {
            return new PairRanking(0, List.of());
        }
        double squares = 0;
        double sum = 0;
        for (int c : listed) {
            sum += view.prior[c];
            squares += view.prior[c] * view.prior[c];
        }
        double logPairs = Math.log(two) - Math.log((sum * sum - squares) / 2);
        double[] single = single(1 - two);
        double largest = Double.NEGATIVE_INFINITY;
        for (double s : single) {
            largest = Math.max(largest, s);
        }
        double[][] pair = new double[listed.length][];
        double[] n0 = leaks();
        for (int i = 0; i < listed.length; i++) {
            pair[i] = new double[i];
            for (int j = 0; j < i; j++) {
                pair[i][j] = logPairs + log(listed[j], listed[i], n0);
                largest = Math.max(largest, pair[i][j]);
            }
        }
        return shared(listed, single, pair, largest, limit);
    }

    private int[] listed() {
        int[] listed = new int[catalogue.unlisted()];
        int n = 0;
        for (int c = 0; c < listed.length; c++) {
            if (view.prior[c] > 0) {
                listed[n++] = c;
            }
        }
        return Arrays.copyOf(listed, n);
    }

    private double[] single(double share) {
        double[] score = view.logPrior.clone();
        for (int c = 0; c < score.length; c++) {
            score[c] += Math.log(share * failed[c]);
            for (int i = 0; i < observations.size(); i++) {
                Catalogue.Observation o = observations.get(i);
                score[c] += power(i) * Math.log(o.given(view.column(o.symptom).p, c));
            }
        }
        return score;
    }

    private double power(int i) {
        return together == null ? 1 : together.power(i);
    }

    private double[] leaks() {
        return observations.stream()
                .mapToDouble(o -> view.background(o.symptom)[catalogue.normal(o.symptom)])
                .toArray();
    }

    /** ln of prior product and likelihood of two causes. */
    private double log(int a, int b, double[] n0) {
        double log = view.logPrior[a] + view.logPrior[b];
        for (int i = 0; i < n0.length; i++) {
            Catalogue.Observation o = observations.get(i);
            double[][] p = view.column(o.symptom).p;
            log += power(i) * Math.log(given(o.likelihood, p, a, b, catalogue.normal(o.symptom), n0[i]));
        }
        return log;
    }

    /** P(what was observed | both causes). */
    static double given(double[] likelihood, double[][] p, int a, int b, int normal, double n0) {
        double na = p[normal][a];
        double nb = p[normal][b];
        double both = normal(na, nb, n0);
        double byA = Math.max(0, 1 - na / n0) / (1 - na);
        double byB = Math.max(0, 1 - nb / n0) / (1 - nb);
        if (byA == 0 && byB == 0) {
            byA = 1;
            byB = 1;
        }
        double rest = byA * (1 - na) + byB * (1 - nb);
        double sum = 0;
        for (int x = 0; x < likelihood.length; x++) {
            double share = x == normal ? both : (1 - both) * (byA * p[x][a] + byB * p[x][b]) / rest;
            sum += likelihood[x] * share;
        }
        return sum;
    }

    /** P(normal | two causes). */
    static double normal(double na, double nb, double n0) {
        return Math.min(na * nb / n0, Math.max(na, nb));
    }

    private PairRanking shared(int[] listed, double[] single, double[][] pair, double largest, int limit) {
        double singles = 0;
        for (double s : single) {
            singles += Math.exp(s - largest);
        }
        double pairs = 0;
        PriorityQueue<int[]> best = new PriorityQueue<>(worstFirst(pair));
        for (int i = 0; i < pair.length; i++) {
            for (int j = 0; j < i; j++) {
                pairs += Math.exp(pair[i][j] - largest);
                best.add(new int[] {i, j});
                if (best.size() > limit) {
                    best.poll();
                }
            }
        }
        List<Pair> likeliest = new ArrayList<>();
        while (!best.isEmpty()) {
            int[] at = best.poll();
            int a = listed[at[1]];
            int b = listed[at[0]];
            double log = pair[at[0]][at[1]];
            likeliest.add(
                    0,
                    new Pair(
                            catalogue.cause(a).id(),
                            catalogue.cause(b).id(),
                            Math.exp(log - largest) / (singles + pairs),
                            Math.exp(log - Math.max(single[a], single[b]))));
        }
        return new PairRanking(pairs / (singles + pairs), likeliest);
    }

    /** Causes are numbered in order of id, so ties by number are ties by id. */
    private static Comparator<int[]> worstFirst(double[][] pair) {
        return Comparator.<int[]>comparingDouble(at -> pair[at[0]][at[1]])
                .thenComparing(at -> -at[1])
                .thenComparing(at -> -at[0]);
    }
}
