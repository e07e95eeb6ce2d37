package org.benchlore.kb.importing;

/** Bounded quotations, and texts without what is left over at their ends. */
final class Wording {
    private static final int LONGEST_COMPLAINT = 300;
    private static final int LONGEST_WORDS = 160;
    private static final String MORE = "…";

    private Wording() {}

    /** Words to show beside what was understood by them. */
    static String cut(String words) {
        return cut(words, LONGEST_WORDS);
    }

    /** Words to stand as the complaint. */
    static String complaint(String words) {
        return cut(words, LONGEST_COMPLAINT);
    }

    /** Whether a complaint is so long that its end stands only in a note. */
    static boolean cutsComplaint(String words) {
        return complaint(words).endsWith(MORE);
    }

    private static String cut(String words, int longest) {
        StringBuilder line = new StringBuilder(Math.min(words.length(), longest + 1));
        boolean blank = false;
        int i = 0;
        for (; i < words.length() && line.length() < longest; i++) {
            char c = words.charAt(i);
            if (Character.isWhitespace(c)) {
                blank = !line.isEmpty();
            } else {
                line.append(blank ? " " : "").append(c);
                blank = false;
            }
        }
        boolean more = !words.substring(i).isBlank();
        if (more && Character.isHighSurrogate(line.charAt(line.length() - 1))) {
            line.setLength(line.length() - 1);
        }
        return more ? line.append(MORE).toString() : line.toString();
    }

    /** Without blanks, and signs that join nothing, at either end. */
    static String bare(String text) {
        int from = 0;
        int to = text.length();
        while (from < to && spare(text, from)) {
            from++;
        }
        while (to > from
                && (Character.isWhitespace(text.charAt(to - 1)) || ",;:-–—*([|".indexOf(text.charAt(to - 1)) >= 0)) {
            to--;
        }
        return text.substring(from, to);
    }

    /** A sign before a digit belongs to it: "-12 V". */
    private static boolean spare(String text, int i) {
        char c = text.charAt(i);
        boolean sign = ",;:.-–—*)]|>".indexOf(c) >= 0;
        boolean digitFollows = i + 1 < text.length() && Character.isDigit(text.charAt(i + 1));
        return Character.isWhitespace(c) || (sign && !digitFollows);
    }

    /** Where the sentence ends that begins at or after an offset. */
    static int sentenceEnd(String text, int from) {
        boolean begun = false;
        for (int i = from; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean mark = (c == '.' || c == '!' || c == '?' || c == ';')
                    && (i + 1 == text.length() || Character.isWhitespace(text.charAt(i + 1)));
            if (begun && (mark || c == '\n')) {
                return i;
            }
            begun |= Character.isLetterOrDigit(c);
        }
        return text.length();
    }
}
