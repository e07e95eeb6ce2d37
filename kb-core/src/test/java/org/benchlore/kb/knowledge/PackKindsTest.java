package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Classes of devices, what they are called and hold, and what causes need of them. */
class PackKindsTest {
    private static final String CLASSES = """
            devices:
              - scope: deck
                name: tape deck
                called: [tape deck, cassette deck]
                has: [tape, motor]
              - scope: kettle
                name: kettle
                called: [kettle]
                has: [heating]
              - scope: thing
                name: thing
                called: [thing]
            """;

    private static final String NEEDS = """
            causes:
              - id: fuse-open
                refines: true
                needs: tape
              - id: regulator-tired
                refines: true
                needs: [heating, motor]
            """;

    private static List<PackSource> packs(String rest) {
        return PackFixture.layered(PackFixture.shop(rest));
    }

    private static List<String> problems(String rest) {
        return PackReader.check(packs(rest)).stream()
                .map(PackProblem::toString)
                .filter(problem -> problem.startsWith("shop.yaml"))
                .toList();
    }

    private static final Knowledge KNOWLEDGE = PackReader.read(packs(CLASSES + NEEDS));

    private static List<String> lacking(String cause, String... classes) {
        return KNOWLEDGE.lacking(KNOWLEDGE.cause(cause).orElseThrow(), List.of(classes));
    }

    @Test
    void a_class_says_what_its_units_are_called_and_hold() {
        Device deck = KNOWLEDGE.deviceClass("deck").orElseThrow();
        assertThat(deck.called()).containsExactly("tape deck", "cassette deck");
        assertThat(deck.has()).containsExactly("tape", "motor");
        assertThat(deck.onlyKind()).isTrue();
        assertThat(KNOWLEDGE.deviceClass("player")).isEmpty();
        assertThat(KNOWLEDGE.parts()).containsExactly("heating", "motor", "tape");
    }

    @Test
    void a_cause_lacks_what_no_class_given_holds() {
        assertThat(lacking("fuse-open", "kettle")).containsExactly("tape");
        assertThat(lacking("fuse-open", "deck")).isEmpty();
        assertThat(lacking("fuse-open", "kettle", "deck")).isEmpty();
        assertThat(lacking("regulator-tired", "kettle")).containsExactly("motor");
    }

    @Test
    void nothing_lacks_where_nothing_is_known_of_the_class() {
        assertThat(lacking("fuse-open")).isEmpty();
        assertThat(lacking("fuse-open", "thing")).isEmpty();
        assertThat(lacking("fuse-open", "no-such-class")).isEmpty();
        assertThat(lacking("fuse-open", "kettle", "thing")).containsExactly("tape");
    }

    @Test
    void a_test_or_fix_lacks_what_it_needs_itself_or_what_all_that_it_serves_lack() {
        Knowledge own = PackReader.read(packs(CLASSES + """
                tests:
                  - {id: measure-rails, refines: true, needs: motor}
                fixes:
                  - {id: new-fuse, refines: true, needs: [tape, heating]}
                """));
        BenchTest test = own.test("measure-rails").orElseThrow();
        assertThat(own.lacking(test, List.of("kettle"))).containsExactly("motor");
        assertThat(own.lacking(test, List.of("deck"))).isEmpty();
        assertThat(own.lacking(test, List.of())).isEmpty();
        assertThat(own.lacking(own.fix("new-fuse").orElseThrow(), List.of("deck")))
                .containsExactly("heating");

        BenchTest confirms = KNOWLEDGE.test("measure-rails").orElseThrow();
        assertThat(confirms.needs()).isEmpty();
        assertThat(KNOWLEDGE.lacking(confirms, List.of("kettle"))).containsExactly("tape", "motor");
        assertThat(KNOWLEDGE.lacking(confirms, List.of("deck"))).isEmpty();
        assertThat(KNOWLEDGE.lacking(KNOWLEDGE.fix("new-fuse").orElseThrow(), List.of("kettle")))
                .containsExactly("tape", "motor");
    }

    @Test
    void a_part_that_no_class_holds_is_reported_of_tests_and_fixes_too() {
        assertThat(problems(CLASSES + NEEDS + """
                tests:
                  - {id: measure-rails, refines: true, needs: [motor, taep]}
                fixes:
                  - {id: new-fuse, refines: true, needs: water}
                """))
                .containsExactly(
                        "shop.yaml:26:47: test 'measure-rails' needs 'taep', which no class of devices has; "
                                + "did you mean 'tape'?",
                        "shop.yaml:28:42: fix 'new-fuse' needs 'water', which no class of devices has; "
                                + "name it under 'has' of the classes that hold it");
    }

    @Test
    void a_part_that_no_class_holds_is_reported_and_does_not_count() {
        String wrong = CLASSES + "causes:\n  - id: fuse-open\n    refines: true\n    needs: taep\n";

        assertThat(problems(wrong))
                .contains("shop.yaml:21:12: cause 'fuse-open' needs 'taep', which no class of devices has; "
                        + "did you mean 'tape'?");
        Knowledge read = PackReader.read(packs(wrong));
        assertThat(read.lacking(read.cause("fuse-open").orElseThrow(), List.of("kettle")))
                .isEmpty();
    }

    @Test
    void a_part_that_nothing_needs_is_reported() {
        assertThat(problems(CLASSES + NEEDS)).isEmpty();
        assertThat(problems(CLASSES.replace("[heating]", "[heating, mottor]") + NEEDS))
                .containsExactly("shop.yaml:14:20: device 'kettle' has 'mottor', which nothing needs; "
                        + "did you mean 'motor'?");
    }

    @Test
    void a_word_for_two_classes_is_reported() {
        assertThat(problems(CLASSES.replace("[kettle]", "[kettle, tape deck]") + NEEDS))
                .containsExactly("shop.yaml:13:22: devices 'kettle' and 'deck' are both called 'tape deck'; "
                        + "leave it with the more common one");
    }

    @Test
    void only_a_class_is_called_and_has() {
        assertThat(problems("devices:\n  - scope: deck/dulmar\n    name: Dulmar\n    has: [tape]\n"))
                .containsExactly("shop.yaml:9:10: device 'deck/dulmar' is no class of devices, so it has no 'has'; "
                        + "write it under a class, such as 'scope: tv'");
    }

    @Test
    void a_pack_says_what_its_causes_need_and_a_cause_may_say_otherwise() {
        String cause = """
                  - id: %s
                    name: A fault of its own, %s
                    kind: fault
                    about: Wear.
                    per-thousand: 1
                """;
        Knowledge read = PackReader.read(packs("needs: tape\ncauses:\n" + cause.formatted("worn", "one")
                + cause.formatted("free", "two") + "    needs: []\n" + CLASSES));

        assertThat(read.cause("worn").orElseThrow().needs()).containsExactly("tape");
        assertThat(read.cause("free").orElseThrow().needs()).isEmpty();
        assertThat(read.cause("fuse-open").orElseThrow().needs()).isEmpty();
    }

    @Test
    void refining_a_class_adds_words_and_parts() {
        List<PackSource> packs = List.of(
                new PackSource("p.yaml", PackFixture.GOOD),
                new PackSource("shop.yaml", PackFixture.shop(CLASSES)),
                new PackSource("own.yaml", PackFixture.shop("""
                        devices:
                          - {scope: kettle, refines: true, called: [tea boiler], has: [motor]}
                        """).replace("pack: shop", "pack: own")));

        Device kettle = PackReader.read(packs).deviceClass("kettle").orElseThrow();
        assertThat(kettle.called()).containsExactly("kettle", "tea boiler");
        assertThat(kettle.has()).containsExactly("heating", "motor");
    }
}
