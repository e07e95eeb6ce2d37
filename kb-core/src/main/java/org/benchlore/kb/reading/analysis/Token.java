package org.benchlore.kb.reading.analysis;

/**
 * One token of bench text.
 *
 * @param kind what it is
 * @param start UTF-16 offset into the text as given
 * @param end UTF-16 offset, exclusive
 * @param surface folded and in lower case, not stemmed
 * @param term what equal tokens share: the stem, "12v" for a quantity, the bare number
 * @param value for numbers and quantities, in the base unit; else 0
 * @param unit base unit of a quantity (V, A, W, ohm, F, Hz, s, degC, %, times); else empty
 * @param resolution one step of the last digit written, in the base unit; 0 when there is no value
 * @param spread half-width of a range such as "3.2-3.3 V"; else 0
 * @param factor what one of the unit as written is in the base unit, 0.001 for mV; 0 when there is no unit
 */
public record Token(
        Kind kind,
        int start,
        int end,
        String surface,
        String term,
        double value,
        String unit,
        double resolution,
        double spread,
        double factor) {
    private static final Words DENYING = Words.of("no", "not", "never", "without", "none", "neither", "nor", "nothing");

    /** What a token is. */
    public enum Kind {
        WORD,
        /** Letters and digits mixed: a log code, a net, a part reference. */
        CODE,
        NUMBER,
        QUANTITY,
        /** Dates, times of day, ordinals. */
        OTHER,
        PUNCTUATION
    }

    static Token plain(Kind kind, int start, int end, String surface, String term) {
        return new Token(kind, start, end, surface, term, 0, "", 0, 0, 0);
    }

    /** The same without its sign. */
    public Token size() {
        return new Token(kind, start, end, surface, term, Math.abs(value), unit, resolution, spread, factor);
    }

    /** Whether it has a value, with or without a unit. */
    public boolean numeric() {
        return kind == Kind.NUMBER || kind == Kind.QUANTITY;
    }

    /** Whether it is a tolerance ("±5 %") rather than a value. */
    public boolean tolerance() {
        return term.startsWith("±");
    }

    /**
     * Whether words with this term in them deny something by themselves. What a denial reaches is grammar, and takes more than a
     * word: the reader's cues are phrases, "no longer" and "not only" among them.
     */
    public static boolean denies(String term) {
        return DENYING.contains(term);
    }

    public boolean is(String punctuation) {
        return kind == Kind.PUNCTUATION && term.equals(punctuation);
    }
}
