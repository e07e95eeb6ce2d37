package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.reading.Phrasings.Phrasing;
import org.benchlore.kb.reading.analysis.Token;
import org.jspecify.annotations.Nullable;

/**
 * The packs' phrases as loose sets of words, so that "pulled the drive plug" is found where "drive plug pulled" is taught.
 * Each phrase is filed under its rarest word, so that few are looked at for any word of a text.
 */
final class Bags {
    /** Fillers that mean something once a phrase is taught with them: "standby light only". */
    private static final Set<String> GOVERNING = Set.of("sinc", "after", "before", "until", "without", "instead");

    private static final Set<String> ONLY = Set.of("only", "just");

    /** A phrase as a pack teaches it. */
    record Taught(Phrasing phrasing, Sense sense) {}

    /** A phrase without its fillers, its terms as numbers in their order. */
    static final class Bag {
        final int[] numbers;

        /** How many of its words carry meaning. */
        final int content;

        final Sense sense;

        /** Whether one of its words denies. */
        final boolean negates;

        /** The number of what a "since" or "after" in it governs, which has to stand behind it; 0 for none. */
        final int governed;

        private Bag(int[] numbers, Taught taught, Terms terms) {
            this.numbers = numbers;
            this.content = taught.phrasing().content;
            this.sense = taught.sense();
            boolean denied = false;
            int behind = Terms.UNKNOWN;
            for (int i = 0; i < numbers.length; i++) {
                denied |= Token.denies(terms.term(numbers[i]));
                if (i > 0 && GOVERNING.contains(terms.term(numbers[i - 1]))) {
                    behind = numbers[i];
                }
            }
            this.negates = denied;
            this.governed = behind;
        }

        /** Several phrases may be the same without their fillers. */
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Bag that
                    && content == that.content
                    && sense.equals(that.sense)
                    && Arrays.equals(numbers, that.numbers);
        }

        @Override
        public int hashCode() {
            return 31 * Arrays.hashCode(numbers) + sense.hashCode();
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

    Bags(List<Taught> phrases, Terms terms) {
        boolean[] filler = new boolean[terms.size()];
        for (int number = 0; number < filler.length; number++) {
            String term = terms.term(number);
            filler[number] = Plain.filler(term) && !ONLY.contains(term);
        }
        int[] often = new int[terms.size()];
        List<Bag> bags = new ArrayList<>(phrases.size());
        for (Taught phrase : phrases) {
            int[] numbers = without(filler, phrase.phrasing().numbers);
            for (int i = 0; i < numbers.length; i++) {
                often[numbers[i]] += first(numbers, i) ? 1 : 0;
            }
            if (phrase.phrasing().content > 1) {
                bags.add(new Bag(numbers, phrase, terms));
            }
        }
        Map<Integer, List<Bag>> lists = new HashMap<>();
        Set<Bag> seen = new HashSet<>();
        for (Bag bag : bags) {
            if (seen.add(bag)) {
                lists.computeIfAbsent(rarest(bag.numbers, often), t -> new ArrayList<>(2))
                        .add(bag);
            }
        }
        byRarest = new Filed[terms.size()];
        longByRarest = new Filed[terms.size()];
        lists.forEach((rarest, list) -> {
            byRarest[rarest] = new Filed(list);
            List<Bag> longer = list.stream().filter(bag -> bag.content >= MANY).toList();
            longByRarest[rarest] = longer.isEmpty() ? null : new Filed(longer);
        });
    }

    private static int[] without(boolean[] left, int[] numbers) {
        int[] kept = new int[numbers.length];
        int count = 0;
        for (int number : numbers) {
            if (!left[number]) {
                kept[count++] = number;
            }
        }
        return count == numbers.length ? numbers : Arrays.copyOf(kept, count);
    }

    /** Whether a number does not stand further in front as well. */
    private static boolean first(int[] numbers, int at) {
        for (int i = 0; i < at; i++) {
            if (numbers[i] == numbers[at]) {
                return false;
            }
        }
        return true;
    }

    private static int rarest(int[] numbers, int[] often) {
        int rarest = Terms.UNKNOWN;
        int least = Integer.MAX_VALUE;
        for (int number : numbers) {
            if (often[number] < least) {
                least = often[number];
                rarest = number;
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
