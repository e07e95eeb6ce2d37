package org.benchlore.kb.reading;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/**
 * Parts called by their number on the board: "C12 bulging" is read as "capacitor bulging". The letters are those of IEEE
 * 315-1975, clause 22, and what many boards print instead (IC, BR); remembered, not looked up.
 */
final class Parts {
    private static final Pattern NUMBERED = Pattern.compile("(c|ic|u|br|bd|l|f|r|q)[0-9]{1,4}");

    private static final Map<String, String> KINDS = Map.of(
            "c",
            "capacitor",
            "ic",
            "chip",
            "u",
            "chip",
            "br",
            "bridg",
            "bd",
            "bridg",
            "l",
            "inductor",
            "f",
            "fuse",
            "r",
            "resistor",
            "q",
            "transistor");

    private Parts() {}

    /** "C201 0.04": a line of a table, whose heading says what is read. */
    private static boolean read(List<Token> tokens, int next) {
        return next < tokens.size()
                && (tokens.get(next).kind() == Kind.NUMBER
                        || tokens.get(next).kind() == Kind.QUANTITY
                        || tokens.get(next).is(":")
                        || tokens.get(next).is("="));
    }

    /** Replaces in {@code terms} the numbers of parts that no pack knows by the kind of part. */
    static void name(List<Token> tokens, String[] terms, Lexicon lexicon) {
        for (int i = 0; i < terms.length; i++) {
            if (tokens.get(i).kind() == Kind.CODE) {
                Matcher numbered = NUMBERED.matcher(terms[i]);
                String kind = numbered.matches() ? KINDS.get(numbered.group(1)) : null;
                boolean written = tokens.get(i).end() - tokens.get(i).start() == terms[i].length();
                if (kind != null
                        && written
                        && !read(tokens, i + 1)
                        && !lexicon.trie().starts(lexicon.terms().of(terms[i]))) {
                    terms[i] = kind;
                }
            }
        }
    }
}
