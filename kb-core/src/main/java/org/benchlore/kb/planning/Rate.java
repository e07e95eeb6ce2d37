package org.benchlore.kb.planning;

import org.apache.commons.statistics.distribution.BetaDistribution;

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
    public static Rate jeffreys(double x, double n) {
        return jeffreys(x, n, LEVEL);
    }

    static Rate jeffreys(double x, double n, double level) {
        check(x, n);
        BetaDistribution beta = BetaDistribution.of(x + 0.5, n - x + 0.5);
        double tail = (1 - level) / 2;
        return new Rate(
                n == 0 ? 0.5 : x / n,
                x == 0 ? 0 : beta.inverseCumulativeProbability(tail),
                x == n ? 1 : beta.inverseSurvivalProbability(tail));
    }

    /**
     * What is believed after x of n, given an opinion.
     *
     * @param opinion the rate before, in (0,1)
     * @param cases how many cases that opinion is worth, above 0
     */
    public static Rate believed(double opinion, double cases, double x, double n) {
        check(x, n);
        double a = opinion * cases + x;
        double b = (1 - opinion) * cases + n - x;
        BetaDistribution beta = BetaDistribution.of(a, b);
        double tail = (1 - LEVEL) / 2;
        return new Rate(a / (a + b), beta.inverseCumulativeProbability(tail), beta.inverseSurvivalProbability(tail));
    }

    private static void check(double x, double n) {
        if (!(x >= 0 && x <= n && n < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(x + " of " + n + "; give 0 to n successes");
        }
    }
}
