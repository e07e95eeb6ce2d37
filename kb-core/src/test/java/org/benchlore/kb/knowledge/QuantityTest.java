package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class QuantityTest {
    private static Quantity in(String unit) {
        return new Quantity(unit, null, 0, false, Provenance.MEMORY);
    }

    @Test
    void values_read_well() {
        assertThat(in("ohm").text(1_000_000)).isEqualTo("1 MΩ");
        assertThat(in("ohm").text(4700)).isEqualTo("4.7 kΩ");
        assertThat(in("V").text(0.05)).isEqualTo("50 mV");
        assertThat(in("V").text(-12.6)).isEqualTo("−12.6 V");
        assertThat(in("F").text(2.2e-6)).isEqualTo("2.2 µF");
        assertThat(in("degC").text(70)).isEqualTo("70 °C");
        assertThat(in("1").text(0)).isEqualTo("0");
    }

    @Test
    void spans_say_which_end_is_open() {
        Quantity volts = in("V");

        assertThat(volts.text(new Range(11.4, 12.6))).isEqualTo("11.4 V to 12.6 V");
        assertThat(volts.text(new Range(Double.NEGATIVE_INFINITY, 2))).isEqualTo("below 2 V");
        assertThat(volts.text(new Range(2, Double.POSITIVE_INFINITY))).isEqualTo("2 V and more");
    }

    @Test
    void the_rating_is_nominal_and_tolerance() {
        assertThat(new Quantity("V", 3.3, 0.05, false, Provenance.MEMORY).rated())
                .isEqualTo("3.3 V ± 5 %");
        assertThat(in("degC").rated()).isEmpty();
    }
}
