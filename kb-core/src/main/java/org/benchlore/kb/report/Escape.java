package org.benchlore.kb.report;

import java.util.regex.Pattern;

/**
 * Makes any text harmless where it is written. Notes, complaints and packs come from anybody; what they hold is shown, and
 * never obeyed by a browser, a Markdown renderer or a terminal.
 */
final class Escape {
    private static final char REPLACEMENT = '\uFFFD';

    /** Characters that mean something anywhere in Markdown, GitHub's tables, strike-outs and formulas included. */
    private static final String MARKUP = "\\`*_[]<|~&$^";

    /** What starts a heading, list, quote, rule or number at the beginning of a block. */
    private static final Pattern BLOCK_START = Pattern.compile("(\\d{1,9})([.)](?=\\s|$))|[-+](?=[\\s-]|$)|[#=:>]");

    private Escape() {}

    /**
     * The text on one line, without control and formatting characters (NUL, escape sequences, marks that turn the direction
     * of reading) and without halves of characters.
     */
    static String clean(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        boolean blank = true;
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            i += Character.charCount(c);
            if (Character.isWhitespace(c) || Character.isSpaceChar(c)) {
                if (!blank) {
                    clean.append(' ');
                }
                blank = true;
            } else {
                clean.appendCodePoint(harmful(c) ? REPLACEMENT : c);
                blank = false;
            }
        }
        return clean.toString().stripTrailing();
    }

    private static boolean harmful(int c) {
        int type = Character.getType(c);
        boolean notACharacter = (c & 0xFFFE) == 0xFFFE || (c >= 0xFDD0 && c <= 0xFDEF);
        return notACharacter
                || type == Character.CONTROL
                || type == Character.FORMAT
                || type == Character.SURROGATE
                || type == Character.PRIVATE_USE;
    }

    /** For HTML text and for attribute values in quotes. */
    static String html(String text) {
        String clean = clean(text);
        StringBuilder html = new StringBuilder(clean.length() + 16);
        for (int i = 0; i < clean.length(); i++) {
            char c = clean.charAt(i);
            switch (c) {
                case '&' -> html.append("&amp;");
                case '<' -> html.append("&lt;");
                case '>' -> html.append("&gt;");
                case '"' -> html.append("&quot;");
                case '\'' -> html.append("&#39;");
                default -> html.append(c);
            }
        }
        return html.toString();
    }

    /**
     * For Markdown, at the start of a block or within one. Web and mail addresses are broken up as well: some renderers
     * make links of them however they are escaped.
     */
    static String markdown(String text) {
        String clean = clean(text)
                .replace("://", ": //")
                .replaceAll("(?i)\\bwww\\.", "www .")
                .replace("@", " (at) ");
        StringBuilder markdown = new StringBuilder(clean.length() + 16);
        for (int i = 0; i < clean.length(); i++) {
            char c = clean.charAt(i);
            if (MARKUP.indexOf(c) >= 0) {
                markdown.append('\\');
            }
            markdown.append(c);
        }
        return BLOCK_START.matcher(markdown).lookingAt()
                ? BLOCK_START
                        .matcher(markdown)
                        .replaceFirst(m -> m.group(1) == null ? "\\\\" + m.group() : m.group(1) + "\\\\" + m.group(2))
                : markdown.toString();
    }

    /** At most so many characters, saying how many are left out. */
    static String clip(String text, int most) {
        int length = text.codePointCount(0, text.length());
        return length <= most
                ? text
                : text.substring(0, text.offsetByCodePoints(0, most)) + " … (" + (length - most)
                        + " more characters in the case)";
    }
}
