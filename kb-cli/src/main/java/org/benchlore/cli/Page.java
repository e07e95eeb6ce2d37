package org.benchlore.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.benchlore.kb.search.SearchHit;

/** Plain text for a terminal: wrapped at 80 columns, colour only where there is one, nothing that the terminal obeys. */
final class Page {
    private static final int WIDTH = 80;
    private static final int BAR = 16;
    private static final double NEXT_TO_NOTHING = 0.01;
    private static final double NEARLY_ALL = 0.99;

    /** Stand for "set off" while a line is filled; {@link #clean} leaves none in a text. */
    private static final char MARK_ON = '\uE000';

    private static final char MARK_OFF = '\uE001';

    private static final Pattern BLANKS = Pattern.compile("\\s+");
    private static final Pattern FIGURE = Pattern.compile("[(+-]*[<>]?\\d[\\d.,]*");
    private static final Pattern SIGN = Pattern.compile("(?:%|dB|min|h|V|A|W)[).,:;]*");

    private final PrintWriter out;
    private final boolean colour;

    Page(PrintWriter out, boolean colour) {
        this.out = out;
        this.colour = colour;
    }

    void heading(String text) {
        String clean = clean(text);
        List<? extends CharSequence> lines =
                width(clean) <= WIDTH ? List.of(clean) : filled("", 2, words(clean, WIDTH - 2));
        lines.forEach(line -> out.println(style("1", line.toString())));
    }

    void blank() {
        out.println();
    }

    /** A paragraph, wrapped, every line indented. */
    void text(int indent, String text) {
        hanging(indent, indent, text);
    }

    /** A paragraph whose first line is indented less or more than the rest. */
    void hanging(int first, int rest, String text) {
        hanging(" ".repeat(first), rest, text);
    }

    /** A paragraph after a lead that keeps its columns. */
    void hanging(String lead, int rest, String text) {
        fill(clean(lead), rest, clean(text));
    }

    /** What is said beside the answer, by lines; no word is cut, since one may be a path to copy. */
    void message(String text) {
        text.lines()
                .forEach(line -> filled("", 2, words("benchlore: " + clean(line), Integer.MAX_VALUE))
                        .forEach(out::println));
    }

    private void fill(String lead, int rest, String clean) {
        filled(lead, rest, words(clean, WIDTH - rest)).forEach(line -> out.println(marks(line)));
    }

    private List<CharSequence> filled(String lead, int rest, List<String> words) {
        List<CharSequence> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(lead);
        boolean empty = true;
        for (String word : words) {
            if (!empty && width(line) + 1 + width(word) > WIDTH) {
                lines.add(line);
                line = new StringBuilder(" ".repeat(rest));
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line);
        return lines;
    }

    /** A snippet, its matched words set off: bold where there is colour, else between asterisks. */
    void marked(int indent, SearchHit.Snippet snippet) {
        String text = snippet.text();
        StringBuilder marked = new StringBuilder();
        int done = 0;
        for (SearchHit.Match match : snippet.matches()) {
            marked.append(clean(text.substring(done, match.start())))
                    .append(MARK_ON)
                    .append(clean(text.substring(match.start(), match.end())))
                    .append(MARK_OFF);
            done = match.end();
        }
        marked.append(clean(text.substring(done)));
        fill(" ".repeat(indent), indent, marked.toString());
    }

    /** A line as it is, columns kept. */
    void line(String text) {
        out.println(clean(text));
    }

    /** A warning or caution, marked so that it is seen without colour too. */
    void caution(String text) {
        hanging(2, 4, "! " + text);
    }

    void bullets(int indent, List<String> items) {
        items.forEach(item -> hanging(indent, indent + 2, "- " + item));
    }

    void numbered(int indent, List<String> items) {
        for (int i = 0; i < items.size(); i++) {
            hanging(indent, indent + 3, (i + 1) + ". " + items.get(i));
        }
    }

    static String bar(double share) {
        int full = (int) Math.round(share * BAR);
        return "#".repeat(full) + ".".repeat(BAR - full);
    }

    /** A constant in words: "no fault found". */
    static String words(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** A probability without false precision: never 0 % or 100 %. */
    static String percent(double p) {
        if (p < NEXT_TO_NOTHING) {
            return "<1 %";
        }
        return p > NEARLY_ALL ? ">99 %" : String.format(Locale.ROOT, "%.0f %%", 100 * p);
    }

    /** "between 3 % and 40 %", "under 1 %", "over 96 %": an end that rounds to nothing or to all is no end; "anywhere" without. */
    static String range(double low, double high) {
        if (low > NEARLY_ALL) {
            return "over 99 %";
        }
        if (low < NEXT_TO_NOTHING && high > NEARLY_ALL) {
            return "anywhere";
        }
        if (low < NEXT_TO_NOTHING) {
            return "under " + (high < NEXT_TO_NOTHING ? "1 %" : percent(high));
        }
        return high > NEARLY_ALL ? "over " + percent(low) : "between " + percent(low) + " and " + percent(high);
    }

    static String decibans(double decibans) {
        return String.format(Locale.ROOT, "%+.1f dB", decibans);
    }

    /** The words, a figure and its sign as one; one that is longer than a line is cut. */
    private static List<String> words(String text, int longest) {
        List<String> words = new ArrayList<>();
        for (String word : BLANKS.split(text.strip(), 0)) {
            String last = words.isEmpty() ? "" : words.get(words.size() - 1);
            if (SIGN.matcher(word).matches() && FIGURE.matcher(last).matches()) {
                words.set(words.size() - 1, last + " " + word);
                continue;
            }
            String left = word;
            while (left.codePointCount(0, left.length()) > longest) {
                int cut = left.offsetByCodePoints(0, longest);
                words.add(left.substring(0, cut));
                left = left.substring(cut);
            }
            words.add(left);
        }
        return words;
    }

    private int width(CharSequence text) {
        return (int) text.chars()
                .filter(c -> !colour || (c != MARK_ON && c != MARK_OFF))
                .count();
    }

    private String marks(CharSequence line) {
        return line.toString()
                .replace(String.valueOf(MARK_ON), colour ? "\u001b[1m" : "*")
                .replace(String.valueOf(MARK_OFF), colour ? "\u001b[0m" : "*");
    }

    private String style(String code, String text) {
        return colour ? "\u001b[" + code + "m" + text + "\u001b[0m" : text;
    }

    /** Control, format and private-use characters out of notes and packs must not reach the terminal. */
    static String clean(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            int type = Character.getType(c);
            boolean harmful = type == Character.CONTROL
                    || type == Character.FORMAT
                    || type == Character.SURROGATE
                    || type == Character.PRIVATE_USE
                    || type == Character.LINE_SEPARATOR
                    || type == Character.PARAGRAPH_SEPARATOR;
            clean.appendCodePoint(harmful ? (c == '\n' || c == '\t' ? ' ' : 0xFFFD) : c);
        });
        return clean.toString();
    }
}
