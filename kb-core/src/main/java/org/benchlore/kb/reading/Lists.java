package org.benchlore.kb.reading;

import org.benchlore.kb.reading.analysis.Token;

/** Lists such as "3.3, 5 and 12": what joins their members. */
final class Lists {
    private static final int WIDEST_JOINT = 4;

    private Lists() {}

    /** Whether only a list's joints stand between two members. */
    static boolean joined(Passage passage, int from, int to) {
        boolean joint = false;
        for (int i = from; i < to; i++) {
            Token token = passage.token(i);
            boolean joining = Plain.joining(token);
            if (!joining && !passage.skipped(i) && !filler(token)) {
                return false;
            }
            joint |= joining;
        }
        return joint && to - from <= WIDEST_JOINT;
    }

    private static boolean filler(Token token) {
        return token.term().equals("rail")
                || token.term().equals("line")
                || token.term().equals("volt");
    }
}
