package org.benchlore.kb;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.planning.FixRecord;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.junit.jupiter.api.Test;

class MemoryTest {
    static final PackSource PACK = new PackSource("lamps.yaml", """
pack: lamps
version: 1.0.0
licence: Apache-2.0
title: Lamps
about: An invented bench.
scope: any
from: memory
symptoms:
  - id: lamp
    name: lamp
    about: Invented.
    reported: usually
    called: [lamp]
    states:
      - {id: lit, name: lit, normal: true, usual: 0.8}
      - {id: dark, name: dark, usual: 0.2}
  - id: hum
    name: hum
    about: Invented.
    reported: usually
    called: [hum]
    states:
      - {id: silent, name: silent, normal: true, usual: 0.9}
      - {id: loud, name: loud, usual: 0.1}
causes:
  - id: lead-broken
    name: Lead broken
    kind: fault
    about: Invented.
    per-thousand: 200
    shows:
      - {symptom: lamp, states: {lit: 0.1}}
    fixed-by:
      - {fix: new-lead, works: 0.9}
  - id: core-loose
    name: Core loose
    kind: fault
    about: Invented.
    per-thousand: 100
    shows:
      - {symptom: hum, states: {silent: 0.2}}
    fixed-by:
      - {fix: clamp-core, works: 0.8}
fixes:
  - {id: new-lead, name: Replace the lead, minutes: 15, risk: none, difficulty: easy, makes-worse: 0.01, tools: [],
     steps: [Replace it.], verify: [Run it for an hour.]}
  - {id: clamp-core, name: Clamp the core, minutes: 20, risk: low, difficulty: easy, makes-worse: 0.01, tools: [],
     steps: [Clamp it.], verify: [Listen.]}
""");
    static final Knowledge KNOWLEDGE = PackReader.read(List.of(PACK));

    private static final RankingQuery DARK = RankingQuery.of(List.of(Finding.of("lamp", "dark")));
    private static final int MOST_TO_FIT = 32;

    private final CaseStore store = CaseStore.inMemory();

    private Memory memory() {
        return new Memory(store, KNOWLEDGE, RankingSettings.DEFAULT, MOST_TO_FIT);
    }

    private static CaseEvent.Head head(int number, String what) {
        return new CaseEvent.Head(
                number + what,
                "case-" + number,
                Instant.parse("2026-01-05T10:00:00Z").plusSeconds(3600L * number));
    }

    private static List<CaseEvent> ended(int number) {
        String state = number % 3 == 0 ? "lit" : "dark";
        return List.of(
                new CaseEvent.Opened(head(number, "-0"), DeviceScope.ANY, "", "", CaseHistory.OWN, false),
                new CaseEvent.Noted(
                        head(number, "-1"),
                        "",
                        Reading.Source.SEEN,
                        List.of(Finding.of("lamp", state), Finding.of("hum", number % 2 == 0 ? "loud" : "silent"))),
                new CaseEvent.Concluded(
                        head(number, "-2"), number % 2 == 0 ? "core-loose" : "lead-broken", Certainty.PROVEN, ""),
                new CaseEvent.Ended(head(number, "-3"), Outcome.FIXED, null, ""));
    }

    private void ended(int from, int to) {
        for (int number = from; number < to; number++) {
            store.append(ended(number));
        }
    }

    private static double[] ranked(RankingModel model) {
        return model.probabilities(DARK);
    }

    @Test
    void a_case_among_the_first_may_change_its_lesson_when_there_are_more_than_dependence_is_learnt_from() {
        ended(0, 3 * MOST_TO_FIT);
        Memory memory = memory();
        double[] before = ranked(memory.current().model());

        store.append(List.of(new CaseEvent.Ended(head(0, "-4"), Outcome.CAME_BACK, null, "")));
        assertThat(ranked(memory.current().model()))
                .isNotEqualTo(before)
                .isEqualTo(ranked(memory().current().model()));

        store.append(List.of(new CaseEvent.Withdrawn(head(0, "-5"), null, "")));
        assertThat(ranked(memory.current().model()))
                .as("the next case takes its place among those that dependence is learnt from")
                .isEqualTo(ranked(memory().current().model()));
        assertThat(memory.current().model().cases()).isEqualTo(3 * MOST_TO_FIT - 1);
    }

    @Test
    void the_steps_in_which_events_come_make_no_difference() {
        Memory often = memory();
        for (int number = 0; number < 2 * MOST_TO_FIT; number++) {
            List<CaseEvent> events = ended((7 * number) % (2 * MOST_TO_FIT + 1));
            store.append(events.subList(2, 4)); // another bench's log need not begin with the opening
            often.current();
            store.append(events.subList(0, 2));
            often.current();
            store.append(List.of(new CaseEvent.FixApplied(head(number, "-2f"), "new-lead", "lead-broken", null, "")));
            assertThat(fixes(often)).isEqualTo(fixes(memory()));
        }
        assertThat(ranked(often.current().model()))
                .isEqualTo(ranked(memory().current().model()));

        often.rebuild();
        assertThat(ranked(often.current().model()))
                .isEqualTo(ranked(memory().current().model()));
        assertThat(fixes(often)).hasSize(1).isEqualTo(fixes(memory()));
    }

    private static List<FixRecord> fixes(Memory memory) {
        return memory.current().record().fixes(DeviceScope.ANY, Optional.empty());
    }

    @Test
    void a_model_without_one_case_ranks_as_if_it_had_never_been_seen() {
        ended(0, 8);
        double[] seven = ranked(memory().current().model());
        ended(8, 9);
        assertThat(ranked(memory().without("case-8").model())).isEqualTo(seven);
    }

    @Test
    void a_snapshot_keeps_model_record_and_planner_of_one_position() {
        ended(0, 2);
        Memory memory = memory();
        Lore before = memory.current();
        store.append(List.of(
                new CaseEvent.FixApplied(head(0, "-4"), "clamp-core", "core-loose", 10.0, ""),
                new CaseEvent.Ended(head(0, "-5"), Outcome.FIXED, null, "")));
        Lore after = memory.current();
        assertThat(before.record().fix("clamp-core").tried()).isZero();
        assertThat(after.record().fix("clamp-core").worked()).isEqualTo(1);
        assertThat(memory.without("case-0").record().fix("clamp-core").tried()).isZero();
        assertThat(after.planner()).isSameAs(memory.current().planner()).isNotSameAs(before.planner());
    }

    @Test
    void a_unit_that_recovered_by_itself_teaches_nothing_of_the_fix_before_it() {
        store.append(ended(1).subList(0, 2));
        store.append(List.of(
                new CaseEvent.FixApplied(head(1, "-4"), "new-lead", "lead-broken", null, ""),
                new CaseEvent.Ended(head(1, "-5"), Outcome.RECOVERED_BY_ITSELF, null, "")));
        Memory memory = memory();
        assertThat(memory.lesson("case-1", memory.current())).isEmpty();

        store.append(List.of(new CaseEvent.Ended(head(1, "-6"), Outcome.NOT_FIXED, null, "")));
        assertThat(memory.lesson("case-1", memory.current())).isPresent();
    }
}
