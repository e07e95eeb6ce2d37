package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.cases.Stakes;
import org.benchlore.kb.data.ShippedPacks;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The guided run as a process of its own, fed through a pipe, killed in the middle, and gone on with. */
class WorkTest {
    private static final Pattern STORED_AS = Pattern.compile("Stored as case (\\S+)\\.");

    @TempDir
    Path dir;

    private Process start(String... more) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Benchlore.class.getName(),
                "work",
                "--home",
                dir.resolve("home").toString()));
        command.addAll(List.of(more));
        return new ProcessBuilder(command)
                .redirectError(dir.resolve("err").toFile())
                .start();
    }

    /** Feeds lines, closes the pipe, and gives all that was said; the process ends by itself. */
    private String whole(List<String> lines, String... more) throws Exception {
        Process process = start(more);
        try (Writer in = process.outputWriter(StandardCharsets.UTF_8)) {
            in.write(String.join("\n", lines) + "\n");
        }
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(out + err()).isZero();
        return out;
    }

    private String err() throws IOException {
        return Files.readString(dir.resolve("err"));
    }

    private CaseHistory history(String id) {
        try (KnowledgeBase kb = KnowledgeBase.builder()
                .packs(ShippedPacks.all())
                .home(dir.resolve("home"))
                .open()) {
            return kb.history(id).orElseThrow();
        }
    }

    private static String caseId(String out) {
        Matcher matcher = STORED_AS.matcher(out);
        assertThat(matcher.find()).as(out).isTrue();
        return matcher.group(1);
    }

    @Test
    void a_command_of_the_command_line_is_no_note_and_words_in_place_of_a_number_are_not_lost() throws Exception {
        String out = whole(List.of(
                "no 12 V, controller silent",
                "rank",
                "Next",
                "search",
                "fix",
                "fan is loud too",
                "cause",
                "?",
                "plan",
                ""));
        assertThat(out).contains("'rank' is not stored: here it is 'why'.");
        assertThat(out).contains("'next' is not stored: here it is 'test'.");
        assertThat(out).contains("'search' is not stored: leave with 'stop'");
        assertThat(out).contains("Plan: about");
        assertThat(history(caseId(out)).texts()).containsExactly("no 12 V, controller silent", "fan is loud too");
    }

    @Test
    void why_power_stays_off_is_said_at_length_once() throws Exception {
        String out = whole(List.of("laptop battery swollen, runs ten minutes", "hinge is loose", "fan is loud", "stop"))
                .replaceAll("\\s+", " ");
        assertThat(out.split("Power stays off: ", -1)).hasSize(2);
        assertThat(out).contains("Power still off: a swollen pack can catch fire");
    }

    @Test
    void killed_in_the_middle_it_has_lost_nothing_and_goes_on_to_the_end() throws Exception {
        Process process = start();
        String id = "";
        try (Writer in = process.outputWriter(StandardCharsets.UTF_8);
                BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            in.write("green light, but it does nothing\nno 12 V, controller silent\ntest\n");
            in.flush();
            StringBuilder said = new StringBuilder();
            // the test is on the screen and its result not yet given: now the lid closes
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                said.append(line).append('\n');
                if (line.startsWith("What did it show?")) {
                    break;
                }
            }
            id = caseId(said.toString());
            process.toHandle().destroyForcibly();
            process.waitFor();
        }
        assertThat(process.exitValue()).isNotZero();

        CaseHistory killed = history(id);
        assertThat(killed.outcome()).isNull();
        assertThat(killed.findings())
                .contains(Finding.of("rail-12v", "absent"), Finding.of("controller-response", "silent"));

        String out = whole(List.of(
                "1",
                "test",
                "1",
                "cause",
                "1",
                "3",
                "fix",
                "1",
                "12",
                "yes",
                "p 2 h warm",
                "P 12 V steady",
                "",
                "run",
                "0",
                "run",
                "5",
                "0",
                "",
                "end",
                "1",
                "ran all night"));
        assertThat(out).contains("Open cases:").contains(id).contains("Stored: fixed-and-proven.");

        CaseHistory ended = history(id);
        assertThat(ended.outcome()).isEqualTo(Outcome.FIXED_AND_PROVEN);
        assertThat(ended.causeId()).isNotNull();
        assertThat(ended.events().stream().map(e -> e.getClass().getSimpleName()))
                .containsExactly(
                        "Opened",
                        "Noted",
                        "Noted",
                        "Tested",
                        "Concluded",
                        "FixApplied",
                        "Checked",
                        "Checked",
                        "Checked",
                        "Ended");
        CaseEvent.FixApplied fix = (CaseEvent.FixApplied) ended.events().get(5);
        assertThat(fix.causeId()).isEqualTo(ended.causeId());
        assertThat(fix.minutes()).isEqualTo(12.0);
        CaseEvent.Checked first = (CaseEvent.Checked) ended.events().get(6);
        assertThat(first.hours()).isEqualTo(2);
        assertThat(first.conditions()).containsExactly(Reading.Condition.WARM);
        CaseEvent.Checked second = (CaseEvent.Checked) ended.events().get(7);
        assertThat(second.hours()).isNull();
        assertThat(second.note()).isEqualTo("12 V steady");
        assertThat(((CaseEvent.Checked) ended.events().get(8)).isRun()).isTrue();
        CaseEvent.Ended last = (CaseEvent.Ended) ended.events().get(9);
        assertThat(last.note()).isEqualTo("ran all night");
    }

    @Test
    void decisions_are_offered_kept_and_gone_on_with() throws Exception {
        String out = whole(List.of(
                "picture drops out from time to time",
                "run",
                "6",
                "2",
                "warm",
                "no 12 V, controller silent",
                "plan",
                "doubt",
                "worth",
                "1",
                "120",
                "",
                "",
                "15",
                "30",
                "work"));
        assertThat(out)
                .contains("It comes and goes: 'run' keeps how often it shows")
                .contains("Fault seen 2 times in 6 h of run, warm.")
                .contains("Next: 'test' - ")
                .contains("Expected minutes, parts and an unrepaired unit counted at their cost")
                .contains("What would change this")
                .contains("Best: ")
                .contains("Stored: decided to do the work.");
        String id = caseId(out);
        CaseEvent.Weighed weighed = history(id).events().stream()
                .filter(CaseEvent.Weighed.class::isInstance)
                .map(CaseEvent.Weighed.class::cast)
                .findFirst()
                .orElseThrow();
        assertThat(weighed.decided()).isEqualTo(Decision.WORK);
        assertThat(weighed.stakes()).isEqualTo(new Stakes(120, 0, 0, 15, 30));

        String fixed = whole(List.of("fix", "1", "10", "", "stop"), id);
        assertThat(fixed).contains("'proof' goes through what proves it");
        String told = whole(List.of("no change, still no 12 V", "undo", "undo", "stop"), id);
        assertThat(told)
                .containsPattern("is\\s+held to have failed\\. 'undo' takes that back\\.")
                .contains("Next: 'test' - ");
        assertThat(history(id).failedFixes()).isEmpty();
        String proof = whole(List.of("proof", "p", "f", "stop"), id);
        assertThat(proof)
                .contains("Done: ")
                .contains("That speaks against the fix")
                .contains("Next: 'test' - ");
        assertThat(proof.lines()
                        .filter(line -> line.startsWith(" 1."))
                        .distinct()
                        .count())
                .as("another cause leads")
                .isEqualTo(2);
        assertThat(history(id).failedFixes()).hasSize(1);
        String sheet =
                Run.of("sheet", id, "--home", dir.resolve("home").toString()).out();
        assertThat(sheet)
                .contains("## Decisions")
                .contains("; decided to do the work.")
                .contains("- The plan from here: about ")
                .contains("It did not cure.");
    }

    @Test
    void what_nothing_proves_does_not_end_as_proven() throws Exception {
        String id = caseId(
                whole(List.of("no 12 V, controller silent", "1", "end", "1", "1", "3", "1", "", "no proof yet")));

        CaseHistory ended = history(id);
        assertThat(ended.outcome()).isEqualTo(Outcome.FIXED);
        assertThat(ended.cure()).isPresent();
        assertThat(ended.events().stream().map(e -> e.getClass().getSimpleName()))
                .as("the number alone is no note")
                .containsExactly("Opened", "Noted", "Concluded", "FixApplied", "Ended");
    }

    @Test
    void a_run_that_shows_the_fault_does_not_end_a_case_as_proven() throws Exception {
        String id = caseId(whole(List.of("no 12 V, controller silent", "end", "1", "1", "3", "1", "4 h", "1", "")));

        assertThat(history(id).outcome()).isNull();
        assertThat(history(id).failedFixes()).hasSize(1);
    }

    @Test
    void words_that_make_no_finding_rank_by_the_words_of_the_entries() throws Exception {
        String out = whole(List.of("padlock on the platter, grinder in the attic", "stop"));

        assertThat(out).contains("none of the causes known here").doesNotContain("Nothing to rank");
    }

    @Test
    void a_finding_against_the_leader_offers_a_second_look() throws Exception {
        String out = whole(List.of("no light, fuse blown", "mains fuse is fine", "stop"));
        assertThat(out).contains("mains fuse intact speaks against Primary switch shorted");
    }

    @Test
    void words_move_the_ranking_undo_moves_it_back_and_the_end_of_input_leaves_the_case_open() throws Exception {
        String out = whole(List.of("it is dead", "12 V missing", "undo", "blorf wibble", "?"));

        assertThat(out)
                .contains("12 V rail absent")
                .contains("(was ")
                .contains("Taken back: ")
                .contains("not understood: \"blorf")
                .contains("undo: take back the last step")
                .contains("Everything is stored. Go on with 'benchlore work ");
        CaseHistory history = history(caseId(out));
        assertThat(history.outcome()).isNull();
        assertThat(history.findings()).noneMatch(f -> f.symptomId().equals("rail-12v"));
        assertThat(history.events()).hasSize(3); // opened, its words, and the note that nobody understood
    }

    @Test
    void a_reading_alone_is_the_result_of_the_test_that_asked_for_it() throws Exception {
        String id = caseId(whole(List.of("no light, nothing happens")));
        List<String> lines = new ArrayList<>(List.of("test"));
        // whatever is proposed first: go on until a test reads volts of one rail only
        for (int i = 0; i < 12; i++) {
            lines.add("0.2 V");
            lines.add("other");
        }
        String out = whole(lines, id);

        CaseHistory history = history(id);
        assertThat(history.events()).as(out).anyMatch(CaseEvent.Tested.class::isInstance);
        CaseEvent.Tested tested = history.events().stream()
                .filter(CaseEvent.Tested.class::isInstance)
                .map(CaseEvent.Tested.class::cast)
                .findFirst()
                .orElseThrow();
        assertThat(tested.note()).isEqualTo("0.2 V");
        assertThat(tested.findings()).hasSize(1);
        assertThat(tested.findings().get(0).state()).isEqualTo("absent");
    }

    @Test
    void a_log_is_pasted_whole_and_hostile_lines_reach_neither_store_nor_terminal() throws Exception {
        String out = whole(List.of(
                "dead, \u001b[2Jcleared",
                "nul \0 line",
                "log",
                "first line of the log",
                "second line",
                ".",
                "stop",
                "never read"));

        assertThat(out).doesNotContain("\u001b").doesNotContain("\0").contains("That line is not text");
        CaseHistory history = history(caseId(out));
        assertThat(history.events()).hasSize(3);
        assertThat(((CaseEvent.Noted) history.events().get(2)).text())
                .isEqualTo("first line of the log\nsecond line\n");
    }

    @Test
    void a_command_or_an_id_is_no_result_and_no_first_complaint() throws Exception {
        String out = whole(List.of(
                "?",
                "fix",
                "no light, nothing happens",
                "test",
                "?",
                "replace-reset-supervisor",
                "undo",
                "end",
                "2",
                "",
                "",
                "",
                "stop"));
        assertThat(out)
                .contains("There is no case yet: say what is wrong with the unit")
                .contains("That is a fix and no result")
                .contains("The test is left without a result.")
                .contains("Taken back: ")
                .contains("Neither a cause nor a fix is noted");
        CaseHistory history = history(caseId(out));
        assertThat(history.complaint()).isEqualTo("no light, nothing happens");
        assertThat(history.outcome()).isNull();
        assertThat(history.events()).noneMatch(CaseEvent.Tested.class::isInstance);
    }

    @Test
    void whoever_says_quit_leaves_and_it_is_no_note() throws Exception {
        for (String word : List.of("quit", "Exit", "q")) {
            String out = whole(List.of("no light, nothing happens", word, "never read"));
            assertThat(out).contains("Everything is stored. Go on with 'benchlore work ");
            assertThat(history(caseId(out)).events()).hasSize(2);
        }
    }

    @Test
    void nothing_entered_stores_nothing() throws Exception {
        Process process = start();
        process.getOutputStream().close();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isEqualTo(ExitCode.NOTHING_FOUND);
        assertThat(Run.of("case", "list", "--home", dir.resolve("home").toString())
                        .code())
                .isEqualTo(ExitCode.NOTHING_FOUND);
    }
}
