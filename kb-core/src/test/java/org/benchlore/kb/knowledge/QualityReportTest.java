package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.knowledge.QualityReport.AmbiguityGroup;
import org.benchlore.kb.knowledge.QualityReport.Coverage;
import org.benchlore.kb.knowledge.QualityReport.Isolation;
import org.benchlore.kb.knowledge.QualityReport.Lookalike;
import org.benchlore.kb.knowledge.QualityReport.OneWayLink;
import org.benchlore.kb.knowledge.QualityReport.Twin;
import org.junit.jupiter.api.Test;

class QualityReportTest {
    private static final double EXACT = 1e-12;

    /** Five causes at rates 10, 5, 3, 2, 1 per thousand with rows 100, 110, 010, 010, 000 of the tests t1 to t3. */
    private static final String H01 = head("h01") + """
            state-sets:
              - id: look
                states: [{id: fine, normal: true, usual: 0.9}, {id: bad, usual: 0.1}]
            symptoms:
              - {id: s1, name: One, about: First., reported: if-tested, called: [one], states: look}
              - {id: s2, name: Two, about: Second., reported: if-tested, called: [two], states: look}
              - {id: s3, name: Three, about: Third., reported: if-tested, called: [three], states: look}
            causes:
            """ + cause("f1", 10, "s1: bad")
            + cause("f2", 5, "s1: bad", "s2: bad") + cause("f3", 3, "s2: bad")
            + cause("f4", 2, "s2: bad") + cause("f5", 1, "s3: fine") + "tests:\n" + test("t1", "s1") + test("t2", "s2")
            + test("t3", "s3");

    private static String head(String id) {
        return "pack: " + id + "\nversion: 1.0.0\nlicence: Apache-2.0\ntitle: T\nabout: A.\nfrom: memory\n";
    }

    private static String cause(String id, double perThousand, String... shows) {
        StringBuilder yaml = new StringBuilder("  - id: " + id + "\n    name: Cause " + id
                + "\n    kind: fault\n    about: Wear.\n    per-thousand: " + perThousand + "\n    shows:\n");
        for (String show : shows) {
            String[] parts = show.split(": ", -1);
            yaml.append("      - {symptom: " + parts[0] + ", states: {" + parts[1] + ": 0.95}}\n");
        }
        return yaml.toString();
    }

    private static String test(String id, String symptom) {
        return "  - {id: " + id + ", name: Test of " + symptom
                + ", minutes: 1, risk: none, misses: 0.01, false-alarms: 0.01, setup: On., steps: [Look.], expect: Fine.,"
                + " readings: [{symptom: " + symptom + ", state: bad, means: It is bad.}]}\n";
    }

    private static QualityReport report(String... packs) {
        List<PackSource> sources = new ArrayList<>();
        for (String pack : packs) {
            sources.add(new PackSource("p" + sources.size() + ".yaml", pack));
        }
        return QualityReport.of(PackReader.read(sources));
    }

    /**
     * The worked example, all of it by enumeration from the formulas of MIL-STD-2165 (1985) and IEEE Std 1522-2004: FFD 20/21
     * (counted 4/5), FFI(1) 15/20 (2/4), FFI(2) 1, a detected fault stands in a group of 25/20 (6/4).
     */
    @Test
    void testability_of_the_worked_example() {
        QualityReport report = report(H01);
        Coverage any = report.coverage().get(0);

        assertThat(any.scope()).isEqualTo(DeviceScope.ANY);
        same(any.weighted(), new Isolation(20.0 / 21, 15.0 / 20, 1, 1, 1.25));
        same(any.counted(), new Isolation(4.0 / 5, 2.0 / 4, 1, 1, 1.5));
        assertThat(any.largestGroup()).isEqualTo(2);
        assertThat(report.faultDetectionRatio()).isCloseTo(.952381, within(1e-6));
        assertThat(report.faultIsolationRatio()).isCloseTo(.75, within(EXACT));
        assertThat(report.largestAmbiguityGroup()).isEqualTo(2);
        assertThat(report.ambiguityGroups()).containsExactly(new AmbiguityGroup(List.of("f3", "f4"), List.of(), false));
    }

    private static void same(Isolation given, Isolation expected) {
        assertThat(given.detected()).isCloseTo(expected.detected(), within(EXACT));
        assertThat(given.within1()).isCloseTo(expected.within1(), within(EXACT));
        assertThat(given.within2()).isCloseTo(expected.within2(), within(EXACT));
        assertThat(given.within3()).isCloseTo(expected.within3(), within(EXACT));
        assertThat(given.meanGroup()).isCloseTo(expected.meanGroup(), within(EXACT));
    }

    @Test
    void a_cause_may_say_why_no_test_tells_it_apart() {
        String reason = "    alike: Both melt the same fuse.\n";
        String yaml = H01.replace("  - id: f4\n", "  - id: f4\n" + reason);

        assertThat(report(yaml).ambiguityGroups())
                .containsExactly(new AmbiguityGroup(List.of("f3", "f4"), List.of("Both melt the same fuse."), true));
        assertThat(checked(H01)).anyMatch(p -> p.contains("no test tells these 2 causes apart: f3, f4"));
        assertThat(checked(yaml)).noneMatch(p -> p.contains("no test tells"));
    }

    private static List<String> checked(String yaml) {
        return PackFixture.check(yaml);
    }

    /** A family takes over what holds for any device, and its own test splits nothing of what it does not concern. */
    @Test
    void each_scope_has_its_own_figures() {
        String family = head("own").replace("from: memory", "from: memory\nscope: player/corvane") + "causes:\n"
                + cause("own", 4, "s2: bad");
        QualityReport report = report(H01, family);

        assertThat(report.coverage()).extracting(c -> c.scope().toString()).containsExactly("any", "player/corvane");
        Coverage any = report.coverage().get(0);
        Coverage own = report.coverage().get(1);
        assertThat(any.causes()).isEqualTo(5);
        assertThat(own.causes()).isEqualTo(6);
        assertThat(own.own()).isEqualTo(1);
        assertThat(own.largestGroup()).isEqualTo(3);
        same(own.weighted(), new Isolation(24.0 / 25, 15.0 / 24, 15.0 / 24, 1, (15 + 9 * 3) / 24.0));
        assertThat(any.weighted()).isEqualTo(report(H01).coverage().get(0).weighted());
        assertThat(report.largestAmbiguityGroup()).isEqualTo(3);
        assertThat(report.faultIsolationRatio()).isCloseTo(15.0 / 24, within(EXACT));
    }

    @Test
    void nothing_detected_is_a_share_of_nothing() {
        assertThat(Testability.isolation(List.of())).isEqualTo(new Isolation(0, 0, 0, 0, 0));
        assertThat(Testability.isolation(List.of(new Testability.Weighed(3, false, 4))))
                .isEqualTo(new Isolation(0, 0, 0, 0, 0));
        QualityReport empty = report(head("empty"));
        assertThat(empty.largestAmbiguityGroup()).isZero();
        assertThat(empty.publishedShare()).isZero();
        assertThat(empty.readability().tests()).isZero();
    }

    /**
     * A binary symmetric channel with crossover 0.1 and even input carries 1 - H(0.1) = 0.5310044 bits (Cover and Thomas,
     * Elements of Information Theory, section 7.1.4; the value by arithmetic).
     */
    @Test
    void information_of_a_symmetric_channel() {
        String yaml = head("bits")
                + "symptoms:\n  - {id: s1, name: One, about: A., reported: usually, called: [one], states:"
                + " [{id: fine, normal: true, usual: 0.5}, {id: bad, usual: 0.5}]}\n"
                + "  - {id: s2, name: Two, about: B., reported: usually, called: [two], states:"
                + " [{id: fine, normal: true, usual: 0.5}, {id: bad, usual: 0.5}]}\n"
                + "causes:\n"
                + cause("a", 7, "s1: bad").replace("0.95", "0.9")
                + cause("b", 7, "s1: bad").replace("0.95", "0.1");

        assertThat(report(yaml).symptomsByInformation())
                .satisfiesExactly(
                        s1 -> {
                            assertThat(s1.symptom()).isEqualTo("s1");
                            assertThat(s1.causes()).isEqualTo(2);
                            assertThat(s1.bits()).isCloseTo(0.5310044, within(1e-7));
                        },
                        s2 -> assertThat(s2.bits()).isZero());
    }

    /** Bad is read with .95·.99 + .05·.01 = .941 under f1 and .9·.01 + .1·.99 = .108 at large; the rest by arithmetic. */
    @Test
    void what_all_tests_together_are_expected_to_tell() {
        Lookalike third = report(H01).lookalikes().stream()
                .filter(l -> l.cause().equals("f3"))
                .findFirst()
                .orElseThrow();
        double p = .95 * .99 + .05 * .01;
        double usual = .1 * .99 + .9 * .01;
        double none = .05 * .99 + .95 * .01; // f5 shows s3 in order
        double forF3 = bernoulli(p, usual) + bernoulli(usual, none);
        double forF5 = bernoulli(usual, p) + bernoulli(none, usual);

        assertThat(third.others()).extracting(QualityReport.Neighbour::cause).containsExactly("f4", "f2", "f5");
        assertThat(third.others().get(0).decibans()).isZero();
        assertThat(third.others().get(1).decibans())
                .as("f2 shows one more thing")
                .isCloseTo(Math.min(bernoulli(usual, p), bernoulli(p, usual)), within(1e-9));
        assertThat(third.others().get(2).decibans()).isCloseTo(Math.min(forF3, forF5), within(1e-9));
    }

    private static double bernoulli(double p, double q) {
        return 10 * (p * Math.log10(p / q) + (1 - p) * Math.log10((1 - p) / (1 - q)));
    }

    /** Counted by hand: 9 words in 2 sentences, 2 of them (resistor, capacitor) longer than six letters. */
    @Test
    void reading_ease() {
        assertThat(Lix.lix(List.of("Lift one end of the resistor. Read the capacitor.")))
                .isCloseTo(9 / 2.0 + 100 * 2 / 9.0, within(EXACT));
        assertThat(Lix.lix(List.of("Lift one end", "3.3 V: fine", ""))).isCloseTo(6 / 3.0, within(EXACT));
        assertThat(Lix.lix(List.of("", "..."))).isZero();
    }

    @Test
    void jaccard_index() {
        assertThat(Twins.jaccard(Set.of("a", "b", "c"), Set.of("b", "c", "d"))).isEqualTo(0.5);
        assertThat(Twins.jaccard(Set.of(), Set.of())).isZero();
    }

    @Test
    void entries_that_say_the_same() {
        String yaml = H01.replace("name: Test of s2", "name: A test of the s1")
                + "fixes:\n"
                + fix(
                        "fit",
                        "Fit a new fuse",
                        "Lift the old fuse out of its clips with the puller and fit the new one.")
                + fix("change", "Change it", "Lift the old fuse out of its clips with the puller and fit a new one.")
                + fix("clean", "Clean it", "Brush the dust out of the fan and the fins.");

        assertThat(report(yaml).twins())
                .contains(new Twin(EntryKind.TEST, "t1", "t2", QualityReport.Alike.NAME, 1.0))
                .filteredOn(twin -> twin.kind() == EntryKind.FIX)
                .singleElement()
                .satisfies(twin -> {
                    assertThat(List.of(twin.first(), twin.second())).containsExactlyInAnyOrder("change", "fit");
                    assertThat(twin.by()).isEqualTo(QualityReport.Alike.TEXT);
                    // 14 and 14 runs of three words, and "It works."; all but the three with "a" are the same
                    assertThat(twin.resemblance()).isCloseTo(12.0 / 18, within(EXACT));
                });
    }

    private static String fix(String id, String name, String step) {
        return "  - {id: " + id + ", name: " + name
                + ", minutes: 1, difficulty: easy, risk: none, makes-worse: 0.01, steps: [\"" + step
                + "\"], verify: [It works.]}\n";
    }

    @Test
    void links_that_go_one_way_only() {
        String yaml = H01.replace(
                        "{id: s3, name: Three",
                        "{id: s4, name: Four, about: Fourth., reported: usually,"
                                + " called: [four], states: look}\n  - {id: s3, name: Three")
                .replace(
                        "    shows:\n      - {symptom: s1, states: {bad: 0.95}}\n  - id: f2",
                        "    shows:\n      - {symptom: s1, states: {bad: 0.95}}\n    confirmed-by: [t1]\n  - id: f2")
                .replace("readings: [{symptom: s1, state: bad,", "readings: [{symptom: s1, state: fine,");

        assertThat(report(yaml).oneWayLinks())
                .containsExactlyInAnyOrder(
                        new OneWayLink(EntryKind.SYMPTOM, "s4", "is read by no test"),
                        new OneWayLink(EntryKind.SYMPTOM, "s4", "is explained by no cause"),
                        new OneWayLink(EntryKind.SYMPTOM, "s1", "has the state 'bad', which no test explains"),
                        new OneWayLink(EntryKind.SYMPTOM, "s3", "has the state 'bad', which no cause brings about"),
                        new OneWayLink(
                                EntryKind.TEST,
                                "t1",
                                "does not say what 's1 bad' means, which cause 'f1' is to be known by"));
    }

    @Test
    void limits_of_a_quantity_count_as_numbers() {
        String yaml = H01.replace("from: memory", "from: memory\nsources:\n  - {id: print, cite: Print, seen: primary}")
                .replace(
                        "about: First.",
                        "about: First., quantity: {unit: V, nominal: 12, tolerance: 5%, from: {published: print, clause: table 2}}")
                .replace(
                        "reported: if-tested, called: [one], states: look}",
                        "reported: if-tested, called: [one], states: [{id: fine, normal: true, usual: 0.9, range: \"-tol..+tol\"},"
                                + " {id: bad, usual: 0.1, range: \"..-tol\"}]}");

        Knowledge knowledge = PackReader.read(List.of(new PackSource("p.yaml", yaml)));

        assertThat(QualityReport.of(knowledge).numbers().published()).isEqualTo(1);
        assertThat(knowledge.symptom("s1").orElseThrow().quantity())
                .isEqualTo(new Quantity(
                        "V", 12.0, 0.05, false, new Provenance(Provenance.Kind.PUBLISHED, "Print", "table 2")));
    }

    @Test
    void numbers_by_origin() {
        String yaml = H01.replace(
                        "from: memory", "from: common-practice\nsources:\n  - {id: print, cite: Print, seen: primary}")
                .replace("    per-thousand: 10.0\n", "    per-thousand: 10.0\n    from: {published: print}\n");
        QualityReport report = report(yaml);

        // f1 has a base frequency and one link
        assertThat(report.numbers()).isEqualTo(new QualityReport.Numbers(2, 9, 0));
        assertThat(report.publishedShare()).isCloseTo(2.0 / 11, within(EXACT));
        assertThat(report.unpublished()).containsExactly("cause/f2", "cause/f3", "cause/f4", "cause/f5");
    }
}
