package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.benchlore.kb.ranking.RankingPropertiesTest.probability;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

class RankingTest {
    private static final DeviceScope FAMILY = DeviceScope.parse("recorder/corvane");
    private static final DeviceScope ELSEWHERE = DeviceScope.parse("player/tarn");

    /** Two causes of one symptom, and a third that does not show it. */
    private static Knowledge simple() {
        double[][] backgrounds = {{0.9, 0.1}, {0.8, 0.2}};
        double[][][] likelihoods = {{{0.1, 0.9}, null}, {{0.4, 0.6}, {0.5, 0.5}}, {{0.95, 0.05}, null}};
        return Worlds.knowledge(backgrounds, new double[] {60, 30, 10}, likelihoods, "if-tested");
    }

    @Test
    void screening_example_gives_the_published_posterior_and_weight() {
        // Eddy, "Probabilistic reasoning in clinical medicine", CUP 1982, rounded form: 1 %, 80 %, 9.6 % -> 7.8 %;
        // Good 1950: the weight of the positive result is +9.2082 dB, of the negative one -6.5514 dB, prior -19.9564
        // dB.
        Knowledge knowledge = Worlds.knowledge(
                new double[][] {{0.5, 0.5}},
                new double[] {10, 990},
                new double[][][] {{{0.2, 0.8}}, {{0.904, 0.096}}},
                "if-tested");
        RankingModel model = RankingModel.of(knowledge, Worlds.CLOSED);

        Ranking positive = model.rank(RankingQuery.of(List.of(Finding.of("f0", "s1"))));
        Ranking negative = model.rank(RankingQuery.of(List.of(Finding.of("f0", "s0"))));

        assertThat(probability(positive, "c0")).isCloseTo(0.0776398, within(5e-8));
        Ranking.RankedCause ill = positive.causes().get(1);
        assertThat(ill.priorDecibans()).isCloseTo(-19.9564, within(1e-4));
        assertThat(ill.evidence().get(0).decibans()).isCloseTo(9.2082, within(1e-4));
        assertThat(ill.overlapDecibans()).isCloseTo(0, within(1e-9));
        assertThat(negative.causes().get(1).evidence().get(0).decibans()).isCloseTo(-6.5514, within(1e-4));
    }

    @Test
    void asia_network_posteriors_come_out_when_its_hidden_part_is_eight_exclusive_causes() {
        // Lauritzen & Spiegelhalter, JRSS-B 50(2), 1988. Expected: the joint summed over its 2^8 states.
        double[] prior = new double[8];
        double[][][] likelihoods = new double[8][4][];
        for (int c = 0; c < 8; c++) {
            boolean tub = (c & 1) != 0;
            boolean lung = (c & 2) != 0;
            boolean bronc = (c & 4) != 0;
            double tubAndAsia = 0.01 * (tub ? 0.05 : 0.95);
            double tubNoAsia = 0.99 * (tub ? 0.01 : 0.99);
            double smoker = 0.5 * (lung ? 0.10 : 0.90) * (bronc ? 0.60 : 0.40);
            double nonSmoker = 0.5 * (lung ? 0.01 : 0.99) * (bronc ? 0.30 : 0.70);
            prior[c] = 1000 * (tubAndAsia + tubNoAsia) * (smoker + nonSmoker);
            boolean either = tub || lung;
            likelihoods[c][0] = yes(tubAndAsia / (tubAndAsia + tubNoAsia));
            likelihoods[c][1] = yes(smoker / (smoker + nonSmoker));
            likelihoods[c][2] = yes(either ? 0.98 : 0.05);
            likelihoods[c][3] = yes(either && bronc ? 0.9 : either ? 0.7 : bronc ? 0.8 : 0.1);
        }
        double[][] half = {{0.5, 0.5}, {0.5, 0.5}, {0.5, 0.5}, {0.5, 0.5}};
        RankingModel model = RankingModel.of(Worlds.knowledge(half, prior, likelihoods, "if-tested"), Worlds.CLOSED);
        Finding asia = Finding.of("f0", "s1");
        Finding xray = Finding.of("f2", "s1");
        Finding noXray = Finding.of("f2", "s0");
        Finding dysp = Finding.of("f3", "s1");

        expect(model, List.of(), 0.0104, 0.055, 0.45, 1e-9);
        expect(model, List.of(asia, dysp), 0.087751, 0.099525, 0.811402, 5e-7);
        expect(model, List.of(asia, xray, dysp), 0.391712, 0.444271, 0.628822, 5e-7);
        expect(model, List.of(xray, dysp), 0.113933, 0.621253, 0.681869, 5e-7);
        expect(model, List.of(asia, noXray, dysp), 0.002249, 0.002550, 0.862761, 5e-7);
    }

    private static double[] yes(double p) {
        return new double[] {1 - p, p};
    }

    private static void expect(
            RankingModel model, List<Finding> findings, double tub, double lung, double bronc, double tolerance) {
        double[] sums = new double[3];
        for (Ranking.RankedCause cause : model.rank(RankingQuery.of(findings)).causes()) {
            int c = Integer.parseInt(cause.id().substring(1));
            for (int bit = 0; bit < 3; bit++) {
                sums[bit] += (c >> bit & 1) * cause.probability();
            }
        }
        assertThat(sums[0]).isCloseTo(tub, within(tolerance));
        assertThat(sums[1]).isCloseTo(lung, within(tolerance));
        assertThat(sums[2]).isCloseTo(bronc, within(tolerance));
    }

    @Test
    void where_no_cause_applies_the_unlisted_one_still_adds_up_from_finite_parts() {
        Ranking ranking = RankingModel.of(PackReader.read(List.of()), RankingSettings.DEFAULT)
                .rank(RankingQuery.of(List.of()));
        Ranking.RankedCause unlisted = ranking.unlisted();
        assertThat(List.of(
                        unlisted.priorDecibans(),
                        unlisted.wordingDecibans(),
                        unlisted.codeDecibans(),
                        unlisted.unmentionedDecibans(),
                        unlisted.overlapDecibans()))
                .allMatch(Double::isFinite);
    }

    @Test
    void five_outcomes_move_a_cause_by_what_the_formula_gives_by_hand() {
        RankingModel model = RankingModel.of(simple(), RankingSettings.DEFAULT.doubting(0));
        List<Finding> findings = List.of(Finding.of("f0", "s1"));
        RankingModel wiser = model.learn(Collections.nCopies(5, Lesson.of(DeviceScope.ANY, "c2", findings)));

        // Packs: shares .57, .285, .095, unlisted .05; P(s1 | cause) .9, .6, .05, unlisted .85*.1+.15*.5 = .16.
        double before = 0.095 * 0.05 / (0.57 * 0.9 + 0.285 * 0.6 + 0.095 * 0.05 + 0.05 * 0.16);
        // Evidence of five cases of a cause with share p under worth k: prod (k p + i) / (k + i), i = 0..4.
        double[] worth = {1, 5, 20, 80, 320, 1280};
        double[] belief = {0.01, 0.04, 0.2, 0.25, 0.25, 0.25};
        double[] evidence = new double[6];
        double norm = 0;
        for (int k = 0; k < 6; k++) {
            evidence[k] = belief[k];
            for (int i = 0; i < 5; i++) {
                evidence[k] *= (worth[k] * 0.095 + i) / (worth[k] + i);
            }
            norm += evidence[k];
        }
        double[] share = new double[4];
        double[] packs = {0.57, 0.285, 0.095, 0.05};
        for (int k = 0; k < 6; k++) {
            for (int c = 0; c < 4; c++) {
                share[c] += evidence[k] / norm * (worth[k] * packs[c] + (c == 2 ? 5 : 0)) / (worth[k] + 5);
            }
        }
        // The link is worth 4 cases: (4 * .05 + 5) / (4 + 5).
        double given = (4 * 0.05 + 5) / 9;
        double after = share[2] * given / (share[0] * 0.9 + share[1] * 0.6 + share[2] * given + share[3] * 0.16);

        assertThat(probability(model.rank(RankingQuery.of(findings)), "c2")).isCloseTo(before, within(1e-12));
        assertThat(probability(wiser.rank(RankingQuery.of(findings)), "c2")).isCloseTo(after, within(1e-12));
        assertThat(after).isGreaterThan(10 * before);
        assertThat(wiser.rank(RankingQuery.of(findings)).causes().stream()
                        .filter(c -> c.id().equals("c2"))
                        .findFirst()
                        .orElseThrow()
                        .cases())
                .isEqualTo(5);
    }

    @Test
    void nearer_scope_outweighs_farther() {
        List<Finding> findings = List.of(Finding.of("f0", "s1"));
        List<Lesson> lessons = new ArrayList<>(Collections.nCopies(10, Lesson.of(FAMILY, "c1", findings)));
        lessons.addAll(Collections.nCopies(10, Lesson.of(ELSEWHERE, "c0", findings)));
        RankingModel model = RankingModel.of(simple(), RankingSettings.DEFAULT).learn(lessons);

        Ranking here = model.rank(new RankingQuery(findings, FAMILY, false));
        Ranking there = model.rank(new RankingQuery(findings, ELSEWHERE, false));

        assertThat(probability(here, "c1")).isGreaterThan(probability(there, "c1") + 0.05);
    }

    @Test
    void findings_that_nothing_explains_go_to_the_unlisted_cause() {
        double[][] backgrounds = {{0.95, 0.05}, {0.95, 0.05}, {0.95, 0.05}, {0.95, 0.05}};
        double[][][] likelihoods = {{{0.1, 0.9}, null, null, null}, {{0.2, 0.8}, null, null, null}};
        Knowledge knowledge = Worlds.knowledge(backgrounds, new double[] {500, 500}, likelihoods, "if-tested");
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT);

        Ranking strange = model.rank(
                RankingQuery.of(List.of(Finding.of("f1", "s1"), Finding.of("f2", "s1"), Finding.of("f3", "s1"))));

        assertThat(strange.unlisted().probability()).isGreaterThan(0.5);
    }

    @Test
    void silence_on_what_is_always_reported_speaks_a_little_against_and_only_in_notes() {
        double[][] backgrounds = {{0.9, 0.1}, {0.9, 0.1}};
        double[][][] likelihoods = {{{0.2, 0.8}, {0.05, 0.95}}, {{0.2, 0.8}, null}};
        Knowledge knowledge = Worlds.knowledge(backgrounds, new double[] {500, 500}, likelihoods, "always");
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT.doubting(0));
        List<Finding> findings = List.of(Finding.of("f0", "s1"));

        Ranking note = model.rank(new RankingQuery(findings, DeviceScope.ANY, true));
        Ranking picked = model.rank(new RankingQuery(findings, DeviceScope.ANY, false));

        // P(f1 not mentioned | c0) = 1 - .6*.95 - .12*.05 = .424; for the background 1 - .6*.1 - .12*.9 = .832.
        // One finding of 1 + 6 lets silence count with a power of one seventh.
        double ratio = probability(note, "c0") / probability(note, "c1");
        assertThat(ratio).isCloseTo(Math.pow(0.424 / 0.832, 1 / 7.0), within(1e-12));
        assertThat(probability(picked, "c0")).isCloseTo(probability(picked, "c1"), within(1e-12));
    }

    @Test
    void learning_from_notes_that_leave_out_the_normal_does_not_drift_to_one() {
        double[][] backgrounds = {{0.9, 0.1}, {0.9, 0.1}};
        double[][][] likelihoods = {{{0.2, 0.8}, {0.5, 0.5}}, {{0.2, 0.8}, null}};
        Knowledge knowledge = Worlds.knowledge(backgrounds, new double[] {500, 500}, likelihoods, "usually");
        List<Lesson> lessons = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            lessons.add(Lesson.of(
                    DeviceScope.ANY,
                    "c0",
                    i % 10 == 0
                            ? List.of(Finding.of("f0", "s1"), Finding.of("f1", "s1"))
                            : List.of(Finding.of("f0", "s1"))));
        }
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT).learn(lessons);

        Ranking ranking = model.rank(RankingQuery.of(List.of(Finding.of("f1", "s1"))));

        // 20 of 200 notes mention it; a learner that skipped the silent ones would say (2 + 20) / (4 + 20) = .92.
        double given = ranking.causes().stream()
                .filter(c -> c.id().equals("c0"))
                .findFirst()
                .orElseThrow()
                .evidence()
                .get(0)
                .decibans();
        assertThat(given).isLessThan(10 * Math.log10(0.75 / 0.1));
    }

    @Test
    void an_interval_narrows_with_cases() {
        List<Finding> findings = List.of(Finding.of("f0", "s1"));
        RankingModel packs = RankingModel.of(simple(), RankingSettings.DEFAULT);
        List<Lesson> mix = List.of(
                Lesson.of(DeviceScope.ANY, "c0", findings),
                Lesson.of(DeviceScope.ANY, "c0", findings),
                Lesson.of(DeviceScope.ANY, "c1", findings));
        RankingModel few = packs.learn(mix);
        RankingModel many = packs.learn(
                Collections.nCopies(70, mix).stream().flatMap(List::stream).toList());

        assertThat(width(many.rank(RankingQuery.of(findings))))
                .isLessThan(0.5 * width(few.rank(RankingQuery.of(findings))));
    }

    private static double width(Ranking ranking) {
        Ranking.Interval interval = ranking.causes().get(0).interval();
        return interval.high() - interval.low();
    }

    @Test
    void an_unknown_finding_is_refused_with_a_remedy() {
        RankingModel model = RankingModel.of(simple(), RankingSettings.DEFAULT);
        assertThatThrownBy(() -> model.rank(RankingQuery.of(List.of(Finding.of("f9", "s1")))))
                .hasMessage("unknown symptom 'f9'; did you mean 'f0'?");
        assertThatThrownBy(() -> model.rank(RankingQuery.of(List.of(Finding.of("f0", "s7")))))
                .hasMessageContaining("symptom 'f0' has no state 's7'; use one of [s0, s1]");
        assertThatThrownBy(() -> model.rank(RankingQuery.of(List.of(Finding.of("f0", "s0"), Finding.of("f0", "s1")))))
                .hasMessageContaining("given twice");
    }
}
