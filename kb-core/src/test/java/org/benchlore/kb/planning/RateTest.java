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

    /** C04: the modified Jeffreys upper limit at x = 0 is the exact one, 1 − (α/2)^(1/n) (Brown, Cai and DasGupta, Table 5). */
    @ParameterizedTest
    @CsvSource({"7,.409616", "10,.308497"})
    void upper_limit_of_none(double n, double high) {
        assertThat(Rate.exact(0, n, .95).high()).isCloseTo(high, within(1e-6));
        assertThat(Rate.exact(n, n, .95).high()).isEqualTo(1);
        assertThat(Rate.exact(n, n, .95).low()).isCloseTo(1 - high, within(1e-6));
    }

    /** C05: Newcombe 1998, Table I, method 3. */
    @ParameterizedTest
    @CsvSource({"81,263,.2553,.3662", "15,148,.0624,.1605", "0,20,0,.1611", "1,29,.0061,.1718"})
    void wilson_as_newcombe_prints_it(double x, double n, double low, double high) {
        assertThat(Rate.wilson(x, n, .95).low()).isCloseTo(low, within(5e-5));
        assertThat(Rate.wilson(x, n, .95).high()).isCloseTo(high, within(5e-5));
    }

    /** C06: Newcombe 1998, Table I, exact method (figures remembered, recomputed with qbeta). */
    @ParameterizedTest
    @CsvSource({"81,263,.2527,.3676", "0,20,0,.1684", "1,29,.0009,.1776"})
    void exact_as_newcombe_prints_it(double x, double n, double low, double high) {
        assertThat(Rate.exact(x, n, .95).low()).isCloseTo(low, within(5e-5));
        assertThat(Rate.exact(x, n, .95).high()).isCloseTo(high, within(5e-5));
    }

    /** C07: the same formula, small-bench values. */
    @ParameterizedTest
    @CsvSource({"9,10,.95,.595850,.982124", "23,60,.95,.270883,.509824", "26,200,.9,.095773,.174104"})
    void wilson_for_a_small_bench(double x, double n, double level, double low, double high) {
        assertThat(Rate.wilson(x, n, level).low()).isCloseTo(low, within(1e-6));
        assertThat(Rate.wilson(x, n, level).high()).isCloseTo(high, within(1e-6));
    }

    /** C10: closed form for integer parameters (J. D. Cook, Exact calculation of beta inequalities, 2005), own numbers. */
    @Test
    void nine_of_ten_beats_five_of_ten() {
        assertThat(Rate.chanceBetter(10, 2, 6, 6)).isCloseTo(.968266253870, within(1e-10));
        assertThat(Rate.chanceBetter(6, 6, 10, 2)).isCloseTo(1 - .968266253870, within(1e-10));
        assertThat(Rate.chanceBetter(.5, .5, .5, .5)).isCloseTo(.5, within(1e-6));
    }

    @Test
    void opinion_and_record_add_up() {
        Rate rate = Rate.believed(0.8, 4, 1, 6, 0.9);
        assertThat(rate.mean()).isCloseTo((3.2 + 1) / 10, within(1e-12));
        assertThat(rate.low()).isLessThan(rate.mean());
        assertThat(rate.high()).isGreaterThan(rate.mean());
    }

    @Test
    void more_successes_than_tries_are_refused() {
        assertThatThrownBy(() -> Rate.jeffreys(3, 2, .9)).hasMessageContaining("give 0 to n successes");
    }
}
