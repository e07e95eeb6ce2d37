package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

/** What is learnt about findings that travel together. */
class DependenceTest {
    private static Knowledge plain(int symptoms, int causes) {
        double[][] backgrounds = new double[symptoms][];
        for (int s = 0; s < symptoms; s++) {
            backgrounds[s] = new double[] {0.5, 0.5};
        }
        double[] perThousand = new double[causes];
        Arrays.fill(perThousand, 1000.0 / causes);
        return Worlds.knowledge(backgrounds, perThousand, new double[causes][symptoms][], "if-tested");
    }

    @Test
    void a_pair_that_only_together_tells_the_cause_is_learnt() {
        // The exclusive-or of row K01: each finding alone says nothing, the two together say all. Naive Bayes gives .5.
        Knowledge knowledge = plain(2, 2);
        List<Lesson> lessons = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            int a = i % 2;
            int b = i / 2 % 2;
            lessons.add(lesson(a == b ? "c0" : "c1", a, b));
        }
        RankingModel model = RankingModel.of(knowledge, OpenData.SETTINGS).learn(lessons);
        RankingQuery query = RankingQuery.of(lesson("c0", 0, 1).findings());

        assertThat(RankingPropertiesTest.probability(model.rank(query), "c1")).isCloseTo(0.5, within(1e-3));
        assertThat(RankingPropertiesTest.probability(model.fit(lessons).rank(query), "c1"))
                .isGreaterThan(0.9);
    }

    private static Lesson lesson(String cause, int... states) {
        List<Finding> findings = new ArrayList<>();
        for (int s = 0; s < states.length; s++) {
            findings.add(Finding.of("f" + s, "s" + states[s]));
        }
        return Lesson.of(DeviceScope.ANY, cause, findings);
    }

    @Test
    void copies_of_one_finding_do_not_count_as_many() {
        // Eight symptoms that always agree are one finding said eight times: it is right in four of five cases.
        Knowledge knowledge = plain(8, 2);
        Random random = new Random(3);
        List<Lesson> lessons = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            int cause = random.nextInt(2);
            int said = random.nextInt(5) == 0 ? 1 - cause : cause;
            lessons.add(lesson("c" + cause, said, said, said, said, said, said, said, said));
        }
        RankingModel naive = RankingModel.of(knowledge, OpenData.SETTINGS).learn(lessons);
        RankingQuery query =
                RankingQuery.of(lesson("c0", 0, 0, 0, 0, 0, 0, 0, 0).findings());

        assertThat(RankingPropertiesTest.probability(naive.rank(query), "c0")).isGreaterThan(0.999);
        assertThat(RankingPropertiesTest.probability(naive.fit(lessons).rank(query), "c0"))
                .isBetween(0.7, 0.9);
    }

    @Test
    void the_fit_does_not_depend_on_the_order_and_none_puts_it_back() {
        Knowledge knowledge = Worlds.random(5, 8, 6);
        Random random = new Random(5);
        List<Lesson> lessons = Worlds.lessons(random, knowledge, 80);
        RankingQuery query = RankingQuery.of(Worlds.findings(random, knowledge));
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT).learn(lessons);
        List<Lesson> shuffled = new ArrayList<>(lessons);
        Collections.shuffle(shuffled, random);

        assertThat(model.fit(shuffled).rank(query)).isEqualTo(model.fit(lessons).rank(query));
        assertThat(model.fit(lessons).fit(List.of()).rank(query)).isEqualTo(model.rank(query));
    }

    @Test
    void reasons_still_add_up_and_shares_still_sum_to_one() {
        Knowledge knowledge = Worlds.random(6, 10, 8);
        Random random = new Random(6);
        List<Lesson> lessons = Worlds.lessons(random, knowledge, 100);
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT)
                .learn(lessons)
                .fit(lessons);
        for (int i = 0; i < 20; i++) {
            Ranking ranking = model.rank(RankingQuery.of(Worlds.findings(random, knowledge)));
            double sum = ranking.unlisted().probability();
            for (Ranking.RankedCause cause : ranking.causes()) {
                sum += cause.probability();
                double parts = cause.priorDecibans() + cause.unmentionedDecibans() + cause.overlapDecibans();
                for (Ranking.Evidence e : cause.evidence()) {
                    parts += e.decibans();
                }
                double p = cause.probability();
                assertThat(parts).isCloseTo(10 * Math.log10(p / (1 - p)), within(1e-9));
            }
            assertThat(sum).isCloseTo(1, within(1e-12));
        }
    }
}
