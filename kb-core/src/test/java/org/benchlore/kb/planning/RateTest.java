package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RateTest {
    /** C03: Brown, Cai and DasGupta 2001; values recomputed with qbeta. */
    @ParameterizedTest
    @CsvSource({"0,0,.217196", "1,.011012,.381315", "2,.044059,.502774", "5,.223529,.776471", "9,.618685,.988988"})
    void jeffreys_of_ten_at_95_percent(double x, double low, double high) {
        Rate rate = Rate.jeffreys(x, 10, .95);
        assertThat(rate.low()).isCloseTo(low, within(1e-6));
        assertThat(rate.high()).isCloseTo(high, within(1e-6));
    }

    @Test
    void opinion_and_record_add_up() {
        Rate rate = Rate.believed(0.8, 4, 1, 6);
        assertThat(rate.mean()).isCloseTo((3.2 + 1) / 10, within(1e-12));
        assertThat(rate.low()).isLessThan(rate.mean());
        assertThat(rate.high()).isGreaterThan(rate.mean());
    }

    @Test
    void more_successes_than_tries_are_refused() {
        assertThatThrownBy(() -> Rate.jeffreys(3, 2)).hasMessageContaining("give 0 to n successes");
    }
}
