package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Synonyms;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.jspecify.annotations.Nullable;

/**
 * The different words of the packs, each taken apart once: the packs say a hundred thousand phrases with eight thousand
 * words, and most phrases are nothing but words. Only needed while a lexicon is built.
 */
final class PackWords {
    /** A token with what a lexicon asks of it, asked once. */
    static final class Piece {
        final Token token;

        /** As the trie knows it, synonyms folded. */
        final String term;

        final boolean article;
        final boolean content;

        /** Whether it stands in a text of the trie. */
        boolean filed;

        private int number = Terms.UNKNOWN;

        private Piece(Token token) {
            this.token = token;
            this.term = Synonyms.of(token);
            this.article = Plain.ARTICLES.contains(term);
            this.content = Plain.content(token);
        }

        boolean punctuation() {
            return token.kind() == Kind.PUNCTUATION;
        }

        /** The number of its term, given out when new. */
        int number(Terms terms) {
            if (number == Terms.UNKNOWN) {
                number = terms.number(term);
            }
            return number;
        }
    }

    /**
     * @param spelled in lower case
     * @param pieces more than one for a contraction; empty where the neighbours of the word have a say
     */
    private record Word(String spelled, int hash, List<Piece> pieces) {}

    private static final int USUALLY = 6; // words of a phrase
    private static final int LOWER = 'a' - 'A';
    private static final int HASH_BASE = 31;
    private static final int MIX = 0x9E3779B9; // 2^32 over the golden ratio, spreads hashes over the table

    /** At most half full. */
    private @Nullable Word[] table = new Word[1 << 10];

    private int taken;

    /** A text taken apart as {@link Lexer#tokens} does it, but for where the pieces of a text of mere words stand. */
    List<Piece> of(String text) {
        List<Piece> pieces = new ArrayList<>(USUALLY);
        return words(text, pieces) ? pieces : of(Lexer.tokens(text));
    }

    static List<Piece> of(List<Token> tokens) {
        List<Piece> pieces = new ArrayList<>(tokens.size());
        for (Token token : tokens) {
            pieces.add(new Piece(token));
        }
        return pieces;
    }

    /** Puts the pieces of a text together if it is nothing but words that are read the same everywhere. */
    private boolean words(String text, List<Piece> pieces) {
        int from = 0;
        int hash = 0;
        for (int i = 0; i <= text.length(); i++) {
            char c = i < text.length() ? text.charAt(i) : ' ';
            char lower = c >= 'A' && c <= 'Z' ? (char) (c + LOWER) : c;
            if (lower >= 'a' && lower <= 'z') {
                hash = HASH_BASE * hash + lower;
            } else if (c != ' '
                    || (i > from && !pieces.addAll(word(text, from, i, hash).pieces()))) {
                return false;
            } else {
                from = i + 1;
                hash = 0;
            }
        }
        return true;
    }

    private Word word(String text, int from, int to, int hash) {
        int slot = slot(hash);
        for (Word word = table[slot]; word != null; word = table[slot]) {
            if (word.hash() == hash
                    && word.spelled().length() == to - from
                    && text.regionMatches(true, from, word.spelled(), 0, to - from)) {
                return word;
            }
            slot = (slot + 1) & (table.length - 1);
        }
        String spelled = text.substring(from, to).toLowerCase(Locale.ROOT);
        Word word = new Word(spelled, hash, Lexer.standsAlone(spelled) ? of(Lexer.tokens(spelled)) : List.of());
        table[slot] = word;
        if (2 * ++taken > table.length) {
            grow();
        }
        return word;
    }

    private void grow() {
        @Nullable Word[] before = table;
        table = new Word[2 * before.length];
        for (Word word : before) {
            if (word != null) {
                int slot = slot(word.hash());
                while (table[slot] != null) {
                    slot = (slot + 1) & (table.length - 1);
                }
                table[slot] = word;
            }
        }
    }

    private int slot(int hash) {
        return (hash * MIX) >>> (Integer.numberOfLeadingZeros(table.length) + 1);
    }
}
