package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What notes leave unsaid, learnt from notes. */
class ReportingTest {
    private static final int CASES = 512;

    /** Two causes, one symptom each that is nearly sure under it and rare under the other. */
    private static Knowledge two(String reported) {
        double[] usual = {0.9, 0.1};
        double[][][] links = {{{0.1, 0.9}, {0.95, 0.05}}, {{0.95, 0.05}, {0.1, 0.9}}};
        return Worlds.knowledge(new double[][] {usual, usual}, new double[] {450, 450}, links, reported);
    }

    /** What ships, but that a note may as well tell of other things than its fault. */
    private static final RankingSettings SILENCE_ONLY = RankingSettings.DEFAULT.tellingAside(1);

    /** Units with cause c0 or c1 whose notes mention an abnormal state with the given chance and a normal one never. */
    private static List<Lesson> notes(double mention, long seed) {
        Random random = new Random(seed);
        List<Lesson> lessons = new ArrayList<>();
        for (int i = 0; i < CASES; i++) {
            int cause = random.nextInt(2);
            List<Finding> told = new ArrayList<>();
            for (int s = 0; s < 2; s++) {
                boolean abnormal = random.nextDouble() < (s == cause ? 0.9 : 0.05);
                if (abnormal && random.nextDouble() < mention) {
                    told.add(Finding.of("f" + s, "s1"));
                }
            }
            lessons.add(Lesson.of(DeviceScope.ANY, "c" + cause, told));
        }
        return lessons;
    }

    private static Reporting learnt(Knowledge knowledge, List<Lesson> lessons) {
        Catalogue catalogue = new Catalogue(knowledge, RankingSettings.DEFAULT, true);
        List<CaseRow> rows = lessons.stream()
                .map(l -> new CaseRow(
                        Lesson.WHOLE,
                        catalogue.causeNumber(l.weights().firstKey()),
                        l.findings().stream()
                                .mapToInt(f -> catalogue.number(f.symptomId()))
                                .toArray(),
                        l.findings().stream().mapToInt(f -> 1).toArray()))
                .toList();
        return Reporting.learn(catalogue, rows);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.3, 0.8})
    void the_share_of_abnormal_states_that_notes_mention_is_found(double mention) {
        Reporting rates = learnt(two("usually"), notes(mention, 1));

        // 512 cases, about 240 abnormal: two standard errors are 0.06, the default's 20 of 0.2 pull by as much
        assertThat(rates.mention(0, 1)).isCloseTo(mention, within(0.12));
        assertThat(rates.mention(0, 0)).isLessThan(0.04);
    }

    @Test
    void what_is_only_tested_for_stays_silent() {
        assertThat(learnt(two("if-tested"), notes(0.8, 1)).tells(0)).isFalse();
    }

    /** Not to mention f0, which c0 nearly always shows, speaks against c0: strongly at a bench that tells everything. */
    @Test
    void silence_weighs_as_much_as_the_bench_is_talkative() {
        double unlearnt = unmentioned(RankingModel.of(two("usually"), SILENCE_ONLY));

        assertThat(unmentioned(taught(0.9))).isLessThan(2 * unlearnt);
        assertThat(unmentioned(taught(0.05))).isBetween(unlearnt, 0.0);
    }

    /** Notes that tell abnormal states only must not make the powers correct what silence has taught. */
    @Test
    void a_single_finding_after_terse_notes_stays_a_single_finding() {
        double[] p = taught(0.9).probabilities(RankingQuery.of(List.of(Finding.of("f1", "s0"))));

        // by the true numbers .1 against .95: 0.095
        assertThat(p[1] / (p[0] + p[1])).isBetween(0.02, 0.3);
    }

    private static RankingModel taught(double mention) {
        List<Lesson> lessons = notes(mention, 2);
        return RankingModel.of(two("usually"), SILENCE_ONLY).learn(lessons).fit(lessons);
    }

    /** What the silence about f0 says for c0 in a note that tells a normal f1, in decibans. */
    private static double unmentioned(RankingModel model) {
        return model.rank(new RankingQuery(List.of(Finding.of("f1", "s0")), DeviceScope.ANY, true)).causes().stream()
                .filter(c -> c.id().equals("c0"))
                .findFirst()
                .orElseThrow()
                .unmentionedDecibans();
    }
}
