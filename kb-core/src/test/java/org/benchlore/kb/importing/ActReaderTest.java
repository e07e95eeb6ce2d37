package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What was done, concluded and reached is heard from the words, and nothing that they do not say. */
class ActReaderTest {
    private static final Names NAMES = new Names(Workshop.KNOWLEDGE);

    /** Acts as "cause ID, work ID, ending OUTCOME DAYS"; an unknown entry is "?". */
    private static String heard(ImportField field, String text) {
        ActReader reader = new ActReader(NAMES, DeviceScope.ANY);
        List<Act> acts = reader.read(new RawRecord.Part(field, text, 1, Optional.empty()));
        return String.join(", ", acts.stream().map(ActReaderTest::shown).toList());
    }

    private static String shown(Act act) {
        Outcome outcome = act.outcome();
        if (outcome != null) {
            return outcome.id() + (act.afterDays() == null ? "" : " " + act.afterDays());
        }
        return act.kind().name().toLowerCase(Locale.ROOT) + " " + (act.known() ? act.id() : "?");
    }

    @Test
    void no_phrase_stands_for_two_things() {
        assertThat(Stream.concat(
                        Arrays.stream(Cue.values()).flatMap(cue -> cue.phrases().stream()),
                        Arrays.stream(Work.values()).flatMap(work -> work.done().stream())))
                .doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // work, known and not
                "replaced C412, ran two days, ok | work ?, fixed-and-proven",
                "start resistor replaced | work replace-start-resistor",
                "new belts. ok | work replace-belts, fixed",
                "cleaned fan and vents | work clean-cooling-path",
                "exchange of the belts, is now ok | work replace-belts, fixed",
                "I have changed the mains fuse | work replace-mains-fuse",
                "replaced bridge rectifier and fuse | work replace-bridge-rectifier",
                "replaced the gizmo | work ?",
                "start resistor reads 2 Mohm. Fitted 330 kohm 1 W. Paid | work replace-start-resistor, fixed",
                "start resistor 2 Mohm where 330 k is printed. Fitted 330 kohm | work replace-start-resistor",
                "start resistor gets very hot there and goes. Swapped both resistors | work replace-start-resistor",
                "fitted 47 uF | work ?",
                "mains fuse is black inside, 12 V absent, swapped the fuse | work replace-mains-fuse",
                "new gizmo in, works | work ?, fixed",
                "gizmo worn, new one in, works | work ?, fixed",
                "3 gizmos fitted, ran 5 h | work ?, fixed-and-proven",
                "new gizmo fitted. ok | work ?, fixed",
                "I have built in a new gizmo, collected | work ?, fixed",
                "cleaned and oiled the gizmo | work ?",
                "cover fitted badly | ''",
                "built in supply dead | ''",
                "no new gizmo in | ''",
                // causes
                "found start resistor open, replaced it, works again"
                        + " | cause start-resistor-open, work replace-start-resistor, fixed",
                "start resistor open, replaced | cause start-resistor-open, work replace-start-resistor",
                "the fault turned out to be the bridge rectifier, shorted | cause bridge-rectifier-shorted",
                "maybe the cause was a dirty laser lens | cause lens-dirty",
                "cause: Q17 melted | cause ?",
                // no work, no cause
                "should replace the mains fuse | ''",
                "mains fuse not replaced | ''",
                "the owner replaced the mains fuse last year | ''",
                "ordered a new belt | ''",
                "replaced the mains fuse? | ''",
                "found no short in the bridge rectifier | ''",
                "found the bridge rectifier ok | ''",
                "new belts ordered | ''",
                "replacement of the belts would cost 40 | ''",
                "new mains fuse too dear | not-worth-it",
                "belts slipping, new ones 40 euro, owner says no | ''",
                "new belt set ordered. new belt set fitted, ok | work replace-belts, fixed",
                // a part swapped in to try shows something, and stays nobody's repair
                "swapped the start resistor with mine to test, works again | work ?, fixed",
                "start resistor ok, 12 V ok | ''",
                // endings
                "replaced C5, no change | work ?, not-fixed",
                "replaced C5. ok. came back after 3 weeks | work ?, fixed, came-back 21",
                "replaced C5, ran 10 minutes, ok | work ?, fixed",
                "replaced C5; soak test 24 h without a fault | work ?, fixed-and-proven",
                "cleaned lens. works again, ran overnight | work clean-lens, fixed-and-proven",
                "replaced C5. Played all afternoon without a fault | work ?, fixed-and-proven",
                "replaced C5. Ran two evenings, quiet now | work ?, fixed-and-proven",
                "replaced C5. Tested for four hours with a film, picture bright. Handed over | work ?, fixed-and-proven",
                "replaced C5. Played a disc to the end. Collected by the owner | work ?, fixed",
                "replaced C5. Played a disc, hums again. Handed back | work ?",
                "replaced C5. Handed over | work ?, fixed",
                "replaced C5. Paid | work ?, fixed",
                "replaced C5. Customer happy | work ?, fixed",
                "replaced C5, picked up Friday | work ?, fixed",
                "replaced C5. No charge | work ?, fixed",
                "replaced C5. Out 15.4. | work ?, fixed",
                "replaced C5. He has fetched it and was very content | work ?, fixed",
                "replaced C5. Ran two evenings. Collected on Saturday | work ?, fixed-and-proven",
                "replaced C5. Ran two evenings | work ?, fixed-and-proven",
                "replaced C5. Ran two evenings, hum again | work ?",
                "gizmo loose, soldered again. He has it picked up | work ?, fixed",
                "replaced C5. Heats again, handed over | work ?, fixed",
                "replaced C5 and let it play two evenings. She collected it | work ?, fixed-and-proven",
                "replaced C5, still hums. Collected | work ?",
                "replaced C5, hum remains. Collected, paid | work ?",
                "replaced C5. It needs a motor, too. Picked up Friday | work ?",
                "replaced C5, picked up hum | work ?",
                "replaced C5. Not collected | work ?",
                "dust collected in the vents | ''",
                "no charge | ''",
                "collected, paid | ''",
                "not repaired | given-up",
                "replaced C5, not repaired | work ?, not-fixed",
                "board eaten through, returned unrepaired | given-up",
                "beyond repair, sent to recycling | not-worth-it",
                "not worth it, not repaired | not-worth-it",
                "a new pack costs more than the drill; he took it home. Not repaired | not-worth-it",
                "a new one is dearer than the drill, collected | not-worth-it",
                "the new belt costs more than the old one. replaced C5, paid | work ?, fixed",
                "replaced C5. Charged two packs to the end, fine | work ?, fixed",
                "replaced C5, ok. She rang on Friday, it hums again | work ?, fixed, came-back",
                "replaced C5, both sides alike. She rang on Friday, it hums again | work ?, came-back",
                "two squirts of contact cleaner, ok | work ?, fixed",
                "came from a holiday flat | ''",
                "recovered by itself | recovered-by-itself",
                "no fault found, works fine here | no-fault-found",
                "not worth it, scrapped | not-worth-it",
                "gave up, no spare parts | given-up",
                "replaced C5, now completely dead | work ?, made-worse",
                "replaced C5, set is back to the customer | work ?",
                "replaced C5, never came back | work ?",
                "ok | ''",
                "12 V ok | ''",
                "still dead | ''",
            })
    void sentences_are_heard(String text, String expected) {
        assertThat(heard(ImportField.NOTES, text)).as(text).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "COMPLAINT | owner replaced the mains fuse himself, no change | ''",
                "CAUSE | start resistor | cause ?",
                "CAUSE | start-resistor-open | cause start-resistor-open",
                "CAUSE | Bridge rectifier shorted | cause bridge-rectifier-shorted",
                "CAUSE | unknown, perhaps moisture | cause ?",
                "WORK | start resistor | work replace-start-resistor",
                "WORK | start resistor, bridge rectifier, ok"
                        + " | work replace-start-resistor, work replace-bridge-rectifier, fixed",
                "WORK | clean-lens | work clean-lens",
                // a name under "work" is work where nothing beside it says that it is something else
                "WORK | start resistor open, owner says no | ''",
                "WORK | start resistor, owner says no | ''",
                "WORK | mains fuse open | ''",
                "WORK | belts slipping, belt set ordered | ''",
                "WORK | see the invoice | ''",
                "WORK | start resistor open, replaced | cause start-resistor-open, work replace-start-resistor",
                "OUTCOME | OK | fixed",
                "OUTCOME | not ok | not-fixed",
                "OUTCOME | fixed-and-proven | fixed-and-proven",
                "OUTCOME | repaired, 2 days on test | fixed-and-proven",
                "OUTCOME | BER | not-worth-it",
            })
    void a_label_says_what_its_words_are_about(ImportField field, String text, String expected) {
        assertThat(heard(field, text)).as(text).isEqualTo(expected);
    }
}
