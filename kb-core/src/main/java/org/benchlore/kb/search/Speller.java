package org.benchlore.kb.search;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.apache.lucene.analysis.Analyzer;
import org.benchlore.kb.knowledge.Nearest;
import org.jspecify.annotations.Nullable;

/**
 * Mends slips of the pen against the packs' own vocabulary: one edit in words of four letters and up, two from eight,
 * two swapped letters being one edit ({@link Nearest#edits}). Words with a digit
 * and words that something in the index is written with are left alone. Thread-safe.
 */
final class Speller {
    private static final int SHORTEST = 4;
    private static final int TWO_EDITS_FROM = 8;

    private final Analyzer analyzer;
    private final Collection<Draft> entries;
    private @Nullable Map<String, Integer> vocabulary; // made for the first unknown word; most questions have none

    Speller(Analyzer analyzer, Collection<Draft> entries) {
        this.analyzer = analyzer;
        this.entries = entries;
    }

    /**
     * The text with its slips mended.
     *
     * @param written whether a term is used anywhere in the index
     * @return empty if nothing is to be mended
     */
    Optional<String> mend(String text, Predicate<String> written) {
        StringBuilder mended = new StringBuilder();
        int done = 0;
        for (Word word : Word.of(analyzer, text)) {
            String surface = surface(text, word);
            if (word.start() >= done && lettersOnly(surface) && !written.test(word.term())) {
                Optional<String> nearest = nearest(surface, vocabulary());
                if (nearest.isPresent()) {
                    mended.append(text, done, word.start()).append(nearest.get());
                    done = word.end();
                }
            }
        }
        return done == 0
                ? Optional.empty()
                : Optional.of(mended.append(text, done, text.length()).toString());
    }

    private static Optional<String> nearest(String word, Map<String, Integer> vocabulary) {
        if (vocabulary.containsKey(word)) {
            return Optional.empty();
        }
        int allowed = word.length() >= TWO_EDITS_FROM ? 2 : 1;
        String best = null;
        int bestDistance = allowed + 1;
        for (String candidate : vocabulary.keySet()) {
            if (Math.abs(candidate.length() - word.length()) > allowed) {
                continue;
            }
            int distance = Nearest.edits(word, candidate, allowed);
            if (distance <= allowed
                    && (best == null
                            || distance < bestDistance
                            || (distance == bestDistance && better(word, candidate, best, vocabulary)))) {
                best = candidate;
                bestDistance = distance;
            }
        }
        return Optional.ofNullable(best);
    }

    /** At equal distance: same first letter, then the more frequent, then by alphabet. */
    private static boolean better(String word, String a, String b, Map<String, Integer> vocabulary) {
        boolean firstA = a.charAt(0) == word.charAt(0);
        boolean firstB = b.charAt(0) == word.charAt(0);
        if (firstA != firstB) {
            return firstA;
        }
        int byFrequency = vocabulary.getOrDefault(a, 0) - vocabulary.getOrDefault(b, 0);
        return byFrequency != 0 ? byFrequency > 0 : a.compareTo(b) < 0;
    }

    private synchronized Map<String, Integer> vocabulary() {
        Map<String, Integer> made = vocabulary;
        if (made == null) {
            made = new HashMap<>();
            for (Draft draft : entries) {
                for (List<String> passages : draft.texts().values()) {
                    for (String passage : passages) {
                        count(passage.toLowerCase(Locale.ROOT), made);
                    }
                }
            }
            vocabulary = made;
        }
        return made;
    }

    private static void count(String passage, Map<String, Integer> vocabulary) {
        int start = 0;
        for (int at = 0; at <= passage.length(); at++) {
            if (at == passage.length() || !Character.isLetter(passage.charAt(at))) {
                if (at - start >= SHORTEST) {
                    vocabulary.merge(passage.substring(start, at), 1, Integer::sum);
                }
                start = at + 1;
            }
        }
    }

    private static String surface(String text, Word word) {
        return text.substring(word.start(), word.end()).toLowerCase(Locale.ROOT);
    }

    private static boolean lettersOnly(String surface) {
        return surface.length() >= SHORTEST && surface.chars().allMatch(Character::isLetter);
    }
}
