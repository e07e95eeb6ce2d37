package org.benchlore.kb.planning;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * How long a repaired unit must run without the fault. A fault that comes every so often is taken as a Poisson process; the
 * hours of run count, not the calendar.
 */
public final class ProofRun {
    private ProofRun() {}

    /**
     * Test hours over mean time between faults when so many faults are allowed: χ²(C; 2(r + 1)) / 2, which is −ln(1 − C)
     * for none (NIST/SEMATECH e-Handbook 8.3.1; MIL-HDBK-781A).
     *
     * @param confidence that the mean time is at least as long, in (0,1)
     * @param faults allowed, from 0
     */
    public static double factor(double confidence, int faults) {
        requireShare("confidence", confidence);
        if (faults < 0) {
            throw new IllegalArgumentException(faults + " faults allowed; give 0 or more");
        }
        return chiSquared(2.0 * (faults + 1)).inverseCumulativeProbability(confidence) / 2;
    }

    /**
     * Hours without fault that an unrepaired unit would survive with a chance of 1 − confidence only.
     *
     * @param meanHours mean hours between faults before the fix, above 0
     */
    public static double hours(double meanHours, double confidence) {
        requireHours("meanHours", meanHours);
        return meanHours * factor(confidence, 0);
    }

    /**
     * As {@link #hours(double, double)}, where the fault was seen only so many times in so many hours, so that its rate is
     * uncertain. The rate is Gamma(k + ½, h) (Jeffreys' prior; the gamma form of NIST/SEMATECH e-Handbook 8.2.5), so an
     * unrepaired unit survives t hours with the chance (h / (h + t))^(k + ½).
     *
     * @param seen times the fault was seen, from 1
     * @param seenHours in so many hours of run, above 0
     */
    public static double hours(int seen, double seenHours, double confidence) {
        requireSeen(seen, seenHours);
        requireShare("confidence", confidence);
        return seenHours * Math.expm1(-Math.log1p(-confidence) / (seen + 0.5));
    }

    /**
     * Probability that the fault is still there after hours without it, by Bayes' rule.
     *
     * @param prior that the fix did not cure it, in [0,1]
     * @param meanHours mean hours between faults before the fix
     * @param cleanHours run without fault since, from 0
     */
    public static double stillThere(double prior, double meanHours, double cleanHours) {
        requireHours("meanHours", meanHours);
        requireClean(cleanHours);
        return posterior(prior, Math.exp(-cleanHours / meanHours));
    }

    /** As {@link #stillThere(double, double, double)}, for a fault seen so many times in so many hours. */
    public static double stillThere(double prior, int seen, double seenHours, double cleanHours) {
        requireSeen(seen, seenHours);
        requireClean(cleanHours);
        return posterior(prior, Math.exp(-(seen + 0.5) * Math.log1p(cleanHours / seenHours)));
    }

    private static double posterior(double prior, double survives) {
        if (!(prior >= 0 && prior <= 1)) {
            throw new IllegalArgumentException("prior " + prior + "; give a probability");
        }
        return prior == 1 ? 1 : prior * survives / (prior * survives + 1 - prior);
    }

    /**
     * Hours without fault until no more than {@code accepted} is left of the belief that the fault is still there.
     *
     * @param accepted probability in (0,1); 0 hours if it is not below the prior
     */
    public static double hoursToBelieve(double prior, double meanHours, double accepted) {
        requireHours("meanHours", meanHours);
        return meanHours * Math.max(0, logOddsDrop(prior, accepted));
    }

    /** As {@link #hoursToBelieve(double, double, double)}, for a fault seen so many times in so many hours. */
    public static double hoursToBelieve(double prior, int seen, double seenHours, double accepted) {
        requireSeen(seen, seenHours);
        return seenHours * Math.expm1(Math.max(0, logOddsDrop(prior, accepted)) / (seen + 0.5));
    }

    private static double logOddsDrop(double prior, double accepted) {
        requireShare("prior", prior);
        requireShare("accepted", accepted);
        return Math.log(prior / (1 - prior)) - Math.log(accepted / (1 - accepted));
    }

    private static ChiSquaredDistribution chiSquared(double degrees) {
        return ChiSquaredDistribution.of(degrees);
    }

    /** Refuses what no plan can be made with, whether its run can be told yet or not. */
    static void check(double confidence, double prior) {
        requireShare("confidence", confidence);
        requireShare("prior", prior);
    }

    private static void requireShare(String name, double value) {
        if (!(value > 0 && value < 1)) {
            throw new IllegalArgumentException(name + " " + value + "; give a number between 0 and 1");
        }
    }

    private static void requireHours(String name, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " " + value + "; give hours above 0");
        }
    }

    private static void requireClean(double value) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("run of " + value + " hours; give 0 or more");
        }
    }

    private static void requireSeen(int seen, double hours) {
        requireHours("seenHours", hours);
        if (seen < 1) {
            throw new IllegalArgumentException("fault seen " + seen + " times; give 1 or more");
        }
    }
}
