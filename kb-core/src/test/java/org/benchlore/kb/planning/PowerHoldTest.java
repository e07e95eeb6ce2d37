package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading;
import org.junit.jupiter.api.Test;

/** Units that must not be powered now. */
class PowerHoldTest {
    private static final String ENTRIES = """
symptoms:
  - id: wetness
    name: wetness
    about: Invented.
    reported: usually
    called: [wetness]
    states:
      - {id: dry, name: dry, normal: true, usual: 0.95}
      - {id: wet, name: wet, usual: 0.05}
  - id: deposit
    name: deposit
    about: Invented.
    reported: if-tested
    called: [deposit]
    states:
      - {id: none, name: none, normal: true, usual: 0.9}
      - {id: stained, name: stained, usual: 0.1}
causes:
  - id: spill
    name: Spill
    kind: fault
    about: Invented.
    per-thousand: 30
    shows:
      - {symptom: wetness, states: {wet: 0.1}}
      - {symptom: deposit, states: {stained: 0.9}}
      - {symptom: lamp, states: {dark: 0.5}}
    fixed-by:
      - {fix: dry-out, works: 0.6}
tests:
  - {id: measure-feed, refines: true, powers: true}
  - id: look-inside
    name: Look inside
    minutes: 4
    risk: none
    misses: 0.05
    false-alarms: 0.05
    setup: Unit unplugged.
    steps: [Look.]
    expect: none
    readings:
      - {symptom: deposit, state: stained, means: Wash it.}
fixes:
  - {id: replace-board, refines: true, powers: true}
  - {id: dry-out, name: Dry it out, minutes: 30, powers: true, risk: none, difficulty: easy, makes-worse: 0.01, tools: [],
     steps: [Dry it.], verify: [Run it.]}
""";
    private static final String RULE = """
power-off:
  - {id: wet, symptom: wetness, state: wet, why: it is wet, fixes: [dry-out]%s}
""";
    private static final Knowledge FREE = BenchWorld.with(ENTRIES);
    private static final TestPlanner UNRULED = planner(FREE);
    private static final TestPlanner LOOKS = planner(BenchWorld.with(ENTRIES + RULE.formatted(", until: [deposit]")));
    private static final TestPlanner MENDS = planner(BenchWorld.with(ENTRIES + RULE.formatted("")));
    private static final RankingQuery DARK = BenchWorld.query("lamp=dark");
    private static final RankingQuery WET = BenchWorld.query("lamp=dark", "wetness=wet");

    private static Optional<Reading> unread(String text) {
        return Optional.empty();
    }

    private static TestPlanner planner(Knowledge knowledge) {
        return new TestPlanner(knowledge, RankingModel.of(knowledge, RankingSettings.DEFAULT.doubting(0)));
    }

    private static List<String> ids(NextStep next) {
        return next.tests().stream().map(t -> t.test().id()).toList();
    }

    @Test
    void without_such_a_finding_everything_is_as_it_was_bit_for_bit() {
        for (String wetness : List.of("", "wetness=dry")) {
            RankingQuery query = wetness.isEmpty() ? DARK : BenchWorld.query("lamp=dark", wetness);
            assertThat(LOOKS.next(query, BenchConditions.DEFAULT))
                    .isEqualTo(UNRULED.next(query, BenchConditions.DEFAULT));
            assertThat(LOOKS.plan(query, BenchConditions.DEFAULT))
                    .isEqualTo(UNRULED.plan(query, BenchConditions.DEFAULT));
        }
    }

    @Test
    void what_powers_the_unit_waits_and_the_look_that_may_lift_it_comes_first() {
        assertThat(UNRULED.next(WET, BenchConditions.DEFAULT)
                        .first()
                        .orElseThrow()
                        .test()
                        .id())
                .isEqualTo("measure-feed");

        NextStep next = LOOKS.next(WET, BenchConditions.DEFAULT);
        PowerHold hold = next.hold().orElseThrow();
        assertThat(hold.reasons())
                .containsExactly(new PowerHold.Reason(
                        "wet",
                        "wetness",
                        "wet",
                        "it is wet",
                        List.of(new PowerOff.Sign("deposit", "none")),
                        List.of("dry-out")));
        assertThat(hold.tests()).isEqualTo(1);
        assertThat(hold.fixes()).isEqualTo(1);
        assertThat(hold.firstTest()).contains("look-inside");
        assertThat(ids(next)).containsExactly("look-inside");
        assertThat(next.first().orElseThrow().test().id()).isEqualTo("look-inside");

        Plan plan = LOOKS.plan(WET, BenchConditions.DEFAULT);
        assertThat(plan.hold()).contains(hold);
        assertThat(plan.root().id()).isEqualTo("look-inside");
        assertThat(plan.root().branches())
                .allSatisfy(b -> assertThat(b.step().action()).isEqualTo(Plan.Action.ASK_AGAIN));
        assertThat(plan.order()).extracting(NextStep.FixChoice::fixId).doesNotContain("replace-board");
    }

    @Test
    void a_fix_that_only_power_can_show_to_have_helped_is_not_tried_meanwhile() {
        RankingQuery humming = BenchWorld.query("lamp=lit", "hum=loud", "wetness=wet");
        assertThat(UNRULED.next(humming, BenchConditions.DEFAULT)
                        .repair()
                        .orElseThrow()
                        .fixId())
                .isNotEqualTo("dry-out");
        for (TestPlanner held : List.of(LOOKS, MENDS)) {
            assertThat(held.next(humming, BenchConditions.DEFAULT)
                            .repair()
                            .orElseThrow()
                            .fixId())
                    .isEqualTo("dry-out");
        }

        TestPlanner twoLift =
                planner(BenchWorld.with(ENTRIES + RULE.formatted("").replace("[dry-out]", "[dry-out, replace-board]")));
        RankingQuery dark = BenchWorld.query("lamp=dark", "wetness=wet");
        assertThat(twoLift.next(dark, BenchConditions.DEFAULT)
                        .hold()
                        .orElseThrow()
                        .firstFix())
                .isPresent();
        assertThat(twoLift.next(dark, BenchConditions.DEFAULT).stopTesting()).isFalse();
        assertThat(twoLift.plan(dark, BenchConditions.DEFAULT).root().id()).isEqualTo("look-inside");

        TestPlanner nothingLifts =
                planner(BenchWorld.with(ENTRIES + RULE.formatted("").replace(", fixes: [dry-out]", "")));
        NextStep next = nothingLifts.next(humming, BenchConditions.DEFAULT);
        assertThat(next.hold().orElseThrow().firstFix()).isEmpty();
        assertThat(next.repair()).isEmpty();
        Plan plan = nothingLifts.plan(humming, BenchConditions.DEFAULT);
        assertThat(plan.root().action()).isEqualTo(Plan.Action.TEST);
        assertThat(plan.root().id()).isEqualTo(next.first().orElseThrow().test().id());
        assertThat(plan.root().branches())
                .allSatisfy(b -> assertThat(b.step().action()).isEqualTo(Plan.Action.ASK_AGAIN));
        assertThat(plan.order()).isEmpty();
    }

    @Test
    void all_looks_have_to_find_it_sound_and_one_that_does_not_leaves_only_the_fix() {
        String browned = """
            symptoms:
              - id: browning
                name: browning
                about: Invented.
                reported: if-tested
                called: [browning]
                states:
                  - {id: absent, name: absent, normal: true, usual: 0.9}
                  - {id: present, name: present, usual: 0.1}
            """;
        TestPlanner looks = planner(BenchWorld.with(
                ENTRIES.replace("symptoms:\n", browned) + RULE.formatted(", until: [deposit, browning]")));
        assertThat(looks.next(BenchWorld.query("wetness=wet", "browning=absent"), BenchConditions.DEFAULT)
                        .hold()
                        .orElseThrow()
                        .reasons()
                        .get(0)
                        .until())
                .as("the other look is still to be made")
                .containsExactly(new PowerOff.Sign("deposit", "none"));
        assertThat(looks.next(
                                BenchWorld.query("wetness=wet", "browning=absent", "deposit=none"),
                                BenchConditions.DEFAULT)
                        .hold())
                .isEmpty();
        PowerHold hold = looks.next(
                        BenchWorld.query("wetness=wet", "browning=absent", "deposit=stained"), BenchConditions.DEFAULT)
                .hold()
                .orElseThrow();
        assertThat(hold.firstTest()).isEmpty();
        assertThat(hold.firstFix()).contains("dry-out");
        assertThat(hold.reasons().get(0).until()).isEmpty();
    }

    @Test
    void where_no_look_lifts_it_the_fix_that_does_comes_first_and_need_not_wait_itself() {
        NextStep next = MENDS.next(WET, BenchConditions.DEFAULT);
        assertThat(next.hold().orElseThrow().firstFix()).contains("dry-out");
        assertThat(next.first()).isEmpty();
        assertThat(next.repair().orElseThrow().fixId()).isEqualTo("dry-out");
        Plan plan = MENDS.plan(WET, BenchConditions.DEFAULT);
        assertThat(plan.root().action()).isEqualTo(Plan.Action.FIX);
        assertThat(plan.root().id()).isEqualTo("dry-out");
    }

    @Test
    void what_makes_safe_comes_before_a_better_step_that_needs_no_power() {
        RankingQuery lit = BenchWorld.query("lamp=lit", "hum=loud", "wetness=wet");
        assertThat(UNRULED.next(lit, BenchConditions.DEFAULT).stopTesting()).isTrue();
        NextStep held = LOOKS.next(lit, BenchConditions.DEFAULT);
        assertThat(held.hold().orElseThrow().firstTest()).contains("look-inside");
        assertThat(held.stopTesting()).isFalse();
        assertThat(LOOKS.plan(lit, BenchConditions.DEFAULT).root().id()).isEqualTo("look-inside");
    }

    @Test
    void a_state_half_as_likely_as_another_forbids_and_an_unlikely_one_does_not() {
        List<Finding> doubtful = new ArrayList<>(DARK.findings());
        doubtful.add(Finding.soft("wetness", Map.of("wet", 0.5, "dry", 1.0)));
        assertThat(LOOKS.next(DARK.with(doubtful), BenchConditions.DEFAULT).hold())
                .isPresent();
        doubtful.set(1, Finding.soft("wetness", Map.of("wet", 0.4, "dry", 1.0)));
        assertThat(LOOKS.next(DARK.with(doubtful), BenchConditions.DEFAULT).hold())
                .isEmpty();
    }

    @Test
    void a_reading_named_under_until_or_what_was_made_safe_lifts_it() {
        RankingQuery looked = BenchWorld.query("lamp=dark", "wetness=wet", "deposit=none");
        assertThat(LOOKS.next(looked, BenchConditions.DEFAULT).hold()).isEmpty();
        assertThat(LOOKS.next(BenchWorld.query("lamp=dark", "wetness=wet", "deposit=stained"), BenchConditions.DEFAULT)
                        .hold())
                .isPresent();
        assertThat(LOOKS.next(WET, BenchConditions.DEFAULT.madeSafe(List.of("wet")))
                        .hold())
                .isEmpty();
    }

    @Test
    void a_fix_in_the_case_makes_safe_until_it_is_seen_again() {
        CaseEvent wet = new CaseEvent.Noted(head(1), "wet", Reading.Source.SEEN, List.of(Finding.of("wetness", "wet")));
        CaseEvent dried = new CaseEvent.FixApplied(head(2), "dry-out", "spill", 30.0, "");
        CaseEvent again =
                new CaseEvent.Noted(head(3), "wet again", Reading.Source.SEEN, List.of(Finding.of("wetness", "wet")));
        assertThat(LOOKS.madeSafe(List.of(wet), PowerHoldTest::unread)).isEmpty();
        assertThat(LOOKS.madeSafe(List.of(wet, dried), PowerHoldTest::unread)).containsExactly("wet");
        assertThat(LOOKS.madeSafe(List.of(wet, dried, again), PowerHoldTest::unread))
                .isEmpty();
    }

    @Test
    void words_that_tell_of_the_work_make_safe_as_well_and_only_behind_what_forbids() {
        Knowledge tells = BenchWorld.with(
                ENTRIES.replace("steps: [Dry it.],", "steps: [Dry it.], done: [opened ... washed ... dry|dried],")
                        + RULE.formatted(""));
        TestPlanner planner = planner(tells);
        Reader reader = Reader.of(tells);
        Function<String, Optional<Reading>> read = text -> Optional.of(reader.read(text, DeviceScope.ANY));
        CaseEvent wet = new CaseEvent.Noted(head(1), "wet", Reading.Source.SEEN, List.of(Finding.of("wetness", "wet")));
        CaseEvent washed = new CaseEvent.Noted(
                head(2), "Opened and washed it with spirit, board is dry", Reading.Source.SEEN, List.of());
        CaseEvent dried = new CaseEvent.Noted(head(3), "dried in rice for a week", Reading.Source.SEEN, List.of());
        assertThat(planner.madeSafe(List.of(wet, washed), read)).containsExactly("wet");
        assertThat(planner.madeSafe(List.of(wet, dried), read)).isEmpty();
        assertThat(planner.madeSafe(List.of(washed), read))
                .as("nothing was wet then")
                .isEmpty();
        assertThat(planner.madeSafe(List.of(washed, wet), read)).isEmpty();

        assertThat(planner.madeSafe(reader.read("wetness wet, opened, washed it, dry now", DeviceScope.ANY)))
                .containsExactly("wet");
        assertThat(planner.madeSafe(reader.read("opened, washed it, dry now, wetness wet again", DeviceScope.ANY)))
                .isEmpty();
        for (String text : List.of(
                "opened, will be washed, then dry",
                "not opened, washed and dry?",
                "owner opened it and washed it dry")) {
            assertThat(planner.madeSafe(reader.read(text, DeviceScope.ANY)))
                    .as(text)
                    .isEmpty();
        }
    }

    private static CaseEvent.Head head(int n) {
        return new CaseEvent.Head("e-" + n, "case", Instant.ofEpochSecond(1_700_000_000L + n));
    }

    @Test
    void a_device_or_case_that_is_told_nothing_of_is_not_held() {
        RankingQuery nothing = new RankingQuery(List.of(), DeviceScope.ANY, false);
        assertThat(LOOKS.next(nothing, BenchConditions.DEFAULT).hold()).isEqualTo(Optional.empty());
    }
}
