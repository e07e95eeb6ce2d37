package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RangeTest {
    private static final double INF = Double.POSITIVE_INFINITY;
    private static final Quantity PLUS = new Quantity("V", 10.0, 0.1, false, Provenance.MEMORY);
    private static final Quantity MINUS = new Quantity("V", -10.0, 0.1, false, Provenance.MEMORY);
    private static final Quantity BARE = new Quantity("degC", null, 0, false, Provenance.MEMORY);

    private static Range range(String text, Quantity quantity) {
        return RangeText.parse(text).orElseThrow().in(quantity).orElseThrow();
    }

    @Test
    void a_range_holds_its_low_end_and_not_its_high_one() {
        Range range = new Range(1, 2);

        assertThat(range.contains(1)).isTrue();
        assertThat(range.contains(Math.nextDown(2.0))).isTrue();
        assertThat(range.contains(2)).isFalse();
        assertThat(range.contains(Math.nextDown(1.0))).isFalse();
        assertThat(range.contains(Double.NaN)).isFalse();
    }

    @Test
    void touching_ranges_share_no_value_and_miss_none() {
        Range below = new Range(-INF, 5);
        Range above = new Range(5, INF);

        for (double value : new double[] {-1e300, Math.nextDown(5.0), 5, Math.nextUp(5.0), 1e300}) {
            assertThat(below.contains(value)).as("%s", value).isNotEqualTo(above.contains(value));
        }
    }

    @ParameterizedTest
    @CsvSource({"2,1", "1,1", "NaN,1", "1,NaN"})
    void an_empty_range_is_refused(double low, double high) {
        assertThatThrownBy(() -> new Range(low, high))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageEndingWith("is empty; put the lower end first");
    }

    @Test
    void ends_are_shares_limits_or_plain_numbers() {
        assertThat(range("-tol..+tol", PLUS)).isEqualTo(new Range(9, 11));
        assertThat(range("..10%", PLUS)).isEqualTo(new Range(-INF, 1));
        assertThat(range(" 10% .. -tol ", PLUS)).isEqualTo(new Range(1, 9));
        assertThat(range("+tol..", PLUS)).isEqualTo(new Range(11, INF));
        assertThat(range("4.75..+tol", PLUS)).isEqualTo(new Range(4.75, 11));
        assertThat(range("-5..40", BARE)).isEqualTo(new Range(-5, 40));
    }

    @Test
    void relative_ends_of_a_negative_nominal_are_magnitudes() {
        assertThat(range("-tol..+tol", MINUS)).isEqualTo(new Range(-11, -9));
        assertThat(range("..10%", MINUS)).isEqualTo(new Range(-1, INF));
        assertThat(range("10%..-tol", MINUS)).isEqualTo(new Range(-9, -1));
        assertThat(range("+tol..", MINUS)).isEqualTo(new Range(-INF, -11));
        assertThat(range("..-11.5", MINUS)).as("plain numbers keep their sign").isEqualTo(new Range(-INF, -11.5));
        assertThat(range("-11.5..-11", MINUS)).isEqualTo(new Range(-11.5, -11));
    }

    @Test
    void upside_down_is_no_range() {
        assertThat(RangeText.parse("+tol..-tol").orElseThrow().in(PLUS)).isEmpty();
        assertThat(RangeText.parse("+tol..-tol").orElseThrow().in(MINUS)).isEmpty();
        assertThat(RangeText.parse("5..5").orElseThrow().in(PLUS)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "..", "5", "5-6", "2,2..3", "a..b", "tol..5", "1...2", "10 %..20 %", "1e3..2"})
    void what_is_no_range_is_not_read(String text) {
        assertThat(RangeText.parse(text)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "abc;3",
                "\\d{4}-\\d{2};7",
                "(ab){3};9",
                "((a{900}){900}){900};729000000",
                "[a-z]{3};3",
                "a{x};3",
                "\\{5;2",
                "a{2,};2",
                "(((;0"
            })
    void the_weight_of_a_pattern_grows_with_its_repeats(String pattern, long atLeast) {
        assertThat(PatternWeight.of(pattern)).isBetween(atLeast, atLeast * 2 + 2);
    }
}
