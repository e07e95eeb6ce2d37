package org.benchlore.kb.knowledge;

import java.util.Arrays;
import java.util.Collection;
import java.util.Optional;

/** The known word closest to what was written, for "did you mean". */
public final class Nearest {
    /** Nothing longer, or further off, is a slip of the pen. */
    private static final int MAX_CHARS = 80;

    private static final int MAX_EDITS = 4;

    private Nearest() {}

    /** The closest candidate within a third of the letters and four edits; ties by order of the alphabet. */
    public static Optional<String> to(String written, Collection<String> candidates) {
        if (written.length() > MAX_CHARS) {
            return Optional.empty();
        }
        int best = Math.min(MAX_EDITS, Math.max(1, (written.length() + 1) / 3)) + 1;
        String nearest = null;
        for (String candidate : candidates) {
            if (candidate.length() > MAX_CHARS || Math.abs(candidate.length() - written.length()) > best) {
                continue;
            }
            int distance = distance(written, candidate, best);
            if (distance < best || (distance == best && nearest != null && candidate.compareTo(nearest) < 0)) {
                best = distance;
                nearest = candidate;
            }
        }
        return Optional.ofNullable(nearest);
    }

    /** "did you mean 'x'", or {@code otherwise} when nothing is near. */
    public static String remedy(String written, Collection<String> candidates, String otherwise) {
        return to(written, candidates)
                .map(near -> "did you mean '" + near + "'?")
                .orElse(otherwise);
    }

    /**
     * Edits between two words, neighbours swapped counting as one (optimal string alignment); anything above {@code
     * most} when there are more. Only the band of that width is filled, so the cost is linear in length.
     */
    private static int distance(String a, String b, int most) {
        int far = most + 1;
        int[] before = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = Math.min(j, far);
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            Arrays.fill(row, far);
            row[0] = Math.min(i, far);
            int least = row[0];
            for (int j = Math.max(1, i - most); j <= Math.min(b.length(), i + most); j++) {
                int swap = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(Math.min(row[j - 1], last[j]) + 1, last[j - 1] + swap);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    row[j] = Math.min(row[j], before[j - 2] + 1);
                }
                least = Math.min(least, row[j]);
            }
            if (least >= far) {
                return far;
            }
            before = last;
            last = row;
        }
        return last[b.length()];
    }
}
