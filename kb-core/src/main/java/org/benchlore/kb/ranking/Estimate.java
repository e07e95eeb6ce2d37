package org.benchlore.kb.ranking;

import java.util.List;

/**
 * A figure measured on some cases, with the 90 % interval that so few of them leave.
 *
 * @param value as measured
 * @param low lower end
 * @param high upper end
 */
public record Estimate(double value, double low, double high) {
    /** 95 % point of the normal distribution: 5 % beyond either end leaves 90 %. */
    static final double Z90 = 1.6448536269514722;

    /** Whether the interval leaves out a value. */
    public boolean excludes(double other) {
        return other < low || other > high;
    }

    /** A share, with Wilson's interval (Journal of the American Statistical Association 22, 1927); 0 to 1 without cases. */
    static Estimate share(int hits, int n) {
        return share(hits, n, Z90);
    }

    static Estimate share(int hits, int n, double z) {
        if (n == 0) {
            return new Estimate(0, 0, 1);
        }
        double p = hits / (double) n;
        double z2 = z * z;
        double centre = (p + z2 / (2 * n)) / (1 + z2 / n);
        double reach = z / (1 + z2 / n) * Math.sqrt(p * (1 - p) / n + z2 / (4.0 * n * n));
        return new Estimate(p, Math.max(0, centre - reach), Math.min(1, centre + reach));
    }

    /** A mean, with a normal interval from the spread of the values; endless with fewer than two. */
    static Estimate mean(List<Double> values) {
        int n = values.size();
        double mean = 0;
        for (double v : values) {
            mean += v / n;
        }
        if (n < 2) {
            return new Estimate(mean, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        }
        double squares = 0;
        for (double v : values) {
            squares += (v - mean) * (v - mean);
        }
        double reach = Z90 * Math.sqrt(squares / (n - 1) / n);
        return new Estimate(mean, mean - reach, mean + reach);
    }
}
