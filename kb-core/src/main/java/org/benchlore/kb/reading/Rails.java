package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/**
 * Bare numbers that name a rail: "the 5 is fine", "no 12", "24, 12 and 5 all there". Their term becomes that of the voltage,
 * so that the packs' names are found as if the unit stood there.
 */
final class Rails {
    private static final int LONGEST_LIST = 8;

    /** What may stand in front of a rail's number. */
    private static final Words BEFORE = Words.terms(
            "the no on neither nor without miss plus main both while from and or but that its of although though because since "
                    + "only still all , / + ( :");

    /** What may stand behind it. */
    private static final Words BEHIND =
            Words.terms("rail line supply be and or nor to fine ok okay good dead gone miss absent "
                    + "low high there present up down come never not still read measur sit sag drop fall at with both all either too only "
                    + "also just stay have collaps alive normal look in on it either under seem appear both buck regulator reg side "
                    + "arriv check , . ; : ! ? ) ( / = -");

    /** What makes a number in front of it no rail, whatever else stands there. */
    private static final Words COUNTS = Words.terms(
            "pin pins step bit page version firmware rev revision channel ch layer port usb at to = ~ about code v");

    private Rails() {}

    /** Replaces in {@code terms} the numbers that name rails. */
    static void name(List<Token> tokens, String[] terms, Lexicon lexicon) {
        for (int i = 0; i < terms.length; i++) {
            if (number(tokens, i, lexicon)) {
                int end = listEnd(tokens, i, lexicon);
                if (opens(tokens, i) && closes(tokens, end) && !ranges(tokens, i, end)) {
                    for (int member = i; member < end; member++) {
                        if (tokens.get(member).kind() == Kind.NUMBER) {
                            terms[member] = tokens.get(member).term() + "v";
                        }
                    }
                }
                i = end - 1;
            }
        }
    }

    private static boolean number(List<Token> tokens, int i, Lexicon lexicon) {
        Token token = tokens.get(i);
        return token.kind() == Kind.NUMBER
                && !token.tolerance()
                && lexicon.rail(token.value()).isPresent();
    }

    /** End of the list of rails' numbers and voltages that starts here. */
    private static int listEnd(List<Token> tokens, int from, Lexicon lexicon) {
        int end = from + 1;
        for (int n = 0; n < LONGEST_LIST; n++) {
            int next = end;
            while (next < tokens.size() && next < end + 3 && Plain.joining(tokens.get(next))) {
                next++;
            }
            boolean step =
                    from > 0 && tokens.get(from - 1).term().equals("from") && next < tokens.size() && next == end;
            next += step && tokens.get(next).term().equals("to") ? 1 : 0;
            boolean the = next > end
                    && next < tokens.size()
                    && tokens.get(next).term().equals("the");
            next += the ? 1 : 0;
            boolean member =
                    next > end && next < tokens.size() && (number(tokens, next, lexicon) || volts(tokens, next));
            if (!member) {
                return end;
            }
            end = next + 1;
        }
        return end;
    }

    private static boolean volts(List<Token> tokens, int i) {
        return tokens.get(i).kind() == Kind.QUANTITY && tokens.get(i).unit().equals("V");
    }

    /** "Errors climbing, 12 to 85 in an hour". */
    private static boolean ranges(List<Token> tokens, int from, int end) {
        return end == from + 1
                && end + 1 < tokens.size()
                && tokens.get(end).term().equals("to")
                && tokens.get(end + 1).kind() == Kind.NUMBER;
    }

    private static boolean opens(List<Token> tokens, int i) {
        if (i == 0) {
            return true;
        }
        Token before = tokens.get(i - 1);
        boolean lineStart = before.kind() == Kind.PUNCTUATION && !before.is("-") && !COUNTS.contains(before.term());
        boolean decimal = tokens.get(i).resolution() < 1 && !COUNTS.contains(before.term());
        return lineStart || decimal || BEFORE.contains(before.term());
    }

    private static boolean closes(List<Token> tokens, int end) {
        if (end == tokens.size()) {
            return true;
        }
        Token next = tokens.get(end);
        boolean numbered = (next.is(".") || next.is(")"))
                && (end == 1 || tokens.get(end - 2).is("\n"));
        return !numbered
                && (next.is("\n")
                        || next.kind() == Kind.NUMBER
                        || next.kind() == Kind.QUANTITY
                        || BEHIND.contains(next.term()));
    }
}
