package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.Nearest;
import org.benchlore.kb.reading.analysis.CommonWords;
import org.benchlore.kb.reading.analysis.Words;

/**
 * Small typing mistakes: one edit (a letter left out, added, changed, or two swapped) in words of five letters or more,
 * two in words of nine or more. The first letter has to be right, and the nearest word has to be the only one. Looks up
 * by deletions, so the cost depends on the word, not on the lexicon (symmetric deletion, Garbe 2012). Only hashes of the
 * deletions are kept: one that collides brings in a word that the distance then rules out.
 */
final class Spelling {
    private static final int ONE_EDIT_FROM = 5;
    private static final int TWO_EDITS_FROM = 9;
    private static final int LONGEST = 24;

    /** Odd, so that the hash of a word tells the order of its letters. */
    private static final int BASE = 0x01000193;

    private final Words known;

    private final List<String> words = new ArrayList<>();

    /** Words by the hash of each of their deletions: those of bucket b are {@code inBuckets[starts[b]…starts[b + 1]]}. */
    private final int[] starts;

    private final int[] inBuckets;

    /** The spelling of some words. */
    Spelling(Set<String> surfaces) {
        known = Words.of(surfaces.toArray(String[]::new));
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

    /** The known word that {@code surface} is most likely a slip for; empty for words known, short, or unclear. */
    Optional<String> mend(String surface) {
        if (known.contains(surface) || !correctable(surface) || CommonWords.contains(surface)) {
            return Optional.empty();
        }
        if (surface.endsWith("ly") && known.contains(surface.substring(0, surface.length() - 2))) {
            // "weakly" is "weak" in another place of the sentence, not "weekly"
            return Optional.of(surface.substring(0, surface.length() - 2));
        }
        int allowed = edits(surface);
        String best = null;
        int bestDistance = allowed + 1;
        boolean tie = false;
        Set<String> seen = new HashSet<>();
        for (int hash : deletions(surface, allowed)) {
            int bucket = bucket(hash);
            for (int i = starts[bucket]; i < starts[bucket + 1]; i++) {
                String candidate = words.get(inBuckets[i]);
                if (candidate.charAt(0) == surface.charAt(0)
                        && Math.abs(candidate.length() - surface.length()) <= allowed
                        && seen.add(candidate)) {
                    int most = Math.min(allowed, edits(candidate));
                    int distance = Nearest.edits(surface, candidate, most);
                    if (distance <= most && distance <= bestDistance) {
                        tie = distance == bestDistance;
                        best = candidate;
                        bestDistance = distance;
                    }
                }
            }
        }
        return tie ? Optional.empty() : Optional.ofNullable(best);
    }

    private static boolean correctable(String word) {
        if (word.length() < ONE_EDIT_FROM || word.length() > LONGEST) {
            return false;
        }
        for (int i = 0; i < word.length(); i++) {
            if (!Character.isLetter(word.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    private static int edits(String word) {
        return word.length() >= TWO_EDITS_FROM ? 2 : 1;
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
