package org.benchlore.kb.planning;

import org.apache.commons.numbers.gamma.LogBeta;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A rate with its interval, each in 0..1.
 *
 * @param mean best single figure
 * @param low lower end
 * @param high upper end
 */
public record Rate(double mean, double low, double high) {
    /** The level of every interval that answers show. */
    public static final double LEVEL = 0.9;

    /**
     * Jeffreys interval: quantiles of Beta(x + ½, n − x + ½), the lower end 0 at x = 0 and the upper end 1 at x = n (Brown,
     * Cai and DasGupta, Statistical Science 16, 2001). The mean is x / n, or ½ for n = 0.
     */
    public static Rate jeffreys(double x, double n, double level) {
        check(x, n, level);
        BetaDistribution beta = BetaDistribution.of(x + 0.5, n - x + 0.5);
        double tail = (1 - level) / 2;
        return new Rate(
                n == 0 ? 0.5 : x / n,
                x == 0 ? 0 : beta.inverseCumulativeProbability(tail),
                x == n ? 1 : beta.inverseSurvivalProbability(tail));
    }

    /**
     * Wilson's score interval (Newcombe, Statistics in Medicine 17, 1998, method 3; NIST/SEMATECH e-Handbook 7.2.4.1).
     */
    public static Rate wilson(double x, double n, double level) {
        check(x, n, level);
        if (n == 0) {
            return new Rate(0.5, 0, 1);
        }
        double z = NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - level) / 2);
        double p = x / n;
        double centre = (p + z * z / (2 * n)) / (1 + z * z / n);
        double half = z * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n)) / (1 + z * z / n);
        return new Rate(p, x == 0 ? 0 : centre - half, x == n ? 1 : centre + half);
    }

    /** The exact interval of Clopper and Pearson (Biometrika 26, 1934), never too short. */
    public static Rate exact(double x, double n, double level) {
        check(x, n, level);
        double tail = (1 - level) / 2;
        return new Rate(
                n == 0 ? 0.5 : x / n,
                x == 0 ? 0 : BetaDistribution.of(x, n - x + 1).inverseCumulativeProbability(tail),
                x == n ? 1 : BetaDistribution.of(x + 1, n - x).inverseSurvivalProbability(tail));
    }

    /**
     * What is believed after x of n, given an opinion.
     *
     * @param opinion the rate before, in (0,1)
     * @param cases how many cases that opinion is worth, above 0
     */
    public static Rate believed(double opinion, double cases, double x, double n, double level) {
        check(x, n, level);
        double a = opinion * cases + x;
        double b = (1 - opinion) * cases + n - x;
        BetaDistribution beta = BetaDistribution.of(a, b);
        double tail = (1 - level) / 2;
        return new Rate(a / (a + b), beta.inverseCumulativeProbability(tail), beta.inverseSurvivalProbability(tail));
    }

    /**
     * Probability that one rate, Beta(a, b), is above another, Beta(c, d), independent of it: the integral of the one's
     * density times the other's distribution, by Simpson's rule on 4096 panels. Parameters from ½ up.
     */
    public static double chanceBetter(double a, double b, double c, double d) {
        // x = sin²(t) takes away the ends, where densities with parameters below 1 grow without bound.
        BetaDistribution other = BetaDistribution.of(c, d);
        int panels = 4096;
        double h = Math.PI / 2 / panels;
        double scale = Math.log(2) - LogBeta.value(a, b);
        double sum = 0;
        for (int i = 1; i < panels; i++) {
            double sin = Math.sin(i * h);
            double cos = Math.cos(i * h);
            double density = Math.exp(scale + (2 * a - 1) * Math.log(sin) + (2 * b - 1) * Math.log(cos));
            sum += (i % 2 == 1 ? 4 : 2) * density * other.cumulativeProbability(sin * sin);
        }
        double atOne = b > 0.5 ? 0 : Math.exp(scale);
        return Math.min(1, (sum + atOne) * h / 3);
    }

    private static void check(double x, double n, double level) {
        if (!(x >= 0 && x <= n && n < Double.POSITIVE_INFINITY && level > 0 && level < 1)) {
            throw new IllegalArgumentException(
                    x + " of " + n + " at level " + level + "; give 0 to n successes and a level between 0 and 1");
        }
    }
}
