package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

/**
 * Posteriors under powers 1, 1/2 and 1/4 of the likelihood: row K03 of the project's published checks (power likelihood; four
 * copies of one finding). That under 1/8 is worked out by hand: shares in proportion to 0.5·√0.9, 0.3·√0.3, 0.2·√0.1.
 */
class DoubtTest {
    private static final double[] WHOLE = {.992587, .007352, .000061};
    private static final double[] HALF = {.933180, .062212, .004608};
    private static final double[] QUARTER = {.803571, .160714, .035714};
    private static final double[] EIGHTH = {.675793, .234101, .090106};
    private static final double DOUBT = 0.35;
    private static final double DIGITS = 2e-6;

    private static final List<Finding> FINDINGS =
            List.of(Finding.of("f0", "s1"), Finding.of("f1", "s1"), Finding.of("f2", "s1"), Finding.of("f3", "s1"));

    private static RankingModel model(double doubt) {
        double[][] background = {{.5, .5}, {.5, .5}, {.5, .5}, {.5, .5}};
        double[][][] shown = {
            {{.1, .9}, {.1, .9}, {.1, .9}, {.1, .9}},
            {{.7, .3}, {.7, .3}, {.7, .3}, {.7, .3}},
            {{.9, .1}, {.9, .1}, {.9, .1}, {.9, .1}}
        };
        Knowledge knowledge = Worlds.knowledge(background, new double[] {5, 3, 2}, shown, "if-tested");
        return RankingModel.of(knowledge, Worlds.CLOSED.doubting(doubt));
    }

    private static RankingQuery query() {
        return new RankingQuery(FINDINGS, DeviceScope.ANY, false);
    }

    private static double mixed(int c) {
        return (1 - DOUBT) * WHOLE[c] + DOUBT * (4 * HALF[c] + 2 * QUARTER[c] + EIGHTH[c]) / 7;
    }

    @Test
    void without_doubt_the_findings_count_in_full() {
        double[] p = model(0).probabilities(query());

        for (int c = 0; c < WHOLE.length; c++) {
            assertThat(p[c]).isCloseTo(WHOLE[c], within(DIGITS));
        }
    }

    @Test
    void doubt_is_a_mixture_over_powers_of_the_likelihood() {
        double[] p = model(DOUBT).probabilities(query());

        for (int c = 0; c < WHOLE.length; c++) {
            assertThat(p[c]).isCloseTo(mixed(c), within(DIGITS));
        }
    }

    @Test
    void a_fix_that_failed_speaks_against_findings_that_were_too_sure() {
        TreeMap<String, Double> tried = new TreeMap<>();
        tried.put("c0", 0.1);
        double left = 0.1 * mixed(0);

        double p = model(DOUBT).probabilities(query().tried(tried))[0];

        assertThat(p).isCloseTo(left / (left + mixed(1) + mixed(2)), within(DIGITS));
        assertThat(p).isLessThan(model(0).probabilities(query().tried(tried))[0]);
    }

    @Test
    void the_parts_of_an_explanation_still_add_up() {
        Ranking.RankedCause first = model(DOUBT).rank(query()).causes().get(0);

        double sum = first.priorDecibans()
                + first.evidence().stream()
                        .mapToDouble(Ranking.Evidence::decibans)
                        .sum()
                + first.overlapDecibans();

        assertThat(sum).isCloseTo(10 * Math.log10(first.probability() / (1 - first.probability())), within(1e-9));
    }
}
