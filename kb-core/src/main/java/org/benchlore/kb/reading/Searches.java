package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;

/** Things looked for and not found, across a comma: "looked for whiskers on the shield, none". */
final class Searches {
    private static final int REACH = 8;
    private static final Words SEARCHED = Words.spaced("looked searched checked hunted inspected watched listened");
    private static final Words NONE = Words.spaced("none nothing no nowhere not");
    private static final Words FOUND = Words.spaced("found seen there one any at all so far of it them");

    private Searches() {}

    /** Turns round what a search found nothing of. */
    static void deny(Passage passage, List<Claim> claims) {
        for (Claim claim : claims) {
            int end = claim.to;
            while (end < passage.size() && passage.sameSegment(end, claim.to - 1) && end < claim.to + REACH) {
                end++;
            }
            boolean negated = claim.measured == null && nothingFound(passage, end - 1) && searches(passage, claim.from);
            if (negated && !claim.normal()) {
                claim.negated = true;
                claim.cover(end - 1, end + 1);
            }
        }
    }

    private static boolean nothingFound(Passage passage, int comma) {
        int i = comma + 1;
        if (comma >= passage.size() || passage.token(comma).kind() != Token.Kind.PUNCTUATION || i >= passage.size()) {
            return false;
        }
        boolean none = false;
        for (;
                i < passage.size()
                        && passage.sameSegment(comma + 1, i)
                        && passage.token(i).kind() != Token.Kind.PUNCTUATION;
                i++) {
            String word = passage.token(i).surface();
            none |= NONE.contains(word);
            if (!NONE.contains(word) && !FOUND.contains(word)) {
                return false;
            }
        }
        return none;
    }

    private static boolean searches(Passage passage, int from) {
        for (int i = from - 1; i > 0 && i > from - REACH && passage.sameSegment(i, from); i--) {
            if (passage.token(i).surface().equals("for")
                    && SEARCHED.contains(passage.token(i - 1).surface())) {
                return true;
            }
        }
        return false;
    }
}
