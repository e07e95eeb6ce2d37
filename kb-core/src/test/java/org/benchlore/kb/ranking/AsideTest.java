package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

/**
 * A note tells of what its unit's fault did. Worked out by hand: priors 0.5, 0.3, 0.2; one finding with a background of 0.5 that
 * the causes show in 0.9, 0.3, 0.1. Attributable to them: 1 - 0.5/0.9 = 0.4444, 0, 0 (attributable fraction among the exposed,
 * 1 - 1/RR; Rothman, from memory). With a share of 0.1 for notes that tell of other things the factors are 0.5, 0.1, 0.1.
 */
class AsideTest {
    private static final double ASIDE = 0.1;
    private static final RankingSettings SETTINGS = Worlds.CLOSED.tellingAside(ASIDE);

    private static RankingModel model() {
        double[][] background = {{.5, .5}};
        double[][][] shown = {{{.1, .9}}, {{.7, .3}}, {{.9, .1}}};
        return RankingModel.of(Worlds.knowledge(background, new double[] {5, 3, 2}, shown, "if-tested"), SETTINGS);
    }

    private static RankingQuery query(boolean fromNote) {
        return new RankingQuery(List.of(Finding.of("f0", "s1")), DeviceScope.ANY, fromNote);
    }

    @Test
    void a_cause_that_nothing_in_the_note_can_be_put_down_to_keeps_a_share() {
        double[] p = model().probabilities(query(true));

        double sum = .5 * .9 * .5 + .3 * .3 * .1 + .2 * .1 * .1;
        assertThat(p[0]).isCloseTo(.5 * .9 * .5 / sum, within(1e-9));
        assertThat(p[1]).isCloseTo(.3 * .3 * .1 / sum, within(1e-9));
    }

    @Test
    void findings_picked_from_a_list_are_no_complaint() {
        double[] p = model().probabilities(query(false));

        assertThat(p[0]).isCloseTo(.45 / (.45 + .09 + .02), within(1e-9));
    }

    @Test
    void it_stands_in_the_reasons_with_what_the_note_leaves_out() {
        Ranking.RankedCause first = model().rank(query(true)).causes().get(0);

        // 0.5 against the mix of the others, 0.1
        assertThat(first.unmentionedDecibans()).isCloseTo(10 * Math.log10(0.5 / 0.1), within(1e-6));
        assertThat(first.overlapDecibans()).isCloseTo(0, within(0.5));
    }
}
