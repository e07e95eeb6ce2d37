package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

/** Causes that need what the unit does not hold. */
class KindOfUnitTest {
    private static final Knowledge KNOWLEDGE = PackReader.read(List.of(new PackSource("p.yaml", """
            pack: p
            version: 1.0.0
            licence: Apache-2.0
            title: Kinds
            about: Three causes alike but for what they need.
            symptoms:
              - id: noise
                name: Noise
                about: Heard.
                reported: always
                called: [noise]
                states:
                  - {id: quiet, normal: true, usual: 0.8, words: [quiet]}
                  - {id: loud, usual: 0.2, words: [loud]}
            causes:
              - {id: belt, name: Belt, kind: fault, about: Old., needs: tape, per-thousand: 30,
                 shows: [{symptom: noise, states: {loud: 0.6}}]}
              - {id: fuse, name: Fuse, kind: fault, about: Old., per-thousand: 20,
                 shows: [{symptom: noise, states: {loud: 0.6}}]}
              - {id: lamp, name: Lamp, kind: fault, about: Old., per-thousand: 10,
                 shows: [{symptom: noise, states: {loud: 0.4}}]}
            devices:
              - {scope: deck, name: tape deck, called: [deck], has: [tape]}
              - {scope: kettle, name: kettle, called: [kettle], has: [heating]}
              - {scope: thing, name: thing, called: [thing]}
            """)));

    private static final RankingModel MODEL = RankingModel.of(KNOWLEDGE, RankingSettings.DEFAULT);
    private static final RankingQuery LOUD =
            new RankingQuery(List.of(Finding.of("noise", "loud")), DeviceScope.ANY, true);

    private static RankedCause of(Ranking ranking, String id) {
        return ranking.causes().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_kind_that_holds_all_or_of_which_nothing_is_known_changes_nothing_bit_for_bit() {
        double[] before = MODEL.probabilities(LOUD);
        for (List<String> kinds : List.of(
                List.<String>of(),
                List.of("deck"),
                List.of("thing"),
                List.of("no-such-kind"),
                List.of("kettle", "deck"))) {
            assertThat(MODEL.probabilities(LOUD.ofKinds(kinds))).as("%s", kinds).containsExactly(before);
            assertThat(MODEL.rank(LOUD.ofKinds(kinds)).causes())
                    .isEqualTo(MODEL.rank(LOUD).causes());
        }
    }

    @Test
    void what_such_a_unit_lacks_keeps_a_fraction_of_its_frequency_and_the_unlisted_one_its_share() {
        RankingQuery nothing = new RankingQuery(List.of(), DeviceScope.ANY, false);
        Ranking before = MODEL.rank(nothing);
        Ranking kettle = MODEL.rank(nothing.ofKinds(List.of("kettle")));

        double ratioBefore =
                of(before, "belt").probability() / of(before, "fuse").probability();
        double ratio = of(kettle, "belt").probability() / of(kettle, "fuse").probability();
        assertThat(ratio / ratioBefore).isCloseTo(RankingSettings.LACKING, within(1e-12));
        assertThat(of(kettle, "lamp").probability() / of(kettle, "fuse").probability())
                .isCloseTo(0.5, within(1e-12));
        assertThat(kettle.unlisted().probability()).isCloseTo(before.unlisted().probability(), within(1e-12));
        assertThat(of(kettle, "belt").lacking()).containsExactly("tape");
        assertThat(of(kettle, "fuse").lacking()).isEmpty();
        assertThat(kettle.kinds()).containsExactly("kettle");
    }

    @Test
    void the_reasons_still_sum_to_the_posterior_odds() {
        Ranking kettle = MODEL.rank(LOUD.ofKinds(List.of("kettle")));
        double all = kettle.unlisted().probability();
        for (RankedCause c : kettle.causes()) {
            all += c.probability();
            double sum = c.priorDecibans()
                    + c.wordingDecibans()
                    + c.codeDecibans()
                    + c.unmentionedDecibans()
                    + c.overlapDecibans()
                    + c.evidence().stream()
                            .mapToDouble(Ranking.Evidence::decibans)
                            .sum();
            double odds = 10 * Math.log10(c.probability() / (1 - c.probability()));
            assertThat(sum).as(c.id()).isCloseTo(odds, within(1e-9));
        }
        assertThat(all).isCloseTo(1, within(1e-12));
        assertThat(of(kettle, "belt").priorDecibans())
                .isLessThan(of(MODEL.rank(LOUD), "belt").priorDecibans() - 10);
    }

    @Test
    void cases_still_count_and_are_taken_back_bit_for_bit() {
        RankingQuery kettle = LOUD.ofKinds(List.of("kettle"));
        double[] before = MODEL.probabilities(kettle);
        Lesson lesson = Lesson.of(DeviceScope.ANY, "belt", List.of(Finding.of("noise", "loud")));

        RankingModel wiser = MODEL.learn(List.of(lesson));
        assertThat(wiser.probability(kettle, "belt")).isGreaterThan(MODEL.probability(kettle, "belt"));
        assertThat(wiser.unlearn(List.of(lesson)).probabilities(kettle)).containsExactly(before);
    }

    @Test
    void two_faults_at_once_heed_the_kind_too() {
        assertThat(MODEL.pairs(LOUD, 3).pairs().get(0).firstId()).isEqualTo("belt");
        PairRanking.Pair first =
                MODEL.pairs(LOUD.ofKinds(List.of("kettle")), 3).pairs().get(0);
        assertThat(List.of(first.firstId(), first.secondId())).containsExactly("fuse", "lamp");
    }
}
