package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Importing whole histories: look first, then store, and nothing twice. */
class ImportTest {
    private static final String DIARY = """
            12.3.2024 S/N C3-0417, fuse blown after a storm. replaced the mains fuse, ran two days, ok
            13.3.2024 S/N C3-0981, no 12 V. replaced C412, no change. gave up
            31.2.2024 no picture
            """;

    @TempDir
    Path dir;

    private Run run(String... args) {
        List<String> all = new ArrayList<>(List.of(args));
        all.addAll(List.of("--home", dir.resolve("home").toString()));
        return Run.of(all.toArray(String[]::new));
    }

    private String file(String name, String text) throws IOException {
        Path file = dir.resolve(name);
        Files.writeString(file, text);
        return file.toString();
    }

    @Test
    void entries_of_another_bench_s_pack_are_told_when_they_come_in_and_where_they_stand() throws IOException {
        run("outcome", "no 12 V", "--case", "k1", "--cause", "reset-supervisor-failed", "--ended", "given-up");
        String lines = run("export").out().replace("reset-supervisor-failed", "dial-cord-broken");
        String other = dir.resolve("other").toString();
        Run imported = Run.of("import", file("cases.jsonl", lines), "--home", other);
        assertThat(imported.code()).as(imported.err()).isZero();
        assertThat(imported.err())
                .contains("no pack here knows dial-cord-broken")
                .contains("HOME/packs");
        assertThat(Run.text(Path.of(other), "show", "k1")).contains("no pack here knows dial-cord-broken");
        assertThat(run("show", "k1").out()).doesNotContain("no pack here");
    }

    @Test
    void a_dry_run_shows_each_case_and_stores_nothing() throws IOException {
        Run dry = run("import", "--dry-run", file("diary.txt", DIARY));

        assertThat(dry.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(dry.out())
                .containsPattern("diary.txt:1\\s+2024-03-12\\s+device\\s+unknown\\s+C3-0417")
                .contains("Replace the mains fuse (\"replaced the mains fuse\")")
                .contains("fixed-and-proven (\"ran two days, ok\")")
                .contains("none that the packs know by these words (\"replaced C412\")")
                .contains("given-up (\"gave up\")")
                .contains("2 cases would be stored")
                .contains("Nothing was stored");
        assertThat(dry.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(110));
        assertThat(dry.err()).contains("diary.txt:3: there is no such day");
        assertThat(run("case", "list").out()).doesNotContain("C3-0417");
    }

    @Test
    void several_attempts_are_shown_in_their_order() throws IOException {
        String text = "1.3.2024 disc not read. cleaned the lens, no change. replaced C412, works again\n";
        assertThat(run("import", "--dry-run", file("tries.txt", text)).out())
                .containsSubsequence("fix      Clean the lens", "ended    not-fixed", "fix ", "ended    fixed");
    }

    @Test
    void what_was_asked_for_is_stored_once() throws IOException {
        String diary = file("diary.txt", DIARY);
        Run first = run("import", diary);
        assertThat(first.out().replaceAll("\\s+", " ")).contains("2 cases, ").contains(" 0 known already");
        Run second = run("import", diary);
        assertThat(second.out()).contains("2 cases, 0 new events");

        Run copy = run("import", file("copy.txt", DIARY));
        assertThat(copy.out()).contains("2 near-duplicates left out").contains("--near-duplicates keep");
        assertThat(run("import", "--near-duplicates", "keep", file("copy.txt", DIARY))
                        .out())
                .doesNotContain("left out");
    }

    @Test
    void a_guessed_mapping_is_shown_written_and_taken_back() throws IOException {
        String table = file("jobs.csv", "day;complaint;end\n1.3.2024;no 12 V, dead;RDY\n");
        Path mapping = dir.resolve("jobs.map");
        Run dry = run("import", "--dry-run", "--write-mapping", mapping.toString(), table);
        assertThat(dry.out())
                .contains("Columns, guessed")
                .contains("date = day")
                .contains("outcome = end");
        assertThat(dry.out()).contains("unknown  device, serial number, cause, fix, outcome");

        Files.writeString(mapping, Files.readString(mapping) + "outcome:RDY = fixed\n");
        Run mapped = run("import", "--dry-run", "--mapping", mapping.toString(), table);
        assertThat(mapped.out()).contains("Columns, as mapped").contains("ended    fixed");

        Files.writeString(mapping, "outcome:RDY = great\n");
        Run wrong = run("import", "--dry-run", "--mapping", mapping.toString(), table);
        assertThat(wrong.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(wrong.err()).contains("jobs.map:1: 'great' is no outcome");
    }

    @Test
    void make_and_model_that_no_pack_knows_are_found_again() throws IOException {
        run("import", file("jobs.csv", "Job;Make;Model;Complaint\n1;Bellwick;BM2;no 12 V\n"));
        assertThat(run("search", "Bellwick").out().replace("*", "")).contains("Bellwick BM2");
    }

    @Test
    void a_file_whose_name_tells_nothing_needs_a_kind() throws IOException {
        String file = file("bench.log", DIARY);
        Run unknown = run("import", file);
        assertThat(unknown.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(unknown.err().lines()).hasSize(1);
        assertThat(unknown.err()).contains("--as diary");
        assertThat(run("import", "--as", "diary", file).out()).contains("2 cases");
    }

    @Test
    void nothing_that_a_terminal_obeys_comes_through() throws IOException {
        String diary = file("evil.txt", "1.3.2024 sn A\u001b[2J1 no 12 V \u0007\u202e. replaced C\u001b5\n");
        Run dry = run("import", "--dry-run", diary);
        assertThat(dry.out() + dry.err())
                .doesNotContain("\u001b")
                .doesNotContain("\u0007")
                .doesNotContain("\u202e");
    }

    @Test
    void lines_of_json_are_decoded_as_other_sources_are() throws IOException {
        String line = "{\"schema\":\"benchlore/case/1\",\"id\":\"lat1\",\"opened\":\"2024-03-12\","
                + "\"complaint\":\"Gerät tot, no sound\"}\n";
        for (String charset : List.of("windows-1252", "UTF-8", "UTF-16")) {
            Path file = dir.resolve(charset + ".jsonl");
            Files.write(file, line.getBytes(Charset.forName(charset)));
            String home = dir.resolve(charset).toString();
            assertThat(Run.of("import", file.toString(), "--home", home).code()).isZero();
            assertThat(Run.of("show", "lat1", "--home", home).out()).as(charset).contains("Gerät tot");
        }
    }
}
