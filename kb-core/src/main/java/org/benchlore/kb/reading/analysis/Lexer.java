package org.benchlore.kb.reading.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.benchlore.kb.reading.analysis.Token.Kind;

/**
 * Bench text to tokens, in one pass. A number and its unit are one token with one term, however written ("12V", "12 V",
 * "+12 volts"; "3V3"); a code is kept whole ("K-207" and "K207" are the same term); words are folded and stemmed.
 * Punctuation is kept, since it ends clauses. Never throws, whatever the text.
 */
public final class Lexer {
    /** Longer runs of letters are no words; the term is cut, the span is not. */
    private static final int LONGEST_TERM = 48;

    /** So many dots lead from a name to its value; fewer are an ellipsis. */
    private static final int LEADER = 4;

    private static final Words BARE_CONTRACTIONS = Words.of(
            "dont",
            "doesnt",
            "didnt",
            "isnt",
            "wasnt",
            "arent",
            "werent",
            "hasnt",
            "havent",
            "hadnt",
            "couldnt",
            "wouldnt",
            "shouldnt",
            "wont",
            "cant");
    /** The dot behind them ends no sentence. */
    private static final Words ABBREVIATED = Words.of("ca", "approx", "incl", "excl", "vs");

    private static final Map<String, String> ODD_STEMS = Map.of("wo", "will", "ca", "can", "sha", "shall", "ai", "be");

    private final Folded folded;
    private final Numerals numerals;
    private final List<Token> tokens = new ArrayList<>();

    private Lexer(String text) {
        this.folded = new Folded(text);
        this.numerals = new Numerals(folded);
    }

    /** Tokens in order; those of a contraction ("isn't") share one span. */
    public static List<Token> tokens(String text) {
        Lexer lexer = new Lexer(text);
        lexer.run();
        return Spoken.joined(lexer.tokens);
    }

    /**
     * Whether a word is read the same whatever words stand beside it, as all are that no spoken number begins with.
     *
     * @param word of the letters a to z alone
     */
    public static boolean standsAlone(String word) {
        return !Spoken.opens(word);
    }

    private void run() {
        int i = 0;
        while (i < folded.length()) {
            char c = folded.at(i);
            if (c == ' ') {
                i++;
                continue;
            }
            int end = numerals.scan(i);
            if (end > i) {
                tokens.add(numerals.token());
                i = end;
            } else if (Character.isLetter(c) || digit(c)) {
                i = word(i);
            } else {
                int led = leader(i);
                if (led > i) {
                    tokens.add(Token.plain(Kind.PUNCTUATION, folded.start(i), folded.end(led - 1), "=", "="));
                } else {
                    punctuation(i, c);
                }
                i = Math.max(led, i + 1);
            }
        }
    }

    /** End of dots that lead to a number as in a table ("12V ...... 12.03"); {@code from} when they are none. */
    private int leader(int from) {
        if (inDots(from)) {
            return from;
        }
        int end = from;
        while (folded.at(end) == '.' || (end > from && folded.at(end) == ' ' && folded.at(end + 1) == '.')) {
            end++;
        }
        int next = end;
        while (folded.at(next) == ' ' || folded.at(next) == '+' || folded.at(next) == '-') {
            next++;
        }
        return end >= from + LEADER && digit(folded.at(next)) ? end : from;
    }

    /** Whether a run of dots reaches back before this place, which was then looked at from its start. */
    private boolean inDots(int i) {
        return folded.at(i - 1) == '.' || (folded.at(i - 1) == ' ' && folded.at(i - 2) == '.');
    }

    private void punctuation(int i, char c) {
        boolean inWord = (c == '-' || c == '_') && letterOrDigit(folded.at(i - 1)) && letterOrDigit(folded.at(i + 1));
        boolean decimal = c == '.' && letterOrDigit(folded.at(i - 1)) && letterOrDigit(folded.at(i + 1));
        if (!inWord && !decimal) {
            String term = String.valueOf(c);
            tokens.add(Token.plain(Kind.PUNCTUATION, folded.start(i), folded.end(i), term, term));
        }
    }

    private int word(int from) {
        int end = from;
        boolean letters = true;
        while (letterOrDigit(folded.at(end)) || apostrophe(end)) {
            letters &= !digit(folded.at(end));
            end++;
        }
        String raw = folded.slice(from, end);
        int code = letters ? codeEnd(raw, end) : end;
        if (code > end) {
            String digits = folded.slice(end + 1, code);
            add(Kind.CODE, from, code, lower(raw) + digits, lower(raw) + digits);
            return code;
        }
        String surface = lower(raw);
        if (surface.length() > LONGEST_TERM) {
            surface = surface.substring(0, LONGEST_TERM);
        }
        if (!letters) {
            add(Kind.CODE, from, end, surface, surface);
        } else if (BARE_CONTRACTIONS.contains(surface)) {
            negated(from, end, surface.substring(0, surface.length() - 2));
        } else if (surface.endsWith("n't")) {
            negated(from, end, surface.substring(0, surface.length() - 3));
        } else if (surface.equals("cannot")) {
            negated(from, end, "can");
        } else {
            int tail = surface.indexOf('\'');
            String base = tail > 0 ? surface.substring(0, tail) : surface;
            add(Kind.WORD, from, end, base, Stemmer.stem(base));
            return ABBREVIATED.contains(base) && folded.at(end) == '.' ? end + 1 : end;
        }
        return end;
    }

    private void negated(int from, int end, String verb) {
        String base = verb.endsWith("n") && verb.equals("can") ? "can" : ODD_STEMS.getOrDefault(verb, verb);
        add(Kind.WORD, from, end, base, Stemmer.stem(base));
        add(Kind.WORD, from, end, "not", "not");
    }

    /** End of a code such as "K-207" whose letters end at {@code end}; or {@code end} when it is none. */
    private int codeEnd(String letters, int end) {
        if (folded.at(end) != '-' || letters.length() > 4) {
            return end;
        }
        boolean capitals = letters.equals(letters.toUpperCase(Locale.ROOT));
        if (!capitals && letters.length() > 1) {
            return end;
        }
        int digits = end + 1;
        while (digit(folded.at(digits))) {
            digits++;
        }
        boolean decimal = folded.at(digits) == '.' && digit(folded.at(digits + 1));
        boolean whole = digits > end + 1 && digits <= end + 6 && !letterOrDigit(folded.at(digits)) && !decimal;
        return whole ? digits : end;
    }

    private boolean apostrophe(int i) {
        return folded.at(i) == '\'' && Character.isLetter(folded.at(i - 1)) && Character.isLetter(folded.at(i + 1));
    }

    private void add(Kind kind, int from, int end, String surface, String term) {
        tokens.add(Token.plain(kind, folded.start(from), folded.end(end - 1), surface, term));
    }

    private static String lower(String raw) {
        return raw.toLowerCase(Locale.ROOT);
    }

    static boolean digit(char c) {
        return c >= '0' && c <= '9';
    }

    static boolean letterOrDigit(char c) {
        return Character.isLetter(c) || digit(c);
    }
}
