package org.benchlore.kb.importing;

import com.google.common.base.CharMatcher;
import java.time.LocalDate;
import java.util.Optional;

/**
 * One line of a diary, its marks taken off.
 *
 * @param number from 1
 * @param kind what its marks say it is
 * @param level of a heading, from 1; of a bullet, how far it is indented; else 0
 * @param text what is left without marks, date and label; may be empty
 * @param date the day it begins with, or that stands in a heading
 * @param day the words of a day it begins with whose year is not known, else empty
 * @param noSuchDay whether it begins with a date that no calendar has
 * @param field what a label in front of it says it tells; {@link ImportField#NOTES} without one
 * @param labelled whether there is such a label
 */
record DiaryLine(
        long number,
        Kind kind,
        int level,
        String text,
        Optional<LocalDate> date,
        String day,
        boolean noSuchDay,
        ImportField field,
        boolean labelled) {
    enum Kind {
        BLANK,
        SEPARATOR,
        HEADING,
        BULLET,
        TEXT
    }

    private static final int LONGEST_LABEL = 40;

    /** A date further back in a heading is not the heading's. */
    private static final int HEADING_DATE = 80;

    private static final int DEEPEST_HEADING = 6;
    private static final CharMatcher HEADING_END = CharMatcher.is('#').or(CharMatcher.whitespace());

    /**
     * Looks at a line.
     *
     * @param underlined whether the next line underlines this one, which makes it a heading
     */
    static DiaryLine of(long number, String line, DayScan days, boolean underlined) {
        String text = unquoted(line);
        int indent = indent(text);
        text = text.strip();
        if (text.isEmpty()) {
            return plain(number, Kind.BLANK, 0, "");
        }
        if (separates(text)) {
            return plain(number, Kind.SEPARATOR, 0, text);
        }
        int hashes = hashes(text);
        if (hashes > 0 || underlined) {
            String title = hashes > 0 ? HEADING_END.trimTrailingFrom(text.substring(hashes)) : text;
            return heading(number, hashes > 0 ? hashes : 2, unmarked(title).strip(), days);
        }
        text = unmarked(text).strip();
        if (text.isEmpty()) {
            return plain(number, Kind.BLANK, 0, "");
        }
        int bullet = days.at(text, 0).isPresent() ? 0 : bullet(text);
        String content = text.substring(bullet).strip();
        return content(number, bullet > 0 ? Kind.BULLET : Kind.TEXT, indent, content, days);
    }

    private static DiaryLine plain(long number, Kind kind, int level, String text) {
        return new DiaryLine(number, kind, level, text, Optional.empty(), "", false, ImportField.NOTES, false);
    }

    private static DiaryLine heading(long number, int level, String title, DayScan days) {
        for (int at = 0; at < Math.min(title.length(), HEADING_DATE); at++) {
            boolean begins = at == 0 || !Character.isLetterOrDigit(title.charAt(at - 1));
            Optional<DayScan.Day> found = begins ? days.at(title, at) : Optional.empty();
            if (found.isPresent()) {
                String rest = title.substring(0, found.get().start()) + " "
                        + title.substring(found.get().end());
                return new DiaryLine(
                        number,
                        Kind.HEADING,
                        level,
                        Wording.bare(rest.replace("()", " ")),
                        found.get().date(),
                        unknown(title, found.get()),
                        !found.get().exists(),
                        ImportField.NOTES,
                        false);
            }
        }
        String label = title.endsWith(":") ? title.substring(0, title.length() - 1) : title;
        Optional<ImportField> field = MappingGuess.field(label);
        return new DiaryLine(
                number,
                Kind.HEADING,
                level,
                title,
                Optional.empty(),
                "",
                false,
                field.orElse(ImportField.NOTES),
                field.isPresent());
    }

    /** The words of a day that exists and has no year. */
    private static String unknown(String text, DayScan.Day day) {
        return day.exists() && day.date().isEmpty()
                ? text.substring(day.start(), day.end()).strip()
                : "";
    }

    private static DiaryLine content(long number, Kind kind, int indent, String text, DayScan days) {
        Optional<DayScan.Day> found = days.at(text, 0);
        String rest = found.map(f -> Wording.bare(text.substring(f.end()))).orElse(text);
        int colon = rest.indexOf(':');
        Optional<ImportField> label =
                colon > 0 && colon <= LONGEST_LABEL ? MappingGuess.field(rest.substring(0, colon)) : Optional.empty();
        if (label.filter(ImportField.CLOSED::equals).isPresent()) {
            return closed(number, kind, indent, rest.substring(colon + 1).strip(), days);
        }
        return new DiaryLine(
                number,
                kind,
                indent,
                label.isPresent() ? rest.substring(colon + 1).strip() : rest,
                found.flatMap(DayScan.Day::date),
                found.map(day -> unknown(text, day)).orElse(""),
                found.filter(day -> !day.exists()).isPresent(),
                label.orElse(ImportField.NOTES),
                label.isPresent());
    }

    /** "Out: 5 Nov 2025, paid": words behind the day say how it ended. */
    private static DiaryLine closed(long number, Kind kind, int indent, String text, DayScan days) {
        Optional<DayScan.Day> found = days.at(text, 0);
        String rest = found.map(day -> Wording.bare(text.substring(day.end()))).orElse(text);
        boolean words = rest.chars().anyMatch(Character::isLetter);
        return new DiaryLine(
                number,
                kind,
                indent,
                words ? rest : text,
                found.flatMap(DayScan.Day::date),
                "",
                false,
                words ? ImportField.OUTCOME : ImportField.CLOSED,
                true);
    }

    /** The same, telling of something else. */
    DiaryLine about(ImportField other) {
        return new DiaryLine(number, kind, level, text, date, day, noSuchDay, other, labelled);
    }

    boolean is(Kind other) {
        return kind == other;
    }

    /** Whether it begins with a day, its year known or not. */
    boolean dated() {
        return date.isPresent() || !day.isEmpty();
    }

    /** The same with a day of unknown year among its words, where they stay with those of another day. */
    DiaryLine wordy() {
        return day.isEmpty()
                ? this
                : new DiaryLine(number, kind, level, day + " " + text, date, "", noSuchDay, field, labelled);
    }

    /** Whether it gives nothing but a day. */
    boolean dayOnly() {
        return dated() && !labelled && text.chars().noneMatch(Character::isLetterOrDigit);
    }

    /** Whether a raw line underlines the one before. */
    static boolean underlines(String line) {
        String text = line.strip();
        return text.length() >= 3 && (text.charAt(0) == '=' || text.charAt(0) == '-') && separates(text);
    }

    private static boolean separates(String text) {
        char mark = text.charAt(0);
        int marks = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c != mark && c != ' ') {
                return false;
            }
            marks += c == mark ? 1 : 0;
        }
        return marks >= 3 && "-=*_~#+.".indexOf(mark) >= 0;
    }

    private static int hashes(String text) {
        int n = 0;
        while (n < text.length() && text.charAt(n) == '#') {
            n++;
        }
        return n <= DEEPEST_HEADING && n < text.length() && text.charAt(n) == ' ' ? n : 0;
    }

    private static String unquoted(String line) {
        String text = line.stripTrailing();
        int from = 0;
        while (text.startsWith("> ", from)) {
            from += 2;
        }
        return text.startsWith(">", from) && from + 1 == text.length() ? "" : text.substring(from);
    }

    private static int indent(String text) {
        int indent = 0;
        for (int i = 0; i < text.length() && Character.isWhitespace(text.charAt(i)); i++) {
            indent += text.charAt(i) == '\t' ? 4 : 1;
        }
        return indent;
    }

    /** Without the stars that make words bold. */
    private static String unmarked(String text) {
        return text.replace("**", "");
    }

    /** How long the mark of a bullet is, its blank included; 0 without one. */
    private static int bullet(String text) {
        int at = 0;
        if ("-*+•–".indexOf(text.charAt(0)) >= 0) {
            at = 1;
        } else {
            while (at < 3 && at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
                at++;
            }
            boolean numbered = at > 0 && at < text.length() && (text.charAt(at) == '.' || text.charAt(at) == ')');
            at = numbered ? at + 1 : 0;
        }
        if (at == 0 || at >= text.length() || text.charAt(at) != ' ') {
            return 0;
        }
        String rest = text.substring(at + 1);
        boolean box = rest.startsWith("[ ] ") || rest.startsWith("[x] ") || rest.startsWith("[X] ");
        return at + 1 + (box ? 4 : 0);
    }
}
