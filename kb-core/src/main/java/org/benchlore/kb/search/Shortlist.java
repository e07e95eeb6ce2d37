package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.PriorityQueue;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.util.BytesRef;

/** The best of many cases, a segment after the other; the id of one is looked up only when it gets in. */
final class Shortlist {
    private final int length;
    private final PriorityQueue<Found> worstFirst = new PriorityQueue<>(Found.BEST_FIRST.reversed());
    private float worst = Float.NEGATIVE_INFINITY;
    private SortedDocValues ids = DocValues.emptySorted();
    private int base;
    private int worstId; // where the worst one's id stands, or would stand, in this segment

    Shortlist(int length) {
        this.length = length;
    }

    void enter(LeafReaderContext leaf) throws IOException {
        ids = DocValues.getSorted(leaf.reader(), Fields.ID);
        base = leaf.docBase;
        rank();
    }

    /** @param doc its number in the segment; in rising order */
    void offer(int doc, float score) throws IOException {
        if (score < worst || !ids.advanceExact(doc)) {
            return;
        }
        int id = ids.ordValue();
        if (score == worst && id >= worstId) {
            return;
        }
        worstFirst.add(new Found(score, ids.lookupOrd(id).utf8ToString(), HitKind.CASE, base + doc));
        if (worstFirst.size() > length) {
            worstFirst.remove();
        }
        rank();
    }

    private void rank() throws IOException {
        Found last = worstFirst.peek();
        if (last != null && worstFirst.size() == length) {
            worst = last.score();
            int at = ids.lookupTerm(new BytesRef(last.id()));
            worstId = at < 0 ? -1 - at : at;
        }
    }

    /** In order. */
    List<Found> best() {
        List<Found> best = new ArrayList<>(worstFirst);
        best.sort(Found.BEST_FIRST);
        return best;
    }
}
