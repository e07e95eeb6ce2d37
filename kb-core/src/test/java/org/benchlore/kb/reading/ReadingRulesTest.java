package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rules of the reader that hold whatever the packs teach, on a pack of a few lines. */
class ReadingRulesTest {
    private static final String PACK = """
            pack: rules
            version: 1.0.0
            licence: Apache-2.0
            title: Rules
            about: For a test.
            scope: any
            from: memory
            symptoms:
              - id: mains-fuse
                name: Mains fuse
                about: Behind the inlet.
                reported: if-tested
                called: [fuse, mains fuse]
                states:
                  - {id: intact, normal: true, usual: 0.9, words: [intact, fine], opposite: blown}
                  - {id: blown, usual: 0.1, words: [blown, open], opposite: intact}
              - id: amplifier-fuse
                name: Fuse of the amplifier
                about: On its rails.
                reported: if-tested
                called: [amplifier fuse]
                states:
                  - {id: intact, normal: true, usual: 0.9, words: [intact, fine], opposite: blown}
                  - {id: blown, usual: 0.1, words: [blown, open], opposite: intact}
              - id: control-bus
                name: Control bus
                about: Two lines.
                reported: if-tested
                called: [control bus]
                states:
                  - {id: active, normal: true, usual: 0.9, words: [busy]}
                  - {id: idle, usual: 0.1, words: [idle]}
              - id: disc-spin
                name: Disc
                about: Whether it turns.
                reported: usually
                called: [disc]
                states:
                  - {id: spins, normal: true, usual: 0.9, words: [spins up, turns], opposite: still}
                  - {id: still, usual: 0.1, words: [still, stuck], opposite: spins}
              - id: tray
                name: Disc tray
                about: Whether it opens.
                reported: usually
                called: [tray]
                states:
                  - {id: moves, normal: true, usual: 0.9, words: [opens, moves], opposite: stuck}
                  - {id: half, usual: 0.05, words: [halfway]}
                  - {id: stuck, usual: 0.05, words: [stuck], opposite: moves}
              - id: rail-12v
                name: 12 V rail
                about: For the motors.
                reported: if-tested
                quantity: {unit: V, nominal: 12, tolerance: 5%}
                called: ["12 V"]
                states:
                  - {id: in-tolerance, normal: true, usual: 0.8, range: "-tol..+tol", words: [fine], opposite: absent}
                  - {id: absent, usual: 0.1, range: "..10%", words: [missing], opposite: in-tolerance}
                  - {id: low, usual: 0.05, range: "10%..-tol", words: [low, drops]}
                  - {id: high, usual: 0.05, range: "+tol..", words: [high]}
              - id: rail-5v
                name: 5 V rail
                about: For the logic.
                reported: if-tested
                quantity: {unit: V, nominal: 5, tolerance: 5%}
                called: ["5 V"]
                states:
                  - {id: in-tolerance, normal: true, usual: 0.8, range: "-tol..+tol", words: [fine], opposite: absent}
                  - {id: absent, usual: 0.1, range: "..10%", words: [missing], opposite: in-tolerance}
                  - {id: low, usual: 0.05, range: "10%..-tol", words: [low, drops]}
                  - {id: high, usual: 0.05, range: "+tol..", words: [high]}
              - id: rail-core
                name: Core rail
                about: For the processor.
                reported: if-tested
                quantity: {unit: V, nominal: 1, tolerance: 5%}
                called: ["1 V"]
                states:
                  - {id: in-tolerance, normal: true, usual: 0.8, range: "-tol..+tol", words: [fine], opposite: absent}
                  - {id: absent, usual: 0.1, range: "..10%", words: [missing], opposite: in-tolerance}
                  - {id: low, usual: 0.05, range: "10%..-tol", words: [low, drops]}
                  - {id: high, usual: 0.05, range: "+tol..", words: [high]}
              - id: rail-12v-ripple
                name: Ripple on the 12 V rail
                about: Seen with a scope.
                reported: if-tested
                quantity: {unit: V}
                called: [12 V ripple, "ripple on 12 V"]
                states:
                  - {id: normal, normal: true, usual: 0.9, range: "..0.12", words: [clean]}
                  - {id: high, usual: 0.1, range: "0.12..", words: [ragged]}
              - id: pack-cell
                name: Cell of the pack
                about: At rest.
                reported: if-tested
                quantity: {unit: V}
                called: [pack cell, cell of the pack]
                states:
                  - {id: dead, usual: 0.1, range: "..0.9", words: [flat]}
                  - {id: low, usual: 0.1, range: "0.9..1.15", words: [tired]}
                  - {id: good, normal: true, usual: 0.8, range: "1.15..", words: [charged]}
              - id: tone-supply
                name: Supply of the tone board
                about: Plus and minus.
                reported: if-tested
                quantity: {unit: V, nominal: 15, tolerance: 10%}
                called: [tone board supply, tone chip]
                states:
                  - {id: in-tolerance, normal: true, usual: 0.8, range: "-tol..+tol", words: [fine], opposite: absent}
                  - {id: absent, usual: 0.1, range: "..10%", words: [missing], opposite: in-tolerance}
                  - {id: low, usual: 0.05, range: "10%..-tol", words: [sags]}
                  - {id: high, usual: 0.05, range: "+tol..", words: [too much]}
              - id: inverter-feed
                name: Feed of the inverter
                about: From the main supply.
                reported: if-tested
                called: [inverter input]
                states:
                  - {id: present, normal: true, usual: 0.8, words: [there], opposite: absent}
                  - {id: absent, usual: 0.1, words: [missing], opposite: present}
                  - {id: low, usual: 0.1, words: [weak]}
              - id: strip-voltage
                name: Voltage at the strips
                about: While lit.
                reported: if-tested
                called: [strip connector]
                states:
                  - {id: as-lit, normal: true, usual: 0.8, words: [as it should be], opposite: absent}
                  - {id: absent, usual: 0.2, words: [missing], opposite: as-lit}
              - id: surge-resistor
                name: Surge resistor
                about: At the inlet.
                reported: if-tested
                quantity: {unit: ohm}
                called: [surge resistor]
                states:
                  - {id: sound, normal: true, usual: 0.9, range: "..50", words: [sound]}
                  - {id: open, usual: 0.1, range: "50..", words: [open]}
              - id: laser-current
                name: Laser current
                about: Against the label.
                reported: if-tested
                quantity: {unit: "%"}
                called: [laser current]
                states:
                  - {id: near-label, normal: true, usual: 0.8, range: "70..120", words: [as on the label]}
                  - {id: high, usual: 0.1, range: "120..", words: [high]}
                  - {id: low, usual: 0.1, range: "..70", words: [low]}
              - id: unclean-stops
                name: Unclean stops
                about: Counted.
                reported: if-tested
                quantity: {unit: "1"}
                called: [unclean stops, stops]
                states:
                  - {id: few, normal: true, usual: 0.8, range: "..10", words: [few]}
                  - {id: many, usual: 0.2, range: "10..", words: [many]}
              - id: bus-code
                name: Bus code
                about: In the log.
                reported: if-tested
                called: [bus code]
                states:
                  - {id: absent, normal: true, usual: 0.8, words: [not stored]}
                  - {id: once, usual: 0.1, words: [stored once]}
                  - {id: recurring, usual: 0.1, words: [stored many times]}
              - id: bulk-capacitor
                name: Value of the bulk capacitor
                about: Against its marking.
                reported: if-tested
                quantity: {unit: "%"}
                called: [bulk cap]
                states:
                  - {id: sound, normal: true, usual: 0.9, range: "75..", words: [sound]}
                  - {id: low, usual: 0.1, range: "..75", words: [dried]}
              - id: reseating
                name: Reseated
                about: All plugs pulled and pushed home.
                reported: if-tested
                called: [reseated the cards]
                states:
                  - {id: no-change, normal: true, usual: 0.9, words: [no change, still the same]}
                  - {id: helps, usual: 0.1, words: [works, starts]}
              - id: pack-bulge
                name: Swollen pack
                about: A pack that no longer lies flat.
                reported: usually
                called: [bulge]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [absent], opposite: present}
                  - {id: present, usual: 0.1, words: [present], opposite: absent}
                bare: present
                phrases:
                  present: [pack swollen]
              - id: dead-unit
                name: Dead unit
                about: Nothing happens.
                reported: always
                called: [dead unit]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [absent], opposite: present}
                  - {id: present, usual: 0.1, words: [present], opposite: absent}
                bare: present
                phrases:
                  present: [nothing, does nothing, not a squeak]
              - id: start-up
                name: Start-up
                about: How far it gets.
                reported: usually
                called: [start-up]
                states:
                  - {id: complete, normal: true, usual: 0.9, words: [complete], opposite: nothing}
                  - {id: nothing, usual: 0.1, words: [fails], opposite: complete}
                phrases:
                  complete: [boots every time]
                  nothing: [fan spins only]
              - id: fell
                name: Fall
                about: It fell.
                reported: usually
                called: [fall damage]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [absent], opposite: present}
                  - {id: present, usual: 0.1, words: [present], opposite: absent}
                bare: present
                phrases:
                  present: [it was dropped]
              - id: lock
                name: Shipping lock
                about: Holds the drum on the road.
                reported: if-tested
                called: [shipping lock, IF cores]
                states:
                  - {id: open, normal: true, usual: 0.9, words: [opened, in place], opposite: shut}
                  - {id: shut, usual: 0.1, words: [locked, out of place], opposite: open}
              - id: hum-lead
                name: Hum with one lead off
                about: One lead at a time.
                reported: if-tested
                called: [pull the aerial, pulled aerial]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [hum unchanged], opposite: present}
                  - {id: present, usual: 0.1, words: [hum is gone], opposite: absent}
              - id: spare-drive
                name: Works with another drive
                about: A spare one.
                reported: if-tested
                called: [spare drive]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [same fault], opposite: present}
                  - {id: present, usual: 0.1, words: [works], opposite: absent}
              - id: fresh-cells
                name: Fresh cells
                about: A full set.
                reported: if-tested
                called: [new cells]
                states:
                  - {id: no-help, normal: true, usual: 0.9, words: [fault unchanged], opposite: helps}
                  - {id: helps, usual: 0.1, words: [works], opposite: no-help}
              - id: chewed-lead
                name: Chewed lead
                about: By a pet.
                reported: usually
                called: [lead]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [whole], opposite: present}
                  - {id: present, usual: 0.1, words: [chewed], opposite: absent}
              - id: insects
                name: Insects
                about: Signs of them.
                reported: if-tested
                called: [insects, vermin, webs]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [absent], opposite: present}
                  - {id: present, usual: 0.1, words: [present], opposite: absent}
                bare: present
                phrases:
                  absent: [no sign of insects]
              - id: scorched
                name: Scorched supply
                about: Brown or black.
                reported: if-tested
                called: [scorch mark]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [absent], opposite: present}
                  - {id: present, usual: 0.1, words: [present], opposite: absent}
                phrases:
                  present: [burnt in the supply]
              - id: run-time
                name: Run time
                about: On one charge.
                reported: usually
                called: [run time]
                states:
                  - {id: normal, normal: true, usual: 0.9, words: [long], opposite: short}
                  - {id: short, usual: 0.1, words: [short], opposite: normal}
                phrases:
                  short: [charge it three times a day]
              - id: motor
                name: Motor by itself
                about: Off the mechanism.
                reported: if-tested
                called: [motor]
                states:
                  - {id: strong, normal: true, usual: 0.9, words: [strong], opposite: weak}
                  - {id: weak, usual: 0.06, words: [weak, needs a push], opposite: strong}
                  - {id: dead, usual: 0.04, words: [dead, gone], opposite: strong}
              - id: once
                name: Once only
                about: And never again.
                reported: usually
                called: [one-off]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [absent], opposite: present}
                  - {id: present, usual: 0.1, words: [present], opposite: absent}
                phrases:
                  present: [did it a single time]
              - id: cold-chips
                name: Works when cooled
                about: With cold spray.
                reported: if-tested
                called: [cooling the chips]
                states:
                  - {id: absent, normal: true, usual: 0.9, words: [does nothing], opposite: present}
                  - {id: present, usual: 0.1, words: [works], opposite: absent}
                phrases:
                  present: [cooling the chips]
              - id: files
                name: File system
                about: On the drive.
                reported: if-tested
                called: [file system]
                states:
                  - {id: clean, normal: true, usual: 0.9, words: [clean], opposite: damaged}
                  - {id: damaged, usual: 0.1, words: [damaged], opposite: clean}
                phrases:
                  damaged: [reports broken entries]
            """;

    private static final Reader READER = Reader.of(PackReader.read(List.of(new PackSource("rules.yaml", PACK))));

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
        "'looked for webs on the board, none',insects absent",
        "clean of webs,insects absent",
        "cooling the chips does nothing,cold-chips absent",
        "check without repair reports broken entries,files damaged",
        "mains fuse open for good,mains-fuse blown",
        "only the fan spins,start-up nothing",
        "the fuse near the blue socket is blown,mains-fuse blown",
    })
    void read_as(String text, String finding) {
        assertThat(findings(text)).contains(finding);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "it reboots when the disc spins up",
                "found nothing odd",
                "spins the fan",
                "it does not squeak",
                "the other recorder has a blown fuse",
                "a healthy fuse is intact",
                "most of these come in with the fuse blown",
                "my own radio has a blown fuse",
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
                "IF the fuse is blown, replace it",
                "another set has a blown fuse",
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
    void one_letter_and_digit_are_a_code_only_where_codes_are_spoken_of() {
        assertThat(READER.read("code U-6 came up", DeviceScope.ANY).codes()).hasSize(1);
        assertThat(READER.read("swapped Q-6", DeviceScope.ANY).codes()).isEmpty();
    }

    private static List<String> findings(String text) {
        return READER.read(text, DeviceScope.ANY).findings().stream()
                .map(f -> f.symptomId() + " " + f.state())
                .toList();
    }
}
