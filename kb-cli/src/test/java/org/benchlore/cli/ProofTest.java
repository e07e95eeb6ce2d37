package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A proof from the command line: what the case knows, what is stored, what is said of it. */
class ProofTest {
    private static final String ID = "job-3";

    @TempDir
    Path home;

    private Run run(String... args) {
        return Run.at(home, args);
    }

    private String done(String... args) {
        Run run = run(args);
        assertThat(run.code()).as(run.err()).isZero();
        return run.out();
    }

    @BeforeEach
    void open() {
        done("outcome", "no 12 V now and then", "--case", ID, "--ended", "not-fixed");
    }

    private void fix() {
        done(
                "outcome",
                "--case",
                ID,
                "--cause",
                "reset-supervisor-failed",
                "--fix",
                "replace-reset-supervisor",
                "--ended",
                "fixed");
    }

    @Test
    void without_a_case_numbers_alone_give_the_hours() {
        assertThat(done("proof", "--fix", "replace-reset-supervisor", "--seen", "3", "--in", "24", "--hours", "10"))
                .contains("Proof of: ")
                .contains("Fault seen 3 times in 24 h of run before the fix.")
                .contains("10 h run without fault: still there with ")
                .contains("1. to do");
        assertThat(run("proof").err()).contains("how often was the fault seen?");
        assertThat(run("proof", "--seen", "3").err()).contains("--seen and --in go together");
        assertThat(run("proof", "--passed", "1").err()).contains("name it with --case");
        assertThat(run("proof", "--case", ID, "--fix", "x").err()).contains("--fix goes without --case");
    }

    @Test
    void a_unit_that_never_left_cannot_have_come_back() {
        done("case", "note", ID, "dead again");
        done("outcome", "no 12 V", "--case", "job-4", "--ended", "fixed");
        String open = Run.text(home, "case", "open", "no 12 V").replaceAll("(?s).*?Opened case (\\S+)\\..*", "$1");
        assertThat(run("outcome", "--case", open, "--ended", "came-back").err()).contains("has not ended yet");
        done("outcome", "--case", "job-4", "--ended", "came-back");
        assertThat(done("rank", "--case", "job-4")).contains("This unit came back");
    }

    @Test
    void a_step_told_in_its_own_words_is_that_step_and_a_failure_without_hours_gives_no_rate() {
        fix();
        String step = done("proof", "--case", ID)
                .lines()
                .filter(line -> line.contains("1. to do"))
                .findFirst()
                .orElseThrow()
                .replaceAll(".*to do\\s+", "");
        String words = String.join(" ", List.of(step.split(" ")).subList(0, 3));
        String passed = done("proof", "--case", ID, "--passed", words);
        assertThat(passed).contains("1. passed").doesNotContain(words + "\n");
        done("proof", "--case", ID, "--failed", "gone again, quite something else");
        fix();
        assertThat(done("proof", "--case", ID)).doesNotContain("in 0 h");
    }

    @Test
    void the_case_tells_fix_sightings_and_hours_and_keeps_what_was_checked() {
        done("case", "note", ID, "dropped out on the bench", "--seen", "3", "--in", "24", "--condition", "warm");
        assertThat(done("proof", "--case", ID))
                .contains("Fault seen 3 times in 24 h of run, warm.")
                .contains("No fix was noted in this case yet.");
        assertThat(run("proof", "--case", ID, "--passed", "1").err()).contains("no fix to prove yet");
        fix();
        String passed = done("proof", "--case", ID, "--passed", "1", "--hours", "2.5", "--condition", "warm");
        assertThat(passed).contains("1. passed").contains("2.5 h, warm").contains("2.5 h run without fault");
        assertThat(done("proof", "--case", ID, "--hours", "6", "--condition", "cold"))
                .contains("6 h more do not count: not known to be warm, as the fault was seen.");
        assertThat(done("proof", "--case", ID, "--not-done", "2")).contains("2. not done");
        assertThat(done("show", ID))
                .contains("run - fault seen 3x, 24 h, warm")
                .contains("run - no fault seen, 6 h, cold");
        assertThat(done("sheet", ID, "--kind", "handover")).contains("ran 8.5 hours without the fault");
    }

    @Test
    void a_failed_step_takes_the_fix_for_no_cure_everywhere() {
        fix();
        assertThat(done("proof", "--case", ID, "--failed", "dead again after an hour", "--hours", "1"))
                .contains("It did not cure")
                .contains("failed    dead again after an hour");
        assertThat(done("case", "list", "--open")).contains(ID);
        assertThat(done("show", ID)).contains("Outcome: not fixed");
        assertThat(done("fixes", "replace-reset-supervisor")).contains("tried 1, worked 0");
        assertThat(done("sheet", ID, "--kind", "handover"))
                .contains("The repair we tried did not help.")
                .contains("- Checked and failed: dead again after an hour");
    }

    @Test
    void a_case_that_ends_as_proven_with_nothing_to_show_for_it_is_told_so() {
        fix();
        Run run = run("outcome", "--case", ID, "--ended", "fixed-and-proven");
        assertThat(run.code()).isZero();
        assertThat(run.err()).contains("holds no check and no run after the work");
        assertThat(done("sheet", ID, "--kind", "handover")).contains("on the bench's word");
        done("proof", "--case", ID, "--hours", "4");
        Run partly = run("outcome", "--case", ID, "--ended", "fixed-and-proven");
        assertThat(partly.err()).isEmpty();
        assertThat(partly.out()).contains("The proof is not complete").contains("not done");
    }

    @Test
    void what_cannot_be_is_refused_in_a_sentence() {
        fix();
        assertThat(run("proof", "--case", ID, "--seen", "0", "--in", "0").err()).contains("nothing to prove against");
        assertThat(run("proof", "--case", ID, "--passed", "99").err()).contains("step 99 is not on the list");
        assertThat(run("proof", "--case", ID, "--passed", "1", "--passed", "2", "--hours", "3")
                        .err())
                .contains("--hours goes with one step");
        assertThat(run("proof", "--case", ID, "--hours", "1", "--condition", "hot")
                        .err())
                .contains("use cold, warm, under-load");
        assertThat(run("proof", "--case", ID, "--condition", "warm").err()).contains("go with a step");
        assertThat(run("proof", "--case", ID, "--hours", "-1").code()).isEqualTo(ExitCode.USAGE);
        assertThat(run("proof", "--case", ID, "--hours", "0").code()).isEqualTo(ExitCode.USAGE);
        assertThat(run("case", "note", ID, "--seen", "2").err()).contains("--seen and --in go together");
        assertThat(run("case", "note", ID, "--seen=-2", "--in", "3").err()).contains("0 for never");
    }
}
