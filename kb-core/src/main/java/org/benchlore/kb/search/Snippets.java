package org.benchlore.kb.search;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.search.SearchHit.Match;
import org.benchlore.kb.search.SearchHit.Snippet;

/** The passage of a document that shows most of the words asked for. */
final class Snippets {
    private static final int LENGTH = 180;
    private static final int LEAD = 40;
    private static final String ELLIPSIS = "…";

    private record Window(String passage, List<Match> matches, int distinct) {}

    private final Set<String> terms;

    Snippets(Set<String> terms) {
        this.terms = terms;
    }

    /** The best of the passages; the first at a tie, its beginning where nothing matches. */
    Snippet of(List<Passage> passages) {
        Window best = new Window(passages.isEmpty() ? "" : passages.get(0).text(), List.of(), 0);
        for (Passage passage : passages) {
            Window window = window(passage);
            if (window.distinct > best.distinct) {
                best = window;
            }
        }
        return cutOut(best);
    }

    private Window window(Passage passage) {
        List<Match> all = new ArrayList<>();
        List<String> matched = new ArrayList<>();
        for (Word word : passage.words()) {
            if (terms.contains(word.term())) {
                Match match = new Match(word.start(), word.end());
                if (all.isEmpty() || all.get(all.size() - 1).end() <= match.start()) {
                    all.add(match);
                    matched.add(word.term());
                }
            }
        }
        Window best = new Window(passage.text(), List.of(), 0);
        for (int from = 0; from < all.size(); from++) {
            Set<String> distinct = new HashSet<>();
            int to = from;
            while (to < all.size() && all.get(to).end() - all.get(from).start() <= LENGTH - LEAD) {
                distinct.add(matched.get(to));
                to++;
            }
            if (distinct.size() > best.distinct) {
                best = new Window(passage.text(), all.subList(from, to), distinct.size());
            }
        }
        return best;
    }

    private static Snippet cutOut(Window window) {
        String passage = window.passage;
        int first = window.matches.isEmpty() ? 0 : window.matches.get(0).start();
        int last = window.matches.isEmpty()
                ? 0
                : window.matches.get(window.matches.size() - 1).end();
        int from = passage.length() <= LENGTH ? 0 : wordStart(passage, Math.max(0, first - LEAD), first);
        int to = passage.length() <= LENGTH
                ? passage.length()
                : from + cut(passage, from, Math.max(LENGTH, last - from)).length();
        String before = from > 0 ? ELLIPSIS : "";
        String text = before + plain(passage.substring(from, to)) + (to < passage.length() ? ELLIPSIS : "");
        List<Match> moved = new ArrayList<>();
        for (Match match : window.matches) {
            if (match.end() <= to) {
                moved.add(new Match(match.start() - from + before.length(), match.end() - from + before.length()));
            }
        }
        return new Snippet(text, moved);
    }

    /** At most {@code length} chars from {@code from}, ending with a word where there is one, never inside a pair. */
    static String cut(String text, int from, int length) {
        if (text.length() - from <= length) {
            return text.substring(from);
        }
        int end = from + length;
        int space = end;
        while (space > from && !Character.isWhitespace(text.charAt(space))) {
            space--;
        }
        if (space > from) {
            end = space;
        } else if (Character.isHighSurrogate(text.charAt(end - 1))) {
            end--;
        }
        return text.substring(from, end).stripTrailing();
    }

    private static int wordStart(String text, int at, int latest) {
        if (at == 0) {
            return 0;
        }
        int start = at;
        while (start < latest && !Character.isWhitespace(text.charAt(start - 1))) {
            start++;
        }
        return start;
    }

    /** One line without control characters, each char in its place, so that offsets hold and terminals are safe. */
    private static String plain(String text) {
        StringBuilder line = new StringBuilder(text);
        for (int i = 0; i < line.length(); i++) {
            if (Character.isISOControl(line.charAt(i)) || Character.isWhitespace(line.charAt(i))) {
                line.setCharAt(i, ' ');
            }
        }
        return line.toString();
    }
}
