package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.junit.jupiter.api.Test;

class EvaluatorTest {
    private static final Instant START = Instant.parse("2026-01-01T00:00:00Z");

    private static CaseHistory ended(int day, String origin, String cause, List<Finding> findings) {
        String id = "case-" + day;
        Instant at = START.plusSeconds(86_400L * day);
        List<CaseEvent> events = List.of(
                new CaseEvent.Opened(head(id, 0, at), DeviceScope.ANY, "", "", origin, false),
                new CaseEvent.Noted(head(id, 1, at), "", Reading.Source.SEEN, findings),
                new CaseEvent.Concluded(head(id, 2, at), cause, Certainty.PROVEN, ""),
                new CaseEvent.Ended(head(id, 3, at), Outcome.FIXED_AND_PROVEN, null, ""));
        return CaseHistory.fold(events).orElseThrow();
    }

    private static CaseEvent.Head head(String id, int n, Instant at) {
        return new CaseEvent.Head(id + "-" + n, id, at.plusSeconds(n));
    }

    /** A pack that has it the wrong way round: c0 is rare and never shows f0, by its opinion. */
    private static Knowledge wrong() {
        return Worlds.knowledge(
                new double[][] {{0.9, 0.1}},
                new double[] {30, 700},
                new double[][][] {{{0.98, 0.02}}, {{0.5, 0.5}}},
                "if-tested");
    }

    private static List<CaseHistory> cases(int n) {
        List<CaseHistory> cases = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            cases.add(ended(i, CaseHistory.OWN, "c0", List.of(Finding.of("f0", "s1"))));
        }
        return cases;
    }

    @Test
    void each_case_is_ranked_by_what_the_earlier_ones_taught() {
        Knowledge knowledge = wrong();
        Evaluation evaluation = new Evaluator(knowledge, RankingSettings.DEFAULT).replay(cases(3), false);

        RankingModel packs = RankingModel.of(knowledge, RankingSettings.DEFAULT);
        RankingQuery query = new RankingQuery(List.of(Finding.of("f0", "s1")), DeviceScope.ANY, true);
        double loss = 0;
        List<Lesson> learnt = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            loss -= Math.log(packs.learn(learnt).probability(query, "c0")) / 3;
            learnt.add(Lesson.of(DeviceScope.ANY, "c0", query.findings()));
        }
        assertThat(evaluation.both().logLoss().value()).isCloseTo(loss, within(1e-12));
        assertThat(evaluation.packs().logLoss().value())
                .isCloseTo(-Math.log(packs.probability(query, "c0")), within(1e-12));
        assertThat(evaluation.scored()).isEqualTo(3);
        assertThat(evaluation.tooFew()).isTrue();
        assertThat(evaluation.tells()).isFalse();
    }

    @Test
    void the_baseline_counts_causes_and_looks_at_no_finding() {
        List<CaseHistory> cases = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            cases.add(ended(i, CaseHistory.OWN, i == 1 ? "c1" : "c0", List.of(Finding.of("f0", "s1"))));
        }
        Evaluation.Figures baseline = new Evaluator(wrong(), RankingSettings.DEFAULT)
                .replay(cases, false)
                .baseline();

        // c0, c1 and the unlisted cause: (0+1)/(0+3) for c0, then (0+1)/(1+3) for c1, then (1+1)/(2+3) for c0
        double loss = -(Math.log(1 / 3.0) + Math.log(1 / 4.0) + Math.log(2 / 5.0)) / 3;
        assertThat(baseline.logLoss().value()).isCloseTo(loss, within(1e-12));
        // equal shares go by id: c0 leads at first, still leads when c1 comes, and ties with it at the end
        assertThat(baseline.top1().value()).isCloseTo(2 / 3.0, within(1e-12));
    }

    @Test
    void forty_cases_against_the_packs_tell_that_learning_helps_and_name_the_entries_to_review() {
        Evaluation evaluation = new Evaluator(wrong(), RankingSettings.DEFAULT).replay(cases(40), false);

        assertThat(evaluation.tells()).isTrue();
        assertThat(evaluation.gain().low()).isPositive();
        assertThat(evaluation.both().logLoss().value())
                .isLessThan(evaluation.packs().logLoss().value());
        assertThat(evaluation.curve()).hasSize(3);
        assertThat(evaluation.curve().get(1).both())
                .isLessThan(evaluation.curve().get(0).both());
        assertThat(evaluation.calibration().stream()
                        .mapToInt(Evaluation.Bin::cases)
                        .sum())
                .isEqualTo(40);
        assertThat(evaluation.reviews())
                .extracting(Evaluation.Review::causeId, Evaluation.Review::symptomId)
                .contains(
                        org.assertj.core.groups.Tuple.tuple("c0", "f0"), org.assertj.core.groups.Tuple.tuple("c0", ""));
        Evaluation.Review link = evaluation.reviews().stream()
                .filter(r -> r.symptomId().equals("f0"))
                .findFirst()
                .orElseThrow();
        assertThat(link.opinion()).isCloseTo(0.02, within(1e-12));
        assertThat(link.experience()).isCloseTo(1, within(1e-12));
    }

    @Test
    void the_order_in_which_cases_are_given_is_of_no_consequence() {
        Knowledge knowledge = Worlds.random(4, 6, 5);
        Random random = new Random(4);
        List<CaseHistory> cases = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            String origin = i % 5 == 0 ? "other" : CaseHistory.OWN;
            cases.add(ended(i, origin, "c" + random.nextInt(6), Worlds.findings(random, knowledge)));
        }
        Evaluator evaluator = new Evaluator(knowledge, RankingSettings.DEFAULT);
        Evaluation evaluation = evaluator.replay(cases, false);
        Collections.shuffle(cases, random);

        assertThat(evaluator.replay(cases, false)).isEqualTo(evaluation);
        assertThat(evaluation.learnt()).isEqualTo(50);
        assertThat(evaluation.scored()).isEqualTo(40);
        assertThat(evaluator.replay(cases, true).scored()).isEqualTo(50);
    }

    @Test
    void without_cases_there_is_nothing_to_tell() {
        Evaluation evaluation = new Evaluator(wrong(), RankingSettings.DEFAULT).replay(List.of(), false);

        assertThat(evaluation.scored()).isZero();
        assertThat(evaluation.tells()).isFalse();
        assertThat(evaluation.curve()).isEmpty();
        assertThat(evaluation.reviews()).isEmpty();
    }

    @Test
    void entries_that_the_cases_bear_out_are_not_up_for_review() {
        SimulatedBench bench = new SimulatedBench(1, 10, 8, 0, 0);
        Random random = new Random(1);
        List<CaseHistory> cases = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            int c = bench.drawCause(random);
            cases.add(ended(
                    i, CaseHistory.OWN, c == 10 ? RankingModel.UNLISTED : "c" + c, bench.drawFindings(random, c)));
        }
        Evaluation evaluation = new Evaluator(bench.knowledge, RankingSettings.DEFAULT).replay(cases, false);

        assertThat(evaluation.reviews()).hasSizeLessThan(2);
        assertThat(evaluation.both().calibrationError()).isLessThan(0.1);
    }
}
