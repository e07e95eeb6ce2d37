package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** Packs come from strangers: whatever the text, the answer is a list of problems, and soon. */
class PackFuzzTest {
    private static final int PACKS = 10_000;
    private static final long SEED = 20261125;
    private static final List<String> PIECES = List.of(
            "[",
            "]",
            "{",
            "}",
            ": ",
            ",",
            "- ",
            "\n",
            "\n  ",
            "\t",
            "'",
            "\"",
            "#",
            "&a ",
            "*a",
            "!!int ",
            "!x ",
            "|\n",
            ">-\n",
            "? ",
            "<<: ",
            "---\n",
            "...\n",
            "%YAML 1.2\n",
            "~",
            "null",
            "true",
            "-1",
            "1e999",
            "0.5",
            "2,2",
            "..",
            "-tol..",
            "any",
            "id: x\n",
            "refines: true\n",
            "replaces: true\n",
            "\u0000",
            "\u0085",
            "\u2028",
            "\uFEFF",
            "\uD83D\uDD27",
            "\uD83D",
            "\\",
            "@",
            "`");

    @Test
    void no_mutated_pack_makes_anything_but_problems() {
        Random random = new Random(SEED);
        int sound = 0;
        for (int i = 0; i < PACKS; i++) {
            String yaml = mutated(random);
            boolean layered = i % 10 == 0;
            List<PackSource> packs =
                    layered ? PackFixture.layered(yaml.replace("pack: power", "pack: other")) : PackFixture.pack(yaml);
            int round = i;
            List<PackProblem> problems = Assertions.assertDoesNotThrow(
                    () -> PackReader.check(packs), () -> "round " + round + " of seed " + SEED);
            for (PackProblem problem : problems) {
                assertThat(problem.line()).isPositive();
                assertThat(problem.column()).isPositive();
                assertThat(problem.what()).isNotBlank().doesNotContain("\n", "\u0000");
                assertThat(problem.remedy()).isNotBlank();
            }
            assertThat(problems).isSorted();
            sound += problems.isEmpty() ? 1 : 0;
        }
        assertThat(sound).as("mutations must bite, but some change nothing").isBetween(1, PACKS / 2);
    }

    @Test
    void check_and_read_agree_on_mutated_packs() {
        Random random = new Random(SEED + 1);
        for (int i = 0; i < PACKS / 10; i++) {
            List<PackSource> packs = PackFixture.pack(mutated(random));
            boolean bad = PackReader.check(packs).stream()
                    .anyMatch(problem -> problem.severity() == PackProblem.Severity.ERROR);
            if (bad) {
                BadPackException e = Assertions.assertThrows(BadPackException.class, () -> PackReader.read(packs));
                assertThat(e.problems()).isEqualTo(PackReader.check(packs));
            } else {
                assertThatCode(() -> PackReader.read(packs)).doesNotThrowAnyException();
            }
        }
    }

    private static String mutated(Random random) {
        StringBuilder yaml = new StringBuilder(PackFixture.GOOD);
        for (int n = 1 + random.nextInt(3); n > 0; n--) {
            int at = random.nextInt(yaml.length());
            int end = Math.min(yaml.length(), at + 1 + random.nextInt(12));
            switch (random.nextInt(6)) {
                case 0 -> yaml.delete(at, end);
                case 1 -> yaml.insert(at, yaml.substring(at, end));
                case 2 -> yaml.setCharAt(at, (char) random.nextInt(128));
                case 3 -> yaml.insert(at, PIECES.get(random.nextInt(PIECES.size())));
                case 4 -> yaml.replace(at, end, PIECES.get(random.nextInt(PIECES.size())));
                default -> moveLine(yaml, at, random);
            }
        }
        return yaml.toString();
    }

    private static void moveLine(StringBuilder yaml, int at, Random random) {
        int start = yaml.lastIndexOf("\n", at) + 1;
        int end = yaml.indexOf("\n", at) + 1;
        if (end > start) {
            String line = yaml.substring(start, end);
            yaml.delete(start, end);
            int target = yaml.length() == 0 ? 0 : yaml.lastIndexOf("\n", random.nextInt(yaml.length())) + 1;
            yaml.insert(target, line);
        }
    }

    private static void answersSoon(String yaml, String... says) {
        List<PackProblem> problems = Assertions.assertTimeoutPreemptively(
                Duration.ofSeconds(60), () -> PackReader.check(PackFixture.pack(yaml)));
        assertThat(problems).extracting(PackProblem::toString).containsExactly(says);
    }

    @Test
    void hostile_files_get_one_clear_sentence() {
        answersSoon(
                "a: " + "[".repeat(1_000_000),
                "p.yaml:1:27: nested more than 24 levels deep; packs need six; close the brackets");
        answersSoon(
                "x".repeat(YamlText.MAX_CHARS + 1),
                "p.yaml:1:1: the file has 4194305 characters, more than 4194304; split the pack");
        answersSoon(
                "a: [" + "1,".repeat(YamlText.MAX_NODES) + "1]",
                "p.yaml:1:799995: more than 400000 values in one file; split the pack");
        answersSoon(
                "PK\u0003\u0004 zip",
                "p.yaml:1:3: the file is not plain UTF-8 text (character U+0003); "
                        + "give a YAML file saved as UTF-8; take out control characters and invisible marks");
        answersSoon(
                "pack: x\nabout: a\uFFFDb",
                "p.yaml:2:9: the file is not plain UTF-8 text (character U+FFFD); "
                        + "give a YAML file saved as UTF-8; take out control characters and invisible marks");
        answersSoon("", "p.yaml:1:1: the file is empty; start it with 'pack: ID'");
        answersSoon("- a", "p.yaml:1:1: the pack should be keys with values, found a list; write 'key: value'");
        answersSoon(
                PackFixture.GOOD + "---\na: 1\n",
                "p.yaml:129:1: a second document starts here; write one pack per file, without '---'");
    }

    @Test
    void a_list_of_problems_has_an_end() {
        StringBuilder yaml = new StringBuilder(PackFixture.GOOD);
        for (int i = 0; i < 50_000; i++) {
            yaml.append("zzz-unknown-").append(i).append(": 1\n");
        }

        List<PackProblem> problems = Assertions.assertTimeoutPreemptively(
                Duration.ofSeconds(60), () -> PackReader.check(PackFixture.pack(yaml.toString())));

        assertThat(problems).hasSize(Problems.MAX_PER_FILE + 1);
        assertThat(problems.get(Problems.MAX_PER_FILE).what()).isEqualTo("more than 1000 problems in this file");
    }

    @Test
    void what_goes_beyond_the_list_is_an_error_only_if_an_error_is_among_it() {
        Problems problems = new Problems();
        for (int line = 1; line <= Problems.MAX_PER_FILE + 2; line++) {
            problems.warn(new Place("p.yaml", line, 1), "weak", "mend it");
        }
        assertThat(problems.sorted())
                .hasSize(Problems.MAX_PER_FILE + 1)
                .allMatch(p -> p.severity() == PackProblem.Severity.WARNING);

        problems.error(new Place("p.yaml", 7, 7), "wrong", "mend it");
        assertThat(problems.sorted())
                .hasSize(Problems.MAX_PER_FILE + 1)
                .filteredOn(p -> p.severity() == PackProblem.Severity.ERROR)
                .singleElement()
                .hasToString("p.yaml:7:7: more than 1000 problems in this file; mend those listed, then check again");
    }

    @Test
    void ten_thousand_wrong_references_do_not_take_for_ever() {
        StringBuilder yaml = new StringBuilder(PackFixture.shop("cautions:\n"));
        String id = "a".repeat(60);
        for (int i = 0; i < 5_000; i++) {
            yaml.append("  - {id: ").append(id).append(i).append(", hazard: heat, text: Hot.}\n");
        }
        yaml.append("causes:\n");
        for (int i = 0; i < 10_000; i++) {
            yaml.append("  - {id: c")
                    .append(i)
                    .append(", cautions: [")
                    .append(id)
                    .append("b")
                    .append(i)
                    .append("]}\n");
        }

        List<PackProblem> problems = Assertions.assertTimeoutPreemptively(
                Duration.ofSeconds(60), () -> PackReader.check(PackFixture.pack(yaml.toString())));

        assertThat(problems).hasSize(Problems.MAX_PER_FILE + 1);
    }
}
