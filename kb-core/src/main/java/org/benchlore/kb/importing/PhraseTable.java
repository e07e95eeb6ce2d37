package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/**
 * Phrases and what they stand for, compared word for word as written (case, accents and punctuation folded). Finding the
 * longest one that starts at a word costs no more than that phrase has words.
 */
final class PhraseTable<T> {
    /** A phrase in a text: words {@code from} to {@code to}, exclusive. */
    record Match<T>(int from, int to, T value) {}

    private static final class Node<T> {
        final Map<String, Node<T>> next = new HashMap<>(2);
        Optional<T> value = Optional.empty();
    }

    private final Node<T> root = new Node<>();

    /** Adds a phrase; of two values for one phrase the first stands. */
    void add(String phrase, T value) {
        Node<T> node = root;
        for (Token word : words(phrase)) {
            node = node.next.computeIfAbsent(word.surface(), w -> new Node<>());
        }
        if (node != root && node.value.isEmpty()) {
            node.value = Optional.of(value);
        }
    }

    /** The longest phrase that starts at word {@code from}. */
    Optional<Match<T>> longest(List<Token> words, int from) {
        Optional<Match<T>> longest = Optional.empty();
        Node<T> node = root;
        for (int i = from; i < words.size(); i++) {
            node = node.next.get(words.get(i).surface());
            if (node == null) {
                return longest;
            }
            int to = i + 1;
            if (node.value.isPresent()) {
                longest = node.value.map(value -> new Match<>(from, to, value));
            }
        }
        return longest;
    }

    /** What a whole text stands for. */
    Optional<T> whole(String text) {
        List<Token> words = words(text);
        return longest(words, 0).filter(m -> m.to() == words.size()).map(Match::value);
    }

    /** Tokens without punctuation. */
    static List<Token> words(String text) {
        List<Token> words = new ArrayList<>();
        for (Token token : Lexer.tokens(text)) {
            if (token.kind() != Kind.PUNCTUATION) {
                words.add(token);
            }
        }
        return words;
    }
}
