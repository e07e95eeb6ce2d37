package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.Reading.Condition;
import org.benchlore.kb.reading.Reading.Source;

/**
 * What the words around a claim say about it: doubt, history, conditions, who says so. A cue counts for the claims of its
 * comma-separated segment; one in a segment of its own counts for the clause.
 */
final class Context {
    /** Items looked at on either side. */
    private static final int REACH = 10;

    /** Tokens looked at for a closing question mark. */
    private static final int ASKED_REACH = 30;

    private final Passage passage;
    private final Set<Integer> segmentsWithClaims = new HashSet<>();

    Context(Passage passage, List<Claim> claims) {
        this.passage = passage;
        for (Claim claim : claims) {
            for (int i = claim.from; i < claim.to; i++) {
                segmentsWithClaims.add(passage.segment(i));
            }
        }
    }

    /** Cues that count for a claim. */
    Set<Cue> around(Claim claim) {
        EnumSet<Cue> cues = EnumSet.noneOf(Cue.class);
        int first = firstItemFrom(claim.from);
        for (int i = first; i < passage.items.size() && i < first + REACH; i++) {
            note(claim, passage.items.get(i), cues);
        }
        for (int i = first - 1; i >= 0 && i >= first - REACH; i--) {
            Item item = passage.items.get(i);
            if (passage.sentence(item.from) != passage.sentence(claim.from)) {
                break;
            }
            note(claim, item, cues);
            if (item.entry.cue == Cue.OWNER && item.free()) {
                cues.add(Cue.OWNER);
            }
        }
        if (asked(claim)) {
            cues.add(Cue.DOUBT);
        }
        if (endsWithBefore(claim)) {
            cues.add(Cue.PAST);
        }
        return cues;
    }

    private void note(Claim claim, Item item, Set<Cue> cues) {
        Cue cue = item.entry.cue;
        if (cue == null || !item.free()) {
            return;
        }
        int segment = passage.segment(item.from);
        boolean own = segment >= passage.segment(claim.from) && segment <= passage.segment(claim.to - 1);
        boolean shared = !segmentsWithClaims.contains(segment) && passage.sameClause(item.from, claim.from);
        if (own || shared) {
            cues.add(cue);
        }
    }

    static Source source(Claim claim, Set<Cue> cues) {
        if (claim.measured != null || cues.contains(Cue.MEASURED)) {
            return Source.MEASURED;
        }
        return cues.contains(Cue.OWNER) ? Source.OWNER : Source.SEEN;
    }

    static List<Condition> conditions(Set<Cue> cues) {
        List<Condition> conditions = new ArrayList<>();
        for (Cue cue : cues) {
            if (Cue.CONDITIONS.contains(cue)) {
                conditions.add(cue.condition());
            }
        }
        Collections.sort(conditions);
        return conditions;
    }

    private int firstItemFrom(int token) {
        int low = 0;
        int high = passage.items.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (passage.items.get(middle).from < token) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private boolean asked(Claim claim) {
        int last = claim.to - 1;
        for (int i = last; i < passage.size() && i < last + ASKED_REACH && passage.sameSegment(i, last); i++) {
            if (passage.token(i).is("?")) {
                return true;
            }
        }
        return false;
    }

    /** "replaced the fuse before.": told of another time. */
    private boolean endsWithBefore(Claim claim) {
        for (int i = claim.to; i < passage.size() && i < claim.to + 4 && passage.sameSegment(i, claim.to - 1); i++) {
            if (passage.token(i).term().equals("before")) {
                return i + 1 == passage.size()
                        || !passage.sameSegment(i, i + 1)
                        || passage.token(i + 1).is(".");
            }
        }
        return false;
    }
}
