package org.benchlore.kb.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.cases.CaseEvent.Checked;
import org.benchlore.kb.cases.CaseEvent.Concluded;
import org.benchlore.kb.cases.CaseEvent.Corrected;
import org.benchlore.kb.cases.CaseEvent.Ended;
import org.benchlore.kb.cases.CaseEvent.FixApplied;
import org.benchlore.kb.cases.CaseEvent.Head;
import org.benchlore.kb.cases.CaseEvent.Noted;
import org.benchlore.kb.cases.CaseEvent.Opened;
import org.benchlore.kb.cases.CaseEvent.Withdrawn;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CaseFoldTest {
    private static Head head(String id, int minute) {
        return new Head(id, "k1", Instant.parse("2026-01-05T10:00:00Z").plusSeconds(60L * minute));
    }

    private static final Opened OPENED = new Opened(head("o", 0), DeviceScope.ANY, "dead", "", CaseHistory.OWN, false);

    private static Noted rail(String id, int minute, String state) {
        return new Noted(head(id, minute), "", Reading.Source.MEASURED, List.of(Finding.of("rail-12v", state)));
    }

    private static Withdrawn withdraws(String id, int minute, @Nullable String target) {
        return new Withdrawn(head(id, minute), target, "");
    }

    private static Corrected corrects(String id, int minute, String target, CaseEvent replacement) {
        return new Corrected(head(id, minute), target, replacement);
    }

    private static CaseHistory fold(CaseEvent... events) {
        List<CaseEvent> all = new ArrayList<>(List.of(events));
        all.add(OPENED);
        return CaseHistory.fold(all).orElseThrow();
    }

    private static String railState(CaseEvent... events) {
        List<Finding> findings = fold(events).findings();
        return findings.isEmpty() ? "none" : findings.get(0).state();
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 5, 9, 17, 40})
    void any_order_and_any_repetition_gives_the_same_history(int size) {
        for (int seed = 0; seed < 200; seed++) {
            ArbitraryEvents arbitrary = new ArbitraryEvents(seed * 31L + size);
            List<CaseEvent> events = arbitrary.ofCase("k" + seed, size);
            for (int again = 0; again < 5; again++) {
                assertThat(CaseHistory.fold(arbitrary.disturbed(events)))
                        .as("seed %d", seed)
                        .isEqualTo(CaseHistory.fold(events));
            }
        }
    }

    @Test
    void findings_after_the_cure_tell_of_the_cure_and_not_of_the_fault() {
        FixApplied fix = new FixApplied(head("f", 2), "new-fuse", "fuse-open", null, "");
        CaseHistory open = fold(rail("r1", 1, "absent"), fix, rail("r2", 3, "fine"));
        assertThat(open.cure()).contains(fix);
        assertThat(open.findings()).containsExactly(Finding.of("rail-12v", "fine"));
        assertThat(open.findingsOfFault()).containsExactly(Finding.of("rail-12v", "absent"));

        CaseHistory failed = fold(
                rail("r1", 1, "absent"),
                fix,
                new Ended(head("e", 3), Outcome.NOT_FIXED, null, ""),
                rail("r2", 4, "low"));
        assertThat(failed.cure()).isEmpty();
        assertThat(failed.findingsOfFault()).containsExactly(Finding.of("rail-12v", "low"));
    }

    @Test
    void what_was_said_of_the_fault_is_each_text_once_and_nothing_from_after_the_cure() {
        FixApplied fix = new FixApplied(head("f", 3), "new-fuse", "fuse-open", null, "");
        CaseHistory cured = fold(
                new Noted(head("n1", 1), "dead", Reading.Source.OWNER, List.of()),
                new Noted(head("n2", 2), "smells of tar", Reading.Source.SEEN, List.of()),
                fix,
                new Noted(head("n3", 4), "plays again", Reading.Source.SEEN, List.of()));
        assertThat(cured.textsOfFault()).containsExactly("dead", "smells of tar");
    }

    @Test
    void what_was_said_before_the_work_ends_with_the_first_fix_whether_it_helped_or_not() {
        CaseHistory failed = fold(
                new Noted(head("n1", 1), "left channel gone", Reading.Source.OWNER, List.of()),
                new FixApplied(head("f", 2), "new-relay", "relay-oxidised", null, ""),
                check("c", 3, Checked.Result.FAILED),
                new Noted(head("n2", 4), "swapped the relay, still the same", Reading.Source.SEEN, List.of()));
        assertThat(failed.textsBeforeWork()).containsExactly("dead", "left channel gone");
        assertThat(failed.textsOfFault()).contains("swapped the relay, still the same");
    }

    private static Checked check(String id, int minute, Checked.Result result) {
        return new Checked(head(id, minute), "Ten cold starts.", result, null, null, List.of(), "");
    }

    @Test
    void a_check_that_failed_after_the_fix_says_that_it_was_no_cure() {
        FixApplied fix = new FixApplied(head("f", 2), "new-fuse", "fuse-open", null, "");
        Ended fixed = new Ended(head("e", 4), Outcome.FIXED, null, "");
        assertThat(fold(check("c", 1, Checked.Result.FAILED), fix).cure()).contains(fix);
        assertThat(fold(fix, check("c", 3, Checked.Result.PASSED)).failedFixes())
                .isEmpty();

        CaseHistory failed = fold(fix, check("c", 3, Checked.Result.FAILED), rail("r", 3, "absent"));
        assertThat(failed.cure()).isEmpty();
        assertThat(failed.failedFixes()).containsExactly(fix);
        assertThat(failed.outcome()).isNull();
        assertThat(failed.findingsOfFault()).isNotEmpty();

        CaseHistory after = fold(fix, fixed, check("c", 5, Checked.Result.FAILED));
        assertThat(after.outcome()).isEqualTo(Outcome.NOT_FIXED);
        assertThat(after.cure()).isEmpty();

        CaseHistory overruled = fold(fix, check("c", 3, Checked.Result.FAILED), fixed);
        assertThat(overruled.outcome()).isEqualTo(Outcome.FIXED);
        assertThat(overruled.cure()).contains(fix);
    }

    private static List<TriedFix.Result> results(CaseEvent... events) {
        return fold(events).fixes().stream().map(TriedFix::result).toList();
    }

    @Test
    void a_fix_is_judged_by_what_was_said_between_it_and_the_next() {
        FixApplied fuse = new FixApplied(head("f1", 2), "new-fuse", "fuse-open", null, "");
        FixApplied fan = new FixApplied(head("f2", 6), "new-fan", "dead-fan", null, "");
        assertThat(results(fuse)).containsExactly(TriedFix.Result.UNTOLD);
        assertThat(results(fuse, fan)).containsExactly(TriedFix.Result.FAILED, TriedFix.Result.UNTOLD);

        Ended fixed = new Ended(head("e1", 3), Outcome.FIXED, null, "");
        assertThat(results(fuse, fixed, fan)).containsExactly(TriedFix.Result.HELPED, TriedFix.Result.UNTOLD);
        assertThat(fold(fuse, fixed, fan).failedFixes()).isEmpty();
        assertThat(results(fuse, fixed, check("c", 4, Checked.Result.FAILED), fan))
                .containsExactly(TriedFix.Result.FAILED, TriedFix.Result.UNTOLD);
        assertThat(results(fuse, fixed, new Ended(head("e2", 5), Outcome.CAME_BACK, 9, ""), fan))
                .containsExactly(TriedFix.Result.CAME_BACK, TriedFix.Result.UNTOLD);
    }

    @Test
    void a_unit_that_recovered_by_itself_credits_no_fix_and_holds_none_as_failed() {
        FixApplied fuse = new FixApplied(head("f1", 2), "new-fuse", "fuse-open", null, "");
        FixApplied fan = new FixApplied(head("f2", 6), "new-fan", "dead-fan", null, "");
        Ended recovered = new Ended(head("e2", 4), Outcome.RECOVERED_BY_ITSELF, null, "");
        assertThat(results(fuse, recovered)).containsExactly(TriedFix.Result.UNTOLD);
        assertThat(results(fuse, recovered, fan)).containsExactly(TriedFix.Result.UNTOLD, TriedFix.Result.UNTOLD);
        assertThat(results(fuse, new Ended(head("e1", 3), Outcome.FIXED, null, ""), recovered))
                .containsExactly(TriedFix.Result.UNTOLD);
        assertThat(results(fuse, new Ended(head("e1", 3), Outcome.NOT_FIXED, null, ""), recovered))
                .containsExactly(TriedFix.Result.FAILED);
    }

    @Test
    void findings_before_a_cure_that_is_dated_before_the_opening_are_of_the_fault() {
        CaseHistory imported = fold(
                rail("r", -9, "absent"),
                new FixApplied(head("f", -5), "new-fuse", "fuse-open", null, ""),
                rail("r2", 1, "fine"));
        assertThat(imported.findingsOfFault()).containsExactly(Finding.of("rail-12v", "absent"));
    }

    @Test
    void a_history_up_to_an_event_is_that_of_the_events_before_it_and_knows_the_opening() {
        CaseHistory whole =
                fold(rail("r1", -1, "absent"), rail("r2", 1, "low"), new Ended(head("e", 3), Outcome.FIXED, null, ""));
        assertThat(whole.upTo(1).findings()).containsExactly(Finding.of("rail-12v", "absent"));
        assertThat(whole.upTo(1).complaint()).isEqualTo("dead");
        assertThat(whole.upTo(3).outcome()).isNull();
        assertThat(whole.upTo(4)).isEqualTo(whole);
    }

    @Test
    void the_arbitrary_streams_reach_what_they_are_for() {
        int withdrawn = 0;
        int unopened = 0;
        int shorter = 0;
        for (int seed = 0; seed < 200; seed++) {
            List<CaseEvent> events = new ArbitraryEvents(seed).ofCase("k", 12);
            var history = CaseHistory.fold(events);
            withdrawn += history.filter(CaseHistory::withdrawn).isPresent() ? 1 : 0;
            unopened += history.isEmpty() ? 1 : 0;
            shorter += history.filter(h -> h.events().size() < 8).isPresent() ? 1 : 0;
        }
        assertThat(List.of(withdrawn, unopened, shorter))
                .allSatisfy(n -> assertThat(n).isGreaterThan(5));
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 8, 20})
    void withdrawing_a_fresh_event_restores_the_history_before_it(int size) {
        for (int seed = 0; seed < 100; seed++) {
            List<CaseEvent> before = new ArbitraryEvents(seed).ofCase("k", size);
            List<CaseEvent> after = new ArrayList<>(before);
            Instant at = Instant.parse("2025-01-01T00:00:00Z");
            after.add(new Concluded(new Head("late", "k", at), "dead-fan", Certainty.PROVEN, ""));
            after.add(new Withdrawn(new Head("undo", "k", at), "late", ""));
            assertThat(CaseHistory.fold(after)).isEqualTo(CaseHistory.fold(before));
        }
    }

    @Test
    void without_an_opening_there_is_no_history() {
        assertThat(CaseHistory.fold(List.of())).isEmpty();
        assertThat(CaseHistory.fold(List.of(rail("n", 1, "low")))).isEmpty();
    }

    @Test
    void the_latest_finding_of_a_symptom_stands_and_ties_go_to_the_greater_id() {
        assertThat(railState(rail("b", 2, "low"), rail("a", 1, "absent"))).isEqualTo("low");
        assertThat(railState(rail("b", 2, "low"), rail("a", 2, "absent"))).isEqualTo("low");
    }

    @Test
    void the_last_conclusion_and_the_last_ending_stand() {
        CaseHistory history = fold(
                new Ended(head("e2", 9), Outcome.CAME_BACK, 12, ""),
                new Ended(head("e1", 8), Outcome.FIXED, null, ""),
                new Concluded(head("c2", 7), "dead-fan", Certainty.PROVEN, ""),
                new Concluded(head("c1", 6), "dust", Certainty.SUSPECTED, ""));
        assertThat(history.causeId()).isEqualTo("dead-fan");
        assertThat(history.certainty()).isEqualTo(Certainty.PROVEN);
        assertThat(history.outcome()).isEqualTo(Outcome.CAME_BACK);
    }

    @Test
    void withdrawing_takes_back_and_withdrawing_the_withdrawal_restores() {
        Noted low = rail("n", 1, "low");
        assertThat(railState(low, withdraws("w1", 2, "n"))).isEqualTo("none");
        assertThat(railState(low, withdraws("w1", 2, "n"), withdraws("w2", 3, "w1")))
                .isEqualTo("low");
        assertThat(railState(low, withdraws("w1", 2, "n"), withdraws("w2", 3, "w1"), withdraws("w3", 4, "w2")))
                .isEqualTo("none");
    }

    @Test
    void a_whole_case_can_be_withdrawn_and_restored() {
        Noted low = rail("n", 1, "low");
        assertThat(fold(low, withdraws("w", 2, null)).withdrawn()).isTrue();
        assertThat(fold(low, withdraws("w", 2, null)))
                .extracting(CaseHistory::findings)
                .isEqualTo(low.findings());
        assertThat(fold(low, withdraws("w", 2, null), withdraws("v", 3, "w"))).isEqualTo(fold(low));
    }

    @Test
    void a_withdrawal_counts_even_if_another_benchs_clock_put_it_first() {
        assertThat(railState(rail("n", 5, "low"), withdraws("w", 1, "n"))).isEqualTo("none");
    }

    @Test
    void a_correction_stands_in_place_under_the_id_of_what_it_corrects() {
        CaseHistory history =
                fold(rail("n", 1, "low"), rail("m", 2, "high"), corrects("c", 9, "n", rail("x", 1, "absent")));
        assertThat(history.events()).containsExactly(OPENED, rail("n", 1, "absent"), rail("m", 2, "high"));
        assertThat(history.findings()).containsExactly(Finding.of("rail-12v", "high"));
    }

    @Test
    void of_several_corrections_the_latest_not_taken_back_stands() {
        Noted low = rail("n", 1, "low");
        Corrected first = corrects("c1", 2, "n", rail("x", 1, "absent"));
        Corrected second = corrects("c2", 3, "n", rail("x", 1, "high"));
        assertThat(railState(low, first, second)).isEqualTo("high");
        assertThat(railState(low, first, second, withdraws("w", 4, "c2"))).isEqualTo("absent");
        assertThat(railState(low, first, withdraws("w", 4, "c1"))).isEqualTo("low");
        assertThat(railState(low, first, second, withdraws("w", 4, "n"))).isEqualTo("none");
    }

    @Test
    void a_correction_can_itself_be_corrected() {
        Noted low = rail("n", 1, "low");
        Corrected first = corrects("c1", 2, "n", rail("x", 1, "absent"));
        Corrected ofFirst = corrects("c2", 3, "c1", rail("x", 1, "high"));
        assertThat(railState(low, first, ofFirst)).isEqualTo("high");
        assertThat(railState(low, first, ofFirst, withdraws("w", 4, "c2"))).isEqualTo("absent");
    }

    @Test
    void circles_count_for_nothing_and_long_chains_do_not_overflow() {
        Noted low = rail("n", 1, "low");
        assertThat(railState(low, withdraws("w", 2, "w"))).isEqualTo("low");
        assertThat(railState(low, withdraws("w1", 2, "w2"), withdraws("w2", 3, "w1")))
                .isEqualTo("low");
        List<CaseEvent> chain = new ArrayList<>(List.of(OPENED, low, withdraws("w0", 2, "n")));
        for (int i = 1; i < 20_000; i++) {
            chain.add(withdraws("w" + i, 2, "w" + (i - 1)));
        }
        // 20,000 links: the last, w19999, holds, so the odd ones hold and w0 does not
        assertThat(CaseHistory.fold(chain).orElseThrow().findings()).isEqualTo(low.findings());
    }

    @Test
    void events_of_two_cases_and_two_bodies_under_one_id_are_refused() {
        CaseEvent other = new Withdrawn(new Head("x", "k2", Instant.EPOCH), null, "");
        assertThatThrownBy(() -> CaseHistory.fold(List.of(OPENED, other)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContainingAll("'k1'", "'k2'", "one case at a time");
        assertThatThrownBy(() -> CaseHistory.fold(List.of(OPENED, rail("n", 1, "low"), rail("n", 1, "high"))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContainingAll("'n'", "two different events");
    }
}
