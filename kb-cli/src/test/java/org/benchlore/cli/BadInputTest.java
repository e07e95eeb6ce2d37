package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bad input gets one clear sentence, a stable exit code, and loses nothing. */
class BadInputTest {
    @TempDir
    Path dir;

    private String home() {
        return dir.resolve("home").toString();
    }

    @Test
    void json_is_refused_where_the_answer_is_something_else() {
        for (String command : List.of("completion", "export", "work", "sheet")) {
            Run run = command.equals("sheet")
                    ? Run.of(command, "job-1", "--json", "--home", home())
                    : Run.of(command, "--json", "--home", home());
            assertThat(run.code()).as(command).isEqualTo(ExitCode.USAGE);
            assertThat(run.out()).isEmpty();
        }
    }

    @Test
    void nonsense_is_told_and_not_ranked() {
        Run run = Run.of("rank", "blorf wibble snark", "--home", home());
        assertThat(run.code()).isEqualTo(ExitCode.NOTHING_FOUND);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("blorf wibble snark").contains("benchlore search");
    }

    @Test
    void a_misspelt_command_option_or_id_is_met_with_a_suggestion() {
        assertThat(Run.of("rnak", "no 12 V").code()).isEqualTo(ExitCode.USAGE);
        assertThat(Run.of("rank", "no 12 V", "--devise", "x", "--home", home()).code())
                .isEqualTo(ExitCode.USAGE);
        Run finding = Run.of("rank", "--finding", "rail-12=absent", "--home", home());
        assertThat(finding.code()).isEqualTo(ExitCode.USAGE);
        assertThat(finding.err()).contains("did you mean").contains("rail-12v");
        Run state = Run.of("rank", "--finding", "rail-12v=gone", "--home", home());
        assertThat(state.err()).contains("absent").contains("in-tolerance");
        Run shown = Run.of("show", "reset-supervisor-faild", "--home", home());
        assertThat(shown.code()).isEqualTo(ExitCode.USAGE);
        assertThat(shown.err()).contains("reset-supervisor-failed");
    }

    @Test
    void what_is_missing_is_said_in_a_sentence() {
        for (String[] call : new String[][] {{"rank", ""}, {"next", ""}, {"case", "open", ""}}) {
            Run run = Run.of(
                    Stream.concat(Stream.of(call), Stream.of("--home", home())).toArray(String[]::new));
            assertThat(run.code()).as(run.out()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err().lines()).hasSize(1);
            assertThat(run.err()).contains("what? Give");
        }
    }

    @Test
    void all_wrong_options_of_an_outcome_are_told_at_once() {
        Run run = Run.of(
                "outcome",
                "no 12 V",
                "--cause",
                "grease-hardened",
                "--fix",
                "replace-reset-supervisr",
                "--ended",
                "fixd",
                "--home",
                home());
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err())
                .contains("unknown outcome 'fixd'")
                .contains("did you mean 'mechanism-grease-hardened'?")
                .contains("did you mean 'replace-reset-supervisor'?");
    }

    @Test
    void what_goes_with_another_option_is_refused_without_it() {
        String id = home();
        for (String[] call : new String[][] {
            {"--ended", "fixed", "--after-days", "3", "--after-days goes with --ended came-back"},
            {"--ended", "given-up", "--minutes", "3", "--minutes goes with --fix"},
            {"--ended", "given-up", "--certainty", "proven", "--certainty goes with --cause"}
        }) {
            Run run = Run.of(Stream.concat(
                            Stream.of("outcome", "no 12 V", "--home", id),
                            Stream.of(call).limit(call.length - 1))
                    .toArray(String[]::new));
            assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).contains(call[call.length - 1]).doesNotContain("internal fault");
        }
    }

    @Test
    void what_an_option_may_be_is_told_as_the_help_tells_it() {
        assertThat(Run.of("worth", "--repaired", "abc").err()).contains("'abc' is not a number");
        assertThat(Run.of("next", "no 12 V", "--risk", "huge").err())
                .contains("use one of none, low, medium, high")
                .doesNotContain("MEDIUM");
        assertThat(Run.of("case", "note", "k1", "--seen", "-1", "--in", "2").err())
                .contains("0 for never");
        for (String command : List.of("work", "sheet", "export", "completion")) {
            assertThat(Run.of(command, "--help").out()).as(command).doesNotContain("--json");
        }
        assertThat(Run.of("rank", "--help").out()).contains("--json");
    }

    @Test
    void a_tool_that_nothing_asks_for_is_a_slip_and_a_part_of_a_name_is_not() {
        Run slips = Run.of(
                "next",
                "no 12 V",
                "--without",
                "osciloscope",
                "--tool",
                "multimetr",
                "--tool",
                "hammer",
                "--home",
                home());
        assertThat(slips.code()).as(slips.out()).isEqualTo(ExitCode.USAGE);
        assertThat(slips.err())
                .contains("asks for a tool 'osciloscope'; did you mean 'oscilloscope'?")
                .contains("asks for a tool 'multimetr'; did you mean 'multimeter'?")
                .contains("asks for a tool 'hammer'; leave it out");
        assertThat(Run.of("next", "no 12 V", "--without", "Scope", "--tool", "METER", "--home", home())
                        .err())
                .doesNotContain("tool");
    }

    @Test
    void cases_have_an_origin_that_can_be_told() {
        for (String origin : List.of("", " ", "o".repeat(81))) {
            Run run = Run.of("import", "no-such-file.txt", "--origin", origin, "--home", home());
            assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).contains("--origin: give a name of 1 to 80 characters");
        }
    }

    @Test
    void help_is_a_command_as_well_as_an_option() {
        Run help = Run.of("help");
        assertThat(help.code()).as(help.err()).isZero();
        assertThat(help.out()).isEqualTo(Run.of("--help").out()).contains("Commands:");
        assertThat(Run.of("help", "rank").out())
                .isEqualTo(Run.of("rank", "--help").out());
    }

    @Test
    void a_slip_in_a_command_of_case_or_in_an_option_is_met_with_what_was_meant() {
        assertThat(Run.of("case", "lsit").err())
                .contains("'lsit' is no command of 'benchlore case'; did you mean 'list'?");
        assertThat(Run.of("case", "show", "x").err()).contains("'benchlore show' is a command by itself");
        assertThat(Run.of("rank", "--csae", "x").err()).contains("did you mean '--case'?");
    }

    @Test
    void a_value_below_zero_is_a_value_and_an_unknown_device_is_taken_with_a_word() {
        Run worth =
                Run.of("worth", "no 12 V", "--fix", "replace-reset-supervisor", "--repaired", "-5", "--home", home());
        assertThat(worth.code()).as(worth.err()).isZero();
        assertThat(worth.out()).contains("now -5");
        Run rank = Run.of("rank", "no 12 V", "--device", "disc-recordr", "--home", home());
        assertThat(rank.code()).isZero();
        assertThat(rank.err()).contains("no pack and no case knows a device 'disc-recordr'");
    }

    @Test
    void words_that_start_with_a_minus_are_words() {
        assertThat(Run.of("rank", "-12V missing", "--home", home()).err()).doesNotContain("Unknown option");
        assertThat(Run.of("search", "-12V missing", "--home", home()).code()).isZero();
    }

    @Test
    void a_malformed_pack_is_told_with_its_place() throws IOException {
        Path pack = dir.resolve("bad.yaml");
        Files.writeString(pack, "pack: Bad One\nversion: 1.0.0\ncauses:\n  - id: x\n    per-thousand: 2,2\n");
        Run check = Run.of("check", pack.toString());
        assertThat(check.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(check.out()).contains("bad.yaml:5:");
        Run rank = Run.of("rank", "no 12 V", "--pack", pack.toString(), "--home", home());
        assertThat(rank.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(rank.err()).contains("bad.yaml:5:");
    }

    @Test
    void a_pack_with_thousands_of_problems_tells_fifty_and_how_many_more() throws IOException {
        StringBuilder yaml = new StringBuilder("pack: many\nversion: 1.0.0\nlicence: MIT\ntitle: Many\nabout: Many.\n");
        for (int i = 0; i < 5000; i++) {
            yaml.append("unheard-of-").append(i).append(": 1\n");
        }
        String pack = Files.writeString(dir.resolve("many.yaml"), yaml).toString();
        Run check = Run.of("check", pack);
        assertThat(check.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(check.out().lines()).hasSize(51).last().asString().isEqualTo("and 951 more");
        assertThat(Run.of("check", "--json", pack).out()).contains("many.yaml").endsWith("\"total\":1001}\n");
        Run rank = Run.of("rank", "no 12 V", "--pack", pack, "--home", home());
        assertThat(rank.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(rank.err().lines()).hasSize(51).last().asString().isEqualTo("benchlore: and 951 more");
    }

    @Test
    void a_binary_file_is_refused_in_a_sentence() throws IOException {
        Path file = dir.resolve("noise.bin");
        byte[] noise = new byte[100_000];
        new Random(7).nextBytes(noise);
        Files.write(file, noise);
        Run check = Run.of("check", file.toString());
        assertThat(check.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(check.out()).contains("noise.bin:1:1").contains("UTF-8");
        assertThat(Run.of("import", file.toString(), "--home", home()).code()).isEqualTo(ExitCode.BAD_INPUT);
    }

    @Test
    void a_note_of_a_megabyte_is_read() {
        String note = "no 12 V and the controller is silent. ".repeat(28_000);
        Run run = Run.of("rank", note.substring(0, 1 << 20), "--home", home());
        assertThat(run.code()).isZero();
        Run tooLong = Run.of("rank", note + note, "--home", home());
        assertThat(tooLong.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(tooLong.err().lines()).hasSize(1);
    }

    @Test
    void a_home_that_cannot_be_written_is_told() throws IOException {
        Path file = dir.resolve("a-file");
        Files.writeString(file, "not a folder");
        Run run =
                Run.of("case", "open", "no 12 V", "--home", file.resolve("home").toString());
        assertThat(run.code()).isEqualTo(ExitCode.STORE);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains("a-file");
    }

    @Test
    void a_truncated_import_line_is_told_and_the_rest_is_kept() throws IOException {
        String words = "no 12 V";
        String cause = "reset-supervisor-failed";
        Run.of("outcome", words, "--cause", cause, "--ended", "fixed", "--home", home());
        Path file = dir.resolve("cases.jsonl");
        Run.of("export", file.toString(), "--home", home());
        String all = Files.readString(file);
        Files.writeString(file, all.substring(0, all.length() - 40), StandardCharsets.UTF_8);

        Run run =
                Run.of("import", file.toString(), "--home", dir.resolve("other").toString());

        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err()).contains("cases.jsonl:4:");
        assertThat(run.out()).contains("3 new events");
    }

    @Test
    void what_a_terminal_obeys_never_reaches_it() {
        Run run = Run.of("rank", "no 12 V \u001b[2J\u0007 \u202e controller silent", "--home", home());
        assertThat(run.code()).isZero();
        assertThat(run.out() + run.err())
                .doesNotContain("\u001b")
                .doesNotContain("\u0007")
                .doesNotContain("\u202e");
    }

    @Test
    void a_unit_that_is_too_long_is_told() {
        String unit = "x".repeat(201);
        for (Run run : List.of(
                Run.of("case", "open", "no sound", "--unit", unit, "--home", home()),
                Run.of("case", "open", "no sound", "--device", unit, "--home", home()),
                Run.of("work", "--unit", unit, "--home", home()))) {
            assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).contains("longer than 200");
        }
    }

    @Test
    void an_export_replaces_nothing_but_a_plain_file() throws IOException {
        Path folder = Files.createDirectory(dir.resolve("folder"));
        Path kept = Files.createFile(dir.resolve("kept.jsonl"));
        Path link = Files.createSymbolicLink(dir.resolve("link.jsonl"), kept);
        Run.of("case", "open", "no 12 V", "--home", home());

        Run onto = Run.of("export", folder.toString(), "--home", home());
        Run into = Run.of("export", folder.resolve("none/cases.jsonl").toString(), "--home", home());
        Run through = Run.of("export", link.toString(), "--home", home());

        assertThat(onto.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(onto.err()).contains("is no plain file");
        assertThat(folder).isEmptyDirectory();
        assertThat(into.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(into.err()).contains("there is no such folder").doesNotContain(".part");
        assertThat(BenchCommand.why(new AccessDeniedException(kept.toString()))).isEqualTo("access denied");
        assertThat(through.code()).as(through.err()).isZero();
        assertThat(link).isSymbolicLink();
        assertThat(Files.readAllLines(kept)).hasSize(2);
    }

    @Test
    void numbers_and_ids_that_no_event_takes_are_wrong_usage() {
        String fix = "replace-reset-supervisor";
        Run.of("outcome", "no 12 V", "--case", "k1", "--ended", "given-up", "--home", home());
        for (String[] call : new String[][] {
            {"case", "note", "k1", "no 12 V", "--after", fix, "--minutes", "Infinity", "--minutes Infinity"},
            {"outcome", "no 12 V", "--case", "my case", "--ended", "given-up", "--case: id 'my case'"},
            {"outcome", "no 12 V", "--case", "k".repeat(75), "--ended", "given-up", "--case: id 'kkk"}
        }) {
            Run run = Run.of(Stream.concat(Stream.of(call).limit(call.length - 1), Stream.of("--home", home()))
                    .toArray(String[]::new));
            assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).contains(call[call.length - 1]);
        }
    }

    @Test
    void a_home_that_can_be_no_path_is_told() {
        StringWriter err = new StringWriter();
        int code = Benchlore.run(
                new String[] {"case", "list"},
                new PrintWriter(Writer.nullWriter()),
                new PrintWriter(err),
                false,
                Map.of("BENCHLORE_HOME", "a\0b"));
        assertThat(code).as(err.toString()).isEqualTo(ExitCode.USAGE);
        assertThat(err.toString()).contains("BENCHLORE_HOME");
    }

    @Test
    void words_piped_in_from_an_old_program_are_read() throws IOException {
        InputStream before = System.in;
        for (Charset charset :
                List.of(StandardCharsets.UTF_8, Charset.forName("windows-1252"), StandardCharsets.UTF_16)) {
            System.setIn(new ByteArrayInputStream("hot air: 70 \u00b0C".getBytes(charset)));
            try {
                assertThat(Run.of("rank", "-", "--json", "--home", home()).out())
                        .as(charset.name())
                        .contains("70 \u00b0C");
            } finally {
                System.setIn(before);
            }
        }
    }

    @Test
    void words_after_an_option_are_its_value_though_they_start_with_a_minus() {
        Run.of("outcome", "no 12 V", "--case", "k1", "--ended", "given-up", "--home", home());
        Run run = Run.of("case", "withdraw", "k1", "--reason", "-12 V was a typo", "--json", "--home", home());
        assertThat(run.code()).as(run.err()).isZero();
    }

    @Test
    void an_empty_answer_says_that_it_is_empty() {
        Run run = Run.of("fixes", "--home", home());
        assertThat(run.code()).isEqualTo(ExitCode.NOTHING_FOUND);
        assertThat(run.err()).contains("no fix");
    }

    @Test
    void a_list_says_how_many_cases_it_did_not_look_at() {
        for (String id : List.of("k1", "k2", "k3")) {
            Run.of("outcome", "no 12 V", "--case", id, "--ended", "given-up", "--home", home());
        }
        assertThat(Run.of("case", "list", "--open", "--limit", "2", "--home", home())
                        .err())
                .contains("the newest 2 of 3 cases");
        assertThat(Run.of("case", "list", "--limit", "3", "--home", home()).err())
                .isEmpty();
    }

    @Test
    void nothing_is_recorded_in_a_case_that_was_withdrawn() {
        String cause = "reset-supervisor-failed";
        String fix = "replace-reset-supervisor";
        Run.of(
                "outcome", "no 12 V", "--case", "k1", "--cause", cause, "--fix", fix, "--ended", "fixed", "--home",
                home());
        Run.of("case", "withdraw", "k1", "--home", home());
        for (String call : List.of(
                "case note k1 smoke",
                "outcome --case k1 --ended came-back",
                "outcome smoke --case k1 --ended fixed",
                "proof --case k1 --hours 2",
                "worth --case k1 --fix " + fix + " --repaired 9 --decide leave",
                "work k1")) {
            Run run = Run.of((call + " --home " + home()).split(" "));
            assertThat(run.code()).as(call).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).as(call).contains("case k1 was withdrawn");
        }
        assertThat(Run.of("show", "k1", "--home", home()).code()).isZero();
    }
}
