package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What somebody sees who searches. */
class SearchTest {
    @TempDir
    Path home;

    private Run run(String... args) {
        String[] all = Arrays.copyOf(args, args.length + 2);
        all[args.length] = "--home";
        all[args.length + 1] = home.toString();
        return Run.of(all);
    }

    private void recorded(String id, String device, String words, String ended) {
        Run run = run(
                "outcome",
                words,
                "--case",
                id,
                "--device",
                device,
                "--cause",
                "reset-supervisor-failed",
                "--ended",
                ended);
        assertThat(run.code()).as(run.err()).isZero();
    }

    @BeforeEach
    void two_cases() {
        recorded("job-1", "radio", "green lamp, no 12 V, controller silent", "fixed");
        recorded("job-2", "tuner", "green lamp, no 12 V, controller silent, dead keys", "came-back");
    }

    @Test
    void hits_are_marked_counted_and_narrowed() {
        Run all = run("search", "controller silent, no 12 V", "--kind", "case");
        assertThat(all.code()).as(all.err()).isZero();
        assertThat(all.out())
                .contains("[job-1], fixed", "[job-2], came-back")
                .contains("2 found: case 2")
                .contains("by device (--device): radio 1, tuner 1")
                .contains("by outcome (--outcome): fixed 1, came-back 1");
        assertThat(all.out().lines()).allMatch(line -> line.length() <= 80);
        assertThat(run("search", "amplifier shuts off when loud").out()).contains("*loud*");

        assertThat(run("search", "controller silent", "--outcome", "came-back").out())
                .contains("job-2")
                .doesNotContain("job-1");
        assertThat(run("search", "controller silent", "--kind", "case", "--device", "radio")
                        .out())
                .contains("job-1")
                .doesNotContain("job-2");
        assertThat(run("search", "contrller silent").err()).contains("searched for: controller silent");
    }

    @Test
    void cases_like_a_case_and_names_being_typed() {
        assertThat(run("search", "--similar", "job-1").out())
                .contains("[job-2]")
                .doesNotContain("[job-1]");
        assertThat(run("search", "--similar", "job-7").code()).isEqualTo(ExitCode.USAGE);
        assertThat(run("search", "--suggest", "reset superv").out())
                .contains("cause   Reset supervisor failed or drifted [reset-supervisor-failed]");
        assertThat(run("search", "--suggest", "xyzzyx").code()).isEqualTo(ExitCode.NOTHING_FOUND);
    }

    @Test
    void an_entry_shows_its_link_and_is_found_by_it() {
        String link = "benchlore:cause/reset-supervisor-failed";
        assertThat(run("show", "reset-supervisor-failed").out()).endsWith("Link: " + link + "\n");
        assertThat(run("show", link).out()).contains("Link: " + link);
        assertThat(run("show", "job-1").out()).contains("Link: benchlore:case/job-1");
        for (String other : List.of("benchlore:caution/mains", "benchlore:device/printer")) {
            assertThat(run("show", other).out()).endsWith("Link: " + other + "\n");
        }
        Run wrong = run("show", "benchlore:rail/x");
        assertThat(wrong.code()).isEqualTo(ExitCode.USAGE);
        assertThat(wrong.err()).contains("unknown kind 'rail'", "device");
    }

    @Test
    void what_cannot_go_together_is_told() {
        assertThat(run("search").err()).contains("give words", "--similar", "--suggest");
        assertThat(run("search", "words", "--suggest", "sta").code()).isEqualTo(ExitCode.USAGE);
        assertThat(run("search", "--similar", "job-1", "--kind", "cause").err()).contains("go with words");
        assertThat(run("search", "words", "--outcome", "mended").err())
                .contains("unknown outcome 'mended'", "fixed-and-proven");
    }
}
