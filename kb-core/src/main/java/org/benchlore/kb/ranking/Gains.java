package org.benchlore.kb.ranking;

/**
 * How much better each symptom is predicted when another one is known beside the cause: the leave-one-out log-likelihood
 * gain in nats over all counted cases,
 * <pre>  gain(s -> t) = sum over c,x,y of n(c,s,x,t,y) ln ratio(counts less one case)</pre>
 * It comes from counts alone and, unlike conditional mutual information, falls below zero when a dependence costs more in
 * sampling error than it explains.
 */
final class Gains {

    private final double[][] up; // [lower][higher - lower - 1]: lower is the parent
    private final double[][] down; // the same cell: higher is the parent

    private Gains(double[][] up, double[][] down) {
        this.up = up;
        this.down = down;
    }

    static Gains none(int symptoms) {
        return new Gains(new double[symptoms][0], new double[symptoms][0]);
    }

    static Gains of(FindingCounts counts, BaseMeasure base, Trust trust) {
        int n = counts.symptoms();
        double[][] up = new double[n][0];
        double[][] down = new double[n][0];
        for (int s = 0; s < n; s++) {
            for (int t = s + 1; t < n; t++) {
                PairTables pair = counts.pair(s, t);
                if (pair.size() == 0) {
                    continue;
                }
                if (up[s].length == 0) {
                    up[s] = new double[n - s - 1];
                    down[s] = new double[n - s - 1];
                }
                for (int i = 0; i < pair.size(); i++) {
                    addTable(counts, base, trust, pair, i, s, t, up, down);
                }
            }
        }
        return new Gains(up, down);
    }

    double gain(int parent, int child) {
        if (parent < child) {
            return up[parent].length == 0 ? 0 : up[parent][child - parent - 1];
        }
        return down[child].length == 0 ? 0 : down[child][parent - child - 1];
    }

    private static void addTable(
            FindingCounts counts,
            BaseMeasure base,
            Trust trust,
            PairTables pair,
            int index,
            int s,
            int t,
            double[][] up,
            double[][] down) {
        int cause = pair.cause(index);
        double looked = pair.total(index);
        double strengthS = base.strength(cause, s, trust);
        double strengthT = base.strength(cause, t, trust);
        for (int x = 0; x < counts.states(s); x++) {
            double row = pair.row(index, x);
            if (row <= 0) {
                continue;
            }
            double baseX = base.probability(cause, s, x);
            for (int y = 0; y < counts.states(t); y++) {
                double both = pair.both(index, x, y);
                if (both <= 0) {
                    continue;
                }
                double column = pair.column(index, y);
                double baseY = base.probability(cause, t, y);
                double one = Math.min(1, both);
                double b = both - one;
                double r = row - one;
                double c = column - one;
                double n = looked - one;
                up[s][t - s - 1] += both * Math.log(Smoothing.ratio(b, r, c, n, strengthT, baseY));
                down[s][t - s - 1] += both * Math.log(Smoothing.ratio(b, c, r, n, strengthS, baseX));
            }
        }
    }
}
