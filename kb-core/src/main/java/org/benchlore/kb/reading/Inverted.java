package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;

/** "The supply pin of the micro" where the packs teach "micro supply pin". */
final class Inverted {
    private static final int MOST_WORDS = 3;
    private static final Words JOINS = Words.terms("of on at in for to");

    private Inverted() {}

    /** Adds to {@code all} the names whose halves stand the other way round about a preposition. */
    static void names(List<Token> tokens, String[] terms, int[] numbers, Trie trie, List<Trie.Match> all) {
        for (int join = 1; join + 1 < terms.length; join++) {
            if (JOINS.contains(terms[join])) {
                int second = join + 1;
                while (second < terms.length && Plain.ARTICLES.contains(terms[second])) {
                    second++;
                }
                if (second < terms.length && trie.starts(numbers[second])) {
                    around(tokens, numbers, join, second, trie, all);
                }
            }
        }
    }

    private static void around(
            List<Token> tokens, int[] numbers, int join, int second, Trie trie, List<Trie.Match> all) {
        for (int tail = second + 1; tail <= Math.min(numbers.length, second + MOST_WORDS); tail++) {
            int node = trie.node(numbers, second, tail);
            if (node == 0 || tokens.get(tail - 1).kind() == Token.Kind.PUNCTUATION) {
                return;
            }
            for (int head = join - 1; head >= Math.max(0, join - MOST_WORDS); head--) {
                if (tokens.get(head).kind() == Token.Kind.PUNCTUATION) {
                    break;
                }
                Entry entry = trie.find(node, numbers, head, join);
                if (entry != null && !entry.names.isEmpty()) {
                    all.add(new Trie.Match(head, tail, tail - second + join - head, entry));
                }
            }
        }
    }
}
