package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Token;

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
    record Bag(List<String> terms, int content, Sense sense) {
        static Bag of(Phrasings.Phrasing phrase, Sense sense) {
            List<String> terms = new ArrayList<>(phrase.terms().size());
            for (String term : phrase.terms()) {
                if (!Plain.filler(term)) {
                    terms.add(term);
                }
            }
            int content = 0;
            for (Token token : phrase.tokens()) {
                content += Plain.content(token) ? 1 : 0;
            }
            return new Bag(terms, content, sense);
        }
    }

    private final Map<String, List<Bag>> byRarest = new HashMap<>();

    Bags(List<Bag> bags) {
        Map<String, int[]> often = new HashMap<>();
        for (Bag bag : bags) {
            for (int i = 0; i < bag.terms().size(); i++) {
                String term = bag.terms().get(i);
                if (bag.terms().indexOf(term) == i) {
                    often.computeIfAbsent(term, t -> new int[1])[0]++;
                }
            }
        }
        Set<Bag> seen = new HashSet<>();
        for (Bag bag : bags) {
            if (bag.content() > 1 && seen.add(bag)) {
                byRarest.computeIfAbsent(rarest(bag, often), t -> new ArrayList<>(2))
                        .add(bag);
            }
        }
    }

    private static String rarest(Bag bag, Map<String, int[]> often) {
        String rarest = "";
        int least = Integer.MAX_VALUE;
        for (String term : bag.terms()) {
            int[] times = often.get(term);
            if (times != null && times[0] < least) {
                least = times[0];
                rarest = term;
            }
        }
        return rarest;
    }

    /** Phrases to look for around a word. */
    List<Bag> around(String term) {
        return byRarest.getOrDefault(term, List.of());
    }
}
