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
    /** F01: NIST/SEMATECH e-Handbook 8.3.1, test-length factors without a fault (remembered; chi-square recomputed). */
    @ParameterizedTest
    @CsvSource({".50,.693", ".60,.916", ".75,1.386", ".80,1.609", ".90,2.303", ".95,2.996"})
    void test_length_factors(double confidence, double factor) {
        assertThat(ProofRun.hours(1, confidence)).isCloseTo(factor, within(6e-4));
    }

    /** F02: hours for a mean of 500 h at 80 %. */
    @Test
    void hours_for_five_hundred() {
        assertThat(ProofRun.hours(500, .8)).isCloseTo(804.7, within(.05));
    }

    /** F07: Bayes with exponential recurrence, own numbers; a fault seen often enough has a known rate, here 1 in 8 h. */
    @Test
    void belief_after_a_clean_run() {
        int seen = 100_000_000;
        double hours = 8.0 * seen;
        assertThat(ProofRun.stillThere(.3, seen, hours, 24)).isCloseTo(.020891546, within(1e-6));
        assertThat(ProofRun.hoursToBelieve(.3, seen, hours, .01)).isCloseTo(29.982576, within(1e-6));
        assertThat(ProofRun.hours(8, .95)).isCloseTo(23.965858, within(1e-6));
        assertThat(ProofRun.stillThere(.3, seen, hours, 29.982576)).isCloseTo(.01, within(1e-6));
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
    void numbers_that_make_no_plan_are_refused_before_a_fault_was_seen() {
        ProofRecord unseen = ProofRecord.of(Optional.empty(), 0, 0, 0);
        assertThatThrownBy(() -> ProofPlan.of(unseen, 9, .3, List.of())).hasMessageContaining("confidence");
        assertThatThrownBy(() -> ProofPlan.of(unseen, .9, 1.5, List.of())).hasMessageContaining("prior");
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
