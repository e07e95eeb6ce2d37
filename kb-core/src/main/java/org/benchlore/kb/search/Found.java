package org.benchlore.kb.search;

import java.util.Comparator;

/**
 * Something found, before it is looked up.
 *
 * @param at an entry's place among the drafts, a case's number in the snapshot
 */
record Found(float score, String id, HitKind kind, int at) {
    /** Equal scores in order of id, then kind; the index's own order changes with insertion and merges. */
    static final Comparator<Found> BEST_FIRST = Comparator.<Found>comparingDouble(found -> -found.score)
            .thenComparing(Found::id)
            .thenComparing(found -> found.kind.id());
}
