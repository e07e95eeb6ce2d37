package org.benchlore.kb.search;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.search.SearchHit.Match;
import org.benchlore.kb.search.SearchHit.Snippet;

/** The passage of a document that shows most of the words asked for, in whole sentences where they are short enough. */
final class Snippets {
    private static final int LENGTH = 180;
    private static final int LEAD = 40;
    private static final String ELLIPSIS = "…";

    /** Where the most words stand close together; {@code fresh} are those that the title does not show already. */
    private record Window(String passage, List<Match> matches, int fresh, int distinct) {
        static Window none(String passage) {
            return new Window(passage, List.of(), 0, 0);
        }
    }

    private final Set<String> terms;

    Snippets(Set<String> terms) {
        this.terms = terms;
    }

    /**
     * The passage that shows most of what the title does not, the first at a tie, its beginning where nothing matches.
     *
     * @param title the words of the title
     */
    Snippet of(List<Passage> passages, List<Word> title) {
        Set<String> told = new HashSet<>();
        title.forEach(word -> told.add(word.term()));
        Window best = Window.none("");
        for (int i = 0; i < passages.size(); i++) {
            Window window = window(passages.get(i), told);
            if (i == 0 || window.fresh > best.fresh) {
                best = window;
            }
        }
        return cutOut(best);
    }

    private Window window(Passage passage, Set<String> told) {
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
        Window best = Window.none(passage.text());
        for (int from = 0; from < all.size(); from++) {
            Set<String> distinct = new HashSet<>();
            int to = from;
            while (to < all.size() && all.get(to).end() - all.get(from).start() <= LENGTH - LEAD) {
                distinct.add(matched.get(to));
                to++;
            }
            int fresh =
                    (int) distinct.stream().filter(term -> !told.contains(term)).count();
            if (fresh > best.fresh || (fresh == best.fresh && distinct.size() > best.distinct)) {
                best = new Window(passage.text(), all.subList(from, to), fresh, distinct.size());
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
        int from = from(passage, first, last);
        int to = to(passage, from, last);
        String before = from == 0 || endsSentence(passage, from - 1) ? "" : ELLIPSIS;
        String after = to == passage.length() || endsSentence(passage, to) ? "" : ELLIPSIS;
        String text = before + plain(passage.substring(from, to)) + after;
        List<Match> moved = new ArrayList<>();
        for (Match match : window.matches) {
            if (match.end() <= to) {
                moved.add(new Match(match.start() - from + before.length(), match.end() - from + before.length()));
            }
        }
        return new Snippet(text, moved);
    }

    /** The beginning of the sentence if what matches fits in from there, else some words before it. */
    private static int from(String passage, int first, int last) {
        int from = passage.length() <= LENGTH ? 0 : first;
        while (from > 0 && last - from <= LENGTH && !endsSentence(passage, from - 1)) {
            from--;
        }
        return last - from <= LENGTH ? from : wordStart(passage, Math.max(0, first - LEAD), first);
    }

    /** The end of a sentence if one lies in the second half of what may be shown, else of a word. */
    private static int to(String passage, int from, int last) {
        int end = from + cut(passage, from, Math.max(LENGTH, last - from)).length();
        for (int to = end; to >= Math.max(last, from + LENGTH / 2); to--) {
            if (to == passage.length() || endsSentence(passage, to)) {
                return to;
            }
        }
        return end;
    }

    /** Whether the char before is the last of a sentence and another begins. */
    private static boolean endsSentence(String passage, int at) {
        return at > 0
                && at + 1 < passage.length()
                && ".!?".indexOf(passage.charAt(at - 1)) >= 0
                && Character.isWhitespace(passage.charAt(at))
                && Character.isUpperCase(passage.charAt(at + 1));
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
