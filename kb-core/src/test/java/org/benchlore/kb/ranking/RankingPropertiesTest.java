package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The invariants of the ranking, on random worlds. */
class RankingPropertiesTest {
    /** 40 causes, each a few ulp. */
    private static final double SUM_TOLERANCE = 1e-12;

    private static final DeviceScope MODEL = DeviceScope.parse("recorder/corvane/corvane-300");

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void without_cases_the_posterior_is_the_packs_opinion_by_brute_force(long seed) {
        Knowledge knowledge = Worlds.random(seed, 5, 4);
        Random random = new Random(seed);
        List<Finding> findings = Worlds.findings(random, knowledge);
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT.doubting(0));

        Ranking ranking = model.rank(RankingQuery.of(findings));

        double[] joint = bruteForce(knowledge, findings);
        for (Ranking.RankedCause cause : ranking.causes()) {
            int c = Integer.parseInt(cause.id().substring(1));
            assertThat(cause.probability()).isCloseTo(joint[c], within(1e-12));
        }
        assertThat(ranking.unlisted().probability()).isCloseTo(joint[joint.length - 1], within(1e-12));
    }

    /** Enumerates every complete assignment of states that agrees with what was seen, for each cause. */
    private static double[] bruteForce(Knowledge knowledge, List<Finding> findings) {
        List<Symptom> symptoms = List.copyOf(knowledge.symptoms());
        List<Cause> causes = List.copyOf(knowledge.causes());
        double[] joint = new double[causes.size() + 1];
        double total = causes.stream().mapToDouble(Cause::perThousand).sum();
        int worlds = 1;
        for (Symptom s : symptoms) {
            worlds *= s.states().size();
        }
        for (int c = 0; c < joint.length; c++) {
            double prior = c == causes.size() ? 0.05 : 0.95 * causes.get(c).perThousand() / total;
            for (int world = 0; world < worlds; world++) {
                double p = prior;
                int rest = world;
                for (Symptom s : symptoms) {
                    int k = s.states().size();
                    int x = rest % k;
                    rest /= k;
                    String state = s.states().get(x).id();
                    double usual = s.states().get(x).usual();
                    double given;
                    if (c == causes.size()) {
                        boolean known = causes.stream()
                                .anyMatch(k2 -> k2.shows().stream()
                                        .anyMatch(l -> l.symptomId().equals(s.id())));
                        double spread = known ? 0.15 : 0.6;
                        given = (1 - spread) * usual + spread / k;
                    } else {
                        given = causes.get(c).shows().stream()
                                .filter(l -> l.symptomId().equals(s.id()))
                                .map(Link::states)
                                .map(m -> m.getOrDefault(state, 0.0))
                                .findFirst()
                                .orElse(usual);
                    }
                    double seen = findings.stream()
                            .filter(f -> f.symptomId().equals(s.id()))
                            .mapToDouble(f -> f.likelihoods().getOrDefault(state, 0.0))
                            .findFirst()
                            .orElse(1);
                    p *= given * seen;
                }
                joint[c] += p;
            }
        }
        double sum = 0;
        for (double j : joint) {
            sum += j;
        }
        for (int c = 0; c < joint.length; c++) {
            joint[c] /= sum;
        }
        return joint;
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15})
    void order_of_lessons_is_irrelevant_and_taking_back_restores_bit_for_bit(long seed) {
        Knowledge knowledge = Worlds.random(seed, 12, 8);
        Random random = new Random(seed);
        List<Lesson> first = Worlds.lessons(random, knowledge, 30);
        List<Lesson> second = Worlds.lessons(random, knowledge, 30);
        RankingQuery query = new RankingQuery(Worlds.findings(random, knowledge), MODEL, true);
        RankingModel before =
                RankingModel.of(knowledge, RankingSettings.DEFAULT).learn(first);

        List<Lesson> shuffled = new ArrayList<>(first);
        shuffled.addAll(second);
        Collections.shuffle(shuffled, random);
        RankingModel all = before.learn(second);
        RankingModel allShuffled =
                RankingModel.of(knowledge, RankingSettings.DEFAULT).learn(shuffled);
        Collections.shuffle(second, random);

        assertThat(allShuffled.rank(query)).isEqualTo(all.rank(query));
        assertThat(all.unlearn(second).rank(query)).isEqualTo(before.rank(query));
        assertThat(before.unlearn(first).rank(query))
                .isEqualTo(RankingModel.of(knowledge, RankingSettings.DEFAULT).rank(query));
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25})
    void shares_sum_to_one_lie_inside_and_the_reasons_add_up(long seed) {
        Knowledge knowledge = Worlds.random(seed, 30, 12);
        Random random = new Random(seed);
        RankingModel model =
                RankingModel.of(knowledge, RankingSettings.DEFAULT).learn(Worlds.lessons(random, knowledge, 60));
        for (int i = 0; i < 20; i++) {
            RankingQuery query = new RankingQuery(Worlds.findings(random, knowledge), MODEL, random.nextBoolean());
            Ranking ranking = model.rank(query);
            List<Ranking.RankedCause> all = new ArrayList<>(ranking.causes());
            all.add(ranking.unlisted());
            double sum = 0;
            for (Ranking.RankedCause cause : all) {
                double p = cause.probability();
                sum += p;
                assertThat(p).isStrictlyBetween(0.0, 1.0);
                assertThat(p).isBetween(cause.interval().low(), cause.interval().high());
                double parts = cause.priorDecibans() + cause.unmentionedDecibans() + cause.overlapDecibans();
                for (Ranking.Evidence e : cause.evidence()) {
                    parts += e.decibans();
                }
                assertThat(parts).isCloseTo(10 * Math.log10(p / (1 - p)), within(1e-9));
            }
            assertThat(sum).isCloseTo(1, within(SUM_TOLERANCE));
            double[] plain = model.probabilities(query);
            assertThat(plain[plain.length - 1]).isEqualTo(ranking.unlisted().probability());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33})
    void one_more_case_with_the_same_findings_never_lowers_its_cause(long seed) {
        Knowledge knowledge = Worlds.random(seed, 10, 6);
        Random random = new Random(seed);
        RankingModel model =
                RankingModel.of(knowledge, RankingSettings.DEFAULT).learn(Worlds.lessons(random, knowledge, 20));
        for (Cause cause : knowledge.causes()) {
            List<Finding> findings = Worlds.findings(random, knowledge);
            RankingQuery query = new RankingQuery(findings, MODEL, false);
            double before = probability(model.rank(query), cause.id());
            RankingModel wiser = model.learn(List.of(Lesson.of(MODEL, cause.id(), findings)));
            assertThat(probability(wiser.rank(query), cause.id())).isGreaterThanOrEqualTo(before);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {41, 42, 43})
    void a_finding_equally_likely_everywhere_changes_nothing(long seed) {
        Random random = new Random(seed);
        double[][] backgrounds = {Worlds.shares(random, 3), {0.25, 0.25, 0.25, 0.25}};
        double[] uniform = {0.25, 0.25, 0.25, 0.25};
        double[][][] likelihoods = {
            {Worlds.shares(random, 3), uniform}, {Worlds.shares(random, 3), null}, {null, uniform}
        };
        Knowledge knowledge = Worlds.knowledge(backgrounds, new double[] {300, 200, 100}, likelihoods, "if-tested");
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT);
        Finding telling = Finding.of("f0", "s1");

        Ranking without = model.rank(RankingQuery.of(List.of(telling)));
        Ranking with = model.rank(RankingQuery.of(List.of(telling, Finding.of("f1", "s2"))));

        for (Ranking.RankedCause cause : without.causes()) {
            assertThat(probability(with, cause.id())).isCloseTo(cause.probability(), within(SUM_TOLERANCE));
        }
        assertThat(with.unlisted().probability()).isCloseTo(without.unlisted().probability(), within(SUM_TOLERANCE));
    }

    static double probability(Ranking ranking, String id) {
        return ranking.causes().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow()
                .probability();
    }
}
