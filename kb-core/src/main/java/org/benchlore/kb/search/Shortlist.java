package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.PriorityQueue;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SortedDocValues;

/** The best of many cases, one segment after the other. Within a segment ids are compared by their rank in it. */
final class Shortlist {
    private record Candidate(float score, int doc, int id) {
        static int worstFirst(Candidate a, Candidate b) {
            int byScore = Float.compare(a.score, b.score);
            return byScore != 0 ? byScore : Integer.compare(b.id, a.id);
        }
    }

    private final int length;
    private final PriorityQueue<Candidate> candidates = new PriorityQueue<>(Candidate::worstFirst);
    private final List<Found> found = new ArrayList<>();
    private int[] ids = {};
    private float worst;
    private int worstId;

    Shortlist(int length) {
        this.length = length;
    }

    void enter(CaseColumns columns) {
        ids = columns.id;
        worst = Float.NEGATIVE_INFINITY;
        worstId = -1;
    }

    /**
     * Puts a case on the list if it is good enough.
     *
     * @param doc its number in the segment
     */
    void offer(int doc, float score) {
        if (score < worst) {
            return;
        }
        int id = ids[doc];
        if (score == worst && id > worstId) {
            return;
        }
        candidates.add(new Candidate(score, doc, id));
        if (candidates.size() > length) {
            candidates.remove();
        }
        Candidate last = candidates.peek();
        if (last != null && candidates.size() == length) {
            worst = last.score;
            worstId = last.id;
        }
    }

    void leave(LeafReaderContext leaf) throws IOException {
        SortedDocValues names = DocValues.getSorted(leaf.reader(), Fields.ID);
        for (Candidate candidate : candidates) {
            String id = names.lookupOrd(candidate.id).utf8ToString();
            found.add(new Found(candidate.score, id, HitKind.CASE, leaf.docBase + candidate.doc));
        }
        candidates.clear();
    }

    /** In order. */
    List<Found> best() {
        found.sort(Found.BEST_FIRST);
        return found.subList(0, Math.min(length, found.size()));
    }
}
