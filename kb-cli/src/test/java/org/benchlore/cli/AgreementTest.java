package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Commands asked about the same unit give the same answer. */
class AgreementTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    Path home;

    private String id = "";

    private String run(String... args) {
        List<String> all = new ArrayList<>(List.of(args));
        all.add("--home");
        all.add(home.toString());
        Run run = Run.of(all.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run.out();
    }

    private JsonNode json(String... args) {
        List<String> all = new ArrayList<>(List.of(args));
        all.add("--json");
        return JSON.readTree(run(all.toArray(String[]::new)));
    }

    /** Mostly words that make no finding, so that much hangs on them. */
    @BeforeEach
    void open() {
        id = json("case", "open", "picture breaks up, cured by freezer spray on one chip when the lid is warm")
                .get("id")
                .asString();
    }

    private static String found(String regex, String text) {
        Matcher matcher = Pattern.compile(regex).matcher(text);
        assertThat(matcher.find()).as(regex + " in\n" + text).isTrue();
        return matcher.group(1);
    }

    @Test
    void sheet_and_outcome_rank_a_case_as_rank_does() {
        JsonNode leader = json("rank", "--case", id).get("causes").get(0);
        String share = Page.percent(leader.get("probability").asDouble());

        assertThat(run("sheet", id)).contains("| " + leader.get("name").asString() + " | " + share + " (");
        assertThat(run("sheet", id, "--kind", "question"))
                .contains("- " + leader.get("name").asString() + ", " + share);
        assertThat(run("outcome", "--case", id, "--cause", leader.get("id").asString(), "--ended", "given-up"))
                .containsPattern("it\\s+was\\s+" + share + "\\s+before");
    }

    @Test
    void a_wet_unit_is_kept_off_by_the_sheet_as_by_rank() {
        String unit = json("case", "open", "amplifier left out in the rain, now it crackles")
                .get("id")
                .asString();

        assertThat(run("rank", "--case", unit)).contains("Power stays off: ");
        assertThat(run("sheet", unit)).contains("- Power stays off: ").contains("The plan from here");
    }

    @Test
    void codes_of_past_cases_and_a_fix_in_vain_count_in_sheet_and_outcome_as_in_rank() {
        String cause = "reset-supervisor-failed";
        for (int i = 0; i < 3; i++) {
            run("outcome", "controller silent, E-4171 in the log", "--cause", cause, "--ended", "fixed");
        }
        run("outcome", "hum on both channels", "--cause", "ground-loop-hum", "--ended", "fixed");
        String unit = json("case", "open", "controller silent, log says E-4171 twice")
                .get("id")
                .asString();
        JsonNode ranking = json("rank", "--case", unit);
        JsonNode leader = ranking.get("causes").get(0);
        assertThat(leader.get("codeDecibans").asDouble()).isPositive();
        assertThat(run("sheet", unit))
                .contains("| " + leader.get("name").asString() + " | "
                        + Page.percent(leader.get("probability").asDouble()) + " (");

        String told = run(
                "outcome",
                "--case",
                unit,
                "--cause",
                cause,
                "--fix",
                "replace-reset-supervisor",
                "--ended",
                "not-fixed");
        assertThat(told).containsPattern("it\\s+was\\s+" + Page.percent(share(cause, ranking)) + "\\s+before");
        JsonNode after = json("rank", "--case", unit).get("causes").get(0);
        assertThat(share(cause, json("rank", "--case", unit))).isLessThan(share(cause, ranking));
        assertThat(run("sheet", unit))
                .contains("| " + after.get("name").asString() + " | "
                        + Page.percent(after.get("probability").asDouble()) + " (");
    }

    @Test
    void a_case_that_has_ended_does_not_speak_for_itself_in_rank_as_in_its_sheet() {
        JsonNode before = json("rank", "--case", id);
        String cause = before.get("causes").get(3).get("id").asString();
        String told = run("outcome", "--case", id, "--cause", cause, "--ended", "given-up");
        assertThat(told).containsPattern("it\\s+was\\s+" + Page.percent(share(cause, before)) + "\\s+before");

        JsonNode after = json("rank", "--case", id);
        assertThat(after.get("causes")).isEqualTo(before.get("causes"));
        JsonNode leader = after.get("causes").get(0);
        assertThat(run("sheet", id))
                .contains("| " + leader.get("name").asString() + " | "
                        + Page.percent(leader.get("probability").asDouble()) + " (");
        assertThat(json("doubt", "--case", id, "--cause", cause).toString()).doesNotContain(id);
    }

    @Test
    void rank_and_next_begin_with_the_same_test() {
        for (String words : List.of(
                "sound comes and goes",
                "green light, no 12 V, controller silent",
                "primary switch shorted, fuse blown")) {
            String rank = run("rank", words);
            String step = rank.substring(rank.indexOf("First step") + "First step\n".length());
            String next = run("next", words);
            assertThat(next).startsWith(step.lines().findFirst().orElseThrow());
        }
    }

    @Test
    void the_test_to_begin_with_heads_the_list() {
        for (String words : List.of("sound comes and goes", "green light, no 12 V, controller silent")) {
            String next = run("next", words);
            assertThat(found("\\n 1\\. [^\\[]*\\[([a-z0-9-]+)\\s*\\]", next))
                    .isEqualTo(found("^[^\\[]*\\[([a-z0-9-]+)\\]", next));
        }
    }

    @Test
    void a_case_that_is_over_is_said_to_be_over() {
        run("outcome", "--case", id, "--ended", "no-fault-found");
        assertThat(run("next", "--case", id)).startsWith("  ! This case has ended: no fault found.");
        assertThat(run("plan", "--case", id)).startsWith("  ! This case has ended: no fault found.");
    }

    @Test
    void readings_that_move_nothing_are_counted_and_not_listed() {
        assertThat(run("next", "green light, no 12 V, controller silent"))
                .contains("other readings move no cause much");
    }

    @Test
    void a_unit_said_to_have_no_adapter_is_not_suspected_of_a_dead_one() {
        String dead = "stone dead, no lamp at all";
        assertThat(odds(share(dead + ", there is no adapter to it", "adapter-dead")))
                .isLessThan(odds(share(dead + ", it belongs to my aunt", "adapter-dead")) / 3);
    }

    @Test
    void what_comes_and_goes_stands_against_a_look_that_found_nothing() {
        String unit = json("case", "open", "the 12 V rail drops out now and then, controller silent")
                .get("id")
                .asString();
        String before = json("rank", "--case", unit).get("causes").toString();
        run("case", "note", unit, "12 V rail is 12.02 V");

        JsonNode after = json("rank", "--case", unit).get("causes").get(0);
        assertThat(after.get("evidence").toString())
                .contains("\"symptom\":\"rail-12v\",\"state\":\"absent\"")
                .doesNotContain("in-tolerance");
        assertThat(before).contains("\"state\":\"absent\"");
        String share = Page.percent(after.get("probability").asDouble());
        assertThat(run("sheet", unit)).contains("| " + after.get("name").asString() + " | " + share + " (");
    }

    /** A share near one half moves less than what speaks for it. */
    private static double odds(double share) {
        return share / (1 - share);
    }

    private double share(String words, String cause) {
        return share(cause, json("rank", words));
    }

    private static double share(String cause, JsonNode ranking) {
        for (JsonNode c : ranking.get("causes")) {
            if (c.get("id").asString().equals(cause)) {
                return c.get("probability").asDouble();
            }
        }
        throw new AssertionError("no " + cause);
    }
}
