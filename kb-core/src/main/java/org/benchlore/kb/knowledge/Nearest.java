package org.benchlore.kb.knowledge;

import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/** How far words are apart, and the known word closest to what was written, for "did you mean". */
public final class Nearest {
    /** Nothing longer, or further off, is a slip of the pen. */
    private static final int MAX_CHARS = 80;

    private static final int MAX_EDITS = 4;

    /** A word of so many letters may be misspelt and still be known. */
    private static final int LONG = 5;

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
            int distance = edits(written, candidate, best);
            if (distance < best || (distance == best && nearest != null && candidate.compareTo(nearest) < 0)) {
                best = distance;
                nearest = candidate;
            }
        }
        return Optional.ofNullable(nearest);
    }

    /**
     * As {@link #to}, else the id that holds most of the words an id was written with, such as
     * {@code mechanism-grease-hardened} for {@code grease-hardened}: more than half of them, and as few others as can be.
     */
    public static Optional<String> id(String written, Collection<String> ids) {
        Optional<String> near = to(written, ids);
        if (near.isPresent() || written.length() > MAX_CHARS) {
            return near;
        }
        Set<String> words = words(written);
        return ids.stream()
                .filter(id -> 2 * shared(words, id) > words.size())
                .min(Comparator.comparingInt((String id) -> -shared(words, id))
                        .thenComparingInt(id -> words(id).size())
                        .thenComparing(Comparator.naturalOrder()));
    }

    private static Set<String> words(String id) {
        return new HashSet<>(Arrays.asList(id.split("-", -1)));
    }

    private static int shared(Set<String> words, String id) {
        Set<String> of = words(id);
        return (int) words.stream()
                .filter(word -> of.contains(word)
                        || (word.length() >= LONG && to(word, of).isPresent()))
                .count();
    }

    /** "did you mean 'x'", or {@code otherwise} when nothing is near. */
    public static String remedy(String written, Collection<String> candidates, String otherwise) {
        return to(written, candidates)
                .map(near -> "did you mean '" + near + "'?")
                .orElse(otherwise);
    }

    /**
     * Edits between two words, neighbours swapped counting as one (optimal string alignment: Damerau 1964, no part edited
     * twice). Only the band of {@code most} either side is filled, so the cost is linear in length.
     *
     * @param most from 0
     * @return the edits, or anything above {@code most} when there are more
     */
    public static int edits(String a, String b, int most) {
        int far = most + 1;
        int[] before = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = Math.min(j, far);
        }
        for (int i = 1; i <= a.length(); i++) {
            Arrays.fill(row, far);
            row[0] = Math.min(i, far);
            int least = row[0];
            for (int j = Math.max(1, i - most); j <= Math.min(b.length(), i + most); j++) {
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(Math.min(row[j - 1], last[j]) + 1, last[j - 1] + change);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    row[j] = Math.min(row[j], before[j - 2] + 1);
                }
                least = Math.min(least, row[j]);
            }
            if (least >= far) {
                return far;
            }
            int[] free = before;
            before = last;
            last = row;
            row = free;
        }
        return last[b.length()];
    }
}
