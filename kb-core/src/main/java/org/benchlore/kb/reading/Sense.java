package org.benchlore.kb.reading;

import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.jspecify.annotations.Nullable;

/** One meaning of a name, word or phrase: a symptom and, unless it only names it, the state's position. */
record Sense(Symptom symptom, int state) {
    /** State of a sense that only names the symptom. */
    static final int NAME = -1;

    /** Ids are unique within a lexicon, and comparing whole symptoms is slow. */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Sense that
                && state == that.state
                && symptom.id().equals(that.symptom.id());
    }

    @Override
    public int hashCode() {
        return 31 * symptom.id().hashCode() + state;
    }

    State stateOf() {
        return symptom.states().get(state);
    }
}
