package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rules of the reader that hold whatever the packs teach, on a pack of a few lines. */
class ReadingRulesTest {
    private static final Reader READER = Reader.of(Fixture.knowledge("rules-pack.yaml"));

    @ParameterizedTest
    @CsvSource({
        "fuse blown,mains-fuse blown",
        "'amplifier dead on one side, its fuse is blown',amplifier-fuse blown",
        "'bus idle, reset high',control-bus idle",
        "the control bus is idle,control-bus idle",
        "the tray opens halfway,tray half",
        "pack swollen? No.,pack-bulge absent",
        "'reseated the cards and pushed the lid home, now it works',reseating helps",
        "bulk cap is marked 220u and reads 91u,bulk-capacitor low",
        "bulk cap 220u measures 212u,bulk-capacitor sound",
        "'bulk cap 91u, marked 220u',bulk-capacitor low",
        "the disc still won't spin up,disc-spin still",
        "it does nothing,dead-unit present",
        "not a squeak from it,dead-unit present",
        "12 V line with 0.25 V p-p,rail-12v-ripple high",
        "0.25 V of hash on the 12 V line,rail-12v-ripple high",
        "cell 3 of the pack 0.4 V,pack-cell dead",
        "pack cell 2 at 1.05 V an hour after charge,pack-cell low",
        "pack cell 1 V at the tabs,pack-cell low",
        "tone chip has plus and minus 15.1 V,tone-supply in-tolerance",
        "tone chip reads -22 V instead of -15,tone-supply high",
        "tone board supply well above its rated 15 V,tone-supply high",
        "the 12 V sits well under its limit,rail-12v low",
        "'only 9 V at the inverter input, 24 V printed there',inverter-feed low",
        "inverter input 14 V of its 24 V,inverter-feed low",
        "0 V at the strip connector,strip-voltage absent",
        "surge resistor 4R7 measures 150k,surge-resistor open",
        "'laser current 46.1 mA, label says 455',laser-current near-label",
        "'bulk cap lifted, 38 % of its marking',bulk-capacitor low",
        "'bulk cap 1000u measures 96 %',bulk-capacitor sound",
        "'bulk cap measures 12.3uF against 12.5 printed',bulk-capacitor sound",
        "bulk cap 1850 of 2000 mAh,bulk-capacitor sound",
        "unclean stops 640,unclean-stops many",
        "bus code stored 47 times,bus-code recurring",
        "12 V sags to 9 at the inverter input,rail-12v low",
        "'disc (no), tray (yes)',disc-spin still",
        "'disc (no), tray (yes)',tray moves",
        "fuse: y,mains-fuse intact",
        "F3 open,mains-fuse blown",
        "the pack has not swollen,pack-bulge absent",
        "it has not worked since it was dropped,fell present",
        "'reseated the cards, boots every time',reseating helps",
        "shipping lock opened,lock open",
        "tray is not halfway,tray moves",
        "the 12 V is not low,rail-12v in-tolerance",
        "disc not stuck,disc-spin spins",
        "'the 12 V should be 12, I have 9.8',rail-12v low",
        "12 V must be 12.0 but only reads 9.1,rail-12v low",
        "'12 V expected, 9.1 found',rail-12v low",
        "'supposed to be 5 V, I get 3.9',rail-5v low",
        "'the 5 V reads 3.9 (nominal 5)',rail-5v low",
        "'ran the PSU on a dummy load: fine, 12.05 V at 3 A',rail-12v in-tolerance",
        "IF cores out of place,lock shut",
        "'spare drive, same fault',spare-drive absent",
        "pull the aerial and the hum is gone,hum-lead present",
        "'pulled aerial, then the rest in turn, hum unchanged',hum-lead absent",
        "'put new cells in, fault unchanged',fresh-cells no-help",
        "'the motor off load, needs a push now and then',motor weak",
        "have to charge it three times a day,run-time short",
        "did it a single time on the bench,once present",
        "tray opens as it should,tray moves",
        "the 12 V is as it ought to be,rail-12v in-tolerance",
        "nothing burnt in the supply,scorched absent",
        "it is smelling,scorched present",
        "it don't give no start,start-up nothing",
        "has been bloated ever since,pack-bulge present",
        "Note: bloated,pack-bulge present",
        "'looked for webs on the board, none',insects absent",
        "clean of webs,insects absent",
        "cooling the chips does nothing,cold-chips absent",
        "check without repair reports broken entries,files damaged",
        "mains fuse open for good,mains-fuse blown",
        "only the fan spins,start-up nothing",
        "no tray but the motor is strong,motor strong",
        "it no longer works since it was dropped,fell present",
        "left channel buzzes,buzz present",
        "'the 5 V is low, the 12 V is not',rail-12v in-tolerance",
        "'12 V nominal, 9.5 actual',rail-12v low",
        "nothing but buzzes,buzz present",
        "could not hear any loudspeaker buzz,buzz none",
        "the owner denies that it was dropped,fell absent",
        "'12 V fine, now 9 V',rail-12v low",
        "the fuse near the blue socket is blown,mains-fuse blown",
        "five volt rail five point oh one twelve volt rail seven point six,rail-5v in-tolerance",
        "five volt rail five point oh one twelve volt rail seven point six,rail-12v low",
        "'pack cell left 1.24 V, right 0.4 V',pack-cell dead",
        "'five pack cells at 1.24 V, one at 0.4 V',pack-cell dead",
        "pack cell 1.24 1.25 1.23 0.41,pack-cell dead",
        "the tray is terribly stuck,tray stuck",
        "thermal link 0.3 ohm,thermal-link closed",
        "thermal link 3.15 open,thermal-link open",
        "bulk cap 91uF marked 220uF,bulk-capacitor low",
        "amplifier fuse gone and the mains fuse blown,mains-fuse blown",
        "'fuse was blown, new one is fine',mains-fuse intact",
        "'amplifier dead, fuse on the set blown',mains-fuse blown",
        "'2 of 3 pack cells at 1.24 V, the third 0.4 V',pack-cell dead",
        "'5 V 3.9 before, 5.02 after',rail-5v in-tolerance",
        "put new cells in it already the mains fuse is blown,mains-fuse blown",
        "nothing was dropped,fell absent",
        "nothing has been dropped,fell absent",
        "it buzzes on everything in the room,buzz present",
        "it goes off after a while,stops-warm present",
        "voltages fine,supplies right",
        "note the tray is stuck,tray stuck",
        "no charge,charging refuses",
        "'bulk cap 91uF marked 220uF, bloated',cap-look bulging",
        "put new cells in and mains fuse blown,mains-fuse blown",
        "'I mean, the fuse is blown',mains-fuse blown",
        "there is neither tray nor charge,charging refuses",
        "it did it a um single time,once present",
        "no it was not dropped,fell absent",
        "no insects or buzzes,buzz none",
        "neither disc nor charge,charging refuses",
        "'12 V yes, 5 V no',rail-12v in-tolerance",
        "'12 V yes, 5 V no',rail-5v absent",
        "charge but no insects,charging charges",
        "charge but no insects,insects absent",
        "cable damaged,mains-lead damaged",
        "the damaged cord,mains-lead damaged",
        "lead damagd,mains-lead damaged",
        "mains lead freyad,mains-lead damaged",
        "mains lead frazed,mains-lead damaged",
        "rails fine,supplies right",
        "pack swollen but the other one is fine,pack-bulge present",
    })
    void read_as(String text, String finding) {
        assertThat(findings(text)).contains(finding);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "it reboots when the disc spins up",
                "found nothing odd",
                "put new cells in if the mains fuse is blown",
                "spins the fan",
                "it does not squeak",
                "the other recorder has a blown fuse",
                "a healthy fuse is intact",
                "most of these come in with the fuse blown",
                "my own radio has a blown fuse",
                "our own amplifier hums",
                "a scratched disc can be cleaned",
                "when the fan stands still it gets hot, says the manual",
                "the new soldering iron is dead",
                "it drops a line now and then",
                "fell to 1 V within a second",
                "it overshoots by more than one volt",
                "errors climbing, 12 to 85 in an hour",
                "pack cell sits 650 mV under the others",
                "clean stops 350",
                "the adapter carries 0.3 Vpp on 5 V",
                "pull the aerial and tell me if the hum is gone",
                "put new cells in, the lamp should be fine then",
                "the motor needs a new bearing, it is weak",
                "have to measure the 12 V, is it low",
                "did the fuse open",
                "ordered a spare drive that works",
                "the sister unit has a blown fuse",
                "some amplifiers come in with the fuse blown",
                "others have a blown fuse",
                "two as donors, the fuse of one blown",
                "Common on this series: fuse blown",
                "For the apprentice: the fuse opens first. Then the disc is still.",
                "Look for: blown fuse",
                "fault tree for a blown fuse",
                "a tray should never be opened by hand, it gets stuck",
                "3 of the 12 recorders were low",
                "disc no. 3",
                "the 12 V should be between 11.4 and 12.6 V",
                "IF the fuse is blown, replace it",
                "another set has a blown fuse",
                "ran here 3 days, nothing",
                "sings at low volume",
                "no fuse in stock",
                "he dropped it off on Monday, fell to me to mend",
                "his neighbour's set has a blown fuse",
                "a motor pedal, weak",
                "found on 2.4, not on 5",
                "all is well without the disc",
                "fuse holder blown",
                "I thought the fuse was blown",
                "he also has a set at home with a blown fuse",
                "no scorched insects enclosed",
                "12 V on a 19 V laptop",
                "thermal link 3.15",
                "the disc had gone yellowish",
                "disc gone yellow",
                "12 V in, 0 V out",
                "regulator in 12 V, out 3.1 V",
                "a disc-like case",
                "has no motor",
                "there is no motor in this one",
                "will not bulge",
                "neighbour's set has a blown fuse",
                "no dust on the disc",
                "the disc has no scratches",
                "heater voltages fine",
                "motor voltage fine",
                "mended free of charge",
                "took charge of it",
                "no charge to the owner",
                "it fell silent",
                "the job bus idle",
                "the move has been dead since spring",
                "packs are swollen when they are overcharged",
                "a dead motor must go back, gone",
                "when the fuse is blown, replace the bridge",
                "the manual says the fuse is blown when the lamp is off",
                "Typical causes: fuse blown, disc stuck",
                "the warranty does not cover scorched insects",
                "network cable damaged",
                "damaged headphone lead",
                "the cable of the headphones is damaged",
                "38 V rails fine",
                "resoldered the fuse, fine now",
            })
    void holds_nothing(String text) {
        assertThat(findings(text)).isEmpty();
    }

    @Test
    void a_denied_fault_beside_another_says_no_more() {
        assertThat(findings("motor weak, not dead")).containsExactly("motor weak");
        assertThat(findings("no sign of insects or vermin")).containsExactly("insects absent");
    }

    @Test
    void what_a_trial_was_done_with_shares_no_state() {
        assertThat(findings("spare drive works with the same lead")).containsExactly("spare-drive present");
    }

    @Test
    void readings_under_one_heading_are_of_the_rails_they_are_near() {
        assertThat(findings("Voltages: 12.1, 4.3")).containsExactly("rail-12v in-tolerance", "rail-5v low");
    }

    @Test
    void what_only_may_be_so_is_soft_wherever_its_verb_stands() {
        for (String text : List.of("the 12 V may be low", "the 12 V might be low", "12 V prob low")) {
            assertThat(READER.read(text, DeviceScope.ANY).findings())
                    .singleElement()
                    .satisfies(f -> assertThat(f.likelihoods()).hasSizeGreaterThan(1));
        }
    }

    @Test
    void lines_end_alike_however_they_are_written() {
        String text = "has a long and rather deep scratch all across the whole of its new lid\nfuse blown\ntray stuck";
        assertThat(findings(text)).contains("tray stuck");
        assertThat(findings(text.replace('\n', '\r'))).isEqualTo(findings(text));
        assertThat(findings(text.replace('\n', '\u2028'))).isEqualTo(findings(text));
    }

    @Test
    void members_of_a_list_share_what_is_said_of_the_last() {
        assertThat(findings("12 and 5 check out fine, nothing odd"))
                .containsExactly("rail-12v in-tolerance", "rail-5v in-tolerance");
    }

    @Test
    void what_goes_well_in_a_trial_is_said_of_the_trial_alone() {
        assertThat(findings("reseated the cards, boots every time")).containsExactly("reseating helps");
    }

    @Test
    void a_decimal_said_of_a_line_with_volts_is_in_volts() {
        assertThat(READER.read("the 12 V wanders between 11.2 and 12.4", DeviceScope.ANY)
                        .quantities())
                .extracting(Reading.Value::unit)
                .containsExactly("V", "V");
    }

    @Test
    void a_supply_is_told_by_how_near_its_readings_are() {
        assertThat(findings("PSU: 12.2 V, 5.01 V")).containsExactly("rail-12v in-tolerance", "rail-5v in-tolerance");
    }

    @Test
    void what_tells_by_itself_is_not_said_of_a_thing_beyond_a_comma() {
        assertThat(findings("tray stuck halfway, disc spins up")).containsExactly("disc-spin spins", "tray stuck");
    }

    @Test
    void one_letter_and_digit_are_a_code_only_where_codes_are_spoken_of() {
        assertThat(READER.read("code U-6 came up", DeviceScope.ANY).codes()).hasSize(1);
        assertThat(READER.read("swapped Q-6", DeviceScope.ANY).codes()).isEmpty();
    }

    @Test
    void not_every_one_is_some() {
        assertThat(READER.read("not every tray moves", DeviceScope.ANY).findings())
                .singleElement()
                .satisfies(f -> assertThat(f.likelihoods()).containsOnlyKeys("half", "stuck"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "tray moves on the left only",
                "tray moves if you hold it",
                "only one tray moves",
                "tray moves badly",
                "trays only move on the left",
                "all but the tray moves",
                "the left tray moves, the right one does not",
                "tray moves, but only slowly",
                "the tray opens very unevenly",
                "the tray barely moves",
                "the tray only moves sometimes",
                "the tray moves now and then",
                "the tray is far from fine"
            })
    void what_is_well_in_part_is_not_well(String text) {
        assertThat(READER.read(text, DeviceScope.ANY).findings())
                .singleElement()
                .satisfies(f -> assertThat(f.likelihoods()).doesNotContainKey("moves"));
    }

    @Test
    void what_holds_for_a_time_is_told_apart_from_what_comes_then() {
        Reading reading = READER.read("tray moves for 20 min, then stuck", DeviceScope.ANY);
        assertThat(reading.understood())
                .extracting(u -> u.finding().state() + " " + u.conditions())
                .containsExactly("moves []", "stuck [AFTER_A_WHILE]");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "tray moved until it got wet",
                "the fuse was fine before the storm",
                "the fuse was intact till Friday",
                "the tray moved before"
            })
    void what_was_well_until_then_is_over(String text) {
        assertThat(READER.read(text, DeviceScope.ANY).understood())
                .extracting(Reading.Understood::past)
                .containsExactly(true);
    }

    @Test
    void the_writer_speaks_for_himself_beside_the_owner() {
        Reading reading = READER.read("owner says the tray was stuck, I see it is halfway", DeviceScope.ANY);
        assertThat(reading.understood())
                .extracting(Reading.Understood::source)
                .containsExactly(Reading.Source.OWNER, Reading.Source.SEEN);
    }

    @Test
    void what_was_replaced_is_no_contradiction() {
        Reading reading = READER.read("fuse was blown, new one is fine", DeviceScope.ANY);
        assertThat(reading.contradictions()).isEmpty();
        assertThat(reading.understood()).extracting(Reading.Understood::past).containsExactly(true, false);
    }

    private static List<String> findings(String text) {
        return READER.read(text, DeviceScope.ANY).findings().stream()
                .map(f -> f.symptomId() + " " + f.state())
                .toList();
    }
}
