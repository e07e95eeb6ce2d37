package org.benchlore.kb.reading;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchlore.kb.knowledge.Range;

/**
 * What a meter reading says about the true value: the probability that it lies within limits (JCGM 106:2012, 7.4), with
 * a normal state of knowledge.
 *
 * <p>A meter specified as ±(P % of reading + N counts) is within a = |y|·P/100 + N·count of the truth; with nothing else
 * known that is rectangular, u = a/√3 (JCGM 100:2008, 4.3.7). The state of knowledge is then taken as normal with that u,
 * as JCGM 106 does; a rectangular one gives other figures close to a limit.
 */
final class Measurement {
    /** Common practice for a hand-held meter, ±(0.5 % + 2 counts). */
    private static final double PERCENT_OF_READING = 0.5;

    private static final double COUNTS = 2;

    private Measurement() {}

    /**
     * Standard uncertainty of a reading.
     *
     * @param reading as shown
     * @param count what one step of the last digit is worth, in the unit of the reading, above 0
     * @return u, in the unit of the reading
     */
    static double uncertainty(double reading, double count) {
        return (Math.abs(reading) * PERCENT_OF_READING / 100 + COUNTS * count) / Math.sqrt(3);
    }

    /**
     * Probability that the true value lies within a span.
     *
     * @param reading as shown
     * @param uncertainty its standard uncertainty, in the unit of the reading, above 0
     * @return in 0..1; far outside it may underflow to 0
     */
    static double share(Range span, double reading, double uncertainty) {
        if (!Double.isFinite(reading) || !(uncertainty > 0)) {
            throw new IllegalArgumentException("reading " + reading + " with uncertainty " + uncertainty
                    + "; give a finite one and a count above 0");
        }
        return NormalDistribution.of(reading, uncertainty).probability(span.low(), span.high());
    }
}
