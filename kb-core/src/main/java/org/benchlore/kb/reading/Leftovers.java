package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.Reading.Span;
import org.benchlore.kb.reading.analysis.Token;

/** What was not understood: stretches of words with meaning that led to no finding. */
final class Leftovers {
    private Leftovers() {}

    /**
     * Words between two left-over ones join them unless a finding or the end of a segment stands between.
     *
     * @param kinds tokens that name a kind of unit
     */
    static List<Span> of(Passage passage, List<Claim> claims, BitSet kinds) {
        boolean[] explained = new boolean[passage.size()];
        for (Claim claim : claims) {
            for (int i = claim.from; i < claim.to; i++) {
                explained[i] = true;
            }
        }
        for (Item item : passage.items) {
            boolean cue = item.entry.cue != null;
            for (int i = item.from; cue && i < item.to; i++) {
                explained[i] = true;
            }
        }
        kinds.stream().forEach(i -> explained[i] = true);
        List<Span> spans = new ArrayList<>();
        int from = -1;
        int to = -1;
        for (int i = 0; i < passage.size(); i++) {
            boolean left = !explained[i] && passage.content(i) && !span(passage.token(i));
            boolean ends = explained[i] || (to > 0 && !passage.sameSegment(i, to - 1));
            if (from >= 0 && ends) {
                spans.add(passage.span(from, to));
                from = -1;
            }
            if (left) {
                from = from < 0 ? i : from;
                to = i + 1;
            }
        }
        if (from >= 0) {
            spans.add(passage.span(from, to));
        }
        return spans;
    }

    /** "25 minutes": the quantities tell of it. */
    private static boolean span(Token token) {
        return token.kind() == Token.Kind.QUANTITY && token.unit().equals("s");
    }
}
