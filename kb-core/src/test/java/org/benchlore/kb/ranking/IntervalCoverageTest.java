package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class IntervalCoverageTest {
    @ParameterizedTest
    @ValueSource(ints = {5, 50, 500})
    void nine_in_ten_intervals_hold_the_posterior_that_the_true_numbers_give(int cases) {
        // 30 benches x 40 queries: the standard error over benches is about .012, so .85 to .95 is what was asked.
        assertThat(IntervalCoverage.measure(30, cases, 0, false)[0]).isBetween(0.85, 0.95);
    }
}
