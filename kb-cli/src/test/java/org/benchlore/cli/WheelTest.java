package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** One turn of the wheel, and another, each command a new start as it would be for a user. */
class WheelTest {
    private static final String WORDS = "green light, no 12 V, controller silent";
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    Path home;

    private Run run(String... args) {
        List<String> all = new ArrayList<>(List.of(args));
        all.add("--home");
        all.add(home.toString());
        return Run.of(all.toArray(String[]::new));
    }

    private JsonNode json(String... args) {
        List<String> all = new ArrayList<>(List.of(args));
        all.add("--json");
        Run run = run(all.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return JSON.readTree(run.out());
    }

    @Test
    void the_main_job_understands_all_three_findings_where_they_stand() {
        JsonNode ranking = json("rank", WORDS);

        assertThat(ranking.get("schema").asString()).isEqualTo("benchlore/ranking/1");
        List<String> understood = new ArrayList<>();
        for (JsonNode u : ranking.get("understood")) {
            understood.add(u.get("symptom").asString() + "=" + u.get("state").asString());
            assertThat(WORDS.substring(u.get("start").asInt(), u.get("end").asInt()))
                    .isEqualTo(u.get("text").asString());
        }
        assertThat(understood)
                .containsExactlyInAnyOrder("power-lamp=green", "rail-12v=absent", "controller-response=silent");
        assertThat(ranking.get("notUnderstood")).isEmpty();
    }

    @Test
    void faults_of_the_controller_lead_and_other_spellings_rank_alike() {
        JsonNode plain = json("rank", "--top", "8", WORDS);
        JsonNode other = json("rank", "--top", "8", "LED is green but 12V missing, no answer from the controller");

        List<String> top = ids(plain, 8);
        assertThat(top)
                .contains("reset-supervisor-failed", "controller-regulator-dead", "controller-crystal-dead")
                .allMatch(id -> !id.contains("fan") && !id.contains("disc"));
        List<String> alike = ids(other, 8);
        assertThat(alike.get(0)).isEqualTo(top.get(0));
        assertThat(alike).filteredOn(top::contains).hasSizeGreaterThanOrEqualTo(5);
    }

    @Test
    void a_code_that_no_pack_knows_speaks_for_a_cause_once_outcomes_mention_it() {
        String cause = "reset-supervisor-failed";
        String asked = "no 12 V, log says E-4171 twice";
        double before = probability(run("rank", "--top", "400", "--json", asked).out(), cause);
        for (int i = 0; i < 3; i++) {
            run("outcome", "controller silent, E-4171 in the log", "--cause", cause, "--ended", "fixed");
            run("outcome", "hum on both channels", "--cause", "ground-loop-hum", "--ended", "fixed");
            run("outcome", "fan stopped, E-88 in the log", "--cause", "fan-motor-dead", "--ended", "fixed");
        }
        JsonNode ranking = json("rank", "--top", "400", asked);
        double other = probability(
                run("rank", "--top", "400", "--json", "no 12 V, log says E-5555 twice")
                        .out(),
                cause);

        // 3 of the cause's 3, 3 of all 9: 10 log10 ((3 + 3 u) / 6 u) = 2.9 with u = 3.5 / 10, and the others lose
        assertThat(decibans(ranking, cause)).isBetween(2.9, 6.0);
        assertThat(decibans(ranking, "fan-motor-dead")).isNegative();
        assertThat(probability(ranking.toString(), cause)).isGreaterThan(other).isGreaterThan(before);
        assertThat(run("rank", asked).out())
                .containsPattern("code E-4171, which no pack knows: in 3 of 9\\s+concluded cases")
                .containsPattern("codes\\s+no\\s+pack\\s+knows\\s+\\+");
    }

    private static double decibans(JsonNode ranking, String cause) {
        for (JsonNode c : ranking.get("causes")) {
            if (c.get("id").asString().equals(cause)) {
                return c.get("codeDecibans").asDouble();
            }
        }
        throw new AssertionError(cause + " is not ranked");
    }

    private static List<String> ids(JsonNode ranking, int n) {
        List<String> ids = new ArrayList<>();
        for (JsonNode c : ranking.get("causes")) {
            if (ids.size() < n) {
                ids.add(c.get("id").asString());
            }
        }
        return ids;
    }

    @Test
    void outcomes_move_the_ranking_across_processes_and_withdrawing_restores_it_exactly() {
        String before = run("rank", "--top", "400", "--json", WORDS).out();
        String cause = "power-on-line-open";
        double first = probability(before, cause);

        List<String> cases = new ArrayList<>();
        double last = first;
        for (int i = 0; i < 5; i++) {
            JsonNode outcome = json("outcome", WORDS, "--cause", cause, "--ended", "fixed-and-proven");
            cases.add(outcome.get("id").asString());
            assertThat(outcome.get("before").asDouble()).isEqualTo(last);
            assertThat(outcome.get("after").asDouble()).isGreaterThan(last);
            last = outcome.get("after").asDouble();
        }
        assertThat(probability(run("rank", "--top", "400", "--json", WORDS).out(), cause))
                .isEqualTo(last)
                .isGreaterThan(5 * first);

        cases.forEach(id -> assertThat(run("case", "withdraw", id).code()).isZero());
        assertThat(run("rank", "--top", "400", "--json", WORDS).out()).isEqualTo(before);
    }

    private static double probability(String ranking, String cause) {
        for (JsonNode c : JSON.readTree(ranking).get("causes")) {
            if (c.get("id").asString().equals(cause)) {
                return c.get("probability").asDouble();
            }
        }
        throw new AssertionError("no " + cause);
    }

    @Test
    void a_case_is_ranked_and_planned_as_it_stands_its_failed_fixes_held_against_their_causes() {
        String cause = "reset-supervisor-failed";
        run("outcome", WORDS, "--case", "job-5", "--ended", "not-fixed");
        double before = probability(
                run("rank", "--top", "400", "--json", "--case", "job-5").out(), cause);
        assertThat(before)
                .isEqualTo(
                        probability(run("rank", "--top", "400", "--json", WORDS).out(), cause));
        run(
                "outcome",
                "--case",
                "job-5",
                "--cause",
                cause,
                "--fix",
                "replace-reset-supervisor",
                "--ended",
                "not-fixed");
        assertThat(probability(
                        run("rank", "--top", "400", "--json", "--case", "job-5").out(), cause))
                .isLessThan(before / 2);
        assertThat(run("rank", "--case", "job-5").out()).contains("done before: Replace the reset supervisor");
        assertThat(run("rank", "--case", "job-5", "fan silent").out()).contains("known: 12 V rail absent");
        assertThat(probability(
                        run("rank", "--top", "400", "--json", WORDS, "--failed", "replace-reset-supervisor")
                                .out(),
                        cause))
                .isLessThan(before / 2);
        assertThat(run("rank").err()).contains("--case CASE");
        assertThat(run("rank", "--case", "job-6").err()).contains("did you mean 'job-5'?");
    }

    @Test
    void the_same_outcome_twice_counts_once() {
        String[] outcome = {
            "outcome", WORDS, "--case", "job-17", "--cause", "reset-supervisor-failed", "--ended", "fixed"
        };
        json(outcome);
        String once = run("rank", "--top", "400", "--json", WORDS).out();
        json(outcome);

        assertThat(run("rank", "--top", "400", "--json", WORDS).out()).isEqualTo(once);
    }

    @Test
    void a_case_is_opened_noted_ended_and_found_again() {
        String id = json("case", "open", "dead after the move, no picture", "--unit", "shelf 3")
                .get("id")
                .asString();
        assertThat(run("case", "note", id, "12 V missing, controller silent").code())
                .isZero();
        assertThat(run("case", "list", "--open").out()).contains(id);
        assertThat(run("outcome", "--case", id, "--cause", "reset-supervisor-failed", "--ended", "fixed")
                        .code())
                .isZero();

        assertThat(run("show", id).out())
                .contains("12 V missing", "reset-supervisor-failed", "fixed")
                .containsPattern("[0-9]{2}:[0-9]{2}Z {2}came in");
        assertThat(run("sheet", "none-such").err()).contains("'benchlore case list'");
        assertThat(run("case", "list", "--open").code()).isEqualTo(ExitCode.NOTHING_FOUND);
        assertThat(run("search", "dead after the move", "--kind", "case").out()).contains(id);
    }

    @Test
    void export_and_import_carry_everything_to_another_home(@TempDir Path other) throws Exception {
        run("outcome", WORDS, "--cause", "reset-supervisor-failed", "--ended", "fixed");
        Path file = other.resolve("cases.jsonl");
        assertThat(run("export", file.toString()).code()).isZero();
        String ranked = run("rank", "--top", "400", "--json", WORDS).out();

        String home2 = other.resolve("home").toString();
        assertThat(Run.of("import", file.toString(), "--home", home2).code()).isZero();
        assertThat(Run.of("import", file.toString(), "--home", home2).out()).contains("0 new events");

        assertThat(Run.of("rank", "--top", "400", "--json", WORDS, "--home", home2)
                        .out())
                .isEqualTo(ranked);
        assertThat(Files.readAllLines(file)).allMatch(l -> l.startsWith("{\"schema\":\"benchlore/event/1\""));
    }

    @Test
    void rebuild_changes_no_answer() {
        run("outcome", WORDS, "--cause", "reset-supervisor-failed", "--ended", "fixed");
        String ranked = run("rank", "--top", "400", "--json", WORDS).out();
        String found = run("search", "--json", "scrambled display").out();

        assertThat(run("rebuild").code()).isZero();

        assertThat(run("rank", "--top", "400", "--json", WORDS).out()).isEqualTo(ranked);
        assertThat(run("search", "--json", "scrambled display").out()).isEqualTo(found);
    }

    @Test
    void readings_in_tolerance_lower_regulator_faults() {
        // Common practice, no source; the limits are those of the desktop supply design guides, +-5 %.
        JsonNode silent = json("rank", "--top", "400", "controller silent");
        JsonNode read =
                json("rank", "--top", "400", "3.26 V on the 3.3 V rail, 1.79 on 1.8, 4.98 on 5, controller silent");

        List<String> understood = new ArrayList<>();
        for (JsonNode u : read.get("understood")) {
            understood.add(u.get("symptom").asString() + "=" + u.get("state").asString());
        }
        assertThat(understood).contains("rail-3v3=in-tolerance", "rail-1v8=in-tolerance", "rail-5v=in-tolerance");
        assertThat(probability(read.toString(), "controller-regulator-dead"))
                .isLessThan(probability(silent.toString(), "controller-regulator-dead"));
    }

    @Test
    void evaluate_says_how_the_ranking_did_and_that_one_case_is_too_few() {
        assertThat(run("evaluate").code()).isEqualTo(ExitCode.NOTHING_FOUND);
        run("outcome", WORDS, "--cause", "reset-supervisor-failed", "--ended", "fixed-and-proven");

        Run text = run("evaluate");
        assertThat(text.code()).isZero();
        assertThat(text.out())
                .contains("Replay of 1 ended case,", "too few to tell", "most frequent", "packs alone", "said");
        assertThat(json("evaluate").get("scored").asInt()).isEqualTo(1);
        assertThat(json("evaluate").at("/baseline/logLoss/value").asDouble()).isPositive();
    }

    @Test
    void why_not_names_what_would_change_the_ranking_and_the_case_behind_it() {
        String cause = "reset-supervisor-failed";
        String id = json("outcome", WORDS, "--cause", cause, "--ended", "fixed-and-proven")
                .get("id")
                .asString();

        JsonNode reasons = json("doubt", "--cause", cause, WORDS);
        assertThat(reasons.get("cases").get(0).get("id").asString()).isEqualTo(id);
        assertThat(reasons.get("cases").get(0).get("decibans").asDouble()).isPositive();
        JsonNode turn = reasons.get("turns").get(0);
        assertThat(turn.get("after").asDouble()).isLessThan(turn.get("before").asDouble());
        double two = reasons.get("twoFaults").get("probability").asDouble();
        assertThat(json("doubt", "--worked-on", WORDS)
                        .get("twoFaults")
                        .get("probability")
                        .asDouble())
                .isGreaterThan(two);
        assertThat(run("doubt", WORDS).out()).contains("What would change this", "Two faults at once");
        assertThat(run("doubt", "--cause", "no-such", WORDS).code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void words_nobody_taught_become_a_pack_that_teaches_them() throws Exception {
        for (int i = 0; i < 2; i++) {
            assertThat(run("case", "open", "power lamp glims sleepily").code()).isZero();
        }
        assertThat(run("words").out()).contains("glims sleepily", "2 cases");
        Run pack = run("words", "--yaml");
        assertThat(pack.code()).isZero();
        Path file = home.resolve("packs/bench-words.yaml");
        Files.createDirectories(file.getParent());
        Files.writeString(file, pack.out());
        assertThat(json("rank", "the power lamp glims sleepily").get("understood"))
                .isNotEmpty();
        assertThat(run("words").code()).isEqualTo(ExitCode.NOTHING_FOUND);
    }

    @Test
    void the_invented_workshop_sets_up_and_ranks() {
        assertThat(json("demo").get("cases").asInt()).isGreaterThanOrEqualTo(311);
        assertThat(json("demo").get("added").asInt()).isZero();
        assertThat(run("case", "list", "--limit", "500").out()).contains("demo-0001", "harbour-0001");
        assertThat(run("show", "harbour-0001").out()).contains("case of: demo-harbour");
        assertThat(run("rank", WORDS).code()).isZero();
        assertThat(json("evaluate", "--imported").get("scored").asInt()).isGreaterThan(300);
    }
}
