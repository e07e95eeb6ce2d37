package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Each check of the whole, with one planted weakness; the sound pack has none, see {@link PackReaderTest}. */
class PackChecksTest {
    private static final String FUSE_TWIN = """
              - id: fuse-corroded
                name: Fuse contact corroded
                kind: fault
                about: Damp.
                %sper-thousand: 10
                shows:
                  - {symptom: rail-12v, states: {absent: usually}}
                  - {symptom: rail-minus-12v, states: {absent: usually}}
                  - {symptom: lamp, states: {"off": usually}}
                  - {symptom: log-trip, states: {absent: 0.97}}
                confirmed-by: [measure-rails]
                fixed-by: [{fix: new-fuse, works: 0.9}]
            """;

    private static void warns(String yaml, String... problems) {
        assertThat(PackReader.check(PackFixture.pack(yaml)))
                .allSatisfy(problem -> assertThat(problem.severity()).isEqualTo(PackProblem.Severity.WARNING))
                .extracting(PackProblem::toString)
                .containsExactly(problems);
    }

    private static void isSound(String yaml) {
        assertThat(PackFixture.check(yaml)).isEmpty();
    }

    private static String with(String section, String entry) {
        return PackFixture.spoilt("\n" + section + ":\n", "\n" + section + ":\n" + entry.stripTrailing() + "\n");
    }

    @Test
    void a_cause_without_a_test() {
        warns(
                PackFixture.spoilt(
                        "    confirmed-by: [measure-rails]\n    fixed-by:\n      - {fix: new-fuse, works: 0.9}",
                        "    fixed-by:\n      - {fix: new-fuse, works: 0.9}"),
                "p.yaml:60:9: cause 'fuse-open' has no test that could confirm it; name one under 'confirmed-by'");
    }

    @Test
    void too_few_findings_for_a_cause() {
        warns(
                PackFixture.spoilt("      - {symptom: log-trip, states: {recurring: sometimes}}\n", ""),
                "p.yaml:81:7: cause 'regulator-tired' has 2 findings that speak for it; "
                        + "link at least 3 symptoms with an abnormal state clearly above its background");
    }

    @Test
    void no_finding_against_a_cause() {
        // 0.7 to 0.75 multiplies the odds by 1.29, which is not clear
        warns(
                PackFixture.spoilt("{green: nearly-always}", "{green: 0.75}"),
                "p.yaml:81:7: cause 'regulator-tired' has no finding that speaks against it; "
                        + "link a symptom whose normal state it leaves clearly above its background");
    }

    @Test
    void a_test_that_reveals_nothing_for_the_cause_it_confirms() {
        warns(
                PackFixture.spoilt(
                                "      - {symptom: rail-12v, state: absent, means: Look upstream.}\n"
                                        + "      - {symptom: rail-minus-12v, state: low, means: Look at the load.}",
                                "      - {symptom: log-trip, state: recurring, means: Look at the load.}")
                        .replace(
                                "{symptom: log-trip, states: {absent: 0.95}}",
                                "{symptom: log-trip, states: {absent: 0.8}}"),
                "p.yaml:60:9: no test tells these 2 causes apart: fuse-open, regulator-tired (all show nothing unusual); "
                        + "add a test, or a link to a tested symptom in which they differ",
                "p.yaml:66:7: cause 'fuse-open' has no finding that speaks against it; "
                        + "link a symptom whose normal state it leaves clearly above its background",
                "p.yaml:70:20: cause 'fuse-open': test 'measure-rails' reveals no symptom that speaks for it "
                        + "(log-trip); link one of those symptoms, or name another test");
    }

    @Test
    void an_innocent_cause_is_confirmed_by_what_is_sound() {
        String innocent = PackFixture.spoilt("name: Fuse open\n    kind: fault", "name: Fuse open\n    kind: innocent");

        String text = innocent.replace(
                "      - {symptom: rail-12v, state: absent, means: Look upstream.}\n"
                        + "      - {symptom: rail-minus-12v, state: low, means: Look at the load.}",
                "      - {symptom: log-trip, state: recurring, means: Look at the load.}");

        assertThat(PackFixture.check(text)).noneMatch(problem -> problem.contains("reveals no symptom"));
    }

    @Test
    void a_symptom_that_no_cause_explains() {
        String hum = "  - {id: hum, name: Hum, about: Heard., reported: usually, called: [hum], states: [{id: none, "
                + "normal: true, usual: 0.9}, {id: loud, usual: 0.1}]}";

        warns(
                with("symptoms", hum),
                "p.yaml:23:10: symptom 'hum' is explained by no cause; link it under 'shows' of a cause");
    }

    @Test
    void tests_and_fixes_that_nothing_leads_to() {
        String hum = "  - {id: hum, name: Hum, about: Heard., reported: usually, called: [hum], states: [{id: none, "
                + "normal: true, usual: 0.9}, {id: loud, usual: 0.1}]}";
        String listen =
                "  - {id: listen, name: Listen, minutes: 1, risk: none, misses: 0.1, false-alarms: 0.1, setup: On., "
                        + "steps: [Listen.], expect: Silence., readings: [{symptom: hum, state: loud, means: It hums.}]}";
        String fix =
                "  - {id: kick, name: Kick, minutes: 1, difficulty: easy, risk: low, makes-worse: 0.5, steps: [Kick.], "
                        + "verify: [Look.]}";
        String text = with("symptoms", hum)
                .replace("\ntests:\n", "\ntests:\n" + listen + "\n")
                .replace("\nfixes:\n", "\nfixes:\n" + fix + "\n");

        assertThat(PackFixture.check(text))
                .contains(
                        "p.yaml:90:10: test 'listen' is unreachable: no cause is confirmed by it or shows what it reveals; "
                                + "name it under 'confirmed-by' of a cause",
                        "p.yaml:106:10: fix 'kick' is unreachable: no cause is fixed by it; "
                                + "name it under 'fixed-by' of a cause")
                .hasSize(3);
    }

    @Test
    void a_risky_fix_without_a_caution() {
        warns(
                PackFixture.spoilt("makes-worse: 0.01\n    cautions: [mains]\n", "makes-worse: 0.01\n"),
                "p.yaml:109:11: fix 'new-fuse' has risk medium but no caution; say what can go wrong under 'cautions'");
    }

    @Test
    void a_hazard_that_is_spoken_of_without_its_caution() {
        warns(
                PackFixture.spoilt("steps: [Fit it.]", "steps: [Wipe the laser lens.]"),
                "p.yaml:112:13: fix 'new-fuse' speaks of a laser but has no caution for it; "
                        + "name a caution with hazard laser");
        warns(
                PackFixture.spoilt("steps: [Fit it.]", "steps: [Lift the lithium cell with hot air.]"),
                "p.yaml:112:13: fix 'new-fuse' speaks of hot air but has no caution for it; "
                        + "name a caution with hazard heat",
                "p.yaml:112:13: fix 'new-fuse' speaks of lithium but has no caution for it; "
                        + "name a caution with hazard lithium");
        warns(
                PackFixture.spoilt(
                        "cautions: [mains]\n    setup: Unit on, mains present.",
                        "setup: Probe the primary side, mains present."),
                "p.yaml:96:12: test 'measure-rails' speaks of mains but has no caution for it; "
                        + "name a caution with hazard mains",
                "p.yaml:96:12: test 'measure-rails' speaks of the primary side but has no caution for it; "
                        + "name a caution with hazard mains or stored-charge");
    }

    @Test
    void a_hazard_that_is_only_named_to_rule_it_out() {
        isSound(PackFixture.spoilt(
                "cautions: [mains]\n    setup: Unit on, mains present.",
                "setup: Unplugged from the mains; mains lead in sight."));
        isSound(PackFixture.spoilt(
                "steps: [Fit it.]", "steps: [\"Fit it, no hot air.\", Read it with a laser thermometer.]"));
    }

    @Test
    void causes_that_no_test_tells_apart() {
        warns(
                with("causes", FUSE_TWIN.formatted("")),
                "p.yaml:60:9: no test tells these 2 causes apart: fuse-corroded, fuse-open "
                        + "(all show rail-12v, rail-minus-12v); "
                        + "add a test, or a link to a tested symptom in which they differ");
    }

    @Test
    void causes_of_two_families_need_no_telling_apart() {
        String text = with("causes", FUSE_TWIN.formatted("scope: player/corvane\n    "));

        assertThat(PackFixture.check(text))
                .as("one lies within the other's scope")
                .hasSize(1);
        isSound(text.replace("id: fuse-open\n", "id: fuse-open\n    scope: player/dorland\n"));
    }

    @Test
    void one_name_for_two_symptoms() {
        warns(
                PackFixture.spoilt("called: [trip code]", "called: [trip code, Lamp]"),
                "p.yaml:54:25: 'Lamp' is taught for symptom 'log-trip' and for symptom 'lamp', at p.yaml:43:14; "
                        + "keep it where it is the more common");
        isSound(PackFixture.spoilt("called: [trip code]", "scope: player\n    called: [trip code, Lamp]"));
    }

    @Test
    void one_phrase_for_two_states() {
        warns(
                PackFixture.spoilt("      \"off\": [no light]", "      green: [No light!]\n      \"off\": [no light]"),
                "p.yaml:50:15: 'no light' is taught for 'lamp off' and for 'lamp green', at p.yaml:49:15; "
                        + "keep it where it is the more common");
    }

    @Test
    void one_word_for_two_states_of_a_symptom() {
        warns(
                PackFixture.spoilt("words: [sags]", "words: [sags, Good]"),
                "p.yaml:20:14: state set 'rail': the word 'Good' means both 'fine' and 'low'; keep it at one state");
    }

    @Test
    void wording_is_folded_but_signs_and_points_of_numbers_stay() {
        assertThat(WordingCheck.folded("+12V, Rail")).isEqualTo("12v rail");
        assertThat(WordingCheck.folded("-12 V")).isEqualTo("-12 v");
        assertThat(WordingCheck.folded("3.3 V.")).isEqualTo("3.3 v");
        assertThat(WordingCheck.folded("PS-ON")).isEqualTo("ps on");
    }
}
