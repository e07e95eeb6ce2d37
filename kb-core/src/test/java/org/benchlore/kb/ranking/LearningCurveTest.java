package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LearningCurveTest {
    @Test
    void opinion_and_experience_together_are_never_worse_than_the_better_of_the_two() {
        // The full run is kb-core/measure ranking --curve 20; here four benches up to 100 cases, the first fits among
        // them.
        for (double[] loss : LearningCurve.measure(4, 100)) {
            assertThat(loss[2]).isLessThan(1.02 * Math.min(loss[0], loss[1]));
        }
    }
}
