package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.BitSet;
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
    /** Fillers that mean something once a phrase is taught with them: "standby light only". */
    private static final Set<String> ONLY = Set.of("only", "just");

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
                if (!Plain.filler(term) || ONLY.contains(term)) {
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

    /** Phrases of one rarest word, each with the number of its second rarest, which rules out nearly all at a glance. */
    private static final class Filed {
        private final int[] seconds;
        private final List<Bag> bags;

        private Filed(int[] seconds, List<Bag> bags) {
            this.seconds = seconds;
            this.bags = bags;
        }
    }

    private final Map<String, Filed> byRarest = new HashMap<>();

    Bags(List<Bag> bags, Terms terms) {
        Map<String, int[]> often = new HashMap<>();
        for (Bag bag : bags) {
            for (int i = 0; i < bag.terms().size(); i++) {
                String term = bag.terms().get(i);
                if (bag.terms().indexOf(term) == i) {
                    often.computeIfAbsent(term, t -> new int[1])[0]++;
                }
            }
        }
        Map<String, List<Bag>> lists = new HashMap<>();
        Set<Bag> seen = new HashSet<>();
        for (Bag bag : bags) {
            if (bag.content() > 1 && seen.add(bag)) {
                lists.computeIfAbsent(rarest(bag, often, ""), t -> new ArrayList<>(2))
                        .add(bag);
            }
        }
        lists.forEach((rarest, list) -> byRarest.put(
                rarest,
                new Filed(
                        list.stream()
                                .mapToInt(bag -> terms.number(rarest(bag, often, rarest)))
                                .toArray(),
                        list)));
    }

    /** The rarest word of a phrase, one that is left aside not counted; that one where there is no other. */
    private static String rarest(Bag bag, Map<String, int[]> often, String aside) {
        String rarest = aside;
        int least = Integer.MAX_VALUE;
        for (String term : bag.terms()) {
            int[] times = often.get(term);
            if (times != null && times[0] < least && !term.equals(aside)) {
                least = times[0];
                rarest = term;
            }
        }
        return rarest;
    }

    /**
     * Phrases to look for around a word: those whose words are all among the open ones.
     *
     * @param numbers of the open ones
     * @param content least words of meaning that a phrase has
     */
    List<Bag> around(String term, Set<String> open, BitSet numbers, int content) {
        Filed filed = byRarest.get(term);
        List<Bag> found = new ArrayList<>(0);
        for (int i = 0; filed != null && i < filed.seconds.length; i++) {
            Bag bag = filed.bags.get(i);
            if (numbers.get(filed.seconds[i]) && bag.content() >= content && open.containsAll(bag.terms())) {
                found.add(bag);
            }
        }
        return found;
    }
}
