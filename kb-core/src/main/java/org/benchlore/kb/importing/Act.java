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
 * @param several whether it was work on more than one thing, so that a cure does not tell which of them was to blame
 */
record Act(
        Kind kind,
        int start,
        int end,
        String id,
        Certainty certainty,
        @Nullable Outcome outcome,
        @Nullable Integer afterDays,
        boolean several) {
    /** What an act is. */
    enum Kind {
        TEST,
        CAUSE,
        /** Work, whether or not it is a fix that the packs know. */
        WORK,
        ENDING
    }

    static Act of(Kind kind, int start, int end, String id) {
        return new Act(kind, start, end, id, Certainty.LIKELY, null, null, false);
    }

    /** Work, its fix empty where the packs know none for it. */
    static Act work(int start, int end, String fixId, boolean several) {
        return new Act(Kind.WORK, start, end, fixId, Certainty.LIKELY, null, null, several);
    }

    static Act cause(int start, int end, String id, boolean doubted) {
        return new Act(Kind.CAUSE, start, end, id, doubted ? Certainty.SUSPECTED : Certainty.LIKELY, null, null, false);
    }

    static Act ending(int start, int end, Outcome outcome, @Nullable Integer afterDays) {
        return new Act(Kind.ENDING, start, end, "", Certainty.LIKELY, outcome, afterDays, false);
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
