package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.benchlore.kb.reading.PackWords.Piece;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * The texts that a lexicon is taught, taken apart and filed in its trie, lists that symptoms share only once. Only needed
 * while a lexicon is built.
 */
final class Phrasings {
    private static final Words AUXILIARIES = Words.of("do", "will", "can");

    /** One text taken apart. */
    static final class Phrasing {
        /** Its terms as the trie knows them: without articles, synonyms folded. */
        final int[] numbers;

        /** As written and, where a hyphen joins two words, also as one word; none for a text without terms. */
        final List<Entry> entries;

        /** How many of its words carry meaning. */
        final int content;

        /** The term of the only word of meaning, if it is a regular participle; else empty. */
        final String participle;

        /** The only token, or null. */
        final @Nullable Token only;

        private Phrasing(int[] numbers, List<Entry> entries, List<Piece> pieces) {
            this.numbers = numbers;
            this.entries = entries;
            this.only = pieces.size() == 1 ? pieces.get(0).token : null;
            int all = 0;
            Token last = null;
            for (Piece piece : pieces) {
                if (piece.content) {
                    all++;
                    last = piece.token;
                }
            }
            content = all;
            participle = all == 1 && last != null && last.surface().endsWith("ed") ? last.term() : "";
        }
    }

    private final Trie trie;
    private final Terms terms;
    private final PackWords words = new PackWords();

    /** By identity: the symptoms of one state set share its lists of words. */
    private final IdentityHashMap<List<String>, List<Phrasing>> byTexts = new IdentityHashMap<>();

    private final Set<String> surfaces = new HashSet<>();

    Phrasings(Trie trie, Terms terms) {
        this.trie = trie;
        this.terms = terms;
    }

    /** A text taken apart and filed; to file it again changes nothing. */
    Phrasing of(String text) {
        List<Piece> pieces = words.of(text);
        int[] numbers = numbers(pieces);
        return new Phrasing(numbers, entries(text, pieces, numbers), pieces);
    }

    /** Some texts taken apart, in their order. */
    List<Phrasing> all(List<String> texts) {
        List<Phrasing> known = byTexts.get(texts);
        if (known == null) {
            known = new ArrayList<>(texts.size());
            for (String text : texts) {
                known.add(of(text));
            }
            byTexts.put(texts, known);
        }
        return known;
    }

    /** Whether any word of a text carries meaning; nothing is filed. */
    boolean tells(String text) {
        return words.of(text).stream().anyMatch(piece -> piece.content);
    }

    /** The words of a text that carry meaning, as written; nothing is filed. */
    List<String> tellingWords(String text) {
        return words.of(text).stream()
                .filter(piece -> piece.content)
                .map(piece -> piece.token.surface())
                .toList();
    }

    List<Entry> entries(String text) {
        return of(text).entries;
    }

    /** The terms of a phrasing in words. */
    List<String> terms(Phrasing phrasing) {
        return IntStream.of(phrasing.numbers).mapToObj(terms::term).toList();
    }

    /** Every word of the texts, not stemmed. */
    Set<String> surfaces() {
        return surfaces;
    }

    private List<Entry> entries(String text, List<Piece> pieces, int[] numbers) {
        if (numbers.length == 0) {
            return List.of();
        }
        for (Piece piece : pieces) {
            if (!piece.filed) {
                surfaces.add(piece.token.surface());
                piece.filed = true;
            }
        }
        Entry whole = trie.entry(numbers, 0);
        boolean auxiliary = auxiliary(numbers);
        String joined = joined(text, pieces);
        if (!auxiliary && joined == null) {
            return List.of(whole);
        }
        List<Entry> entries = new ArrayList<>(3);
        entries.add(whole);
        if (auxiliary) {
            // "lamp not light" for "lamp does not light"
            entries.add(trie.entry(numbers, 1));
        }
        if (joined != null) {
            int[] other = numbers(words.of(joined));
            if (!Arrays.equals(other, numbers)) {
                entries.add(trie.entry(other, 0));
            }
        }
        return entries;
    }

    /** Whether a text starts as "does not" does, and is also known without the first word. */
    boolean auxiliary(int[] numbers) {
        return numbers.length > 2
                && AUXILIARIES.contains(terms.term(numbers[0]))
                && terms.term(numbers[1]).equals("not");
    }

    private static @Nullable String joined(String text, List<Piece> pieces) {
        if (text.indexOf('-') < 0 && text.indexOf('_') < 0) {
            return null;
        }
        for (int i = 0; i + 1 < pieces.size(); i++) {
            Token a = pieces.get(i).token;
            Token b = pieces.get(i + 1).token;
            boolean hyphen = a.kind() == Kind.WORD
                    && b.kind() == Kind.WORD
                    && b.start() == a.end() + 1
                    && "-_".indexOf(text.charAt(a.end())) >= 0;
            if (hyphen) {
                return text.substring(0, a.end()) + text.substring(b.start());
            }
        }
        return null;
    }

    /** The terms of a text as the trie knows them. */
    static List<String> terms(List<Token> tokens) {
        return kept(PackWords.of(tokens)).stream().map(piece -> piece.term).toList();
    }

    private int[] numbers(List<Piece> pieces) {
        List<Piece> kept = kept(pieces);
        int[] numbers = new int[kept.size()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = kept.get(i).number(terms);
        }
        return numbers;
    }

    /** What of a text the trie knows: no punctuation and no articles. */
    private static List<Piece> kept(List<Piece> pieces) {
        List<Piece> all = pieces;
        int bare = 0;
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            if (piece.punctuation()) {
                all = all == pieces ? new ArrayList<>(pieces.subList(0, i)) : all;
            } else {
                if (all != pieces) {
                    all.add(piece);
                }
                bare += piece.article ? 0 : 1;
            }
        }
        // "the light" must not shrink to "light"
        boolean kept = bare == 1 && !all.get(0).term.equals("be");
        return bare == all.size() || kept ? all : withoutArticles(all);
    }

    /** "Not a squeak" keeps its article: "does not squeak" is another matter. */
    private static List<Piece> withoutArticles(List<Piece> pieces) {
        List<Piece> kept = new ArrayList<>(pieces.size());
        String before = "";
        for (Piece piece : pieces) {
            boolean one = before.equals("not") && (piece.term.equals("a") || piece.term.equals("an"));
            if (one || !piece.article) {
                kept.add(piece);
            }
            before = piece.term;
        }
        return kept;
    }
}
