package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;

/** A small sound pack, and ways to spoil it in one place. The device in it is invented. */
final class PackFixture {
    static final String FILE = "p.yaml";

    static final String GOOD = """
            pack: power
            version: 1.0.0
            licence: Apache-2.0
            title: Rails
            about: What the tests need.
            from: memory
            sources:
              - {id: seen-one, cite: "A handbook, table 7", seen: primary}
              - {id: unseen-one, cite: "Another handbook", seen: no}
            cautions:
              - id: mains
                hazard: mains
                text: Mains can kill.
                from: {published: seen-one, clause: "5"}
            state-sets:
              - id: rail
                states:
                  - {id: fine, normal: true, usual: 0.8, range: "-tol..+tol", words: [good], opposite: absent}
                  - {id: absent, usual: 0.1, range: "..10%", words: [missing]}
                  - {id: low, usual: 0.06, range: "10%..-tol", words: [sags]}
                  - {id: high, usual: 0.04, range: "+tol..", words: [too much]}
            symptoms:
              - id: rail-12v
                name: 12 V rail
                about: On the big connector.
                reported: if-tested
                quantity: {unit: V, nominal: 12, tolerance: 5%}
                called: ["12 V"]
                states: rail
                negated: absent
              - id: rail-minus-12v
                name: minus 12 V rail
                about: On the small connector.
                reported: if-tested
                quantity: {unit: V, nominal: -12, tolerance: 5%}
                called: ["-12 V"]
                states: rail
                usual: {fine: 0.7, absent: 0.2, low: 0.05, high: 0.05}
              - id: lamp
                name: Lamp
                about: On the front.
                reported: always
                called: [lamp]
                states:
                  - {id: green, normal: true, usual: 0.7, words: [lit]}
                  - {id: "off", name: dark, usual: 0.3, words: [dark], opposite: green}
                bare: green
                phrases:
                  "off": [no light]
              - id: log-trip
                name: Trip code
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
                per-thousand: 40
                shows:
                  - {symptom: rail-12v, states: {absent: nearly-always}}
                  - {symptom: rail-minus-12v, states: {absent: 0.9}, cases: 8, from: common-practice}
                  - {symptom: lamp, states: {"off": usually}}
                  - {symptom: log-trip, states: {absent: 0.95}}
                confirmed-by: [measure-rails]
                fixed-by:
                  - {fix: new-fuse, works: 0.9}
                cautions: [mains]
              - id: regulator-tired
                name: Regulator tired
                kind: fault
                about: Heat.
                per-thousand: 20
                cases: 30
                shows:
                  - {symptom: rail-12v, states: {low: often}}
                  - {symptom: rail-minus-12v, states: {low: often}}
                  - {symptom: log-trip, states: {recurring: sometimes}}
                  - {symptom: lamp, states: {green: nearly-always}}
                confirmed-by: [measure-rails]
                fixed-by:
                  - {fix: new-fuse, works: seldom}
            tests:
              - id: measure-rails
                name: Measure the rails
                minutes: 5
                tools: [multimeter]
                risk: low
                misses: 0.02
                false-alarms: hardly-ever
                cautions: [mains]
                setup: Unit on, mains present.
                steps: [Black probe to ground., Red probe to the rail.]
                expect: Within 5 %.
                readings:
                  - {symptom: rail-12v, state: absent, means: Look upstream.}
                  - {symptom: rail-minus-12v, state: low, means: Look at the load.}
            fixes:
              - id: new-fuse
                name: New fuse
                minutes: 10
                parts: [fuse]
                difficulty: easy
                risk: medium
                makes-worse: 0.01
                cautions: [mains]
                steps: [Fit it.]
                verify: [All rails back.]
            devices:
              - scope: player/corvane
                name: Corvane
                nets:
                  - {net: P12, symptom: rail-12v}
                lamps:
                  - {says: [dark eye], symptom: lamp, state: "off"}
                codes:
                  - {code: K-1, spelled: [K1], symptom: log-trip, means: It tripped.}
                log-lines:
                  - id: event
                    pattern: '^(?P<time>.{19}) (?P<code>K-\\d)$'
                    time: yyyy-MM-dd HH:mm:ss
                counters:
                  - {counter: STARTS, means: starts}
            """;

    private PackFixture() {}

    /** The sound pack with one text, which must be there once, replaced. */
    static String spoilt(String text, String by) {
        assertThat(GOOD.split(java.util.regex.Pattern.quote(text), -1))
                .as("'%s' must stand once in the pack", text)
                .hasSize(2);
        return GOOD.replace(text, by);
    }

    static List<PackSource> pack(String yaml) {
        return List.of(new PackSource(FILE, yaml));
    }

    static List<String> check(String yaml) {
        return PackReader.check(pack(yaml)).stream().map(PackProblem::toString).toList();
    }

    /** What a second pack starts with. */
    static String shop(String rest) {
        return "pack: shop\nversion: 1.0.0\nlicence: Apache-2.0\ntitle: Ours\nabout: Ours.\n" + rest;
    }

    /** Reads the sound pack with a second one laid over it. */
    static List<PackSource> layered(String second) {
        return List.of(new PackSource(FILE, GOOD), new PackSource("shop.yaml", second));
    }
}
