package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;

import org.benchlore.kb.knowledge.DeviceScope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What kind of unit a text is about. */
class KindsTest {
    private static final Reader READER = Reader.of(Fixture.knowledge("kinds-pack.yaml"));

    private static Reading read(String text) {
        return READER.read(text, DeviceScope.ANY);
    }

    @ParameterizedTest
    @CsvSource({
        "the telly is dead,tv",
        "two Televisions,tv",
        "radio hums,radio",
        "valve radio hums,valve-radio",
        "Drill: smoke,drill",
        "no picture on my TV,tv",
        "trouble with the printer,printer",
        "dead printer,printer",
    })
    void a_word_names_the_kind(String text, String kind) {
        assertThat(read(text).kinds()).containsExactly(kind);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"it sparks", "the telly sparks", "My printer sparks.", "valve radio sparks", "the player sparks"
            })
    void the_unit_s_name_stands_for_it_before_a_single_word(String text) {
        assertThat(read(text).findings()).containsExactly(Finding.of("arcing", "present"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"back of the unit is warm", "back of the telly is warm", "back of my valve radio is warm"})
    void the_unit_s_name_stands_for_unit(String text) {
        assertThat(read(text).findings()).containsExactly(Finding.of("warm-case", "present"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"the barbecue sparks", "my neighbour sparks", "his other printer sparks"})
    void what_another_does_is_no_finding(String text) {
        assertThat(read(text).findings()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "laptop charger smells,charger",
        "'charger from my e-bike, lamp stays green',charger",
        "TV remote dead,remote",
    })
    void what_belongs_to_a_unit_is_a_kind_of_its_own(String text, String kind) {
        assertThat(read(text).kinds()).containsExactly(kind);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "The printer prints nothing, on another TV the same",
                "printer not seen with his laptop",
                "printer, no paper; kept next to the microwave",
                "printer hums in my amp",
                "my old printer is louder than the neighbour's radio",
                "printer like the radio",
                "printer, works fine on my laptop"
            })
    void a_unit_that_is_only_told_of_does_not_count_beside_one_that_was_named(String text) {
        assertThat(read(text).kinds()).containsExactly("printer");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "another radio is the same",
                "card is fine in my laptop, not in here",
                "it stands beside the TV",
                "drilled out the rivets",
                "draws a few amps",
                "op amp hot",
                "TV channels gone",
                "tape monitor switch crackles",
                "no hum"
            })
    void what_is_no_unit_on_the_bench_names_none(String text) {
        assertThat(read(text).kinds()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"fan stands still", "My old fan: smoke", "mixer sparks", "the fan, no hum"})
    void a_word_for_a_part_names_the_unit_where_a_note_begins_with_it(String text) {
        assertThat(read(text).kinds()).containsExactly("ventilator");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "smoke from the fan",
                "dusty, fan stands still",
                "fan socket bent",
                "fan hum gone",
                "tape monitor switch crackles"
            })
    void a_word_for_a_part_names_no_unit_elsewhere(String text) {
        assertThat(read(text).kinds()).isEmpty();
    }

    @Test
    void a_word_for_a_part_gives_way_to_a_unit() {
        assertThat(read("fan loud, laptop warm").kinds()).containsExactly("laptop");
    }

    @Test
    void several_kinds_remain_in_order_of_id() {
        assertThat(read("TV and laptop both dead").kinds()).containsExactly("laptop", "tv");
    }

    @Test
    void a_scope_settles_it() {
        assertThat(READER.read("the printer hums", DeviceScope.parse("display/ostrel"))
                        .kinds())
                .containsExactly("display");
        assertThat(READER.read("hum", DeviceScope.parse("gizmo")).kinds()).containsExactly("gizmo");
    }

    @Test
    void the_words_are_understood_and_no_finding() {
        Reading reading = read("the laptop wobbles, another TV too");
        assertThat(reading.unread()).isEqualTo("wobbles");
        assertThat(reading.understood()).isEmpty();
    }

    @Test
    void a_finding_keeps_its_span() {
        assertThat(read("radio hums").understood())
                .singleElement()
                .satisfies(u -> assertThat(u.span().text()).isEqualTo("radio hums"));
    }

    /** Twice the text, about twice the time; a bound far from that catches a walk over the whole text for each word. */
    @Test
    void long_texts_take_linear_time() {
        String text = "on my old laptop the TV, ".repeat(8_000);
        long start = System.nanoTime();
        assertThat(read(text).kinds()).isNotEmpty();
        assertThat(System.nanoTime() - start).isLessThan(20_000_000_000L);
    }
}
