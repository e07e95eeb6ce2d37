package org.benchlore.kb.reading;

import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.jspecify.annotations.Nullable;

/** Names of things tried, which work or make no difference: "another lead", "with the module out". */
final class Trials {
    private Trials() {}

    /** What it means for a name of a trial that the unit works then; null where it is of none. */
    static @Nullable Sense works(Lexicon lexicon, Item name) {
        Entry works = lexicon.works();
        if (works == null || !works.maySay(name.entry)) {
            return null;
        }
        for (Sense named : name.entry.names) {
            Symptom symptom = named.symptom();
            Sense said = !Polarity.presence(symptom) ? null : works.saidOf(symptom.id());
            if (said != null && !said.stateOf().normal()) {
                return said;
            }
        }
        return null;
    }
}
