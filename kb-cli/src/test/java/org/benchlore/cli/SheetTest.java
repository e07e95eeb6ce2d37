package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sheets from the command line. */
class SheetTest {
    private static final String ID = "job-17";

    @TempDir
    Path dir;

    private String home() {
        return dir.resolve("home").toString();
    }

    @BeforeEach
    void record() {
        Run run = Run.of(
                "outcome",
                "green light, no 12 V, controller silent",
                "--case",
                ID,
                "--cause",
                "reset-supervisor-failed",
                "--fix",
                "replace-reset-supervisor",
                "--ended",
                "fixed",
                "--home",
                home());
        assertThat(run.code()).as(run.err()).isZero();
    }

    private Run sheet(String... more) {
        String[] all = new String[more.length + 4];
        all[0] = "sheet";
        all[1] = ID;
        System.arraycopy(more, 0, all, 2, more.length);
        all[more.length + 2] = "--home";
        all[more.length + 3] = home();
        return Run.of(all);
    }

    @Test
    void an_ending_as_fixed_is_doubted_where_the_fault_was_still_found_after_the_work() {
        Run opened = Run.of("case", "open", "boiler trips the breaker", "--home", home());
        String id = opened.out().replaceAll("(?s).*?Opened case (\\S+)\\..*", "$1");
        for (String note : List.of("trips the breaker", "trips breaker gone")) {
            Run noted = Run.of("case", "note", id, note, "--after", "replace-heating-element", "--home", home());
            assertThat(noted.code()).as(noted.err()).isZero();
            Run ended = Run.of(
                    "outcome", "--case", id, "--cause", "heating-element-leaks", "--ended", "fixed", "--home", home());
            if (note.endsWith("gone")) {
                assertThat(ended.err()).doesNotContain("still found");
            } else {
                assertThat(ended.err()).contains("After the work this was still found: trips the breaker");
            }
        }
    }

    @Test
    void the_kind_that_the_words_name_stands_on_the_sheets() {
        String id = Run.text(dir.resolve("home"), "case", "open", "tv, no picture")
                .replaceAll("(?s).*?Opened case (\\S+)\\..*", "$1");
        for (String kind : List.of("case", "handover", "question")) {
            assertThat(Run.text(dir.resolve("home"), "sheet", id, "--kind", kind))
                    .containsPattern("Device: TV[^-]*, by what was told");
        }
    }

    @Test
    void a_sheet_goes_to_standard_output_as_markdown() {
        assertThat(sheet().out()).startsWith("# Case sheet job-17").contains("Outcome: fixed.");
        assertThat(sheet("--kind", "handover").out())
                .startsWith("# Hand-over sheet")
                .contains("is repaired");
        assertThat(sheet("--kind", "question").out()).startsWith("# Question: ").doesNotContain(ID);
    }

    @Test
    void the_name_of_the_file_says_that_it_is_a_page() throws Exception {
        Path page = dir.resolve("sheet.html");
        Run run = sheet("--out", page.toString());

        assertThat(run.code()).isZero();
        assertThat(run.out()).isEmpty();
        assertThat(Files.readString(page)).startsWith("<!DOCTYPE html>").endsWith("</html>\n");
        assertThat(sheet("--format", "html").out()).isEqualTo(Files.readString(page));
    }

    /** What the case taught must not come back as evidence for it: the sheet ranks as if the case had never ended. */
    @Test
    void the_case_is_no_evidence_for_itself() {
        String first = sheet().out();
        String share = first.lines()
                .dropWhile(l -> !l.startsWith("| Cause | Share"))
                .skip(2)
                .findFirst()
                .orElseThrow();
        Run fresh = Run.of(
                "outcome",
                "green light, no 12 V, controller silent",
                "--case",
                "job-18",
                "--ended",
                "given-up",
                "--home",
                dir.resolve("other").toString());
        assertThat(fresh.code()).isZero();
        assertThat(Run.of("sheet", "job-18", "--home", dir.resolve("other").toString())
                        .out())
                .contains(share);
    }

    @Test
    void an_unknown_case_kind_or_folder_is_told() {
        assertThat(Run.of("sheet", "job-1x", "--home", home()).err()).contains("did you mean 'job-17'?");
        assertThat(sheet("--kind", "letter").code()).isEqualTo(ExitCode.USAGE);
        assertThat(sheet("--json").code()).isEqualTo(ExitCode.USAGE);
        Run nowhere = sheet("--out", dir.resolve("none/sheet.html").toString());
        assertThat(nowhere.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(nowhere.err()).contains("no such folder");
    }
}
