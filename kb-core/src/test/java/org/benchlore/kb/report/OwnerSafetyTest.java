package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.report.Sheets.Format;
import org.benchlore.kb.report.Sheets.Kind;
import org.junit.jupiter.api.Test;

/** What the owner is warned of: what still stands and what the unit holds, and nothing of the bench's own tools. */
class OwnerSafetyTest {
    private static final String SWOLLEN = "Cells burn. Keep it outdoors.";
    private static final String MAINS_SIDE = "That concerns the mains side";
    private static final String INSIDE = "There is mains voltage inside.";

    private static final Knowledge KNOWLEDGE = PackReader.read(List.of(new PackSource(
            "p.yaml",
            """
            pack: owner
            version: 1.0.0
            licence: Apache-2.0
            title: A made-up bench
            about: For tests of what an owner is warned of.
            from: memory
            cautions:
              - {id: mains, hazard: mains, text: Mains can kill., from: memory}
              - {id: cell, hazard: lithium, text: Cells burn. Keep it outdoors., from: memory}
              - {id: air, hazard: pressure, text: Blown dust goes into eyes., from: memory}
              - {id: iron, hazard: heat, text: Irons burn., from: memory}
            power-off:
              - {id: swollen, symptom: pack-bulge, state: present, why: a swollen pack can burn, fixes: [retire-pack]}
              - {id: smelt, symptom: smell, state: present, why: what smells may go on burning, until: [insulation],
                 fixes: [new-filter]}
              - {id: bridged, symptom: fuse, state: bridged, why: nothing protects it, fixes: [new-filter]}
            symptoms:
              - id: smell
                name: burning smell
                about: By nose.
                reported: always
                called: [smell]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [none]}
                  - {id: present, usual: 0.1, words: [burning]}
              - id: fuse
                name: fuse fitted
                about: By eye.
                reported: if-tested
                called: [fuse]
                states:
                  - {id: right, normal: true, usual: 0.98, words: [right]}
                  - {id: bridged, usual: 0.02, words: [bridged]}
              - id: pack-bulge
                name: swollen pack
                about: Seen from the side.
                reported: always
                called: [pack]
                states:
                  - {id: absent, normal: true, usual: 0.992, words: [flat]}
                  - {id: present, usual: 0.008, words: [swollen]}
              - id: insulation
                name: insulation to earth
                about: With a tester.
                reported: if-tested
                called: [insulation]
                states:
                  - {id: good, normal: true, usual: 0.99, words: [good]}
                  - {id: poor, usual: 0.01, words: [poor]}
              - id: noise
                name: noise
                about: By ear.
                reported: always
                called: [noise]
                states:
                  - {id: none, normal: true, usual: 0.7, words: [none]}
                  - {id: loud, usual: 0.3, words: [loud]}
              - id: got-wet
                name: got wet
                about: Told by the owner.
                reported: usually
                history: true
                called: [wet]
                states:
                  - {id: absent, normal: true, usual: 0.99, words: [dry]}
                  - {id: present, usual: 0.01, words: [soaked]}
            causes:
              - id: swollen
                name: Cell swollen
                kind: fault
                about: Age.
                per-thousand: 20
                shows: [{symptom: pack-bulge, states: {present: 0.97}}]
                confirmed-by: [listen]
                fixed-by: [{fix: retire-pack, works: 0.9}]
                cautions: [cell]
              - id: leaks
                name: Filter leaks
                kind: fault
                about: Age.
                per-thousand: 20
                shows:
                  - {symptom: insulation, states: {poor: 0.9}}
                  - {symptom: got-wet, states: {present: 0.6}}
                  - {symptom: smell, states: {present: 0.2}}
                  - {symptom: fuse, states: {bridged: 0.1}}
                confirmed-by: [listen]
                fixed-by: [{fix: new-filter, works: 0.9}]
                cautions: [mains]
              - id: dusty
                name: Cooler dusty
                kind: fault
                about: Years.
                per-thousand: 100
                shows: [{symptom: noise, states: {loud: 0.9}}]
                confirmed-by: [listen]
                fixed-by: [{fix: blow-out, works: 0.9}]
              - id: adapter-dead
                name: Adapter dead
                kind: fault
                about: Age.
                per-thousand: 100
                shows: [{symptom: noise, states: {none: 0.99}}]
                confirmed-by: [listen]
                fixed-by: [{fix: new-adapter, works: 0.9}]
            tests:
              - id: listen
                name: Listen
                minutes: 1
                tools: []
                risk: none
                misses: 0.02
                false-alarms: 0.02
                setup: Unit on.
                steps: [Listen.]
                expect: Nothing.
                readings:
                  - {symptom: noise, state: loud, means: Dust.}
                  - {symptom: pack-bulge, state: present, means: Stop.}
                  - {symptom: insulation, state: poor, means: Stop.}
                  - {symptom: smell, state: present, means: Stop.}
                  - {symptom: fuse, state: bridged, means: Stop.}
                  - {symptom: got-wet, state: present, means: Dry it.}
            fixes:
            """ + fix("retire-pack", false, "cell") + fix("new-filter", true, "mains, iron")
                    + fix("blow-out", true, "mains, air, iron") + fix("new-adapter", false, "mains"))));

    private static String fix(String id, boolean opens, String cautions) {
        return """
                  - id: %s
                    name: %s
                    minutes: 10
                    opens: %s
                    parts: []
                    difficulty: easy
                    risk: low
                    makes-worse: 0.01
                    cautions: [%s]
                    steps: [Do it.]
                    verify: [Try it.]
                """.formatted(id, id, opens, cautions);
    }

    private static CaseEvent.Head head(int n) {
        return new CaseEvent.Head(
                "e" + n, "job", Instant.parse("2026-11-25T10:00:00Z").plusSeconds(60L * n));
    }

    private static CaseEvent noted(int n, String symptom, String state) {
        return new CaseEvent.Noted(head(n), "", Reading.Source.SEEN, List.of(Finding.of(symptom, state)));
    }

    private static CaseEvent fixed(int n, String fix, String cause) {
        return new CaseEvent.FixApplied(head(n), fix, cause, null, "");
    }

    private static CaseEvent ended(Outcome outcome) {
        return new CaseEvent.Ended(head(99), outcome, null, "");
    }

    private static String safety(CaseEvent... events) {
        List<CaseEvent> all = new ArrayList<>();
        all.add(new CaseEvent.Opened(head(0), DeviceScope.ANY, "", "", CaseHistory.OWN, false));
        all.addAll(List.of(events));
        String sheet = SheetFixture.sheets(KNOWLEDGE)
                .write(CaseHistory.fold(all).orElseThrow(), Kind.HANDOVER, Format.MARKDOWN);
        int at = sheet.indexOf("## For your safety");
        return at < 0 ? "" : sheet.substring(at);
    }

    @Test
    void a_swollen_pack_that_stands_is_warned_of_whatever_else_was_repaired() {
        CaseEvent seen = noted(1, "pack-bulge", "present");
        assertThat(safety(seen)).contains("Not put right: Swollen pack.").contains(SWOLLEN);
        assertThat(safety(seen, fixed(2, "blow-out", "dusty"), ended(Outcome.FIXED)))
                .contains(SWOLLEN);
        assertThat(safety(seen, fixed(2, "retire-pack", "swollen"), ended(Outcome.NOT_FIXED)))
                .contains(SWOLLEN);
        assertThat(safety(seen, fixed(2, "retire-pack", "swollen"), ended(Outcome.FIXED)))
                .doesNotContain(SWOLLEN)
                .contains("lithium battery");
        assertThat(safety(seen, noted(2, "pack-bulge", "absent"))).isEmpty();
    }

    @Test
    void poor_insulation_that_stands_keeps_the_plug_out() {
        CaseEvent seen = noted(1, "insulation", "poor");
        assertThat(safety(seen, ended(Outcome.NOT_WORTH_IT)))
                .contains("Not put right: Insulation to earth: poor. " + MAINS_SIDE)
                .contains("Do not plug the unit in until it is put right.");
        assertThat(safety(seen, fixed(2, "new-filter", "leaks"), ended(Outcome.FIXED)))
                .doesNotContain(MAINS_SIDE)
                .contains(INSIDE);
        assertThat(safety(seen, fixed(2, "new-filter", "leaks"), noted(3, "insulation", "poor"), ended(Outcome.FIXED)))
                .contains(MAINS_SIDE);
    }

    @Test
    void what_once_happened_stands_until_the_work_has_answered_it() {
        CaseEvent wet = noted(1, "got-wet", "present");
        assertThat(safety(wet)).contains(MAINS_SIDE);
        assertThat(safety(wet, fixed(2, "blow-out", "dusty"), ended(Outcome.FIXED)))
                .doesNotContain(MAINS_SIDE);
        assertThat(safety(wet, ended(Outcome.NO_FAULT_FOUND))).isEmpty();
    }

    @Test
    void what_forbade_power_at_the_bench_keeps_the_plug_out_at_home() {
        CaseEvent smelt = noted(1, "smell", "present");
        String unplugged =
                "Not put right: Burning smell. Do not plug it in, charge it or switch it on, and leave opening"
                        + " it to a workshop: what smells may go on burning.";
        assertThat(safety(smelt, ended(Outcome.GIVEN_UP))).contains(unplugged);
        assertThat(safety(smelt, fixed(2, "blow-out", "dusty"), ended(Outcome.NOT_FIXED)))
                .contains(unplugged);
        assertThat(safety(smelt, noted(2, "insulation", "good"), ended(Outcome.GIVEN_UP)))
                .as("looked at and found sound")
                .doesNotContain("Not put right");
        assertThat(safety(smelt, fixed(2, "blow-out", "dusty"), ended(Outcome.FIXED)))
                .as("it ran since")
                .doesNotContain("Not put right");
        assertThat(safety(smelt, fixed(2, "blow-out", "dusty"), noted(3, "smell", "present"), ended(Outcome.FIXED)))
                .contains(unplugged);
    }

    @Test
    void what_only_a_fix_can_lift_stands_after_any_other() {
        CaseEvent bridged = noted(1, "fuse", "bridged");
        assertThat(safety(bridged, fixed(2, "blow-out", "dusty"), ended(Outcome.FIXED)))
                .contains("Not put right: Fuse fitted: bridged.");
        assertThat(safety(bridged, fixed(2, "new-filter", "leaks"), ended(Outcome.FIXED)))
                .doesNotContain("Not put right");
        assertThat(safety(noted(1, "pack-bulge", "present")))
                .as("the battery's own caution says it already")
                .doesNotContain("Do not plug it in");
    }

    @Test
    void hazards_of_the_work_and_of_an_adapter_outside_are_not_told_as_the_unit_s() {
        assertThat(safety(fixed(1, "blow-out", "dusty"), ended(Outcome.FIXED)))
                .contains(INSIDE)
                .doesNotContain("under pressure")
                .doesNotContain("get hot");
        assertThat(safety(fixed(1, "new-adapter", "adapter-dead"), ended(Outcome.FIXED)))
                .isEmpty();
        assertThat(safety(noted(1, "pack-bulge", "present"), fixed(2, "blow-out", "dusty"), ended(Outcome.FIXED)))
                .as("runs from a battery")
                .doesNotContain(INSIDE);
    }

    @Test
    void a_state_names_a_cause_only_if_it_is_common_with_it_and_rare_without() {
        assertThat(KNOWLEDGE.causesNamedBy("pack-bulge", "present"))
                .extracting(c -> c.id())
                .containsExactly("swollen");
        assertThat(KNOWLEDGE.causesNamedBy("noise", "loud")).isEmpty();
        assertThat(KNOWLEDGE.causesNamedBy("noise", "none")).isEmpty();
        assertThat(KNOWLEDGE.causesNamedBy("no-such", "present")).isEmpty();
    }
}
