package org.benchlore.kb.reading;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchlore.kb.knowledge.Range;

/**
 * What a meter reading says about the true value: the probability that it lies within limits (JCGM 106:2012, 7.4), with
 * a normal state of knowledge. Immutable.
 *
 * <p>A meter specified as ±(P % of reading + N counts) is within a = |y|·P/100 + N·count of the truth; with nothing else
 * known that is rectangular, u = a/√3 (JCGM 100:2008, 4.3.7). The state of knowledge is then taken as normal with that u,
 * as JCGM 106 does; a rectangular one gives other figures close to a limit.
 */
public final class Measurement {
    /** Common practice for a hand-held meter; its own manual knows better. */
    private static final double USUAL_PERCENT = 0.5;

    private static final double USUAL_COUNTS = 2;

    private final double low;
    private final double high;
    private final double percentOfReading;
    private final double counts;

    private Measurement(double low, double high, double percentOfReading, double counts) {
        if (!(low < high)) {
            throw new IllegalArgumentException(
                    "limits " + low + " to " + high + " hold nothing; put the lower one first");
        }
        if (!(percentOfReading >= 0 && counts >= 0 && percentOfReading + counts > 0)) {
            throw new IllegalArgumentException("meter accuracy ±(" + percentOfReading + " % + " + counts
                    + " counts) is not above 0; take it from the meter's manual");
        }
        this.low = low;
        this.high = high;
        this.percentOfReading = percentOfReading;
        this.counts = counts;
    }

    /**
     * Limits around a nominal value, for a usual hand-held meter, ±(0.5 % + 2 counts).
     *
     * @param nominal in the unit of the readings, not 0; may be negative
     * @param toleranceShare half-width as a share of |nominal|, above 0
     */
    public static Measurement around(double nominal, double toleranceShare) {
        double half = Math.abs(nominal) * toleranceShare;
        return within(nominal - half, nominal + half);
    }

    /**
     * Limits as numbers, for a usual hand-held meter, ±(0.5 % + 2 counts).
     *
     * @param low negative infinity when only the upper end counts
     * @param high infinity when only the lower end counts
     */
    public static Measurement within(double low, double high) {
        return new Measurement(low, high, USUAL_PERCENT, USUAL_COUNTS);
    }

    /** The same limits, read with a meter of this accuracy. */
    public Measurement meter(double percentOfReading, double counts) {
        return new Measurement(low, high, percentOfReading, counts);
    }

    /**
     * Standard uncertainty of a reading.
     *
     * @param reading as shown
     * @param count what one step of the last digit is worth, in the unit of the reading, above 0
     * @return u, in the unit of the reading
     */
    public double uncertainty(double reading, double count) {
        return (Math.abs(reading) * percentOfReading / 100 + counts * count) / Math.sqrt(3);
    }

    /**
     * Probability that the true value lies within the limits.
     *
     * @param reading as shown
     * @param count what one step of the last digit is worth, in the unit of the reading, above 0
     * @return in 0..1; far outside it may underflow to 0
     */
    public double conformance(double reading, double count) {
        return share(low, high, reading, uncertainty(reading, count));
    }

    /** Probability that the true value lies below the lower limit. @see #conformance */
    public double below(double reading, double count) {
        return share(Double.NEGATIVE_INFINITY, low, reading, uncertainty(reading, count));
    }

    /** Probability that the true value lies above the upper limit. @see #conformance */
    public double above(double reading, double count) {
        return share(high, Double.POSITIVE_INFINITY, reading, uncertainty(reading, count));
    }

    /** Probability of a span, for a normal state of knowledge about the reading. */
    static double share(Range span, double reading, double uncertainty) {
        return share(span.low(), span.high(), reading, uncertainty);
    }

    private static double share(double low, double high, double reading, double uncertainty) {
        if (!Double.isFinite(reading) || !(uncertainty > 0)) {
            throw new IllegalArgumentException("reading " + reading + " with uncertainty " + uncertainty
                    + "; give a finite one and a count above 0");
        }
        return NormalDistribution.of(reading, uncertainty).probability(low, high);
    }
}
