package org.benchlore.kb.reading.analysis;

import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * A list of words to look others up in: a table three quarters empty, since nearly every word that is looked up is none of
 * them and then costs one glance. Immutable.
 */
public final class Words {
    private static final int MIX = 0x9E3779B9; // 2^32 over the golden ratio, spreads hashes over the table

    private final String[] table;
    private final int shift;

    private Words(String[] words) {
        int bits = Integer.SIZE - Integer.numberOfLeadingZeros(4 * words.length);
        table = new String[1 << bits];
        shift = Integer.SIZE - bits;
        for (String word : words) {
            table[slot(word)] = word;
        }
    }

    public static Words of(String... words) {
        return new Words(words);
    }

    /** The words of a list. */
    public static Words spaced(String list) {
        return new Words(list.split(" "));
    }

    /** The words of a list, each as a token's term has it, too: "likewise" is looked up as "likewis". */
    public static Words terms(String list) {
        return spaced(
                list + " " + Arrays.stream(list.split(" ")).map(Stemmer::stem).collect(Collectors.joining(" ")));
    }

    public boolean contains(String word) {
        // small enough to be compiled into its callers, as the whole search is not
        return table[(word.hashCode() * MIX) >>> shift] != null && table[slot(word)] != null;
    }

    /** Where a word stands, or would. */
    private int slot(String word) {
        int at = (word.hashCode() * MIX) >>> shift;
        while (table[at] != null && !table[at].equals(word)) {
            at = (at + 1) & (table.length - 1);
        }
        return at;
    }
}
