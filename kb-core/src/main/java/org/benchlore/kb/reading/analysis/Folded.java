package org.benchlore.kb.reading.analysis;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.Normalizer;
import java.util.Arrays;

/**
 * Text with its spellings folded (compatibility forms, accents, both micro and ohm signs, dashes, odd spaces), one char
 * at a time, so that every folded char knows where it stood. Case is kept: m and M differ.
 */
final class Folded {
    /** No single code point needs more; longer ligatures are cut, which keeps folding linear. */
    private static final int MOST_FROM_ONE = 4;

    private static final char SYMBOL = '\uFFFD';
    private static final char FRACTION_BAR = '\u2044';

    private static final int[] NONE = {};

    /** Whether every char stands for itself, as in most text. */
    private final boolean plain;

    private char[] chars;
    private int[] starts = NONE;
    private int[] ends = NONE;
    private int length;

    Folded(String text) {
        plain = plain(text);
        if (plain) {
            chars = text.toCharArray();
            length = chars.length;
            return;
        }
        chars = new char[text.length() + 8];
        starts = new int[chars.length];
        ends = new int[chars.length];
        for (int i = 0; i < text.length(); ) {
            int codePoint = text.codePointAt(i);
            int next = i + Character.charCount(codePoint);
            if (codePoint == '\r') {
                boolean windows = next < text.length() && text.charAt(next) == '\n';
                push(windows ? ' ' : '\n', i, next);
            } else if (codePoint < 0x80) {
                push(codePoint >= ' ' || codePoint == '\n' ? (char) codePoint : ' ', i, next);
            } else {
                fold(codePoint, i, next);
            }
            i = next;
        }
    }

    private static boolean plain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c >= 0x80 || (c < ' ' && c != '\n')) {
                return false;
            }
        }
        return true;
    }

    int length() {
        return length;
    }

    /** The folded char, or a line feed beyond either end. */
    char at(int i) {
        return i >= 0 && i < length ? chars[i] : '\n';
    }

    int start(int i) {
        return plain ? i : starts[i];
    }

    int end(int i) {
        return plain ? i + 1 : ends[i];
    }

    String slice(int from, int to) {
        return new String(chars, from, to - from);
    }

    private void fold(int codePoint, int start, int end) {
        switch (codePoint) {
            case 0x2018, 0x2019, 0x02BC, 0x00B4 -> push('\'', start, end);
            case 0x2010, 0x2011, 0x2012, 0x2013, 0x2014, 0x2015, 0x2212 -> push('-', start, end);
            case 0x00B5, 0x03BC -> push('u', start, end);
            case 0x2126, 0x03A9 -> push('Ω', start, end);
            case 0x00D7 -> push('x', start, end);
            case 0x00B1, 0x00B0 -> push((char) codePoint, start, end);
            case 0x0131 -> push('i', start, end);
            case 0x2026 -> push('.', start, end);
            case 0x0085, 0x2028, 0x2029 -> push('\n', start, end);
            default -> decompose(codePoint, start, end);
        }
    }

    private void decompose(int codePoint, int start, int end) {
        int type = Character.getType(codePoint);
        if (type == Character.FORMAT || mark(type)) {
            return;
        }
        if (Character.isSpaceChar(codePoint) || type == Character.CONTROL) {
            push(' ', start, end);
            return;
        }
        if (type == Character.SURROGATE) {
            push(SYMBOL, start, end);
            return;
        }
        String plain = Normalizer.normalize(Character.toString(codePoint), Normalizer.Form.NFKD);
        int bar = plain.indexOf(FRACTION_BAR);
        if (bar > 0 && bar + 1 < plain.length()) {
            plain = decimal(Integer.parseInt(plain, 0, bar, 10), Integer.parseInt(plain, bar + 1, plain.length(), 10));
        }
        int pushed = 0;
        for (int i = 0; i < plain.length() && pushed < MOST_FROM_ONE; ) {
            int part = plain.codePointAt(i);
            i += Character.charCount(part);
            if (!mark(Character.getType(part))) {
                push(letter(part), start, end);
                pushed++;
            }
        }
    }

    /** "½" is 0.5, and behind a whole number .5, as in "2½". */
    private String decimal(int numerator, int denominator) {
        String decimal = BigDecimal.valueOf(numerator)
                .divide(BigDecimal.valueOf(denominator), 3, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
        return length > 0 && Lexer.digit(chars[length - 1]) ? decimal.substring(1) : decimal;
    }

    private static char letter(int part) {
        int digit = Character.digit(part, 10);
        if (digit >= 0) {
            return (char) ('0' + digit);
        }
        boolean kept = part < 0x80 || part == 0x00B0 || part == 0x03A9 || Character.isLetter(part);
        return kept && part <= 0xFFFF ? (char) part : SYMBOL;
    }

    private static boolean mark(int type) {
        return type == Character.NON_SPACING_MARK
                || type == Character.ENCLOSING_MARK
                || type == Character.COMBINING_SPACING_MARK;
    }

    private void push(char c, int start, int end) {
        if (length == chars.length) {
            int larger = length * 2;
            chars = Arrays.copyOf(chars, larger);
            starts = Arrays.copyOf(starts, larger);
            ends = Arrays.copyOf(ends, larger);
        }
        chars[length] = c;
        starts[length] = start;
        ends[length] = end;
        length++;
    }
}
