package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.jspecify.annotations.Nullable;

/** Sequences of terms and what they mean. Matching is linear in the text: a walk is no deeper than the longest entry. */
final class Trie {
    /** Filler words that may stand inside one match. */
    private static final int MOST_SKIPPED = 3;

    /** Where an entry stands in the text: tokens {@code from} to {@code to}, exclusive; {@code depth} terms matched. */
    record Match(int from, int to, int depth, Entry entry) {}

    /** Most nodes lead on to one other, or to none; a map for each would be most of the lexicon. */
    private static final class Node {
        private String term = "";

        @Nullable
        private Node only;

        @Nullable
        private Map<String, Node> several;

        @Nullable
        Entry entry;

        @Nullable
        Node next(String wanted) {
            if (several != null) {
                return several.get(wanted);
            }
            return term.equals(wanted) ? only : null;
        }

        /** The node behind a term, made when new. */
        Node make(String wanted) {
            Node known = next(wanted);
            if (known != null) {
                return known;
            }
            Node made = new Node();
            if (several != null) {
                several.put(wanted, made);
            } else if (only == null) {
                term = wanted;
                only = made;
            } else {
                several = new HashMap<>(4);
                several.put(term, only);
                several.put(wanted, made);
                only = null;
            }
            return made;
        }

        boolean ends() {
            return only == null && several == null;
        }
    }

    private final Node root = new Node();

    /** The entry of a phrase, made when new. */
    Entry entry(List<String> terms) {
        Node node = root;
        for (String term : terms) {
            node = node.make(term);
        }
        if (node.entry == null) {
            node.entry = new Entry();
        }
        return node.entry;
    }

    /** The entry of a phrase, if it has one. */
    Optional<Entry> find(List<String> terms) {
        Node node = root;
        for (String term : terms) {
            node = node.next(term);
            if (node == null) {
                return Optional.empty();
            }
        }
        return Optional.ofNullable(node.entry);
    }

    private static int byPreference(Match a, Match b) {
        if (a.depth() != b.depth()) {
            return b.depth() - a.depth();
        }
        int rank = a.entry().rank() - b.entry().rank();
        return rank != 0 ? rank : a.from() != b.from() ? a.from() - b.from() : a.to() - b.to();
    }

    /** Whether any entry starts with a term. */
    boolean starts(String term) {
        return root.next(term) != null;
    }

    /** All matches in a text, overlapping ones too. */
    List<Match> all(List<Token> tokens, String[] terms) {
        List<Match> all = new ArrayList<>();
        String[] glued = glued(tokens, terms);
        for (int i = 0; i < terms.length; i++) {
            if (tokens.get(i).kind() != Kind.PUNCTUATION) {
                walk(root, tokens, terms, glued, i, i, 0, 0, all);
            }
        }
        return all;
    }

    /** Each word and the next as one word, where one char is between them; else empty. */
    private static String[] glued(List<Token> tokens, String[] terms) {
        String[] glued = new String[terms.length];
        for (int i = 0; i < glued.length; i++) {
            boolean pair = i + 1 < glued.length
                    && tokens.get(i).kind() == Kind.WORD
                    && tokens.get(i + 1).kind() == Kind.WORD
                    && tokens.get(i + 1).start() == tokens.get(i).end() + 1;
            glued[i] = pair ? tokens.get(i).surface() + terms[i + 1] : "";
        }
        return glued;
    }

    /**
     * Matches that do not overlap, in order: longest first, then the packs' before the language's, then leftmost.
     *
     * @param all of a text, put in order of preference
     * @param size tokens of the text
     * @param hidden gets the packs' matches that a longer one covers, best first
     */
    static List<Match> chosen(List<Match> all, int size, List<Match> hidden) {
        all.sort(Trie::byPreference);
        boolean[] taken = new boolean[size];
        List<Match> chosen = new ArrayList<>();
        for (Match match : all) {
            if (free(taken, match)) {
                for (int i = match.from(); i < match.to(); i++) {
                    taken[i] = true;
                }
                chosen.add(match);
            } else if (match.entry().rank() < Entry.LANGUAGE) {
                hidden.add(match);
            }
        }
        chosen.sort(Comparator.comparingInt(Match::from));
        return widened(chosen, all, taken.length);
    }

    /** "mains fuse open": lets the phrase "fuse open" take along the rest of the name it overlaps, of the same symptom. */
    private static List<Match> widened(List<Match> chosen, List<Match> all, int size) {
        @Nullable Match[] at = new Match[size];
        for (Match match : chosen) {
            Arrays.fill(at, match.from(), match.to(), match);
        }
        for (Match name : all) {
            Match first = at[name.from()];
            Match last = at[name.to() - 1];
            Match over = first != null ? first : last;
            boolean oneEnd = (first == null) != (last == null);
            if (oneEnd && over != null && over.entry().speaksOf(name.entry()) && onlyOver(at, name, over)) {
                Match wide = new Match(
                        Math.min(over.from(), name.from()), Math.max(over.to(), name.to()), over.depth(), over.entry());
                Arrays.fill(at, wide.from(), wide.to(), wide);
            }
        }
        List<Match> wide = new ArrayList<>(chosen.size());
        for (int i = 0; i < at.length; i++) {
            Match match = at[i];
            if (match != null && match.from() == i) {
                wide.add(match);
            }
        }
        return wide;
    }

    private static boolean onlyOver(@Nullable Match[] at, Match name, Match over) {
        for (int i = name.from(); i < name.to(); i++) {
            Match there = at[i];
            if (there != null && !there.equals(over)) {
                return false;
            }
        }
        return true;
    }

    private static boolean free(boolean[] taken, Match match) {
        for (int i = match.from(); i < match.to(); i++) {
            if (taken[i]) {
                return false;
            }
        }
        return true;
    }

    private static void walk(
            Node node,
            List<Token> tokens,
            String[] terms,
            String[] glued,
            int from,
            int at,
            int depth,
            int skipped,
            List<Match> found) {
        if (node.entry != null) {
            found.add(new Match(from, at, depth, node.entry));
        }
        if (at == terms.length || node.ends()) {
            return;
        }
        Node next = node.next(terms[at]);
        if (next != null) {
            // "the backlight" is no longer a match than "backlight"
            int deeper = Plain.ARTICLES.contains(terms[at]) ? depth : depth + 1;
            walk(next, tokens, terms, glued, from, at + 1, deeper, skipped, found);
        }
        if (!glued[at].isEmpty()) {
            Node joined = node.next(glued[at]);
            if (joined != null) {
                walk(joined, tokens, terms, glued, from, at + 2, depth + 1, skipped, found);
            }
        }
        if (depth > 0 && skipped < MOST_SKIPPED && Plain.skipped(tokens.get(at))) {
            walk(node, tokens, terms, glued, from, at + 1, depth, skipped + 1, found);
        }
    }
}
