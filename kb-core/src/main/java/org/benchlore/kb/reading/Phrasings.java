package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * The texts that a lexicon is taught, each taken apart once, however many symptoms share it, and filed in its trie. Only
 * needed while a lexicon is built.
 */
final class Phrasings {
    private static final Words AUXILIARIES = Words.of("do", "will", "can");

    /**
     * One text taken apart.
     *
     * @param terms as the trie knows them: without articles, synonyms folded
     * @param entries as written and, where a hyphen joins two words, also as one word; none for a text without terms
     */
    record Phrasing(List<Token> tokens, List<String> terms, List<Entry> entries) {}

    private final Trie trie;
    private final Map<String, Phrasing> byText = new HashMap<>();

    /** By identity: the symptoms of one state set share its lists of words. */
    private final IdentityHashMap<List<String>, List<Phrasing>> byTexts = new IdentityHashMap<>();

    private final Set<String> surfaces = new HashSet<>();

    Phrasings(Trie trie) {
        this.trie = trie;
    }

    /** A text taken apart; new ones are filed. */
    Phrasing of(String text) {
        Phrasing known = byText.get(text);
        if (known == null) {
            List<Token> tokens = Lexer.tokens(text);
            List<String> terms = terms(tokens);
            known = new Phrasing(tokens, terms, entries(text, tokens, terms));
            byText.put(text, known);
        }
        return known;
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

    List<Entry> entries(String text) {
        return of(text).entries();
    }

    /** Every word of the texts, not stemmed. */
    Set<String> surfaces() {
        return surfaces;
    }

    private List<Entry> entries(String text, List<Token> tokens, List<String> terms) {
        if (terms.isEmpty()) {
            return List.of();
        }
        for (Token token : tokens) {
            surfaces.add(token.surface());
        }
        Entry whole = trie.entry(terms);
        boolean auxiliary = auxiliary(terms);
        String joined = joined(text, tokens);
        if (!auxiliary && joined == null) {
            return List.of(whole);
        }
        List<Entry> entries = new ArrayList<>(3);
        entries.add(whole);
        if (auxiliary) {
            // "lamp not light" for "lamp does not light"
            entries.add(trie.entry(terms.subList(1, terms.size())));
        }
        if (joined != null) {
            List<String> other = terms(Lexer.tokens(joined));
            if (!other.equals(terms)) {
                entries.add(trie.entry(other));
            }
        }
        return entries;
    }

    /** Whether a text starts as "does not" does, and is also known without the first word. */
    static boolean auxiliary(List<String> terms) {
        return terms.size() > 2
                && AUXILIARIES.contains(terms.get(0))
                && terms.get(1).equals("not");
    }

    private static @Nullable String joined(String text, List<Token> tokens) {
        for (int i = 0; i + 1 < tokens.size(); i++) {
            Token a = tokens.get(i);
            Token b = tokens.get(i + 1);
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

    /** "Not a squeak" keeps its article: "does not squeak" is another matter. */
    private static List<String> withoutArticles(List<String> terms) {
        List<String> kept = new ArrayList<>(terms.size());
        String before = "";
        for (String term : terms) {
            boolean one = before.equals("not") && (term.equals("a") || term.equals("an"));
            if (one || !Plain.ARTICLES.contains(term)) {
                kept.add(term);
            }
            before = term;
        }
        return kept;
    }

    /** The terms of a text as the trie knows them. */
    static List<String> terms(List<Token> tokens) {
        List<String> all = new ArrayList<>(tokens.size());
        int bare = 0;
        for (Token token : tokens) {
            if (token.kind() != Kind.PUNCTUATION) {
                String term = token.kind() == Kind.WORD ? Synonyms.of(token.term()) : token.term();
                all.add(term);
                bare += Plain.ARTICLES.contains(term) ? 0 : 1;
            }
        }
        // "the light" must not shrink to "light"
        boolean kept = bare == 1 && !all.get(0).equals("be");
        if (bare < all.size() && !kept) {
            return withoutArticles(all);
        }
        return all;
    }
}
