package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.Nearest;
import org.benchlore.kb.reading.analysis.Lexer;

/**
 * Words by what they become with a letter or two left out. The first letter of a slip has to be right. The cost of a look-up
 * depends on the word, not on how many are known (symmetric deletion, Garbe 2012). Only hashes of the deletions are kept: one
 * that collides brings in a word that the distance then rules out.
 */
final class Slips {
    private static final int LONGEST = 24;

    /** Odd, so that the hash of a word tells the order of its letters. */
    private static final int BASE = 0x01000193;

    /**
     * What is nearest to a slip.
     *
     * @param edits how far off, more than any slip may be where nothing is near
     * @param only the word, if none but forms of it are as near
     */
    record Near(int edits, Optional<String> only) {}

    private final int oneEditFrom;
    private final int twoEditsFrom;

    private final List<String> words = new ArrayList<>();

    /** Words by the hash of each of their deletions: those of bucket b are {@code inBuckets[starts[b]…starts[b + 1]]}. */
    private final int[] starts;

    private final int[] inBuckets;

    /**
     * Words to look for.
     *
     * @param surfaces in lower case
     * @param oneEditFrom letters of a word that may be one edit off
     * @param twoEditsFrom letters of a word that may be two off
     */
    Slips(Set<String> surfaces, int oneEditFrom, int twoEditsFrom) {
        this.oneEditFrom = oneEditFrom;
        this.twoEditsFrom = twoEditsFrom;
        List<int[]> deletions = new ArrayList<>();
        int all = 0;
        for (String word : surfaces) {
            if (correctable(word)) {
                words.add(word);
                int[] hashes = deletions(word, edits(word));
                deletions.add(hashes);
                all += hashes.length;
            }
        }
        starts = new int[Integer.highestOneBit(Math.max(1, all)) + 1];
        for (int[] hashes : deletions) {
            for (int hash : hashes) {
                starts[bucket(hash) + 1]++;
            }
        }
        for (int b = 1; b < starts.length; b++) {
            starts[b] += starts[b - 1];
        }
        inBuckets = new int[all];
        int[] next = starts.clone();
        for (int word = 0; word < deletions.size(); word++) {
            for (int hash : deletions.get(word)) {
                inBuckets[next[bucket(hash)]++] = word;
            }
        }
    }

    private int bucket(int hash) {
        return (hash ^ (hash >>> 15)) & (starts.length - 2);
    }

    /** The word nearest to a slip. */
    Near nearest(String surface) {
        int allowed = correctable(surface) ? edits(surface) : 0;
        String best = null;
        int bestDistance = allowed + 1;
        boolean tie = false;
        Set<String> seen = new HashSet<>();
        for (int hash : allowed > 0 ? deletions(surface, allowed) : new int[0]) {
            int bucket = bucket(hash);
            for (int i = starts[bucket]; i < starts[bucket + 1]; i++) {
                String candidate = words.get(inBuckets[i]);
                if (candidate.charAt(0) == surface.charAt(0)
                        && Math.abs(candidate.length() - surface.length()) <= allowed
                        && seen.add(candidate)) {
                    int most = Math.min(allowed, edits(candidate));
                    int distance = Nearest.edits(surface, candidate, most);
                    if (distance <= most && distance <= bestDistance) {
                        tie = distance == bestDistance && best != null && (tie || !form(candidate, best));
                        best = candidate;
                        bestDistance = distance;
                    }
                }
            }
        }
        return new Near(
                best == null ? Integer.MAX_VALUE : bestDistance, tie ? Optional.empty() : Optional.ofNullable(best));
    }

    /** Whether two words are forms of one. */
    private static boolean form(String word, String other) {
        return Lexer.tokens(word)
                .get(0)
                .term()
                .equals(Lexer.tokens(other).get(0).term());
    }

    private boolean correctable(String word) {
        if (word.length() < oneEditFrom || word.length() > LONGEST) {
            return false;
        }
        for (int i = 0; i < word.length(); i++) {
            if (!Character.isLetter(word.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    private int edits(String word) {
        return word.length() >= twoEditsFrom ? 2 : 1;
    }

    /** Hashes of a word and of all that is left of it when up to so many letters, 1 or 2, are left out. */
    private static int[] deletions(String word, int edits) {
        int n = word.length();
        int[] powers = new int[n + 1];
        int[] before = new int[n + 1]; // hash of the letters in front of each
        int[] from = new int[n + 1]; // what each and those behind it add to the hash
        powers[0] = 1;
        for (int i = 0; i < n; i++) {
            powers[i + 1] = powers[i] * BASE;
            before[i + 1] = before[i] * BASE + word.charAt(i);
        }
        for (int i = n - 1; i >= 0; i--) {
            from[i] = from[i + 1] + word.charAt(i) * powers[n - 1 - i];
        }
        int[] hashes = new int[edits == 1 ? n + 1 : n + 1 + n * (n - 1) / 2];
        int count = 0;
        hashes[count++] = before[n];
        for (int i = 0; i < n; i++) {
            hashes[count++] = before[i] * powers[n - 1 - i] + from[i + 1];
            for (int j = i + 1; edits > 1 && j < n; j++) {
                int front = before[j] + (before[i] - before[i + 1]) * powers[j - i - 1];
                hashes[count++] = front * powers[n - 1 - j] + from[j + 1];
            }
        }
        return hashes;
    }
}
