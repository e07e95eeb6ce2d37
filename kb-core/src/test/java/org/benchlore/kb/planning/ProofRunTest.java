package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProofRunTest {
    /** F01: NIST/SEMATECH e-Handbook 8.3.1, test-length factors (remembered; chi-square recomputed). */
    @ParameterizedTest
    @CsvSource({
        ".50,.693,1.678,2.674,3.672,4.671",
        ".60,.916,2.022,3.105,4.175,5.237",
        ".75,1.386,2.693,3.920,5.109,6.274",
        ".80,1.609,2.994,4.279,5.515,6.721",
        ".90,2.303,3.890,5.322,6.681,7.994",
        ".95,2.996,4.744,6.296,7.754,9.154"
    })
    void test_length_factors(double confidence, double f0, double f1, double f2, double f3, double f4) {
        List<Double> factors = List.of(f0, f1, f2, f3, f4);
        for (int r = 0; r < factors.size(); r++) {
            assertThat(ProofRun.factor(confidence, r)).isCloseTo(factors.get(r), within(6e-4));
        }
    }

    /** F02: hours for a mean of 500 h at 80 %. */
    @ParameterizedTest
    @CsvSource({"0,804.7", "1,1497.2", "2,2139.5", "4,3360.5", "10,6825.4"})
    void hours_for_five_hundred(int faults, double hours) {
        assertThat(500 * ProofRun.factor(.8, faults)).isCloseTo(hours, within(.05));
    }

    /** F03: 95 % upper bound after 0 of n (Hanley and Lippman-Hand, JAMA 249, 1983: rule of three). */
    @ParameterizedTest
    @CsvSource({"10,.258866", "30,.095034", "100,.029513"})
    void rule_of_three(int n, double bound) {
        // one-sided 95 % is the upper end of the two-sided 90 % interval
        assertThat(Rate.exact(0, n, .9).high()).isCloseTo(bound, within(1e-6));
        assertThat(bound).isLessThan(3.0 / n);
    }

    /** F04: MIL-HDBK-781A, NIST/SEMATECH e-Handbook 8.4.5.1 (clauses remembered), 1000 h. */
    @Test
    void bounds_on_the_mean_time() {
        assertThat(ProofRun.meanHoursAtLeast(1000, 3, .95)).isCloseTo(128.971, within(5e-4));
        assertThat(ProofRun.meanHoursAtMost(1000, 3, .95)).isCloseTo(1222.955, within(5e-4));
        assertThat(ProofRun.meanHoursAtLeast(1000, 3, .90)).isCloseTo(149.683, within(5e-4));
        assertThat(ProofRun.meanHoursAtLeast(1000, 0, .90)).isCloseTo(434.294, within(5e-4));
        assertThat(ProofRun.meanHoursAtMost(1000, 0, .90)).isInfinite();
    }

    /** F05: success-run theorem; so many trials without fault, each lasting its hour, for R at C. */
    @ParameterizedTest
    @CsvSource({".90,.90,22", ".90,.95,29", ".95,.90,45", ".99,.95,299"})
    void success_run(double reliability, double confidence, int units) {
        assertThat(ProofRun.weibullHours(reliability, 1, confidence, units, 1)).isLessThanOrEqualTo(1);
        assertThat(ProofRun.weibullHours(reliability, 1, confidence, units - 1, 1))
                .isGreaterThan(1);
    }

    /** F06: zero-failure Weibull demonstration, R = .90 at 500 h, C = .90, n = 20 (inputs read; result recomputed). */
    @ParameterizedTest
    @CsvSource({".8,558.605", "1,546.359", "1.5,530.447"})
    void weibull_demonstration(double shape, double hours) {
        assertThat(ProofRun.weibullHours(.9, 500, .9, 20, shape)).isCloseTo(hours, within(5e-4));
        // one failure allowed, chance faults: the factor of F01 in place of the zero-failure one
        assertThat(500 * ProofRun.factor(.9, 1) / (20 * -Math.log(.9))).isCloseTo(922.955, within(5e-4));
    }

    /** F07: Bayes with exponential recurrence, own numbers. */
    @Test
    void belief_after_a_clean_run() {
        assertThat(ProofRun.stillThere(.3, 8, 24)).isCloseTo(.020891546, within(1e-6));
        assertThat(ProofRun.hoursToBelieve(.3, 8, .01)).isCloseTo(29.982576, within(1e-6));
        assertThat(ProofRun.hours(8, .95)).isCloseTo(23.965858, within(1e-6));
        assertThat(ProofRun.stillThere(.3, 8, 29.982576)).isCloseTo(.01, within(1e-6));
    }

    /** F08: Weibull with shape ½ and scale 1000 h, own numbers: the hazard falls, a survivor is better than new. */
    @Test
    void a_survivor_of_early_faults() {
        assertThat(ProofRun.lastsLonger(.5, 1000, 0, 100)).isCloseTo(.728893, within(1e-6));
        assertThat(ProofRun.lastsLonger(.5, 1000, 100, 100)).isCloseTo(.877230, within(1e-6));
        assertThat(hazard(100)).isCloseTo(1.581139e-3, within(1e-6));
        assertThat(hazard(200)).isCloseTo(1.118034e-3, within(1e-6));
    }

    private static double hazard(double hours) {
        return -Math.log(ProofRun.lastsLonger(.5, 1000, hours, 1e-3)) / 1e-3;
    }

    /**
     * F17: gamma prior and data, NIST/SEMATECH e-Handbook 8.2.5: after r faults in T hours the rate is Gamma(a + r, b + T),
     * and a fault-free run of t has the chance (b / (b + t))^a. Checked by quadrature over the gamma density.
     */
    @Test
    void an_uncertain_rate_asks_for_a_longer_run() {
        double hours = ProofRun.hours(3, 24, .95);
        assertThat(hours).isGreaterThan(ProofRun.hours(8.0, .95));
        assertThat(survives(3.5, 24, hours)).isCloseTo(.05, within(1e-6));
        assertThat(ProofRun.stillThere(.3, 3, 24, hours)).isCloseTo(.3 * .05 / (.3 * .05 + .7), within(1e-9));
        double enough = ProofRun.hoursToBelieve(.3, 3, 24, .01);
        assertThat(ProofRun.stillThere(.3, 3, 24, enough)).isCloseTo(.01, within(1e-9));
        // seen often, the uncertain rate goes over into the known one
        assertThat(ProofRun.hours(100_000, 800_000, .95)).isCloseTo(ProofRun.hours(8, .95), within(1e-3));
    }

    private static double survives(double a, double b, double t) {
        double top = 0;
        double whole = 0;
        for (int i = 1; i < 400_000; i++) {
            double rate = i * 5e-6;
            double density = Math.exp((a - 1) * Math.log(rate) - b * rate);
            top += density * Math.exp(-rate * t);
            whole += density;
        }
        return top / whole;
    }

    @Test
    void a_proof_plan_counts_down() {
        ProofPlan.Run fresh = run(0);
        ProofPlan.Run half = run(fresh.hoursLeft() / 2);
        assertThat(fresh.stillThere()).isCloseTo(.3, within(1e-12));
        assertThat(half.hoursLeft()).isCloseTo(fresh.hoursLeft() / 2, within(1e-9));
        assertThat(half.stillThere()).isBetween(.05, .3);
    }

    @Test
    void a_good_record_of_the_fix_proves_nothing_that_was_not_run() {
        ProofPlan.Run run = ProofPlan.of(ProofRecord.of(Optional.empty(), 6, 24, 0), .9, .04, List.of())
                .run()
                .orElseThrow();
        assertThat(run.stillThere()).isCloseTo(.04, within(1e-12));
        assertThat(run.hoursLeft()).isCloseTo(run.hours(), within(1e-9));
    }

    private static ProofPlan.Run run(double cleanHours) {
        return ProofPlan.of(ProofRecord.of(Optional.empty(), 3, 24, cleanHours), .95, .3, List.of())
                .run()
                .orElseThrow();
    }

    @Test
    void a_fault_never_seen_cannot_be_proven_gone() {
        assertThatThrownBy(() -> ProofRun.hours(0, 24, .9)).hasMessageContaining("give 1 or more");
    }
}
