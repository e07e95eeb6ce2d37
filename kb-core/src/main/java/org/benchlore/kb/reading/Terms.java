package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;

/**
 * Numbers for the terms of a lexicon, 1 and up, since comparing numbers is cheaper than comparing words. The table holds
 * hashes beside numbers, so that a word that is no term is known by one of its lines.
 */
final class Terms {
    /** What every term is that the packs do not use. */
    static final int UNKNOWN = 0;

    private static final int MIX = 0x9E3779B9; // 2^32 over the golden ratio, spreads hashes over the table
    private static final int HASH_BASE = 31; // of String.hashCode

    private final List<String> terms = new ArrayList<>();

    /** Hash and number of each term, at most half full; a number is never 0. */
    private long[] table = new long[1 << 10];

    Terms() {
        terms.add("");
    }

    /** The number of a term, given out when new. */
    int number(String term) {
        int known = of(term);
        if (known != UNKNOWN) {
            return known;
        }
        if (2 * terms.size() >= table.length) {
            grow();
        }
        int number = terms.size();
        terms.add(term);
        put(entry(term.hashCode(), number));
        return number;
    }

    /** The term of a number. */
    String term(int number) {
        return terms.get(number);
    }

    /** How many numbers there are, {@link #UNKNOWN} among them. */
    int size() {
        return terms.size();
    }

    /** One bit of 64 for a term: what lacks a bit lacks the term. */
    static long mark(int number) {
        return 1L << ((number * MIX) >>> (Integer.SIZE - 6));
    }

    int of(String term) {
        int hash = term.hashCode();
        for (int at = slot(hash); table[at] != 0; at = after(at)) {
            if (hash(table[at]) == hash && terms.get(number(table[at])).equals(term)) {
                return number(table[at]);
            }
        }
        return UNKNOWN;
    }

    /** The number of two words written as one. */
    int of(String first, String second) {
        int hash = first.hashCode();
        for (int i = 0; i < second.length(); i++) {
            hash *= HASH_BASE;
        }
        hash += second.hashCode();
        for (int at = slot(hash); table[at] != 0; at = after(at)) {
            if (hash(table[at]) == hash && joined(terms.get(number(table[at])), first, second)) {
                return number(table[at]);
            }
        }
        return UNKNOWN;
    }

    private static boolean joined(String term, String first, String second) {
        return term.length() == first.length() + second.length() && term.startsWith(first) && term.endsWith(second);
    }

    private void grow() {
        long[] before = table;
        table = new long[2 * before.length];
        for (long entry : before) {
            if (entry != 0) {
                put(entry);
            }
        }
    }

    private void put(long entry) {
        int at = slot(hash(entry));
        while (table[at] != 0) {
            at = after(at);
        }
        table[at] = entry;
    }

    private static long entry(int hash, int number) {
        return ((long) hash << Integer.SIZE) | number;
    }

    private static int hash(long entry) {
        return (int) (entry >>> Integer.SIZE);
    }

    private static int number(long entry) {
        return (int) entry;
    }

    private int slot(int hash) {
        return (hash * MIX) >>> (Integer.numberOfLeadingZeros(table.length) + 1);
    }

    private int after(int at) {
        return (at + 1) & (table.length - 1);
    }
}
