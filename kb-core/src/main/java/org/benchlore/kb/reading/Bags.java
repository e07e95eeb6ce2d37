package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Token;
import org.jspecify.annotations.Nullable;

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
    record Phrase(List<String> terms, int content, Sense sense) {
        static Phrase of(Phrasings.Phrasing phrase, Sense sense) {
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
            return new Phrase(terms, content, sense);
        }
    }

    /** A phrase whose terms are numbers. */
    static final class Bag {
        final int[] numbers;
        final int content;
        final Sense sense;

        /** Whether one of its words denies. */
        final boolean negates;

        private Bag(Phrase phrase, Terms terms) {
            numbers = phrase.terms().stream().mapToInt(terms::number).toArray();
            content = phrase.content();
            sense = phrase.sense();
            negates = phrase.terms().stream().anyMatch(Token::denies);
        }

        private long marks() {
            long all = 0;
            for (int number : numbers) {
                all |= Terms.mark(number);
            }
            return all;
        }

        boolean holds(int number) {
            for (int own : numbers) {
                if (own == number) {
                    return true;
                }
            }
            return false;
        }
    }

    /** Phrases of one rarest term, and the {@link Terms#mark} of every term of each, which rules out nearly all at a glance. */
    static final class Filed {
        final Bag[] bags;
        final long[] marks;

        private Filed(List<Bag> bags) {
            this.bags = bags.toArray(Bag[]::new);
            this.marks = bags.stream().mapToLong(Bag::marks).toArray();
        }
    }

    /** Words of meaning in a phrase that may take the place of other claims. */
    static final int MANY = 3;

    /** By the number of the rarest term. */
    private final @Nullable Filed[] byRarest;

    /** The same, of those with {@link #MANY} words of meaning or more. */
    private final @Nullable Filed[] longByRarest;

    Bags(List<Phrase> phrases, Terms terms) {
        Map<String, int[]> often = new HashMap<>();
        for (Phrase phrase : phrases) {
            for (int i = 0; i < phrase.terms().size(); i++) {
                String term = phrase.terms().get(i);
                if (phrase.terms().indexOf(term) == i) {
                    often.computeIfAbsent(term, t -> new int[1])[0]++;
                }
            }
        }
        Map<String, List<Bag>> lists = new HashMap<>();
        Set<Phrase> seen = new HashSet<>();
        for (Phrase phrase : phrases) {
            if (phrase.content() > 1 && seen.add(phrase)) {
                lists.computeIfAbsent(rarest(phrase, often), t -> new ArrayList<>(2))
                        .add(new Bag(phrase, terms));
            }
        }
        byRarest = new Filed[terms.size()];
        longByRarest = new Filed[terms.size()];
        lists.forEach((rarest, list) -> {
            byRarest[terms.number(rarest)] = new Filed(list);
            List<Bag> longer = list.stream().filter(bag -> bag.content >= MANY).toList();
            longByRarest[terms.number(rarest)] = longer.isEmpty() ? null : new Filed(longer);
        });
    }

    private static String rarest(Phrase phrase, Map<String, int[]> often) {
        String rarest = "";
        int least = Integer.MAX_VALUE;
        for (String term : phrase.terms()) {
            int[] times = often.get(term);
            if (times != null && times[0] < least) {
                least = times[0];
                rarest = term;
            }
        }
        return rarest;
    }

    /**
     * Phrases to look for around a term, those that have no rarer one; null for none.
     *
     * @param many whether only those with {@link #MANY} words of meaning or more
     */
    @Nullable
    Filed around(int number, boolean many) {
        return many ? longByRarest[number] : byRarest[number];
    }
}
