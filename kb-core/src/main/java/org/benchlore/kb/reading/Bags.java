package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The packs' phrases as loose sets of words, so that "pulled the drive plug" is found where "drive plug pulled" is taught.
 * Each phrase is filed under its rarest word, so that few are looked at for any word of a text.
 */
final class Bags {
    /**
     * A phrase without its fillers.
     *
     * @param terms in the order of the phrase
     * @param content how many of them carry meaning
     */
    record Bag(List<String> terms, int content, Sense sense) {}

    private final Map<String, List<Bag>> byRarest = new HashMap<>();

    Bags(List<Bag> bags) {
        Map<String, Integer> often = new HashMap<>();
        for (Bag bag : bags) {
            new HashSet<>(bag.terms()).forEach(term -> often.merge(term, 1, Integer::sum));
        }
        Set<Bag> seen = new HashSet<>();
        for (Bag bag : bags) {
            if (bag.content() > 1 && seen.add(bag)) {
                String rarest = bag.terms().stream()
                        .min(Comparator.comparingInt((String t) -> often.getOrDefault(t, 0)))
                        .orElseThrow();
                byRarest.computeIfAbsent(rarest, t -> new ArrayList<>(2)).add(bag);
            }
        }
    }

    /** Phrases to look for around a word. */
    List<Bag> around(String term) {
        return byRarest.getOrDefault(term, List.of());
    }
}
