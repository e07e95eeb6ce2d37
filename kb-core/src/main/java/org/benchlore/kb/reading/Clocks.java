package org.benchlore.kb.reading;

import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Which times of a log may be believed: the longest run in order, since a clock reset leaves strays behind. */
final class Clocks {
    /** No log of a unit on the bench is older; clocks start at 1970 or 1980 when their cell is flat. */
    private static final int EARLIEST_YEAR = 1990;

    private Clocks() {}

    /**
     * Marks the times that fit together, oldest first or newest first, whichever keeps more.
     *
     * @param times in order of line; empty where a line has none
     */
    static boolean[] plausible(List<Optional<LocalDateTime>> times) {
        boolean[] rising = longest(times, Comparator.naturalOrder());
        boolean[] falling = longest(times, Comparator.reverseOrder());
        return count(falling) > count(rising) ? falling : rising;
    }

    /** Longest non-decreasing subsequence by patience sorting. */
    private static boolean[] longest(List<Optional<LocalDateTime>> times, Comparator<LocalDateTime> order) {
        int n = times.size();
        int[] tails = new int[n];
        int[] before = new int[n];
        int length = 0;
        for (int i = 0; i < n; i++) {
            Optional<LocalDateTime> time = times.get(i).filter(t -> t.getYear() >= EARLIEST_YEAR);
            if (time.isEmpty()) {
                continue;
            }
            int low = 0;
            int high = length;
            while (low < high) {
                int middle = (low + high) >>> 1;
                LocalDateTime tail = times.get(tails[middle]).orElseThrow();
                if (order.compare(tail, time.get()) <= 0) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            before[i] = low == 0 ? -1 : tails[low - 1];
            tails[low] = i;
            length = Math.max(length, low + 1);
        }
        boolean[] kept = new boolean[n];
        for (int i = length == 0 ? -1 : tails[length - 1]; i >= 0; i = before[i]) {
            kept[i] = true;
        }
        return kept;
    }

    private static long count(boolean[] kept) {
        long count = 0;
        for (boolean k : kept) {
            count += k ? 1 : 0;
        }
        return count;
    }
}
