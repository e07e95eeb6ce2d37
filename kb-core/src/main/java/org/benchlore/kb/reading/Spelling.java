package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;

/**
 * Small typing mistakes: one edit (a letter left out, added, changed, or two swapped) in words of five letters or more,
 * two in words of nine or more. The first letter has to be right, and the nearest word has to be the only one. Looks up
 * by deletions, so the cost depends on the word, not on the lexicon (symmetric deletion, Garbe 2012).
 */
final class Spelling {
    private static final int ONE_EDIT_FROM = 5;
    private static final int TWO_EDITS_FROM = 9;
    private static final int LONGEST = 24;

    private final Set<String> known;
    private final Map<String, List<String>> byDeletion = new HashMap<>();

    Spelling(SortedSet<String> surfaces) {
        known = Set.copyOf(surfaces);
        for (String word : surfaces) {
            if (correctable(word)) {
                for (String shorter : deletions(word, edits(word))) {
                    byDeletion.computeIfAbsent(shorter, s -> new ArrayList<>(1)).add(word);
                }
            }
        }
    }

    boolean knows(String surface) {
        return known.contains(surface);
    }

    /** The known word that {@code surface} is most likely a slip for; empty for words known, short, or unclear. */
    Optional<String> mend(String surface) {
        if (!correctable(surface) || known.contains(surface) || CommonWords.contains(surface)) {
            return Optional.empty();
        }
        int allowed = edits(surface);
        String best = null;
        int bestDistance = allowed + 1;
        boolean tie = false;
        Set<String> seen = new HashSet<>();
        for (String shorter : deletions(surface, allowed)) {
            for (String candidate : byDeletion.getOrDefault(shorter, List.of())) {
                if (candidate.charAt(0) == surface.charAt(0) && seen.add(candidate)) {
                    int distance = distance(surface, candidate);
                    if (distance <= Math.min(allowed, edits(candidate)) && distance <= bestDistance) {
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
        return word.length() >= ONE_EDIT_FROM
                && word.length() <= LONGEST
                && word.chars().allMatch(Character::isLetter);
    }

    private static int edits(String word) {
        return word.length() >= TWO_EDITS_FROM ? 2 : 1;
    }

    private static Set<String> deletions(String word, int edits) {
        Set<String> all = new HashSet<>();
        all.add(word);
        List<String> last = List.of(word);
        for (int edit = 0; edit < edits; edit++) {
            List<String> shorter = new ArrayList<>();
            for (String w : last) {
                for (int i = 0; i < w.length(); i++) {
                    String cut = w.substring(0, i) + w.substring(i + 1);
                    if (all.add(cut)) {
                        shorter.add(cut);
                    }
                }
            }
            last = shorter;
        }
        return all;
    }

    /** Optimal string alignment distance. */
    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
