package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.planning.BenchRecord;
import org.benchlore.kb.planning.UnitQueries;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingSettings;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading.Source;

/** A made-up pack with a made-up device, and one case of it; names and words can be spoilt. */
final class SheetFixture {
    static final DeviceScope SCOPE = DeviceScope.parse("player/corvane");

    private static final String PACK = """
            pack: sheets
            version: 1.0.0
            licence: Apache-2.0
            title: A made-up bench
            about: For tests of the sheets.
            from: memory
            cautions:
              - {id: mains, hazard: mains, text: Mains can kill. Unplug first., from: common-practice}
              - {id: cell, hazard: lithium, text: Cells burn., from: memory}
              - {id: fumes, hazard: fumes, text: Extract at the joint., from: memory}
            symptoms:
              - id: rail-12v
                name: 12 V rail
                about: On the big connector.
                reported: if-tested
                quantity: {unit: V, nominal: 12, tolerance: 5%}
                called: ["12 V"]
                states:
                  - {id: fine, normal: true, usual: 0.8, range: "-tol..+tol", words: [good], opposite: absent}
                  - {id: absent, usual: 0.15, range: "..10%", words: [missing]}
                  - {id: low, usual: 0.05, range: "10%..-tol", words: [sags]}
                negated: absent
              - id: lamp
                name: NAME
                about: On the front.
                reported: always
                called: [lamp]
                states:
                  - {id: lit, normal: true, usual: 0.7, words: [lit]}
                  - {id: dark, usual: 0.3, words: [dark], opposite: lit}
              - id: log-trip
                name: trip code
                about: In the log.
                reported: usually
                called: [trip code]
                states:
                  - {id: absent, normal: true, usual: 0.8, words: [gone]}
                  - {id: once, usual: 0.1, words: [once]}
                  - {id: recurring, usual: 0.1, words: [again]}
            causes:
              - id: fuse-open
                name: Fuse open
                kind: fault
                about: Old age.
                per-thousand: 200
                shows:
                  - {symptom: rail-12v, states: {absent: 0.95}}
                  - {symptom: lamp, states: {dark: 0.95}}
                confirmed-by: [measure-rail]
                fixed-by: [{fix: new-fuse, works: 0.9}]
                cautions: [mains]
              - id: regulator-tired
                name: Regulator tired
                kind: fault
                about: Heat.
                per-thousand: 150
                shows:
                  - {symptom: rail-12v, states: {low: 0.9}}
                  - {symptom: log-trip, states: {recurring: 0.8}}
                  - {symptom: lamp, states: {lit: 0.9}}
                confirmed-by: [measure-rail]
                fixed-by: [{fix: new-fuse, works: 0.1}]
            tests:
              - id: measure-rail
                name: Measure the rail
                minutes: 5
                tools: [multimeter]
                risk: low
                misses: 0.02
                false-alarms: 0.02
                cautions: [mains]
                setup: Unit on.
                steps: [Probe to the rail.]
                expect: Within 5 %.
                readings:
                  - {symptom: rail-12v, state: absent, means: Look upstream.}
              - id: read-log
                name: Read the log
                minutes: 4
                tools: []
                risk: none
                misses: 0.02
                false-alarms: 0.02
                setup: Unit on.
                steps: [Read it.]
                expect: Empty.
                readings:
                  - {symptom: log-trip, state: recurring, means: It trips.}
              - id: look-at-lamp
                name: Look at the lamp
                minutes: 1
                tools: []
                risk: none
                misses: 0.02
                false-alarms: 0.02
                setup: Unit on.
                steps: [Look.]
                expect: Lit.
                readings:
                  - {symptom: lamp, state: dark, means: No power.}
            fixes:
              - id: new-fuse
                name: New fuse
                minutes: 10
                parts: [fuse]
                difficulty: easy
                risk: medium
                makes-worse: 0.01
                cautions: [mains, fumes, cell]
                steps: [Fit it.]
                verify: [Ten cold starts.]
            devices:
              - scope: player/corvane
                name: Corvane (invented)
                codes:
                  - {code: K-1, spelled: [K1], symptom: log-trip, means: It tripped., innocent: Also after a pulled plug.}
                log-lines:
                  - id: event
                    pattern: '^(?P<time>.{19}) (?P<code>K-\\d)$'
                    time: yyyy-MM-dd HH:mm:ss
            """;

    private SheetFixture() {}

    static Knowledge knowledge(String lampName) {
        String yaml = PACK.replace("name: NAME", "name: " + quoted(lampName));
        return PackReader.read(List.of(new PackSource("p.yaml", yaml)));
    }

    /** The pack with somebody's words in every text that a page shows. */
    static Knowledge spoilt(String words) {
        String yaml = PACK;
        for (String text : List.of(
                "NAME",
                "A made-up bench",
                "For tests of the sheets.",
                "Apache-2.0",
                "Mains can kill. Unplug first.",
                "On the front.",
                "Fuse open",
                "Old age.",
                "Measure the rail",
                "Unit on.",
                "Probe to the rail.",
                "Within 5 %.",
                "Look upstream.",
                "New fuse",
                "Fit it.",
                "Ten cold starts.",
                "Corvane (invented)",
                "It tripped.",
                "Also after a pulled plug.")) {
            assertThat(yaml).contains(text);
            yaml = yaml.replace(text, quoted(words));
        }
        for (String list : List.of("tools: [multimeter]", "parts: [fuse]", "called: [lamp]", "words: [dark]")) {
            assertThat(yaml).contains(list);
            yaml = yaml.replace(list, list.substring(0, list.indexOf('[') + 1) + quoted(words) + "]");
        }
        return PackReader.read(List.of(new PackSource("p.yaml", yaml)));
    }

    private static String quoted(String text) {
        return "'" + text.replace("'", "''") + "'";
    }

    static Sheets sheets(String lampName) {
        return sheets(knowledge(lampName));
    }

    static Sheets sheets(Knowledge knowledge) {
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT);
        BenchRecord record = BenchRecord.none(knowledge);
        UnitQueries queries = new UnitQueries(knowledge, model, record, (codes, scope, except) -> List.of());
        return new Sheets(knowledge, Reader.of(knowledge), model, record, queries);
    }

    static Sheets sheets() {
        return sheets("front lamp");
    }

    private static CaseEvent.Head head(int step) {
        return new CaseEvent.Head(
                "e" + step, "job-1", Instant.parse("2026-11-25T10:00:00Z").plusSeconds(600L * step));
    }

    /** In, noted, tested, logged, concluded, fixed, measured again, ended; with somebody's words wherever they fit. */
    static CaseHistory history(String words, String unit) {
        List<CaseEvent> events = new ArrayList<>();
        events.add(new CaseEvent.Opened(head(1), SCOPE, words, unit, CaseHistory.OWN, true));
        events.add(new CaseEvent.Noted(head(2), words, Source.OWNER, List.of(Finding.of("lamp", "dark"))));
        events.add(new CaseEvent.Tested(
                head(3), "measure-rail", List.of(Finding.of("rail-12v", "absent")), 6.0, "12 V rail 0.3 V. " + words));
        events.add(new CaseEvent.Noted(
                head(4),
                "2026-11-20 10:00:00 K-1\n2026-11-24 11:00:00 K-1\n2026-11-24 11:30:00 K-9\n",
                Source.SEEN,
                List.of(Finding.of("log-trip", "recurring"))));
        events.add(new CaseEvent.Concluded(head(5), "fuse-open", Certainty.PROVEN, words));
        events.add(new CaseEvent.FixApplied(head(6), "new-fuse", "fuse-open", 12.0, words));
        events.add(new CaseEvent.Noted(
                head(7), "12 V rail 12.1 V", Source.MEASURED, List.of(Finding.of("rail-12v", "fine"))));
        events.add(new CaseEvent.Ended(head(8), Outcome.FIXED, null, words));
        return CaseHistory.fold(events).orElseThrow();
    }
}
