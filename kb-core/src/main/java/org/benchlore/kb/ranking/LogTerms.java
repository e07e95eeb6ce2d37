package org.benchlore.kb.ranking;

import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Logs of the smoothed probabilities at one state of the counts; links are worked out once, so that a query only adds array
 * elements. Own terms are dense in causes, links list only the causes whose cases say anything about the dependence.
 * Safe for concurrent readers as long as nobody changes the counts.
 */
final class LogTerms {

    /** ln theta per cause, and how far it spreads: 1 - exp(min - max), 0 for a finding that says nothing. */
    static final class Own {
        private final double[] logs;
        private final double spread;

        Own(double[] logs, double spread) {
            this.logs = logs;
            this.spread = spread;
        }

        double[] logs() {
            return logs;
        }

        double spread() {
            return spread;
        }
    }

    /** ln ratio for those causes where it is not 0, causes ascending. */
    static final class Link {
        private final int[] causes;
        private final double[] logs;

        Link(int[] causes, double[] logs) {
            this.causes = causes;
            this.logs = logs;
        }

        int[] causes() {
            return causes;
        }

        double[] logs() {
            return logs;
        }
    }

    private final FindingCounts counts;
    private final BaseMeasure base;
    private final Trust trust;
    private final Map<Long, Link> links = new ConcurrentHashMap<>();

    LogTerms(FindingCounts counts, BaseMeasure base, Trust trust) {
        this.counts = counts;
        this.base = base;
        this.trust = trust;
    }

    Link link(int parent, int parentState, int child, int state) {
        long key = key(parent, parentState) << 32 | key(child, state);
        return links.computeIfAbsent(key, k -> computeLink(parent, parentState, child, state));
    }

    Own own(int symptom, int state) {
        double[] logs = new double[counts.causes()];
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < logs.length; c++) {
            double theta = theta(c, symptom, state);
            logs[c] = Math.log(theta);
            least = Math.min(least, theta);
            most = Math.max(most, theta);
        }
        return new Own(logs, 1 - least / most);
    }

    double theta(int cause, int symptom, int state) {
        return base.theta(cause, symptom, state, base.strength(cause, symptom, trust));
    }

    Link computeLink(int parent, int parentState, int child, int state) {
        boolean ascending = parent < child;
        PairTables pair = ascending ? counts.pair(parent, child) : counts.pair(child, parent);
        int n = 0;
        int[] causes = new int[pair.size()];
        double[] logs = new double[pair.size()];
        for (int i = 0; i < pair.size(); i++) {
            int cause = pair.cause(i);
            double with = ascending ? pair.row(i, parentState) : pair.column(i, parentState);
            double looked = pair.total(i);
            if (with <= 0 || with >= looked) {
                continue;
            }
            double ratio = Smoothing.ratio(
                    ascending ? pair.both(i, parentState, state) : pair.both(i, state, parentState),
                    with,
                    ascending ? pair.column(i, state) : pair.row(i, state),
                    looked,
                    base.strength(cause, child, trust),
                    base.probability(cause, child, state));
            causes[n] = cause;
            logs[n++] = Math.log(ratio);
        }
        return new Link(Arrays.copyOf(causes, n), java.util.Arrays.copyOf(logs, n));
    }

    private static long key(int symptom, int state) {
        return (long) symptom << 10 | state; // up to 1024 states and two million symptoms
    }
}
