package org.benchlore.kb.reading;

import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;

/** One meaning of a name, word or phrase: a symptom and, unless it only names it, the state's position. */
record Sense(Symptom symptom, int state) {
    /** State of a sense that only names the symptom. */
    static final int NAME = -1;

    State stateOf() {
        return symptom.states().get(state);
    }
}
