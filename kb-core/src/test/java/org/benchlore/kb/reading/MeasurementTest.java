package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasurementTest {
    // JCGM 106:2012, 7.3, Table 1: z for one-sided conformance, two decimals printed (table remembered, recomputed)
    @ParameterizedTest
    @CsvSource({".80,.84", ".90,1.28", ".95,1.64", ".99,2.33", ".999,3.09"})
    void one_sided_conformance_follows_the_guide(double conformance, double z) {
        // counts such that u is exactly one
        Measurement above = Measurement.within(0, Double.POSITIVE_INFINITY).meter(0, Math.sqrt(3));
        assertThat(above.uncertainty(z, 1)).isCloseTo(1, within(1e-12));
        double halfOfLastDigit = 0.005;
        assertThat(above.conformance(z - halfOfLastDigit, 1)).isLessThanOrEqualTo(conformance);
        assertThat(above.conformance(z + halfOfLastDigit, 1)).isGreaterThanOrEqualTo(conformance);
    }

    // own numbers, recomputed with scipy's normal cdf: 12 V ±5 %, meter ±(0.5 % + 2 counts), 10 mV per count
    @ParameterizedTest
    @CsvSource({"11.30,.011783", "11.38,.326186", "11.40,.5", "11.42,.673392", "11.50,.987288"})
    void twelve_volt_rail_near_its_lower_limit(double reading, double conformance) {
        assertThat(Measurement.around(12, 0.05).conformance(reading, 0.01)).isCloseTo(conformance, within(1e-6));
    }

    @Test
    void uncertainty_is_that_of_a_rectangle() {
        // a = 0.0769 V at 11.38 V, u = a / sqrt 3
        assertThat(Measurement.around(12, 0.05).uncertainty(11.38, 0.01)).isCloseTo(0.044398, within(1e-6));
    }

    // as above: 5 V ±5 % with 1 mV per count, -12 V ±10 % with 10 mV per count
    @ParameterizedTest
    @CsvSource({"5,.05,4.74,.001,.250172", "5,.05,4.78,.001,.977584", "-12,.10,-10.75,.01,.120143"})
    void other_rails_and_a_minus_rail(double nominal, double tolerance, double reading, double count, double expected) {
        assertThat(Measurement.around(nominal, tolerance).conformance(reading, count))
                .isCloseTo(expected, within(1e-6));
    }

    @Test
    void below_within_and_above_share_out_everything() {
        Measurement rail = Measurement.around(3.3, 0.05);
        for (double reading = 2.9; reading < 3.8; reading += 0.01) {
            double all = rail.below(reading, 0.01) + rail.conformance(reading, 0.01) + rail.above(reading, 0.01);
            assertThat(all).isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void limits_upside_down_and_impossible_meters_are_refused_with_advice() {
        assertThatThrownBy(() -> Measurement.within(5, 3)).hasMessageContaining("put the lower one first");
        assertThatThrownBy(() -> Measurement.around(0, 0.05)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Measurement.around(5, 0.05).meter(0, 0)).hasMessageContaining("meter's manual");
        assertThatThrownBy(() -> Measurement.around(5, 0.05).conformance(Double.NaN, 0.01))
                .hasMessageContaining("finite");
    }

    @ParameterizedTest
    @CsvSource({"1,>99.9 %", "0.99951,>99.9 %", "0.9994,99.9 %", "0.5,50.0 %", "0.00049,<0.1 %", "0,<0.1 %"})
    void verdicts_never_claim_certainty(double share, String text) {
        assertThat(Verdict.percent(share)).isEqualTo(text);
    }
}
