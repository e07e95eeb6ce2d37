package org.benchlore.kb.reading;

import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;

/** Words without bench meaning of their own: articles, forms of "be", connectives, fillers. All as stems. */
final class Plain {
    /** Dropped from pack phrases, so that "light is green" and "light green" are the same phrase. */
    static final Words ARTICLES = Words.of("the", "a", "an", "be");

    /** May stand inside a phrase of the text without breaking it. */
    private static final Words SKIPPED = Words.terms(
            "the a an be very really completely totally still now just also all always it its this that my his her "
                    + "their our clearly definitely simply rather only terribly awfully horribly extremely incredibly pretty um uh er erm hm hmm");

    private static final Words JOINING = Words.of("and", "or", "nor", "&", "/", "+", ",");

    private static final Words FUNCTION = Words.spaced(
            "i you he she we they me him them us your here to of in on at by for from with into onto "
                    + "over as than too and or nor so do have had can could will shall may might get go come any some both each apparatu instrument "
                    + "every what who whom when how why out up down off about around approx after during again "
                    + "same such more most much many other another own per via between through then thing thank hello hi ok "
                    + "okay well etc eg ie found find see seen saw look check say tell make give take put let be unit devic set "
                    + "one even ever already first second last today yesterday bit lot littl side way time yes mr mrs got if "
                    + "whether no not s t u o x measur read show test meter across under below less like yet re m d ll ve "
                    + "bench rail line voltag volt level stay remain keep turn seem appear report notic observ hear heard");

    /** What makes a figure vague: "after maybe ten minutes", "lasts like 10 mins". */
    private static final Words VAGUELY =
            Words.spaced("nearly almost maybe perhaps like circa ca good approximately approx roughly some");

    private Plain() {}

    /** Whether a token only makes the figure behind it vague. */
    static boolean vague(Token token, Token next) {
        return next.numeric() && token.kind() == Token.Kind.WORD && VAGUELY.contains(token.surface());
    }

    static boolean skipped(Token token) {
        return SKIPPED.contains(token.term());
    }

    /** Whether a term may be left out of a phrase. */
    static boolean filler(String term) {
        return SKIPPED.contains(term);
    }

    static boolean joining(Token token) {
        return JOINING.contains(token.term());
    }

    /** Whether the token carries meaning that somebody would miss. */
    static boolean content(Token token) {
        return !skipped(token) && contentUnskipped(token);
    }

    /** The same of one that may not be skipped. */
    static boolean contentUnskipped(Token token) {
        return switch (token.kind()) {
            case WORD -> token.term().length() > 1 && !FUNCTION.contains(token.term());
            case CODE, QUANTITY -> true;
            case NUMBER, OTHER, PUNCTUATION -> false;
        };
    }
}
