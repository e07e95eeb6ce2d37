package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

/**
 * A finding read from a note may be a slip, and says nothing then. Worked out by hand: priors 0.5, 0.3, 0.2; one finding that the
 * causes show in 0.9, 0.3, 0.1; with a slip of e each share p becomes (1 - e) p + e / 2.
 */
class MisreadTest {
    private static final RankingSettings SETTINGS = new RankingSettings(1e-15, 0, 0, 1, 8, 0, 0, 0.05, 1, 0);

    private static double first(String reported, boolean fromNote) {
        double[][] background = {{.5, .5}};
        double[][][] shown = {{{.1, .9}}, {{.7, .3}}, {{.9, .1}}};
        return RankingModel.of(Worlds.knowledge(background, new double[] {5, 3, 2}, shown, reported), SETTINGS)
                .probabilities(new RankingQuery(List.of(Finding.of("f0", "s1")), DeviceScope.ANY, fromNote))[0];
    }

    private static double expected(double e) {
        double first = .5 * ((1 - e) * .9 + e / 2);
        return first / (first + .3 * ((1 - e) * .3 + e / 2) + .2 * ((1 - e) * .1 + e / 2));
    }

    @Test
    void what_anybody_may_tell_is_read_wrong_in_five_of_a_hundred() {
        assertThat(first("usually", true)).isCloseTo(expected(0.05), within(1e-9));
    }

    @Test
    void what_only_a_test_tells_is_read_wrong_in_one_of_a_hundred() {
        assertThat(first("if-tested", true)).isCloseTo(expected(0.01), within(1e-9));
    }

    @Test
    void what_was_picked_from_a_list_is_no_slip() {
        assertThat(first("usually", false)).isCloseTo(expected(0), within(1e-9));
    }
}
