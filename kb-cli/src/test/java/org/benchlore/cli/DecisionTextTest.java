package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.benchlore.kb.data.ShippedPacks;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.planning.NextStep;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What somebody reads who asks what to do: the answer first, then why; narrow lines, round figures. */
class DecisionTextTest {
    private static final String WORDS = "green light, no 12 V, controller silent";
    private static final Knowledge KNOWLEDGE = PackReader.read(ShippedPacks.all());
    /** More digits than anybody should believe: two decimals, or a percentage with one. */
    private static final Pattern FALSE_PRECISION = Pattern.compile("\\d\\.\\d{2,}|\\d\\.\\d+ %");

    @TempDir
    Path home;

    private List<String> lines(String... args) {
        List<String> all = new ArrayList<>(List.of(args));
        all.add("--home");
        all.add(home.toString());
        Run run = Run.of(all.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        List<String> lines = run.out().lines().toList();
        assertThat(lines).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
        assertThat(lines).noneMatch(FALSE_PRECISION.asPredicate());
        return lines;
    }

    private static String text(List<String> lines) {
        return String.join(" ", lines).replaceAll("\\s+", " ");
    }

    @Test
    void a_list_of_no_tests_is_refused() {
        for (String top : List.of("0", "-3")) {
            Run run = Run.at(home, "next", "no 12 V", "--top=" + top);
            assertThat(run.code()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).contains("--top " + top + " shows nothing; give 1 or more");
        }
    }

    @Test
    void next_says_what_to_do_before_how_and_why() {
        List<String> lines = lines("next", WORDS);
        assertThat(lines.get(0)).startsWith("Do next: ");
        String text = text(lines);
        assertThat(text)
                .containsSubsequence(
                        "Do next: ", "Set-up: ", "Expect: ", " 1. ", "bit of what the fault is", "of repair for its ");
        assertThat(text).containsPattern("saves about \\d+ min of repair\\)");
        assertThat(text).contains(" -> ");
        assertThat(text(lines("next", WORDS, "--top", "24"))).contains("to open the unit", "once the unit is open");
        assertThat(text).doesNotContainPattern("( <?\\d+ %) ->\\1");
        String opened = text(lines("next", WORDS, "--opened"));
        assertThat(opened).doesNotContain("to open the unit");
    }

    @Test
    void a_test_that_saves_nothing_is_not_listed() {
        String swollen = text(lines("next", "phone screen black, pack bulging, pack swollen, charges fine"));
        assertThat(swollen).doesNotContain("saves about 0 min");
        String surge = text(lines("next", "element to earth 0.4 Mohm, boiler trips the breaker, heats fine"));
        assertThat(surge).doesNotContain("saves about 0 min");
    }

    @Test
    void next_says_when_a_fix_is_cheaper_than_any_test() {
        List<String> lines = lines("next", "dead, start resistor open, measured 8 Mohm");

        assertThat(text(lines))
                .startsWith("Stop testing; trying the best fix is cheaper than any test: ")
                .contains(" min in all");
    }

    @Test
    void a_fix_that_will_hardly_help_is_tried_for_its_cheapness_and_ends_no_testing() {
        StringWriter out = new StringWriter();
        new DecisionPage(KNOWLEDGE, new Page(new PrintWriter(out, true), false)).advice(cheapest(0.03), 1);
        assertThat(out.toString()).startsWith("Try first, since it is cheaper than any test, then test on: ");
        out.getBuffer().setLength(0);
        new DecisionPage(KNOWLEDGE, new Page(new PrintWriter(out, true), false)).advice(cheapest(0.8), 1);
        assertThat(out.toString()).startsWith("Stop testing; ");
    }

    @Test
    void a_fix_left_out_for_its_risk_names_the_risk_that_takes_it_in_beside_the_plan_too() {
        for (String command : List.of("next", "plan")) {
            assertThat(text(lines(command, "amplifier, output transistors shorted, DC at output 37 V")))
                    .as(command)
                    .containsPattern("Left out for its risk to the unit \\(--risk high takes it in\\), though it would"
                            + " cure in \\d+ % of cases: ");
        }
    }

    private static NextStep cheapest(double cures) {
        NextStep.FixChoice fix = new NextStep.FixChoice("replace-lead", "lead-broken", 5, 0, 0, cures);
        return new NextStep(List.of(), Optional.of(fix), 200, true, List.of(), Optional.empty());
    }

    @Test
    void a_plan_says_what_it_comes_to_then_the_steps_then_the_other_ways() {
        List<String> lines = lines("plan", WORDS);
        assertThat(lines.get(0))
                .matches("Plan: about \\d+ min in all, parts counted; ends repaired in \\d+ % of cases");
        assertThat(lines.get(1)).matches("(TEST|FIX) .*");
        assertThat(text(lines))
                .containsSubsequence(
                        "still there (",
                        "Expected minutes, parts and an unrepaired unit counted at their cost",
                        "this plan",
                        "swapping by likelihood, no test",
                        "testing suspect by suspect in fixed order",
                        "the best order of fixes, no test");
        assertThat(lines.stream().filter(l -> l.contains("to open the unit"))).isNotEmpty();
        assertThat(text(lines)).containsPattern(" - [^-(]+ (dead|works), and [^-(]+ \\(\\d+ %\\):");
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length - 1;
    }

    @Test
    void what_is_proposed_comes_with_its_cautions_each_once() {
        String swollen = "A swollen, dented, hot or deeply discharged lithium cell can burn without warning.";
        for (String command : List.of("next", "plan", "rank")) {
            String text = text(lines(command, "laptop battery swollen, does not charge"));
            assertThat(count(text, swollen)).as(command).isEqualTo(1);
        }
        // the finding raises it whatever is proposed
        assertThat(text(lines("plan", "battery swollen, belt slipping, no sound")))
                .contains(swollen);
        // a plan of many steps names those of the later ones
        assertThat(text(lines("plan", WORDS))).contains("Further cautions for what may follow, by 'show ID': ");
    }

    @Test
    void rank_brings_the_cautions_of_the_fix_it_tells_to_do_before_those_of_the_causes() {
        String mind = " Mind ! Mains voltage can kill.";
        assertThat(text(lines("rank", "dead, start resistor open, measured 8 Mohm", "--top", "1")))
                .containsSubsequence("Stop testing; ", mind);
        assertThat(text(lines("rank", "laptop battery swollen, does not charge")))
                .as("of causes at a per cent or two")
                .doesNotContain("Amplifier rails");
    }

    @Test
    void worth_names_the_choice_then_what_would_turn_it_over() {
        List<String> lines = lines(
                "worth",
                WORDS,
                "--fix",
                "replace-reset-supervisor",
                "--repaired",
                "120",
                "--parts",
                "15",
                "--cost",
                "20");
        assertThat(lines.get(0)).startsWith("Best: ");
        assertThat(lines.get(1)).endsWith(lines.get(0).substring("Best: ".length()));
        assertThat(text(lines))
                .containsSubsequence("Reckoned with success ", " and harm ", "The work pays above a success of ");
        String alone = "Left alone it is taken to be worth 0; give --alone if it works as it is.";
        assertThat(text(lines)).contains(alone).doesNotContainPattern("\\((-?\\d+) to \\1\\)");
        assertThat(text(lines("worth", "--fix", "replace-adapter", "--repaired", "1", "--cost", "20")))
                .contains(alone)
                .doesNotContainPattern("\\((-?\\d+) to \\1\\)");
        // a unit that works and would be risked for little
        List<String> works = lines(
                "worth", "--fix", "replace-reset-supervisor", "--repaired", "105", "--alone", "100", "--cost", "20");
        assertThat(works.get(0)).isEqualTo("Best: leave it as it is");
        assertThat(text(works)).contains("No chance of success changes that.").doesNotContain(alone);
    }

    @Test
    void fixes_tell_how_they_went_with_intervals_and_the_minutes_they_took() {
        for (String ended : List.of("fixed-and-proven", "fixed", "not-fixed")) {
            lines(
                    "outcome",
                    WORDS,
                    "--cause",
                    "reset-supervisor-failed",
                    "--fix",
                    "replace-reset-supervisor",
                    "--minutes",
                    "40",
                    "--ended",
                    ended);
        }
        List<String> lines = lines("fixes", "replace-reset-supervisor");
        assertThat(lines.get(0)).contains("[replace-reset-supervisor]");
        assertThat(lines.get(1)).isEqualTo("  tried 3, worked 2, came back 0, made worse 0");
        assertThat(text(lines))
                .containsPattern(
                        "held in 2 of 3: works in \\d+ % to \\d+ % \\(90 % sure\\); with the packs' opinion \\d+ %")
                .contains("minutes: median 40, packs say 25");
    }

    @Test
    void doubt_names_the_leader_what_speaks_against_it_and_what_would_overturn_it() {
        List<String> lines = lines("doubt", WORDS);
        assertThat(lines.get(0)).matches("Leading: .*, \\d+ %");
        assertThat(text(lines))
                .containsSubsequence(
                        "What would change this",
                        ", chance ",
                        " falls from ",
                        "Past cases behind ",
                        "None; its place is the packs' opinion.",
                        "Two faults at once: ");
    }

    @Test
    void doubt_calls_leading_only_what_is_likeliest() {
        String text = text(lines("doubt", "fuse blown, battery swollen, belt slipping, cracked panel"));
        assertThat(text)
                .startsWith("First of the causes known here: ")
                .containsPattern("; \"none of the causes known here\", \\d+ % ")
                .contains("\"none of the causes known here\" falls from ")
                .doesNotContain("Leading:")
                .doesNotContain("think of two faults");
    }

    @Test
    void how_far_a_figure_may_be_off_is_told_in_figures() {
        assertThat(text(lines("rank", "power lamp blinking", "--top", "3")))
                .containsPattern("90 % sure it lies (under|over|between) ")
                .doesNotContain("hardly known");
    }

    @Test
    void an_evaluation_tells_in_words_what_learning_came_to() {
        lines("outcome", WORDS, "--cause", "reset-supervisor-failed", "--ended", "fixed");
        Run evaluated = Run.of("evaluate", "--home", home.toString());
        String text = text(evaluated.out().lines().toList());
        assertThat(text)
                .contains("times the share that the packs alone give it")
                .doesNotContain("nats");
    }
}
