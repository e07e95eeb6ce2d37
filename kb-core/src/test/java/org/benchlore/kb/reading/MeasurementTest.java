package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.benchlore.kb.knowledge.Range;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasurementTest {
    private static Range around(double nominal, double tolerance) {
        double half = Math.abs(nominal) * tolerance;
        return new Range(nominal - half, nominal + half);
    }

    private static double conformance(Range limits, double reading, double count) {
        return Measurement.share(limits, reading, Measurement.uncertainty(reading, count));
    }

    // JCGM 106:2012, 7.3, Table 1: z for one-sided conformance, two decimals printed (table remembered, recomputed)
    @ParameterizedTest
    @CsvSource({".80,.84", ".90,1.28", ".95,1.64", ".99,2.33", ".999,3.09"})
    void one_sided_conformance_follows_the_guide(double conformance, double z) {
        Range above = new Range(0, Double.POSITIVE_INFINITY);
        double halfOfLastDigit = 0.005;
        assertThat(Measurement.share(above, z - halfOfLastDigit, 1)).isLessThanOrEqualTo(conformance);
        assertThat(Measurement.share(above, z + halfOfLastDigit, 1)).isGreaterThanOrEqualTo(conformance);
    }

    // own numbers, recomputed with scipy's normal cdf: 12 V ±5 %, meter ±(0.5 % + 2 counts), 10 mV per count
    @ParameterizedTest
    @CsvSource({"11.30,.011783", "11.38,.326186", "11.40,.5", "11.42,.673392", "11.50,.987288"})
    void twelve_volt_rail_near_its_lower_limit(double reading, double conformance) {
        assertThat(conformance(around(12, 0.05), reading, 0.01)).isCloseTo(conformance, within(1e-6));
    }

    @Test
    void uncertainty_is_that_of_a_rectangle() {
        // a = 0.0769 V at 11.38 V, u = a / sqrt 3
        assertThat(Measurement.uncertainty(11.38, 0.01)).isCloseTo(0.044398, within(1e-6));
    }

    // as above: 5 V ±5 % with 1 mV per count, -12 V ±10 % with 10 mV per count
    @ParameterizedTest
    @CsvSource({"5,.05,4.74,.001,.250172", "5,.05,4.78,.001,.977584", "-12,.10,-10.75,.01,.120143"})
    void other_rails_and_a_minus_rail(double nominal, double tolerance, double reading, double count, double expected) {
        assertThat(conformance(around(nominal, tolerance), reading, count)).isCloseTo(expected, within(1e-6));
    }

    @Test
    void below_within_and_above_share_out_everything() {
        Range rail = around(3.3, 0.05);
        Range below = new Range(Double.NEGATIVE_INFINITY, rail.low());
        Range above = new Range(rail.high(), Double.POSITIVE_INFINITY);
        for (double reading = 2.9; reading < 3.8; reading += 0.01) {
            double all = conformance(below, reading, 0.01)
                    + conformance(rail, reading, 0.01)
                    + conformance(above, reading, 0.01);
            assertThat(all).isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void a_reading_that_is_no_number_is_refused_with_advice() {
        assertThatThrownBy(() -> conformance(around(5, 0.05), Double.NaN, 0.01)).hasMessageContaining("finite");
    }

    @ParameterizedTest
    @CsvSource({"1,>99.9 %", "0.99951,>99.9 %", "0.9994,99.9 %", "0.5,50.0 %", "0.00049,<0.1 %", "0,<0.1 %"})
    void verdicts_never_claim_certainty(double share, String text) {
        assertThat(Verdict.percent(share)).isEqualTo(text);
    }
}
