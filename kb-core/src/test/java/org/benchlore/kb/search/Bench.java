package org.benchlore.kb.search;

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
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;

/** A small made-up pack, and cases of it. */
final class Bench {
    static final String PACK = """
            pack: bench
            version: 1.0.0
            licence: Apache-2.0
            title: A made-up bench
            about: For tests of the search.
            scope: any
            from: memory
            cautions:
              - {id: mains, hazard: mains, text: Mains can kill. Unplug first., from: common-practice}
            state-sets:
              - id: rail
                states:
                  - {id: in-tolerance, normal: true, usual: 0.8, range: "-tol..+tol", words: [fine, ok], opposite: absent}
                  - {id: absent, usual: 0.12, range: "..10%", words: [missing, dead]}
                  - {id: low, usual: 0.05, range: "10%..-tol", words: [low, sagging]}
                  - {id: high, usual: 0.03, range: "+tol..", words: [too high]}
            symptoms:
              - id: rail-standby
                name: standby rail
                about: The always-on supply of controller and lamp, at the supply plug.
                reported: if-tested
                quantity: {unit: V, nominal: 5, tolerance: 5%}
                called: [5VSB, housekeeping supply]
                states: rail
                negated: absent
              - id: rail-12v
                name: 12 V rail
                about: The main rail for motors and fans.
                reported: if-tested
                quantity: {unit: V, nominal: 12, tolerance: 5%}
                called: [12 V, main rail]
                states: rail
                negated: absent
              - id: rail-minus-12v
                name: -12 V rail
                about: The negative supply of serial ports and older audio.
                reported: if-tested
                quantity: {unit: V, nominal: -12, tolerance: 10%}
                called: ["-12 V", minus rail]
                states: rail
                negated: absent
              - id: power-lamp
                name: power lamp
                about: The lamp on the front.
                reported: always
                called: [front lamp, standby lamp]
                states:
                  - {id: green, name: green, normal: true, usual: 0.7, words: [green]}
                  - {id: "off", name: dark, usual: 0.3, words: [dark, unlit]}
                negated: "off"
                phrases:
                  "off": [no sign of life, dead as a doornail]
            causes:
              - id: standby-converter-dead
                name: Standby converter does not start
                kind: fault
                aliases: [flyback supply dead]
                about: The start resistor drifts or the small electrolytic beside the controller dries out.
                per-thousand: 30
                shows:
                  - {symptom: rail-standby, states: {absent: 0.9}}
                  - {symptom: power-lamp, states: {"off": 0.95}}
                  - {symptom: rail-12v, states: {absent: 0.9}}
                confirmed-by: [measure-standby]
                fixed-by: [{fix: replace-start-resistor, works: 0.8}]
                fools: [A lamp can glow from stored charge for a while.]
              - id: main-converter-dead
                name: Main converter does not start
                kind: fault
                aliases: [main switcher dead]
                about: Standby lives, the big transformer stays silent.
                per-thousand: 25
                shows:
                  - {symptom: rail-standby, states: {in-tolerance: 0.95}}
                  - {symptom: rail-12v, states: {absent: 0.9}}
                  - {symptom: power-lamp, states: {green: 0.9}}
                confirmed-by: [measure-12v]
                fixed-by: [{fix: replace-main-switch, works: 0.7}]
              - id: serial-supply-open
                name: Negative rectifier open
                kind: fault
                about: The diode of the minus branch fails, everything else runs.
                scope: disc-player
                per-thousand: 5
                shows:
                  - {symptom: rail-minus-12v, states: {absent: 0.95}}
                  - {symptom: rail-12v, states: {in-tolerance: 0.97}}
                confirmed-by: [measure-12v]
                fixed-by: [{fix: replace-main-switch, works: 0.1}]
            tests:
              - id: measure-standby
                name: Measure the standby rail
                minutes: 5
                tools: [multimeter]
                risk: low
                misses: 0.02
                false-alarms: 0.02
                cautions: [mains]
                setup: Unit plugged in and off.
                steps: [Black probe on the can of a connector, red probe on the purple wire.]
                expect: 4.75 to 5.25 V.
                readings:
                  - {symptom: rail-standby, state: absent, means: The standby converter or its fuse.}
                  - {symptom: rail-standby, state: in-tolerance, means: Look further downstream.}
              - id: measure-12v
                name: Measure the 12 V rail
                minutes: 5
                tools: [multimeter]
                risk: low
                misses: 0.02
                false-alarms: 0.02
                cautions: [mains]
                setup: Unit plugged in and told to start.
                steps: [Red probe on a yellow wire.]
                expect: 11.4 to 12.6 V.
                readings:
                  - {symptom: rail-12v, state: absent, means: The main converter was not asked or does not start.}
            fixes:
              - id: replace-start-resistor
                name: Replace the start resistor
                minutes: 30
                parts: [resistor 1 W]
                tools: [soldering iron]
                difficulty: moderate
                risk: medium
                makes-worse: 0.02
                cautions: [mains]
                steps: [Lift the old one and fit a new one of the same power rating.]
                verify: [The standby rail comes up within a second.]
              - id: replace-main-switch
                name: Replace the main switching transistor
                minutes: 60
                parts: [transistor]
                tools: [soldering iron]
                difficulty: hard
                risk: medium
                makes-worse: 0.05
                cautions: [mains]
                steps: [Unsolder it, clean the heat sink, fit the new one with fresh paste.]
                verify: [The 12 V rail holds under load.]
            """;

    private Bench() {}

    static Knowledge knowledge() {
        return knowledge(PACK);
    }

    static Knowledge knowledge(String yaml) {
        return PackReader.read(List.of(new PackSource("bench.yaml", yaml)));
    }

    /** A case that was opened and noted, not yet concluded. */
    static CaseHistory open(String id, String scope, String complaint, Finding... findings) {
        return history(id, scope, complaint, null, null, findings);
    }

    static CaseHistory ended(
            String id, String scope, String complaint, String causeId, Outcome outcome, Finding... findings) {
        return history(id, scope, complaint, causeId, outcome, findings);
    }

    /** An open case of a unit that bears this tag. */
    static CaseHistory tagged(String id, String unit, String complaint) {
        CaseHistory open = open(id, "any", complaint);
        return new CaseHistory(
                id,
                open.openedAt(),
                open.scope(),
                complaint,
                unit,
                CaseHistory.OWN,
                false,
                open.events(),
                List.of(),
                null,
                null,
                null,
                false);
    }

    static CaseHistory withdrawn(String id) {
        return new CaseHistory(
                id,
                Instant.EPOCH,
                DeviceScope.ANY,
                "",
                "",
                CaseHistory.OWN,
                false,
                List.of(),
                List.of(),
                null,
                null,
                null,
                true);
    }

    private static CaseHistory history(
            String id,
            String scope,
            String complaint,
            @Nullable String causeId,
            @Nullable Outcome outcome,
            Finding... findings) {
        DeviceScope where = DeviceScope.parse(scope);
        List<CaseEvent> events = new ArrayList<>();
        events.add(new CaseEvent.Opened(head(id, 1), where, complaint, "", CaseHistory.OWN, false));
        events.add(new CaseEvent.Noted(head(id, 2), "", Reading.Source.SEEN, List.of(findings)));
        return new CaseHistory(
                id,
                Instant.EPOCH,
                where,
                complaint,
                "",
                CaseHistory.OWN,
                false,
                events,
                List.of(findings),
                causeId,
                causeId == null ? null : Certainty.LIKELY,
                outcome,
                false);
    }

    private static CaseEvent.Head head(String caseId, int number) {
        return new CaseEvent.Head(caseId + "." + number, caseId, Instant.EPOCH.plusSeconds(number));
    }
}
