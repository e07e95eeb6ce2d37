package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PackReaderTest {
    private static final double EXACT = 1e-12;

    private static Knowledge good() {
        return PackReader.read(PackFixture.pack(PackFixture.GOOD));
    }

    private static Symptom symptom(Knowledge knowledge, String id) {
        return knowledge.symptom(id).orElseThrow();
    }

    private static Cause cause(Knowledge knowledge, String id) {
        return knowledge.cause(id).orElseThrow();
    }

    private static Range range(Symptom symptom, int state) {
        return Objects.requireNonNull(symptom.states().get(state).range());
    }

    private static Link link(Cause cause, String symptomId) {
        return cause.shows().stream()
                .filter(link -> link.symptomId().equals(symptomId))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void the_sound_pack_has_no_problem_at_all() {
        assertThat(PackFixture.check(PackFixture.GOOD)).isEmpty();
    }

    @Test
    void entries_arrive_whole() {
        Knowledge knowledge = good();

        assertThat(knowledge.packs())
                .containsExactly(new Pack("power", "1.0.0", "Apache-2.0", "Rails", "What the tests need.", false));
        Symptom lamp = symptom(knowledge, "lamp");
        assertThat(lamp.bare()).isEqualTo("green");
        assertThat(lamp.reported()).isEqualTo(Symptom.Reported.ALWAYS);
        assertThat(lamp.states().get(1))
                .isEqualTo(new State("off", "dark", false, 0.3, null, List.of("dark"), List.of("no light"), "green"));
        assertThat(knowledge.test("measure-rails").orElseThrow().reveals())
                .containsExactly("rail-12v", "rail-minus-12v");
        assertThat(knowledge.test("measure-rails").orElseThrow().falseAlarms()).isEqualTo(0.01);
        assertThat(knowledge.fix("new-fuse").orElseThrow().risk()).isEqualTo(Risk.MEDIUM);
        assertThat(knowledge.devices()).singleElement().satisfies(device -> {
            assertThat(device.scope()).isEqualTo(DeviceScope.parse("player/corvane"));
            assertThat(device.codes())
                    .containsExactly(new Device.Code("K-1", List.of("K1"), "log-trip", "It tripped.", ""));
            assertThat(device.logLines())
                    .containsExactly(
                            new Device.LogLine("event", "^(?P<time>.{19}) (?P<code>K-\\d)$", "yyyy-MM-dd HH:mm:ss"));
        });
    }

    @Test
    void what_opens_the_unit_says_so_and_the_innermost_device_tells_what_that_takes() {
        Knowledge knowledge = PackReader.read(PackFixture.layered(PackFixture.shop("""
                from: memory
                scope: any
                devices:
                  - {scope: player, name: Any player, opening: 15}
                  - {scope: player/tavisk, name: Tavisk player, opening: 7}
                tests:
                  - {id: measure-rails, refines: true, opens: true}
                """)));

        assertThat(knowledge.test("measure-rails").orElseThrow().opens()).isTrue();
        assertThat(knowledge.fix("new-fuse").orElseThrow().opens()).isFalse();
        assertThat(knowledge.openingMinutes(DeviceScope.ANY)).isEqualTo(10);
        assertThat(knowledge.openingMinutes(DeviceScope.parse("player/corvane/corvane-3")))
                .isEqualTo(15);
        assertThat(knowledge.openingMinutes(DeviceScope.parse("player/tavisk"))).isEqualTo(7);
    }

    @Test
    void ranges_become_spans_in_the_unit_and_touch() {
        Symptom rail = symptom(good(), "rail-12v");

        assertThat(rail.states().stream().map(State::range))
                .containsExactly(
                        new Range(12 * 0.95, 12 * 1.05),
                        new Range(Double.NEGATIVE_INFINITY, 12 * 0.1),
                        new Range(12 * 0.1, 12 * 0.95),
                        new Range(12 * 1.05, Double.POSITIVE_INFINITY));
    }

    @Test
    void shares_of_a_negative_nominal_are_magnitudes() {
        Symptom rail = symptom(good(), "rail-minus-12v");

        assertThat(rail.states().stream().map(State::range))
                .containsExactly(
                        new Range(-12 * 1.05, -12 * 0.95),
                        new Range(-12 * 0.1, Double.POSITIVE_INFINITY),
                        new Range(-12 * 0.95, -12 * 0.1),
                        new Range(Double.NEGATIVE_INFINITY, -12 * 1.05));
        assertThat(range(rail, 0).contains(-12)).isTrue();
        assertThat(range(rail, 1).contains(0)).isTrue();
        assertThat(range(rail, 2).contains(-9)).isTrue();
        assertThat(range(rail, 3).contains(-14)).isTrue();
    }

    @Test
    void plain_numbers_of_a_negative_nominal_keep_their_sign() {
        String set = """
                    called: ["-12 V"]
                    states: rail
                    usual: {fine: 0.7, absent: 0.2, low: 0.05, high: 0.05}
                """;
        String own = """
                    called: ["-12 V"]
                    states:
                      - {id: high, usual: 0.05, range: "..-12.6"}
                      - {id: fine, normal: true, usual: 0.7, range: "-tol..+tol"}
                      - {id: low, usual: 0.05, range: "-11.4..-1.2"}
                      - {id: absent, usual: 0.2, range: "-1.2.."}
                """;
        String text = PackFixture.spoilt(set, own);

        Symptom rail = symptom(PackReader.read(PackFixture.pack(text)), "rail-minus-12v");

        assertThat(range(rail, 0).high()).isEqualTo(-12.6, within(EXACT));
        assertThat(range(rail, 1).high())
                .as("an end written two ways is one end")
                .isEqualTo(range(rail, 2).low());
        assertThat(range(rail, 3)).isEqualTo(new Range(-1.2, Double.POSITIVE_INFINITY));
    }

    @Test
    void words_of_the_scale_are_numbers_and_the_rest_is_shared_by_background() {
        Map<String, Double> states =
                link(cause(good(), "fuse-open"), "rail-12v").states();

        // 0.05 is left for fine 0.8, low 0.06, high 0.04 of 0.9
        assertThat(states.get("absent")).isEqualTo(0.95);
        assertThat(states.get("fine")).isEqualTo(0.05 * 0.8 / 0.9, within(EXACT));
        assertThat(states.get("low")).isEqualTo(0.05 * 0.06 / 0.9, within(EXACT));
        assertThat(states.get("high")).isEqualTo(0.05 * 0.04 / 0.9, within(EXACT));
    }

    @Test
    void a_symptoms_own_background_replaces_that_of_the_set() {
        assertThat(symptom(good(), "rail-minus-12v").states().stream().map(State::usual))
                .containsExactly(0.7, 0.2, 0.05, 0.05);
    }

    @Test
    void a_background_off_by_rounding_is_normalised() {
        String text = PackFixture.spoilt("usual: 0.04, range", "usual: 0.0400005, range");

        Symptom rail = symptom(PackReader.read(PackFixture.pack(text)), "rail-12v");

        assertThat(rail.states().stream().mapToDouble(State::usual).sum()).isEqualTo(1, within(EXACT));
        assertThat(rail.states().get(3).usual()).isEqualTo(0.0400005 / 1.0000005, within(EXACT));
    }

    @Test
    void origin_comes_from_the_nearest_place() {
        Knowledge knowledge = good();

        assertThat(link(cause(knowledge, "fuse-open"), "rail-minus-12v").from().kind())
                .isEqualTo(Provenance.Kind.COMMON_PRACTICE);
        assertThat(link(cause(knowledge, "fuse-open"), "rail-12v").from()).isEqualTo(Provenance.MEMORY);
        assertThat(knowledge.caution("mains").orElseThrow().from())
                .isEqualTo(new Provenance(Provenance.Kind.PUBLISHED, "A handbook, table 7", "5"));

        Knowledge practice =
                PackReader.read(PackFixture.pack(PackFixture.spoilt("from: memory", "from: common-practice")));
        assertThat(cause(practice, "fuse-open").from().kind()).isEqualTo(Provenance.Kind.COMMON_PRACTICE);
    }

    @Test
    void a_source_nobody_saw_counts_as_memory_and_is_warned_of_once() {
        String text = PackFixture.spoilt("from: memory", "from: {published: unseen-one}");

        assertThat(PackFixture.check(text))
                .containsExactly("p.yaml:6:19: source 'unseen-one' has not been seen, so the number counts as memory; "
                        + "read the source and say 'seen: primary', or write 'from: memory'");
        assertThat(cause(PackReader.read(PackFixture.pack(text)), "fuse-open").from())
                .isEqualTo(Provenance.MEMORY);
    }

    @Test
    void defaults_of_cases_are_those_documented() {
        Cause fuse = cause(good(), "fuse-open");

        assertThat(fuse.cases()).isEqualTo(20);
        assertThat(link(fuse, "rail-12v").cases()).isEqualTo(4);
        assertThat(link(fuse, "rail-minus-12v").cases()).isEqualTo(8);
        assertThat(fuse.fixedBy()).containsExactly(new Remedy("new-fuse", 0.9, 4, Provenance.MEMORY));
    }

    @Test
    void everything_wrong_is_said_at_once_and_in_order() {
        String text = PackFixture.GOOD
                .replace("nominal: 12,", "nominal: '12,0',")
                .replace("{absent: nearly-always}", "{absnet: nearly-always}")
                .replace("risk: low", "risk: lwo");

        assertThat(PackFixture.check(text))
                .containsExactly(
                        "p.yaml:27:34: the quantity of symptom 'rail-12v': 'nominal' '12,0' is not a number; "
                                + "write a decimal point: 12.0",
                        "p.yaml:66:38: cause 'fuse-open', symptom 'rail-12v': there is no state 'absnet'; "
                                + "did you mean 'absent'?",
                        "p.yaml:93:11: test 'measure-rails': 'risk' 'lwo' is not one of none, low, medium, high; "
                                + "did you mean 'low'?");
    }

    @Test
    void a_bad_pack_is_refused_with_all_its_problems_warnings_included() {
        String text = PackFixture.GOOD
                .replace("risk: low", "risk: lwo")
                .replace("from: memory", "from: {published: unseen-one}");

        assertThatThrownBy(() -> PackReader.read(PackFixture.pack(text)))
                .isInstanceOfSatisfying(
                        BadPackException.class,
                        e -> assertThat(e.problems())
                                .extracting(PackProblem::severity)
                                .containsExactly(PackProblem.Severity.WARNING, PackProblem.Severity.ERROR))
                .hasMessage("p.yaml:93:11: test 'measure-rails': 'risk' 'lwo' is not one of none, low, medium, high; "
                        + "did you mean 'low'?");
    }

    @Test
    void of_many_problems_the_message_tells_fifty_and_how_many_more() {
        StringBuilder yaml = new StringBuilder(PackFixture.GOOD);
        for (int i = 0; i < 70; i++) {
            yaml.append("unheard-of-").append(i).append(": 1\n");
        }
        List<PackSource> pack = PackFixture.pack(yaml.toString());
        List<PackProblem> all = PackReader.check(pack);

        assertThat(all).hasSize(70);
        assertThatThrownBy(() -> PackReader.read(pack))
                .isInstanceOfSatisfying(
                        BadPackException.class, e -> assertThat(e.problems()).isEqualTo(all))
                .satisfies(e -> assertThat(String.valueOf(e.getMessage()).lines())
                        .hasSize(51)
                        .startsWith(all.get(0).toString(), all.get(1).toString())
                        .endsWith(all.get(49).toString(), "and 20 more"));
    }

    @Test
    void an_error_behind_many_warnings_is_among_those_shown() {
        List<PackProblem> all = new ArrayList<>();
        for (int line = 1; line <= 200; line++) {
            boolean error = line > 180;
            all.add(new PackProblem(
                    "p.yaml",
                    line,
                    1,
                    error ? PackProblem.Severity.ERROR : PackProblem.Severity.WARNING,
                    "what",
                    "remedy"));
        }

        assertThat(PackProblem.foremost(all))
                .extracting(PackProblem::line)
                .isEqualTo(IntStream.concat(IntStream.rangeClosed(1, 30), IntStream.rangeClosed(181, 200))
                        .boxed()
                        .toList());
        assertThat(PackProblem.foremost(all.subList(0, 50))).isEqualTo(all.subList(0, 50));
    }

    @Test
    void a_file_that_breaks_off_does_not_hide_the_others_nor_blame_them() {
        List<PackSource> packs = List.of(
                new PackSource("a.yaml", PackFixture.shop("title: [\n")),
                new PackSource(
                        "b.yaml",
                        PackFixture.spoilt(
                                "confirmed-by: [measure-rails]\n    fixed-by:\n      - {fix: new-fuse, works: 0.9}",
                                "confirmed-by: [in-file-a]\n    fixed-by: 3")));

        assertThat(PackReader.check(packs))
                .extracting(PackProblem::toString)
                .containsExactly(
                        "a.yaml:7:1: the YAML breaks off here (expected the node content, but found '<stream end>'), "
                                + "so the rest of the file was not checked; "
                                + "check indentation, quotes and brackets just before this place",
                        "b.yaml:71:15: cause 'fuse-open': 'fixed-by' should be a list, found the text '3'; "
                                + "write [one, two] or a line starting with '- ' for each");
    }

    @Test
    void no_packs_are_empty_knowledge() {
        assertThat(PackReader.read(List.of()).causes()).isEmpty();
        assertThat(PackReader.check(List.of())).isEmpty();
    }
}
