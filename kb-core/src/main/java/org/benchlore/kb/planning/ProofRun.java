package org.benchlore.kb.planning;

/**
 * How long a repaired unit must run without the fault. A fault that comes every so often is taken as a Poisson process; the
 * hours of run count, not the calendar.
 */
public final class ProofRun {
    private ProofRun() {}

    /**
     * Hours without fault that an unrepaired unit would survive with a chance of 1 − confidence only: −ln(1 − confidence)
     * times the mean, χ²(confidence; 2) / 2 (NIST/SEMATECH e-Handbook 8.3.1; MIL-HDBK-781A).
     *
     * @param meanHours mean hours between faults before the fix, above 0
     * @param confidence in (0,1)
     */
    public static double hours(double meanHours, double confidence) {
        requireHours("meanHours", meanHours);
        requireShare("confidence", confidence);
        return meanHours * -Math.log1p(-confidence);
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
     * Probability that the fault is still there after hours without it, by Bayes' rule, where it was seen so many times in so
     * many hours, as {@link #hours(int, double, double)}.
     *
     * @param prior that the fix did not cure it, in [0,1]
     * @param cleanHours run without fault since, from 0
     */
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
     * @param seen times the fault was seen, from 1
     * @param seenHours in so many hours of run, above 0
     * @param accepted probability in (0,1); 0 hours if it is not below the prior
     */
    public static double hoursToBelieve(double prior, int seen, double seenHours, double accepted) {
        requireSeen(seen, seenHours);
        return seenHours * Math.expm1(Math.max(0, logOddsDrop(prior, accepted)) / (seen + 0.5));
    }

    private static double logOddsDrop(double prior, double accepted) {
        requireShare("prior", prior);
        requireShare("accepted", accepted);
        return Math.log(prior / (1 - prior)) - Math.log(accepted / (1 - accepted));
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
