package org.benchlore.cli;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/** "Did you mean" for ids. */
final class Nearest {
    private static final int SUGGESTIONS = 3;

    private Nearest() {}

    static String hint(String given, Collection<String> known) {
        List<String> near = known.stream()
                .filter(k -> distance(given, k) <= Math.max(2, given.length() / 3) || k.contains(given))
                .sorted(Comparator.comparingInt((String k) -> distance(given, k))
                        .thenComparing(k -> k))
                .limit(SUGGESTIONS)
                .toList();
        return near.isEmpty() ? "try 'benchlore search'" : "did you mean " + String.join(", ", near) + "?";
    }

    /** Levenshtein distance, two rows. */
    private static int distance(String a, String b) {
        int[] above = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int swap = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(swap, Math.min(above[j], row[j - 1]) + 1);
            }
            above = row;
        }
        return above[b.length()];
    }
}
