package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseEvent.Checked;
import org.benchlore.kb.cases.CaseEvent.Checked.Result;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.TriedFix;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Reading.Condition;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What a case tells of a fault that comes and goes, and of the proof that it is gone. */
class ProofRecordTest {
    private final List<CaseEvent> events = new ArrayList<>(
            List.of(new CaseEvent.Opened(head(), DeviceScope.ANY, "drops out", "", CaseHistory.OWN, false)));
    private int n;

    private CaseEvent.Head head() {
        n++;
        return new CaseEvent.Head("e" + n, "k", Instant.ofEpochSecond(1_700_000_000L + n));
    }

    private void check(String item, Result result, @Nullable Integer seen, @Nullable Double hours, Condition... how) {
        events.add(new Checked(head(), item, result, seen, hours, List.of(how), ""));
    }

    private void fix(String id) {
        events.add(new CaseEvent.FixApplied(head(), id, "board-dead", null, ""));
    }

    private CaseHistory history() {
        return CaseHistory.fold(events).orElseThrow();
    }

    private ProofPlan proof() {
        return BenchRecord.none(BenchWorld.KNOWLEDGE).proof(ProofRecord.of(history()), .9, Optional.empty());
    }

    @Test
    void sightings_before_the_fix_and_clean_hours_after_it_are_the_cases_own() {
        check("", Result.FAILED, 2, 10.0);
        check("drops out at the owner's", Result.FAILED, null, null);
        check("", Result.PASSED, null, 2.0);
        fix("replace-board");
        check("Run it warm and cold.", Result.PASSED, null, 6.0);
        check("", Result.PASSED, null, 30.0);

        ProofPlan proof = proof();
        assertThat(proof.known().seen()).isEqualTo(3);
        assertThat(proof.known().seenHours()).isEqualTo(12);
        assertThat(proof.known().cleanHours()).isEqualTo(36);
        assertThat(proof.priorNotCured()).isCloseTo(.2, within(1e-12));
        // Gamma(3.5, 12): an unrepaired unit stays clean for 36 h with (12 / 48)^3.5
        double survives = Math.pow(.25, 3.5);
        assertThat(proof.run().orElseThrow().stillThere())
                .isCloseTo(.2 * survives / (.2 * survives + .8), within(1e-12));
        assertThat(proof.checklist())
                .extracting(ProofPlan.Item::result)
                .containsExactly(Optional.of(Result.PASSED), Optional.empty());
        assertThat(proof.open()).extracting(ProofPlan.Item::step).containsExactly("Sleep and restart.");
    }

    @Test
    void hours_count_only_under_the_condition_in_which_the_fault_was_seen() {
        check("", Result.FAILED, 2, 8.0, Condition.WARM);
        check("", Result.FAILED, 1, 4.0, Condition.WARM, Condition.UNDER_LOAD);
        check("", Result.PASSED, null, 5.0, Condition.COLD);
        fix("replace-board");
        check("", Result.PASSED, null, 7.0, Condition.WARM);
        check("", Result.PASSED, null, 9.0);

        ProofRecord known = ProofRecord.of(history());
        assertThat(known.conditions()).containsExactly(Condition.WARM);
        assertThat(known.seenHours()).isEqualTo(12);
        assertThat(known.cleanHours()).isEqualTo(7);
        assertThat(known.otherHours()).isEqualTo(9);
        assertThat(known.seen(4, 40).cleanHours()).isEqualTo(16);
    }

    @Test
    void a_run_of_an_hour_is_one_after_a_while_but_not_one_warm() {
        check("", Result.FAILED, 4, 3.0, Condition.AFTER_A_WHILE);
        check("", Result.PASSED, null, 2.0, Condition.COLD);
        fix("replace-board");
        check("", Result.PASSED, null, 5.0, Condition.WARM);
        check("", Result.PASSED, null, .5);
        check("", Result.PASSED, null, .5, Condition.AFTER_A_WHILE);

        ProofRecord known = ProofRecord.of(history());
        assertThat(known.conditions()).containsExactly(Condition.AFTER_A_WHILE);
        assertThat(known.seenHours()).isEqualTo(5);
        assertThat(known.cleanHours()).isEqualTo(5.5);
        assertThat(known.otherHours()).isEqualTo(.5);
    }

    @Test
    void a_failed_step_says_that_the_fix_did_not_cure_and_is_a_sighting_for_the_next() {
        fix("replace-lead");
        check("Run it for an hour.", Result.FAILED, 1, 1.0);
        ProofPlan failed = proof();
        assertThat(failed.known().failed()).isTrue();
        assertThat(CaseWork.of(history()).fixes())
                .extracting(CaseWork.Trial::result)
                .containsExactly(TriedFix.Result.FAILED);

        fix("replace-board");
        ProofPlan next = proof();
        assertThat(next.known().failed()).isFalse();
        assertThat(next.known().seen()).isEqualTo(1);
        assertThat(next.run()).isPresent();
        assertThat(next.checklist()).allMatch(i -> i.result().isEmpty());
    }

    @Test
    void a_step_done_again_keeps_that_it_had_failed_and_steps_of_ones_own_come_last() {
        fix("replace-board");
        check("smells of nothing", Result.PASSED, null, null);
        check("Sleep and restart.", Result.FAILED, null, null);
        check("Sleep and restart.", Result.PASSED, null, .5);

        ProofPlan.Item again = proof().checklist().get(1);
        assertThat(again.result()).contains(Result.PASSED);
        assertThat(again.failedBefore()).isTrue();
        assertThat(again.hours()).isEqualTo(.5);
        assertThat(proof().checklist().get(2).ofFix()).isFalse();
        assertThat(proof().known().failed()).isTrue();
    }

    @Test
    void where_nobody_counted_there_is_a_list_and_no_hours() {
        fix("glue-core");
        assertThat(proof().run()).isEmpty();
        assertThat(proof().checklist()).hasSize(1);
        events.subList(1, events.size()).clear();
        assertThat(proof().known().fixId()).isEmpty();
        assertThat(proof().checklist()).isEmpty();
    }
}
