package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseEvent.Checked;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.cases.Stakes;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.reading.Reading.Condition;
import org.benchlore.kb.report.Sheets.Format;
import org.benchlore.kb.report.Sheets.Kind;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What stands on each sheet, and what must not. */
class SheetsTest {
    private static final CaseHistory HISTORY = SheetFixture.history("It died in the night, says Mrs Miller", "SN-4711");

    private static String markdown(Kind kind) {
        return SheetFixture.sheets().write(HISTORY, kind, Format.MARKDOWN);
    }

    private static String html(Kind kind) {
        return SheetFixture.sheets().write(HISTORY, kind, Format.HTML);
    }

    private static List<String> headings(String markdown) {
        return markdown.lines()
                .filter(l -> l.startsWith("## "))
                .map(l -> l.substring(3))
                .toList();
    }

    @Test
    void the_case_sheet_holds_the_whole_case() {
        String sheet = markdown(Kind.CASE);

        assertThat(sheet).startsWith("# Case sheet job-1\n");
        assertThat(headings(sheet))
                .containsExactly(
                        "Complaint",
                        "Conclusion and outcome",
                        "Findings",
                        "Tests",
                        "Ranking and why",
                        "Decisions",
                        "Fixes",
                        "Proof",
                        "Course of the case",
                        "Log",
                        "Cautions");
        assertThat(sheet)
                .contains("> It died in the night, says Mrs Miller")
                .contains("**Cause: Fuse open (proven). Outcome: fixed.**")
                .contains("| 12 V rail | fine; 12.1 V on 12 V ±5 %: fine,")
                .contains("before: absent | measured | 7 |")
                .contains("| 3 | Measure the rail | 12 V rail: absent | Within 5 %. | 6 |")
                .contains("| Cause | after 2 | after 3 | after 4 |")
                .contains("| 6 | New fuse | Fuse open | 12 | It died")
                .contains("| K-1 | It tripped. | 2 | 2026-11-20 10:00 | 2026-11-24 11:00 | Also after a pulled plug. |")
                .contains("| K-9 | not known here | 1 |")
                .contains("- Mains: Mains can kill. Unplug first.")
                .contains("- Fumes: Extract at the joint.");
    }

    @Test
    void the_hand_over_sheet_is_plain_and_says_what_is_proven_and_what_is_not() {
        String sheet = markdown(Kind.HANDOVER);

        assertThat(headings(sheet))
                .containsExactly(
                        "What you told us",
                        "What we found",
                        "What we did",
                        "What we saw and measured",
                        "What is proven",
                        "What is not proven",
                        "What to watch",
                        "For your safety");
        assertThat(sheet)
                .contains("**Your unit is repaired. A longer check has not been done yet.**")
                .contains("The fault: Fuse open. We are sure of this.")
                .contains("- Done: New fuse.")
                .contains("| 12 V rail | absent, read 0.3 V, should be 12 V ±5 % (not as it should be)"
                        + " | fine, read 12.1 V, should be 12 V ±5 % (as it should be) |")
                .contains("- 12 V rail: put right, and checked after the work.")
                .contains("- That the repair lasts. The unit has not been through a longer check yet.")
                .contains("- Not written down again after the work: Front lamp; Trip code.")
                .contains("- Of the checks that belong to this repair (1), 1 not written down as done.")
                .contains("There is mains voltage inside.");
        // no shares, no decibans, nothing of the bench's inner trade
        assertThat(sheet).doesNotContain(" dB").doesNotContain("Share").doesNotContain("fumes");
    }

    private static String checked(Kind kind, Outcome outcome, Checked... checks) {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 6));
        events.addAll(List.of(checks));
        events.add(new CaseEvent.Ended(head(99), outcome, null, ""));
        return SheetFixture.sheets().write(CaseHistory.fold(events).orElseThrow(), kind, Format.MARKDOWN);
    }

    private static CaseEvent.Head head(int n) {
        return new CaseEvent.Head(
                "c" + n, "job-1", Instant.parse("2026-11-25T11:01:00Z").plusSeconds(60L * n));
    }

    private static Checked check(int n, String item, Checked.Result result, @Nullable Double hours) {
        return new Checked(head(n), item, result, null, hours, List.of(Condition.WARM), "");
    }

    @Test
    void both_sheets_say_what_was_proven_after_the_fix_from_what_was_checked() {
        Checked[] passed = {
            check(1, "Ten cold starts.", Checked.Result.PASSED, null), check(2, "", Checked.Result.PASSED, 8.0)
        };
        assertThat(checked(Kind.HANDOVER, Outcome.FIXED, passed))
                .contains("**Your unit is repaired. What we have checked so far is listed below.**")
                .contains("- After the repair the unit ran 8 hours without the fault.")
                .contains("- Checked and passed: Ten cold starts.")
                .contains("- That the repair lasts longer than we ran it.")
                .doesNotContain("as checked after the work");
        assertThat(checked(Kind.CASE, Outcome.FIXED, passed))
                .contains("- Of the last fix: New fuse.")
                .contains("- Run since without fault: 8 hours.")
                .contains("| 7 | Ten cold starts. | passed | – | – | warm | – |")
                .contains("| 8 | Run | passed | – | 8 | warm | – |")
                .doesNotContain("Not done:");

        String failed =
                checked(Kind.HANDOVER, Outcome.GIVEN_UP, check(1, "Ten cold starts.", Checked.Result.FAILED, null));
        assertThat(failed).contains("- Checked and failed: Ten cold starts.").doesNotContain("passed:");

        String left =
                checked(Kind.HANDOVER, Outcome.FIXED, check(1, "Ten cold starts.", Checked.Result.NOT_DONE, null));
        assertThat(left)
                .contains("- Of the checks that belong to this repair (1), 1 not written down as done.")
                .contains("A longer check has not been done yet.");
        assertThat(checked(Kind.QUESTION, Outcome.NOT_FIXED, check(1, "Ten cold starts.", Checked.Result.FAILED, 3.0)))
                .contains("- Checked after it: Ten cold starts, failed, 3 hours, warm");
        assertThat(checked(
                        Kind.QUESTION, Outcome.NOT_FIXED, check(1, "as Mrs Miller said", Checked.Result.FAILED, 3.0)))
                .doesNotContain("Miller");
    }

    @Test
    void what_nobody_wrote_down_is_not_claimed_on_the_owner_s_sheet() {
        assertThat(checked(Kind.HANDOVER, Outcome.FIXED_AND_PROVEN))
                .contains("**Your unit is repaired, on the bench's word: no check after the work was written down.**")
                .contains("- That the repair holds. It was handed over as proven on the bench's word;")
                .contains("- Of the checks that belong to this repair (1), 1 not written down as done.")
                .doesNotContain("passed our checks")
                .doesNotContain("ran without the fault");
        assertThat(checked(Kind.HANDOVER, Outcome.FIXED_AND_PROVEN, check(2, "", Checked.Result.PASSED, 8.0)))
                .contains("**Your unit is repaired. What we have checked, and what not, is listed below.**")
                .contains("- After the repair the unit ran 8 hours without the fault.");
        assertThat(checked(
                        Kind.HANDOVER,
                        Outcome.FIXED_AND_PROVEN,
                        check(1, "Ten cold starts.", Checked.Result.PASSED, null)))
                .contains("**Your unit is repaired, and it passed our checks afterwards.**");
    }

    @Test
    void a_cause_that_nothing_written_down_can_have_shown_is_not_called_sure() {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 2));
        events.addAll(HISTORY.events().subList(4, 6));
        events.add(HISTORY.events().get(7));
        assertThat(handover(events))
                .contains("This fits what we saw, but it has not been shown for certain.")
                .contains("- The cause. The bench took it as shown, but what is written down does not show it.")
                .doesNotContain("We are sure");
    }

    @Test
    void a_test_that_cannot_show_the_cause_makes_nobody_sure_of_it() {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 6));
        CaseEvent.Tested other = new CaseEvent.Tested(
                events.get(2).head(), "look-at-lamp", List.of(Finding.of("rail-12v", "absent")), null, "");
        events.set(2, other);
        events.add(new CaseEvent.Ended(head(99), Outcome.FIXED, null, ""));
        assertThat(handover(events)).doesNotContain("We are sure").doesNotContain("shown by a check or by the cure");
    }

    @Test
    void the_owner_reads_what_did_not_help_and_what_came_back() {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 6));
        events.add(new CaseEvent.Ended(head(1), Outcome.FIXED, null, ""));
        events.add(new CaseEvent.Ended(head(2), Outcome.CAME_BACK, 20, ""));
        events.add(new CaseEvent.FixApplied(head(3), "new-fuse", "fuse-open", null, ""));
        events.add(new CaseEvent.FixApplied(head(4), "new-fuse", "fuse-open", null, ""));
        assertThat(handover(events))
                .contains("- Done: New fuse. The fault came back after 20 days.\n"
                        + "- Tried: New fuse. By itself it did not put it right.\n"
                        + "- Done: New fuse.\n");
    }

    @Test
    void a_unit_without_a_device_is_of_the_kind_that_was_told() {
        Terms terms = new Terms(SheetFixture.knowledge("lamp"));
        assertThat(terms.device(DeviceScope.ANY, List.of())).isEqualTo("not stated");
        assertThat(terms.device(DeviceScope.ANY, List.of("no-such"))).isEqualTo("not stated");
        assertThat(terms.devicePath(SheetFixture.SCOPE, List.of("player")))
                .isEqualTo("Corvane (invented), player/corvane");
    }

    @Test
    void a_cause_that_is_none_of_those_known_is_not_said_to_fit() {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 2));
        events.add(new CaseEvent.Noted(head(1), "", Reading.Source.SEEN, List.of(Finding.of("rail-12v", "fine"))));
        events.add(new CaseEvent.Concluded(head(2), CaseEvent.Concluded.UNLISTED, Certainty.LIKELY, ""));
        events.add(new CaseEvent.Ended(head(3), Outcome.RECOVERED_BY_ITSELF, null, ""));
        assertThat(handover(events))
                .contains("- 12 V rail: as it should be when we last looked.")
                .contains("- The cause: none that we know fits.")
                .doesNotContain("It fits");
    }

    @Test
    void where_what_was_wrong_still_shows_after_the_work_nothing_is_sure_and_the_unit_is_not_called_repaired() {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 6));
        events.add(new CaseEvent.Noted(
                head(1),
                "trip code gone, no 12 V",
                Reading.Source.MEASURED,
                List.of(Finding.of("rail-12v", "absent"))));
        events.add(new CaseEvent.Ended(head(99), Outcome.FIXED, null, ""));
        assertThat(handover(events))
                .contains(
                        "**The work on your unit is done, but something that was wrong still showed after it: see below.**")
                .contains("- 12 V rail: still not as it should be after the work.")
                .contains("This fits what we saw, but it has not been shown for certain.")
                .doesNotContain("is repaired")
                .doesNotContain("We are sure")
                .doesNotContain("shown by a check or by the cure");
    }

    @Test
    void what_the_bench_measured_is_not_told_as_the_owner_s_words() {
        List<CaseEvent> events = List.of(new CaseEvent.Opened(
                later("o", 0), SheetFixture.SCOPE, "dead, 12 V rail 0.3 V", "", CaseHistory.OWN, false));
        assertThat(headings(handover(events)))
                .contains("How it came in, in our words")
                .doesNotContain("What you told us");
    }

    @Test
    void a_lithium_battery_is_not_told_of_by_cautions_for_units_of_any_kind() {
        assertThat(handover(HISTORY.events()))
                .contains("There is mains voltage")
                .doesNotContain("lithium");
    }

    @Test
    void the_case_sheet_says_what_the_figures_advised_and_what_was_weighed() {
        CaseEvent.Weighed weighed = new CaseEvent.Weighed(
                new CaseEvent.Head("w", "job-1", Instant.parse("2026-11-25T10:55:00Z")),
                "new-fuse",
                new Stakes(120, 0, 0, 15, 30),
                .8,
                .01,
                Decision.WORK,
                "");
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 4));
        String open = write(events);
        assertThat(open)
                .contains("| After step | What the figures advised | Minutes to go |")
                .contains("| 2 | Stop testing and try: New fuse (10 minutes, cures in ")
                .contains("- The plan from here: about ")
                .contains("- Its likeliest course: fix: New fuse (if it did not help)");
        events.add(weighed);
        events.addAll(HISTORY.events().subList(4, 8));
        assertThat(write(events))
                .contains(
                        "- Step 6, weighed: New fuse: work 69, parts 15, leave 0 (success 80 %, harm 1 %); decided to do"
                                + " the work.")
                .doesNotContain("The plan from here");
    }

    private static CaseEvent.Head later(String id, int minute) {
        return new CaseEvent.Head(
                id, "job-1", Instant.parse("2026-11-25T11:00:00Z").plusSeconds(60L * minute));
    }

    private static String handover(List<CaseEvent> events) {
        return SheetFixture.sheets().write(CaseHistory.fold(events).orElseThrow(), Kind.HANDOVER, Format.MARKDOWN);
    }

    @Test
    void the_owner_of_a_unit_without_a_fault_is_told_how_long_it_ran_and_what_to_bring() {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 1));
        events.add(new Checked(later("r", 1), "", Checked.Result.PASSED, null, 48.0, List.of(), ""));
        events.add(new CaseEvent.Ended(later("z", 2), Outcome.NO_FAULT_FOUND, null, ""));

        assertThat(handover(events))
                .contains("**We found nothing broken in the unit.**")
                .contains("What you told us did not show while the unit was with us.")
                .contains("- Trial run: 48 hours.")
                .contains("- It ran 48 hours here without the fault.")
                .contains("Bring the leads, and the adapter if it has one")
                .doesNotContain("What caused the fault");
    }

    @Test
    void the_owner_who_left_a_unit_as_it_is_reads_that_and_what_to_keep_an_eye_on() {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 2));
        events.add(new CaseEvent.Weighed(
                later("w", 1), "new-fuse", new Stakes(120, 100, 0, 0, 30), .8, .05, Decision.LEAVE, ""));
        events.add(new CaseEvent.Ended(later("z", 2), Outcome.NOT_WORTH_IT, null, ""));

        assertThat(handover(events))
                .contains("**The work was weighed, and it was decided to leave the unit as it is.**")
                .contains("- Thought over: New fuse. It was decided to leave the unit as it is.")
                .contains("- Keep an eye on: Front lamp: dark.")
                .doesNotContain("would cost more than it is worth");
    }

    @Test
    void words_that_made_no_finding_move_the_ranking_on_the_sheet_as_they_do_everywhere() {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 1));
        events.add(new CaseEvent.Noted(
                later("n", 1), "it died of old age", Reading.Source.OWNER, List.of(Finding.of("lamp", "dark"))));
        assertThat(write(events)).contains("the wording of the notes (+");
    }

    @Test
    void a_unit_that_came_back_is_not_called_finished_nor_repaired_if_nobody_repaired_it() {
        List<CaseEvent> events = new ArrayList<>(HISTORY.events().subList(0, 2));
        events.add(new CaseEvent.Ended(later("z", 2), Outcome.CAME_BACK, null, ""));
        assertThat(handover(events))
                .contains("**The fault came back. The work is not finished.**")
                .contains("- Last entry: 25 November 2026")
                .doesNotContain("Finished:")
                .doesNotContain("after the repair");
    }

    @Test
    void an_interval_is_told_as_wide_as_it_is() {
        assertThat(Terms.range(.004, .96)).isEqualTo("under 96 %");
        assertThat(Terms.range(.03, .999)).isEqualTo("over 3 %");
        assertThat(Terms.range(.004, .999)).isEqualTo("anywhere");
        assertThat(Terms.range(.03, .4)).isEqualTo("3 % to 40 %");
    }

    private static String write(List<CaseEvent> events) {
        return SheetFixture.sheets().write(CaseHistory.fold(events).orElseThrow(), Kind.CASE, Format.MARKDOWN);
    }

    @Test
    void the_owner_is_told_that_a_rare_fault_takes_longer_to_be_sure_of() {
        Checked seen = new Checked(
                new CaseEvent.Head("c0", "job-1", Instant.parse("2026-11-25T10:25:00Z")),
                "",
                Checked.Result.FAILED,
                3,
                24.0,
                List.of(),
                "");
        assertThat(checked(Kind.HANDOVER, Outcome.FIXED, seen, check(2, "", Checked.Result.PASSED, 1.0)))
                .contains("It showed 3 times in 24 hours before the repair, so it takes about ")
                .contains("more without it to be fairly sure.");
        assertThat(checked(Kind.CASE, Outcome.FIXED, seen))
                .contains("- Fault seen 3 times in 24 hours of run before.")
                .contains("- Still there with ");
    }

    @Test
    void the_question_sheet_names_nobody() {
        for (Format format : Format.values()) {
            String sheet = SheetFixture.sheets().write(HISTORY, Kind.QUESTION, format);
            assertThat(sheet)
                    .doesNotContain("Miller")
                    .doesNotContain("4711")
                    .doesNotContain("job-1")
                    .doesNotContain("2026")
                    .doesNotContain("K-9");
        }
        String sheet = markdown(Kind.QUESTION);
        assertThat(headings(sheet))
                .containsExactly(
                        "Unit",
                        "Findings",
                        "Tested",
                        "Tried",
                        "Suspected",
                        "Ruled out, as far as can be",
                        "Not yet known",
                        "Log, summarised");
        assertThat(sheet)
                .contains("- Device: Corvane (invented), player/corvane")
                .contains(
                        "| Measure the rail | 12 V rail: absent (0.3 V on 12 V ±5 %: absent, >99.9 %) | Within 5 %. |")
                .contains("| K-1 | It tripped. | 2 | 5 days | Also after a pulled plug. |")
                .contains("1 further code not known here.");
    }

    @Test
    void a_cause_shut_out_by_one_finding_is_named_with_that_finding() {
        CaseHistory dark = SheetFixture.history("", "");
        List<CaseEvent> untilTested = dark.events().subList(0, 3);
        String sheet = SheetFixture.sheets()
                .write(CaseHistory.fold(untilTested).orElseThrow(), Kind.QUESTION, Format.MARKDOWN);

        assertThat(sheet).contains("- Regulator tired, because ");
        assertThat(sheet.split("Regulator tired", -1))
                .as("one list only, suspected or ruled out")
                .hasSize(2);
        assertThat(sheet).contains("- Read the log: would show Trip code");
    }

    @Test
    void a_case_just_opened_has_a_sheet_of_every_kind() {
        CaseHistory opened = CaseHistory.fold(List.of(new CaseEvent.Opened(
                        new CaseEvent.Head("e", "job-2", Instant.EPOCH),
                        SheetFixture.SCOPE,
                        "",
                        "",
                        CaseHistory.OWN,
                        false)))
                .orElseThrow();
        for (Kind kind : Kind.values()) {
            for (Format format : Format.values()) {
                assertThat(SheetFixture.sheets().write(opened, kind, format)).endsWith("\n");
            }
        }
        assertThat(SheetFixture.sheets().write(opened, Kind.HANDOVER, Format.MARKDOWN))
                .contains("not finished yet")
                .contains("We did not repair anything.");
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void a_page_is_one_file_that_needs_nothing_and_runs_nothing(Kind kind) {
        String page = html(kind);

        assertThat(page).startsWith("<!DOCTYPE html>").endsWith("</html>\n");
        assertThat(page)
                .contains("<meta charset=\"utf-8\">")
                .contains("width=device-width")
                .contains("prefers-color-scheme: dark")
                .contains("@page { size: A4")
                .contains("default-src 'none'");
        assertThat(page.replace("xmlns=\"http://www.w3.org/2000/svg\"", ""))
                .doesNotContain("<script")
                .doesNotContain("<a ")
                .doesNotContain("<img")
                .doesNotContain("<link")
                .doesNotContain("@import")
                .doesNotContain("url(")
                .doesNotContain("://");
    }

    @Test
    void the_case_page_draws_ranking_events_and_log() {
        String page = html(Kind.CASE);

        assertThat(page.split("<svg ", -1)).hasSize(4);
        assertThat(page).contains("<title>Ranking over time. Fuse open: ").contains("<title>8 events from 2026-11-25");
        assertThat(page).contains("<title>Log from 2026-11-20 10:00 to 2026-11-24 11:30, 2 codes</title>");
        assertThat(page).contains("<td class=\"short\" data-head=\"Step\">3</td>");
        // three rankings before the fix, three dots on each curve; two causes
        assertThat(page.split("class=\"dot k", -1)).hasSize(1 + 3 * 2);
    }
}
