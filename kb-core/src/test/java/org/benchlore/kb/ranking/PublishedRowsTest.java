package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.numbers.gamma.Trigamma;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

/** Worked examples and identities from print. The Asia network and the screening example are in {@link RankingTest}. */
class PublishedRowsTest {
    private static final double Z95 = 1.959963984540054;

    /** P(c0) of two causes after one finding on one symptom. */
    private static double first(double perThousand, double[] given0, double[] given1, Finding finding) {
        double[] half = new double[given0.length];
        java.util.Arrays.fill(half, 1.0 / half.length);
        Knowledge knowledge = Worlds.knowledge(
                new double[][] {half},
                new double[] {perThousand, 1000 - perThousand},
                new double[][][] {{given0}, {given1}},
                "if-tested");
        return RankingModel.of(knowledge, Worlds.CLOSED).probability(RankingQuery.of(List.of(finding)), "c0");
    }

    private static double[] yes(double p) {
        return new double[] {1 - p, p};
    }

    @Test
    void screening_as_eddy_and_as_rice_have_it() {
        Finding positive = Finding.of("f0", "s1");
        // Eddy 1982 with his sensitivity of 79.2 % (remembered): 7.7 %.
        assertThat(first(10, yes(0.792), yes(0.096), positive)).isCloseTo(0.0769231, within(5e-8));
        // Rice, Mathematical Statistics and Data Analysis, 3rd ed.: .075 as printed.
        assertThat(first(10, yes(0.80), yes(0.10), positive)).isCloseTo(0.075, within(5e-4));
    }

    @Test
    void a_six_weighs_three_decibans_for_the_loaded_die() {
        // Good, Biometrika 66, 1979 (remembered): P(six) 1/3 against 1/6; about +3 dB a six, -1 dB a non-six.
        Knowledge knowledge = Worlds.knowledge(
                new double[][] {{0.5, 0.5}},
                new double[] {500, 500},
                new double[][][] {{yes(1.0 / 3)}, {yes(1.0 / 6)}},
                "if-tested");
        RankingModel model = RankingModel.of(knowledge, Worlds.CLOSED);
        double six = weight(model, "s1");
        double other = weight(model, "s0");

        assertThat(six).isCloseTo(3.0103, within(1e-4));
        assertThat(other).isCloseTo(-0.9691, within(1e-4));
        assertThat(5 * six + 15 * other).isCloseTo(0.5150, within(1e-4));
    }

    private static double weight(RankingModel model, String state) {
        return model.rank(RankingQuery.of(List.of(Finding.of("f0", state)))).causes().stream()
                .filter(c -> c.id().equals("c0"))
                .findFirst()
                .orElseThrow()
                .evidence()
                .get(0)
                .decibans();
    }

    @Test
    void jeffreys_cloth_by_candlelight_is_a_soft_finding() {
        // Jeffrey, The Logic of Decision, ch. 11 (numbers remembered): P(sold) .56 -> .42 by likelihoods 1 : 5/14 :
        // 3/56.
        double[] sold = {0.12 / 0.56, 0.12 / 0.56, 0.32 / 0.56};
        double[] unsold = {0.18 / 0.44, 0.18 / 0.44, 0.08 / 0.44};
        Finding candlelight = Finding.soft("f0", Map.of("s0", 1.0, "s1", 5 / 14.0, "s2", 3 / 56.0));

        assertThat(first(560, sold, unsold, candlelight)).isCloseTo(0.42, within(5e-7));
    }

    @Test
    void pearls_burglary_with_a_hard_and_a_soft_alarm() {
        // Pearl 1988, section 2.2 (numbers remembered).
        Finding soft = Finding.soft("f0", Map.of("s1", 4.0, "s0", 1.0));

        assertThat(first(0.1, yes(0.95), yes(0.01), Finding.of("f0", "s1"))).isCloseTo(0.00941153, within(5e-9));
        assertThat(first(0.1, yes(0.95), yes(0.01), soft)).isCloseTo(0.000373684, within(5e-9));
    }

    @Test
    void point_estimates_as_laplace_and_cestnik_give_them() {
        // C01: Laplace 1814 (rule of succession); Cestnik, ECAI 1990.
        assertThat(Smoothing.theta(5, 5, 2, 0.5)).isCloseTo(6 / 7.0, within(1e-12));
        assertThat(Smoothing.theta(3, 4, 2, 0.5)).isCloseTo(0.666667, within(1e-6));
        assertThat(Smoothing.theta(3, 4, 2, 0.1)).isCloseTo(0.533333, within(1e-6));
        assertThat(Smoothing.theta(3, 4, 10, 0.1)).isCloseTo(0.285714, within(1e-6));
    }

    @Test
    void predictions_and_evidence_of_a_hierarchical_dirichlet() {
        // C02: MacKay & Peto 1995, F = [[3,1,0],[0,2,2]] around (.5,.3,.2), worth 4; own numbers, recomputed with
        // lgamma.
        double[] m = {0.5, 0.3, 0.2};
        double[][] counts = {{3, 1, 0}, {0, 2, 2}};
        double[][] expected = {{0.625, 0.275, 0.1}, {0.25, 0.4, 0.35}};
        for (int row = 0; row < 2; row++) {
            for (int x = 0; x < 3; x++) {
                assertThat(Smoothing.theta(counts[row][x], 4, 4, m[x])).isCloseTo(expected[row][x], within(1e-12));
            }
        }
        assertThat(evidence(4)).isCloseTo(-8.771006, within(1e-6));
        assertThat(evidence(1)).isCloseTo(-9.300197, within(1e-6));
        assertThat(evidence(100)).isCloseTo(-8.888256, within(1e-6));
    }

    private static double evidence(double worth) {
        double[] parent = {0.5, 0.3, 0.2};
        return Shrinkage.logEvidence(worth, parent, new double[] {3, 1, 0}, 4)
                + Shrinkage.logEvidence(worth, parent, new double[] {0, 2, 2}, 4);
    }

    @Test
    void wilsons_interval() {
        // Newcombe, Statistics in Medicine 17, 1998, Table I, method 3.
        expect(Estimate.share(81, 263, Z95), 0.2553, 0.3662, 5e-5);
        expect(Estimate.share(15, 148, Z95), 0.0624, 0.1605, 5e-5);
        expect(Estimate.share(0, 20, Z95), 0, 0.1611, 5e-5);
        expect(Estimate.share(1, 29, Z95), 0.0061, 0.1718, 5e-5);
        // The same formula, recomputed in Python and R.
        expect(Estimate.share(9, 10, Z95), 0.595850, 0.982124, 1e-6);
        expect(Estimate.share(23, 60, Z95), 0.270883, 0.509824, 1e-6);
        expect(Estimate.share(26, 200), 0.095773, 0.174104, 1e-6);
    }

    private static void expect(Estimate estimate, double low, double high, double tolerance) {
        assertThat(estimate.low()).isCloseTo(low, within(tolerance));
        assertThat(estimate.high()).isCloseTo(high, within(tolerance));
    }

    @Test
    void trigamma_behind_the_intervals() {
        // C09: Abramowitz & Stegun, 6.4.
        assertThat(Trigamma.value(0.5)).isCloseTo(4.934802200545, within(1e-12));
        assertThat(Trigamma.value(1)).isCloseTo(1.644934066848, within(1e-12));
        assertThat(Trigamma.value(1.5)).isCloseTo(0.934802200545, within(1e-12));
        assertThat(Trigamma.value(2)).isCloseTo(0.644934066848, within(1e-12));
        assertThat(Trigamma.value(10)).isCloseTo(0.105166335682, within(1e-12));
    }

    @Test
    void digamma_is_the_slope_of_log_gamma() {
        // C08: Abramowitz & Stegun, 6.3 and Table 6.1, by differences of the log-gamma behind the evidence.
        double[] x = {0.5, 1, 1.5, 2, 10, 1.4616321449683622};
        double[] psi = {-1.963510026021, -0.577215664902, 0.036489973979, 0.422784335098, 2.251752589067, 0};
        double step = 1e-5;
        for (int i = 0; i < x.length; i++) {
            double slope = (LogGamma.value(x[i] + step) - LogGamma.value(x[i] - step)) / (2 * step);
            assertThat(slope).isCloseTo(psi[i], within(1e-8)); // rounding and the third derivative, 1e-9 each
        }
    }

    @Test
    void a_temperature_flattens_and_sharpens() {
        // K02: Guo et al., ICML 2017 (formula): powers 1/T of (.9,.09,.01), as silence and powers use them.
        expect(powered(new double[] {1, 1, 1}, new double[] {.9, .09, .01}, 1 / 2.0), .703414, .222439, .074146);
        expect(powered(new double[] {1, 1, 1}, new double[] {.9, .09, .01}, 2), .989978, .009900, .000122);
    }

    @Test
    void brier_and_log_scores() {
        // Brier 1950, multi-class form.
        ScoreSheet first = new ScoreSheet(5);
        first.add(new double[] {0.6, 0.3, 0.1}, 0);
        assertThat(first.briers().get(0)).isCloseTo(0.26, within(1e-12));
        ScoreSheet third = new ScoreSheet(5);
        third.add(new double[] {0.6, 0.3, 0.1}, 2);
        assertThat(third.briers().get(0)).isCloseTo(1.26, within(1e-12));
        // Binary: the multi-class form is twice the half-form's .125; log score .400367 nat.
        ScoreSheet binary = new ScoreSheet(5);
        double[] p = {0.9, 0.8, 0.3, 0.6};
        int[] y = {1, 1, 0, 0};
        for (int i = 0; i < 4; i++) {
            binary.add(new double[] {1 - p[i], p[i]}, y[i]);
        }
        assertThat(Estimate.mean(binary.briers()).value()).isCloseTo(0.25, within(1e-12));
        assertThat(Estimate.mean(binary.logLosses()).value()).isCloseTo(0.400367, within(1e-6));
    }

    @Test
    void calibration_error_with_a_probability_on_an_edge() {
        // Guo et al. 2017, definition; .6 sits on the edge of the fourth of five bins and belongs to it.
        double[] said = {0.95, 0.9, 0.9, 0.85, 0.7, 0.65, 0.6, 0.55, 0.3, 0.25};
        int[] hit = {1, 1, 0, 1, 1, 0, 1, 0, 0, 1};
        ScoreSheet sheet = new ScoreSheet(5);
        for (int i = 0; i < said.length; i++) {
            sheet.addToBin(said[i], hit[i] == 1);
        }
        assertThat(sheet.calibrationError()).isCloseTo(0.165, within(1e-9));
        assertThat(sheet.bins().stream().mapToInt(Evaluation.Bin::cases)).containsExactly(2, 1, 3, 4);
    }

    @Test
    void prequential_log_loss_is_the_same_in_any_order() {
        // Dawid 1984: Laplace's forecaster on 1,1,0,1 in any order loses ln 20.
        for (int[] order : new int[][] {{1, 1, 0, 1}, {0, 1, 1, 1}, {1, 1, 1, 0}}) {
            double loss = 0;
            int ones = 0;
            for (int i = 0; i < order.length; i++) {
                double p = Smoothing.theta(ones, i, 2, 0.5);
                loss -= Math.log(order[i] == 1 ? p : 1 - p);
                ones += order[i];
            }
            assertThat(loss).isCloseTo(Math.log(20), within(1e-9));
        }
    }

    @Test
    void counting_four_copies_with_a_power_of_a_quarter_counts_the_finding_once() {
        // Power likelihood, by the formula: prior .5,.3,.2; likelihoods (.9,.3,.1)^4.
        double[] prior = {0.5, 0.3, 0.2};
        double[] once = {0.9, 0.3, 0.1};
        expect(powered(prior, once, 4), 0.992587, 0.007352, 0.000061);
        expect(powered(prior, once, 2), 0.933180, 0.062212, 0.004608);
        expect(powered(prior, once, 1), 0.803571, 0.160714, 0.035714);
        // Powers: with rho = 1, four findings that repeat each other count as one.
        Powers same = new Powers(Trust.asStated(0), 1, new double[0], new double[0], Gains.none(0));
        expect(powered(prior, once, 4 * same.temper(4)), 0.803571, 0.160714, 0.035714);
    }

    private static double[] powered(double[] prior, double[] likelihood, double power) {
        double[] score = new double[prior.length];
        for (int c = 0; c < score.length; c++) {
            score[c] = Math.log(prior[c]) + power * Math.log(likelihood[c]);
        }
        return Scores.normalise(score);
    }

    private static void expect(double[] shares, double... expected) {
        for (int c = 0; c < expected.length; c++) {
            assertThat(shares[c]).isCloseTo(expected[c], within(1e-6));
        }
    }

    @Test
    void noisy_or_of_two_causes_with_and_without_a_leak() {
        // Pearl 1988, section 4.3.2, q = .8, .6; leak .1 after Henrion: .928, and .92 without.
        assertThat(1 - Pairs.normal(0.9 * 0.2, 0.9 * 0.4, 0.9)).isCloseTo(0.928, within(1e-12));
        assertThat(1 - Pairs.normal(0.2, 0.4, 1)).isCloseTo(0.92, within(1e-12));
        assertThat(1 - Pairs.normal(0.9 * 0.2, 0.9, 0.9)).isCloseTo(0.82, within(1e-12));
    }

    @Test
    void pairs_agree_with_the_enumeration_behind_quickscore() {
        // Heckerman, UAI-5 1989; priors .01,.05,.10, leaks .02,.01,.03, f1 and f2 present, f3 absent: P(evidence)
        // .010913247730, posteriors .411520576, .575331776, .073217167 over all 2^3 sets.
        double[] prior = {0.01, 0.05, 0.10};
        double[] leak = {0.02, 0.01, 0.03};
        double[][] q = {{0.8, 0.3, 0}, {0.6, 0.7, 0.2}, {0, 0.4, 0.5}};
        double[] joint = new double[8];
        double evidence = 0;
        for (int set = 0; set < 8; set++) {
            joint[set] = 1;
            for (int c = 0; c < 3; c++) {
                joint[set] *= (set >> c & 1) == 1 ? prior[c] : 1 - prior[c];
            }
            for (int f = 0; f < 3; f++) {
                double absent = 1 - leak[f];
                for (int c = 0; c < 3; c++) {
                    double alone = (1 - leak[f]) * (1 - q[f][c]);
                    absent = (set >> c & 1) == 1 ? Pairs.normal(absent, alone, 1 - leak[f]) : absent;
                }
                joint[set] *= f < 2 ? 1 - absent : absent;
            }
            evidence += joint[set];
        }
        assertThat(evidence).isCloseTo(0.010913247730, within(1e-9));
        assertThat((joint[1] + joint[3] + joint[5] + joint[7]) / evidence).isCloseTo(0.411520576, within(1e-9));
        assertThat((joint[2] + joint[3] + joint[6] + joint[7]) / evidence).isCloseTo(0.575331776, within(1e-9));
        assertThat((joint[4] + joint[5] + joint[6] + joint[7]) / evidence).isCloseTo(0.073217167, within(1e-9));

        // The same numbers as a pack: a pair over the better single one must come out as its own prior has it.
        double[][] backgrounds = new double[3][];
        double[][][] links = new double[3][3][];
        for (int f = 0; f < 3; f++) {
            backgrounds[f] = yes(leak[f]);
            for (int c = 0; c < 3; c++) {
                links[c][f] = q[f][c] == 0 ? null : yes(1 - (1 - leak[f]) * (1 - q[f][c]));
            }
        }
        Knowledge knowledge = Worlds.knowledge(backgrounds, new double[] {10, 50, 100}, links, "if-tested");
        PairRanking ranking = RankingModel.of(knowledge, Worlds.CLOSED)
                .pairs(
                        RankingQuery.of(
                                List.of(Finding.of("f0", "s1"), Finding.of("f1", "s1"), Finding.of("f2", "s0"))),
                        3);
        double[] share = {1 / 16.0, 5 / 16.0, 10 / 16.0};
        double products = share[0] * share[1] + share[0] * share[2] + share[1] * share[2];
        double given01 = joint[3] / (0.01 * 0.05 * 0.9);
        double given0 = joint[1] / (0.01 * 0.95 * 0.9);
        double given1 = joint[2] / (0.99 * 0.05 * 0.9);
        double pair = Pairs.TWO_FAULTS * share[0] * share[1] / products * given01;
        double single = (1 - Pairs.TWO_FAULTS) * Math.max(share[0] * given0, share[1] * given1);

        PairRanking.Pair first = ranking.pairs().stream()
                .filter(p -> p.firstId().equals("c0") && p.secondId().equals("c1"))
                .findFirst()
                .orElseThrow();
        assertThat(first.overSingle()).isCloseTo(pair / single, within(1e-9));
    }

    @Test
    void pairs_and_singles_are_one_posterior_and_a_worked_on_unit_has_more_of_them() {
        Knowledge knowledge = Worlds.random(3, 6, 5);
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT);
        List<Finding> findings = Worlds.findings(new Random(3), knowledge);
        RankingQuery query = RankingQuery.of(findings);
        PairRanking all = model.pairs(query, 100);

        assertThat(all.pairs())
                .hasSize(15)
                .isSortedAccordingTo((a, b) -> Double.compare(b.probability(), a.probability()));
        assertThat(all.pairs().stream()
                        .mapToDouble(PairRanking.Pair::probability)
                        .sum())
                .isCloseTo(all.probability(), within(1e-12));
        assertThat(model.pairs(query, 4).pairs()).isEqualTo(all.pairs().subList(0, 4));
        PairRanking opened = model.pairs(new RankingQuery(findings, query.scope(), false, true), 100);
        assertThat(opened.probability()).isGreaterThan(all.probability());
        assertThat(model.pairs(RankingQuery.of(List.of()), 100).probability())
                .isCloseTo(Pairs.TWO_FAULTS, within(1e-12));
    }
}
