package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.benchlore.kb.cases.ImportProblem;

/**
 * Rows of a table after RFC 4180: fields in quotes may hold separators, line breaks and doubled quotes. Any of LF, CR LF
 * and CR ends a row; a quote inside a field that does not begin with one is a plain character, as spreadsheets read it. A
 * row that breaks the rules is reported and reading goes on with the next line.
 */
final class CsvReader {
    /** Longest field, in UTF-16 units. */
    static final int LONGEST_FIELD = 1 << 16;

    /** Most fields in a row. */
    static final int MOST_FIELDS = 256;

    /** Bad rows that run over several lines, each of which is read again from its second line on. */
    private static final int MOST_RUNAWAY = 1000;

    /** A row and the line on which it begins, from 1. Blank lines are no rows. */
    record Row(long line, List<String> fields) {
        Row {
            fields = List.copyOf(fields);
        }
    }

    private final String text;
    private final char separator;
    private final String source;
    private final Consumer<ImportProblem> problems;
    private int at;
    private long line = 1;
    private int runaway;

    CsvReader(String text, char separator, String source, Consumer<ImportProblem> problems) {
        this.text = text;
        this.separator = separator;
        this.source = source;
        this.problems = problems;
    }

    /** The next good row; empty at the end. */
    Optional<Row> next() {
        while (at < text.length()) {
            int start = at;
            long startLine = line;
            List<String> fields = new ArrayList<>();
            String wrong = row(fields);
            if (wrong.isEmpty()) {
                if (fields.size() > 1 || !fields.get(0).isBlank()) {
                    return Optional.of(new Row(startLine, fields));
                }
            } else {
                problems.accept(new ImportProblem(
                        source, startLine, wrong, "put the field in quotes and double the quotes inside it"));
                runaway += line > startLine ? 1 : 0;
                at = start;
                line = startLine;
                skipLine();
                if (runaway > MOST_RUNAWAY) {
                    problems.accept(new ImportProblem(
                            source,
                            line,
                            "too many bad rows run over several lines; the rest was not read",
                            "mend the first ones"));
                    at = text.length();
                }
            }
        }
        return Optional.empty();
    }

    /** @return what is wrong, or empty */
    private String row(List<String> fields) {
        while (true) {
            StringBuilder field = new StringBuilder();
            String wrong = at < text.length() && text.charAt(at) == '"' ? quoted(field) : plain(field);
            if (!wrong.isEmpty()) {
                return wrong;
            }
            fields.add(field.toString());
            if (fields.size() > MOST_FIELDS) {
                return "the row has more than " + MOST_FIELDS + " fields";
            }
            if (at >= text.length()) {
                return "";
            }
            if (text.charAt(at) == separator) {
                at++;
            } else {
                lineBreak();
                return "";
            }
        }
    }

    private String plain(StringBuilder field) {
        int from = at;
        while (at < text.length() && text.charAt(at) != separator && !breaks(at)) {
            at++;
        }
        if (at - from > LONGEST_FIELD) {
            return tooLong();
        }
        field.append(text, from, at);
        return "";
    }

    private String quoted(StringBuilder field) {
        at++;
        while (at < text.length()) {
            char c = text.charAt(at);
            if (field.length() > LONGEST_FIELD) {
                return tooLong();
            }
            if (c != '"') {
                at = breaks(at) ? lineBreak() : at + 1;
                field.append(c == '\r' ? '\n' : c);
            } else if (at + 1 < text.length() && text.charAt(at + 1) == '"') {
                field.append('"');
                at += 2;
            } else {
                at++;
                boolean ends = at >= text.length() || text.charAt(at) == separator || breaks(at);
                return ends ? "" : "something follows the closing quote of a field";
            }
        }
        return "a quote that opens a field is never closed";
    }

    static String tooLong() {
        return "a field is longer than " + LONGEST_FIELD + " characters";
    }

    private boolean breaks(int i) {
        return text.charAt(i) == '\n' || text.charAt(i) == '\r';
    }

    /** Steps over the line break at hand. @return where the next line begins */
    private int lineBreak() {
        boolean two = text.charAt(at) == '\r' && at + 1 < text.length() && text.charAt(at + 1) == '\n';
        at += two ? 2 : 1;
        line++;
        return at;
    }

    private void skipLine() {
        while (at < text.length() && !breaks(at)) {
            at++;
        }
        if (at < text.length()) {
            lineBreak();
        }
    }
}
