package org.benchlore.kb;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.benchlore.kb.ranking.Lesson;
import org.jspecify.annotations.Nullable;

/** The lessons of the cases that came in first, as many as there is room for. Not thread-safe. */
final class Earliest {
    private final int most;
    private final TreeMap<When, Lesson> kept = new TreeMap<>();

    /** The first case for which there was no room; only those before it are known without a gap. */
    private @Nullable When dropped;

    /** When a case came in, and which it is. */
    record When(Instant openedAt, String caseId) implements Comparable<When> {
        private static final Comparator<When> ORDER =
                Comparator.comparing(When::openedAt).thenComparing(When::caseId);

        @Override
        public int compareTo(When other) {
            return ORDER.compare(this, other);
        }
    }

    /** @param most lessons to keep */
    Earliest(int most) {
        this.most = most;
    }

    Earliest copy() {
        Earliest copy = new Earliest(most);
        copy.kept.putAll(kept);
        copy.dropped = dropped;
        return copy;
    }

    void add(When when, Lesson lesson) {
        if (dropped != null && when.compareTo(dropped) >= 0) {
            return;
        }
        kept.put(when, lesson);
        if (kept.size() > most) {
            dropped = kept.pollLastEntry().getKey();
        }
    }

    void remove(When when) {
        kept.remove(when);
    }

    /** Whether a lesson for which there was no room would have room now: only a replay of the log can tell which. */
    boolean lacks() {
        return dropped != null && kept.size() < most;
    }

    /** The first of them, as many as the greatest power of two that they fill; none if they are fewer than asked for. */
    List<Lesson> powerOfTwo(int atLeast) {
        int due = kept.size() < atLeast ? 0 : Integer.highestOneBit(kept.size());
        return kept.values().stream().limit(due).toList();
    }
}
