package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Makes and models that no pack knows are found by how they are written and what stands beside them. */
class UnitNamesTest {
    private static final UnitNames UNITS = new UnitNames(Workshop.KNOWLEDGE, new Names(Workshop.KNOWLEDGE));

    private static Optional<UnitNames.Found> found(String text) {
        return UNITS.in(text, Clause.of(text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Ostrel KR-20 radio, Mrs. Tallow | Ostrel KR-20",
                "Hi-fi amp, Dulmar 40, Mr. Pellow | Dulmar 40",
                "Narvo NS500 vacuum, no suck | Narvo NS500",
                "TV Hestrel H32, no backlight | Hestrel H32",
                "laptop Merrow 14 - no charge | Merrow 14",
                "Monitor, Velmo 24P, 10 March | Velmo 24P",
                "Cassette deck, Tavrin TD 3, belt turned to tar | Tavrin TD 3",
                "Brask Combo 3 turntable (Mr. Ode) | Brask Combo 3",
                "Coffee machine Ferrano trips the RCD | Ferrano",
                "Brendel radio, Mrs K. | Brendel",
                "Cordless drill, Hegner, 18 V pack | Hegner",
                "Dear me, the Brask turntable of the teacher kept me busy | Brask",
                "Then the little Velmo monitor. | Velmo",
                "A phone, a Solen S6, had been in the river | Solen S6",
                "Television Hestrel H32 of Mr Kovel | Hestrel H32",
                "quill dp7 dvd player tray does not open | quill dp7",
                "replaced the belts in Oriva K5 | Oriva K5",
                // no names
                "Brask 5, radio: no sound | Brask 5",
                "Old radio, dead | ''",
                "Broken radio of Mr Kovel | ''",
                "Radio of Mr Kovel | ''",
                "Checked the amp, C412 open | ''",
                "Pin 4 of the chip is dead | ''",
                "March 2024 radio | ''",
                "No picture, 12 V ok | ''",
                "Dead. Oriva K5 is fine | ''",
            })
    void makes_and_models_are_found(String text, String name) {
        assertThat(found(text).map(f -> f.in(text)).orElse("")).as(text).isEqualTo(name);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Seen by Jo. Today an Ostrel KR-20 radio. No sound. | Ostrel KR-20",
                "No sound. Replaced C5. Oriva K5 is fine | ''",
            })
    void a_name_at_the_head_of_a_case_stands_before_the_first_work(String text, String name) {
        assertThat(UNITS.atHead(text, Clause.of(text)).map(f -> f.in(text)).orElse(""))
                .isEqualTo(name);
    }

    @Test
    void a_name_leads_where_only_small_words_stand_before_it() {
        assertThat(found("Then the little Velmo monitor.").orElseThrow().leads())
                .isTrue();
        assertThat(found("tried the lead of the Velmo monitor").orElseThrow().leads())
                .isFalse();
    }
}
