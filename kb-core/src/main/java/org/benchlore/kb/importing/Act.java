package org.benchlore.kb.importing;

import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * Something that a text tells was done, concluded or reached.
 *
 * @param kind what
 * @param start offset of its words in the text
 * @param end offset behind them
 * @param id of the entry it names; empty when it names none of those known
 * @param certainty of a conclusion; else {@link Certainty#LIKELY}
 * @param outcome of an ending; else null
 * @param afterDays of {@link Outcome#CAME_BACK}, where told; else null
 */
record Act(
        Kind kind,
        int start,
        int end,
        String id,
        Certainty certainty,
        @Nullable Outcome outcome,
        @Nullable Integer afterDays) {
    /** What an act is. */
    enum Kind {
        TEST,
        CAUSE,
        /** Work, whether or not it is a fix that the packs know. */
        WORK,
        ENDING
    }

    static Act of(Kind kind, int start, int end, String id) {
        return new Act(kind, start, end, id, Certainty.LIKELY, null, null);
    }

    static Act cause(int start, int end, String id, boolean doubted) {
        return new Act(Kind.CAUSE, start, end, id, doubted ? Certainty.SUSPECTED : Certainty.LIKELY, null, null);
    }

    static Act ending(int start, int end, Outcome outcome, @Nullable Integer afterDays) {
        return new Act(Kind.ENDING, start, end, "", Certainty.LIKELY, outcome, afterDays);
    }

    boolean known() {
        return !id.isEmpty();
    }

    boolean is(Kind other) {
        return kind == other;
    }

    /** Whether another ending right behind this one says the same, or the same and that it was proven. */
    boolean sameEnding(Act next) {
        return outcome != null
                && (outcome == next.outcome || (outcome == Outcome.FIXED && next.outcome == Outcome.FIXED_AND_PROVEN));
    }
}
