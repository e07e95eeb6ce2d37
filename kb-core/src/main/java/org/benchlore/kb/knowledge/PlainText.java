package org.benchlore.kb.knowledge;

import java.util.Locale;

/** Refuses what is not readable text before any parser sees it: binary files, control characters, endless files. */
final class PlainText {
    private PlainText() {}

    /** Whether a whole file may be parsed; if not, one problem says why. */
    static boolean accept(PackSource source, int maxChars, Problems problems) {
        String text = source.yaml();
        if (text.length() > maxChars) {
            problems.error(
                    new Place(source.name(), 1, 1),
                    "the file has " + text.length() + " characters, more than " + maxChars,
                    "split the pack");
            return false;
        }
        int bad = firstBad(text);
        if (bad < 0) {
            return true;
        }
        int line =
                1 + (int) text.substring(0, bad).chars().filter(c -> c == '\n').count();
        int lineStart = text.lastIndexOf('\n', bad) + 1;
        int column = text.codePointCount(lineStart, bad) + 1;
        problems.error(
                new Place(source.name(), line, column),
                "the file is not plain UTF-8 text (character "
                        + String.format(Locale.ROOT, "U+%04X", (int) text.charAt(bad)) + ")",
                "give a YAML file saved as UTF-8; take out control characters and invisible marks");
        return false;
    }

    /** Position of the first character that has no business in a pack, or -1. */
    static int firstBad(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c >= ' ' && c < 0x7F) {
                continue; // nearly all
            }
            boolean space = c == '\n' || c == '\r' || c == '\t' || (c == '\uFEFF' && i == 0);
            if (!space && (Character.isISOControl(c) || deceives(c) || loneSurrogate(text, i))) {
                return i;
            }
        }
        return -1;
    }

    /** Not characters at all, what bad decoding leaves behind, or marks that reorder what a reviewer sees. */
    private static boolean deceives(char c) {
        return c >= '\uFFFC'
                || c == '\uFEFF'
                || (c >= '\u202A' && c <= '\u202E')
                || (c >= '\u2066' && c <= '\u2069')
                || (c >= '\uFDD0' && c <= '\uFDEF');
    }

    private static boolean loneSurrogate(String text, int i) {
        char c = text.charAt(i);
        if (Character.isHighSurrogate(c)) {
            return i + 1 >= text.length() || !Character.isLowSurrogate(text.charAt(i + 1));
        }
        return Character.isLowSurrogate(c) && (i == 0 || !Character.isHighSurrogate(text.charAt(i - 1)));
    }
}
