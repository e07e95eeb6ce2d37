package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.data.ShippedPacks;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What opening and noting say and store, and how it is found and taken back. */
class CaseNoteTest {
    private static final Pattern ID = Pattern.compile("Opened case (\\S+)\\.");

    @TempDir
    Path home;

    private String id = "";

    private Run run(String... args) {
        return Run.at(home, args);
    }

    private String done(String... args) {
        Run run = run(args);
        assertThat(run.code()).as(run.err()).isZero();
        return run.out();
    }

    private CaseHistory history() {
        try (KnowledgeBase kb =
                KnowledgeBase.builder().packs(ShippedPacks.all()).home(home).open()) {
            return kb.history(id).orElseThrow();
        }
    }

    @BeforeEach
    void open() {
        String out = done("case", "open", "no 12 V, blorf wibble", "--unit", "shelf A");
        Matcher matcher = ID.matcher(out);
        assertThat(matcher.find()).isTrue();
        id = matcher.group(1);
        assertThat(out).contains("Read: 12 V rail absent.").contains("Not understood: \"blorf wibble\".");
    }

    @Test
    void what_was_done_meanwhile_is_no_symptom_and_moves_no_cause_by_its_words() {
        String spill = opened("fan heater, juice spilled into it, works no more");
        String before = causes(spill);
        done("case", "note", spill, "opened, washed with distilled water and ipa, dried 3 days, board is dry");
        assertThat(causes(spill)).isEqualTo(before);
    }

    private String causes(String caseId) {
        String json = done("rank", "--case", caseId, "--json");
        return json.substring(json.indexOf("\"causes\":"), json.indexOf("\"total\":"));
    }

    @Test
    void show_says_which_event_gave_which_finding() {
        done("case", "note", id, "mains fuse blown");
        assertThat(Run.text(home, "show", id)).contains("\"mains fuse blown\"; read: mains fuse blown");
        assertThat(done("show", id, "--json"))
                .containsPattern("\"kind\":\"noted\",\"findings\":\\[\\{\"symptom\":\"mains-fuse\"");
    }

    @Test
    void a_withdrawn_case_shows_why_and_can_be_brought_back() {
        String said = Run.text(home, "case", "withdraw", id, "--reason", "oops, wrong case");
        Matcher again = Pattern.compile("case withdraw \\S+ --event (\\S+)' brings it back")
                .matcher(said);
        assertThat(again.find()).as(said).isTrue();
        assertThat(Run.text(home, "show", id))
                .contains("took back the case; oops, wrong case [" + again.group(1) + "]");
        assertThat(done("show", id, "--json")).contains("\"reason\":\"oops, wrong case\"");
        assertThat(run("case", "note", id, "mains fuse blown").err()).contains(again.group(1));
        assertThat(run("case", "withdraw", id).err())
                .contains("withdrawn already")
                .contains(again.group(1));
        String first = history().events().get(1).head().eventId();
        assertThat(done("case", "withdraw", id, "--event", first)).contains("the case itself stays withdrawn");
        assertThat(done("case", "withdraw", id, "--event", again.group(1))).contains("counts again");
        assertThat(history().withdrawn()).isFalse();
    }

    @Test
    void a_cause_and_work_that_no_pack_knows_are_kept_in_words_and_count_for_no_entry() {
        assertThat(run("outcome", "--case", id, "--fix", "restring-dial-cord", "--cause", "mice", "--ended", "fixed")
                        .err())
                .contains("--fix-note \"what you did\"")
                .contains("--cause-note \"what was wrong\"");
        done(
                "outcome",
                "--case",
                id,
                "--cause-note",
                "mice bit the cord",
                "--fix-note",
                "strung a new cord",
                "--minutes",
                "40",
                "--ended",
                "fixed");
        assertThat(history().causeId()).isEqualTo("unlisted");
        assertThat(Run.text(home, "show", id))
                .contains("[unlisted], proven; mice bit the cord")
                .contains("fix work that no pack knows; strung a new cord");
        assertThat(Run.text(home, "sheet", id, "--kind", "handover"))
                .contains("In our words: mice bit the cord.")
                .contains("- Done: Strung a new cord.");
        assertThat(Run.text(home, "sheet", id, "--kind", "question")).doesNotContain("cord");
        assertThat(run("fixes").out()).doesNotContain("unlisted");
        assertThat(Run.text(home, "search", "strung cord")).contains(id);
    }

    @Test
    void the_unit_s_tag_is_listed_shown_and_found() {
        assertThat(done("case", "list")).contains("shelf A, device not stated");
        assertThat(done("show", id)).contains("device not stated, shelf A;");
        assertThat(done("search", "Shelf A").lines().findFirst().orElseThrow()).startsWith("case");
    }

    @Test
    void an_event_is_taken_back_by_the_id_that_show_gives_and_by_no_other() {
        assertThat(done("case", "note", id, "mains fuse blown")).contains("Read: mains fuse blown.");
        String last = history().events().get(2).head().eventId();
        assertThat(done("show", id)).contains("[" + last + "]");
        Run unknown = run("case", "withdraw", id, "--event", "01m8nosuch");
        assertThat(unknown.code()).isEqualTo(ExitCode.USAGE);
        assertThat(unknown.err()).contains("has no event '01m8nosuch'");
        assertThat(history().events()).hasSize(3);
        done("case", "withdraw", id, "--event", last);
        assertThat(history().events()).hasSize(2);
    }

    @Test
    void what_was_seen_after_a_fix_is_not_held_against_the_fault() {
        done("case", "note", id, "12 V rail 12.1 V", "--after", "replace-reset-supervisor");
        assertThat(history().findingsOfFault()).contains(Finding.of("rail-12v", "absent"));
        done("case", "note", id, "runs an hour", "--after", "replace-reset-supervisor");
        done(
                "outcome",
                "--case",
                id,
                "--cause",
                "reset-supervisor-failed",
                "--fix",
                "replace-reset-supervisor",
                "--ended",
                "fixed");
        CaseHistory ended = history();
        assertThat(ended.events().stream().filter(CaseEvent.FixApplied.class::isInstance))
                .as("one fix, for the cause concluded since")
                .singleElement()
                .extracting(e -> ((CaseEvent.FixApplied) e).causeId())
                .isEqualTo("reset-supervisor-failed");
        assertThat(ended.findingsOfFault()).contains(Finding.of("rail-12v", "absent"));
        assertThat(run("case", "note", id, "x", "--after", "nosuch").code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void a_fix_that_a_note_says_did_not_help_has_failed_and_no_lesser_one_for_that_part_is_offered() {
        id = opened("stereo amp: left channel gone, comes back when you turn it up loud");
        assertThat(done("rank", "--case", id, "--top", "1")).contains("[speaker-relay-oxidised]");
        assertThat(done("case", "note", id, "new relay in, still the same", "--after", "replace-speaker-relay"))
                .contains("[replace-speaker-relay] is held to have failed.");
        assertThat(history().failedFixes()).hasSize(1);
        done("case", "note", id, "no better when warm", "--after", "replace-speaker-relay");
        assertThat(history().fixes()).as("the same work, noted once").hasSize(1);
        done("case", "note", id, "all inputs alike", "--test", "compare-sound-inputs");
        assertThat(done("next", "--case", id, "--top", "20"))
                .doesNotContain("nothing says yet")
                .doesNotContain("[clean-relay-contacts]")
                .doesNotContain("Do next: Compare the inputs");
    }

    @Test
    void what_a_case_teaches_of_a_cause_is_not_turned_round_by_a_fix_that_was_tried_on_it() {
        id = opened("cordless drill runs down soon, pack bulging");
        done("case", "note", id, "cells 2.1 V", "--after", "retire-swollen-pack");
        String out = done(
                "outcome",
                "--case",
                id,
                "--cause",
                "lithium-cell-swollen",
                "--fix",
                "retire-swollen-pack",
                "--ended",
                "not-worth-it",
                "--json");
        JsonNode told = JsonMapper.builder().build().readTree(out);
        assertThat(told.get("after").asDouble())
                .isGreaterThan(told.get("before").asDouble());
    }

    private String opened(String complaint) {
        Matcher matcher = ID.matcher(done("case", "open", complaint));
        assertThat(matcher.find()).isTrue();
        return matcher.group(1);
    }

    @Test
    void minutes_are_kept_for_the_test_or_the_fix_and_otherwise_refused() {
        done("case", "note", id, "runs an hour", "--after", "replace-reset-supervisor", "--minutes", "10");
        assertThat(minutesOfFix()).isEqualTo(10);
        done("case", "note", id, "runs two hours", "--after", "replace-reset-supervisor", "--minutes", "12");
        assertThat(minutesOfFix()).isEqualTo(12);
        assertThat(run("case", "note", id, "hums", "--minutes", "5").err())
                .contains("--minutes goes with --test or --after");
        assertThat(run("case", "note", id, "--test", "measure-rails", "--seen", "1", "--in", "2")
                        .err())
                .contains("--test goes with its result");
    }

    private double minutesOfFix() {
        return history().events().stream()
                .filter(CaseEvent.FixApplied.class::isInstance)
                .map(e -> ((CaseEvent.FixApplied) e).minutes())
                .reduce((a, b) -> {
                    throw new AssertionError("two fixes");
                })
                .orElseThrow();
    }

    @Test
    void a_cause_is_proven_by_a_cure_and_likely_without_one() {
        done("outcome", "--case", id, "--cause", "reset-supervisor-failed", "--ended", "fixed");
        assertThat(history().certainty()).isEqualTo(Certainty.LIKELY);
        done("case", "note", id, "runs an hour", "--after", "replace-reset-supervisor");
        done("outcome", "--case", id, "--cause", "reset-supervisor-failed", "--ended", "fixed");
        assertThat(history().certainty()).isEqualTo(Certainty.PROVEN);
    }

    @Test
    void a_case_of_none_of_the_known_causes_says_so_in_words() {
        done("outcome", "--case", id, "--cause", "unlisted", "--ended", "given-up");
        assertThat(done("show", id))
                .contains("Cause: \"none of the causes known here\" [unlisted]")
                .contains("concluded \"none of the causes known here\" [unlisted]")
                .doesNotContain("unlisted [unlisted]");
        assertThat(done("case", "list"))
                .containsPattern("given\\s+up:\\s+\"none\\s+of\\s+the\\s+causes\\s+known\\s+here\"");
    }

    @Test
    void words_with_the_outcome_of_an_open_case_are_noted_to_it() {
        done("outcome", "fan stopped, very dusty", "--case", id, "--cause", "fan-motor-dead", "--ended", "given-up");
        CaseHistory ended = history();
        assertThat(ended.events().stream().filter(CaseEvent.Opened.class::isInstance))
                .hasSize(1);
        assertThat(ended.unit()).isEqualTo("shelf A");
        assertThat(ended.findingsOfFault())
                .contains(Finding.of("fan-behaviour", "stopped"), Finding.of("rail-12v", "absent"));
    }
}
