package org.benchlore.kb.reading;

import com.google.common.base.Splitter;
import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * The log of a unit whose pack describes none, by what logs have in common: lines that open with a time, with a word such as
 * "error" or with a code, a table with a column of codes, counters by their usual names. Linear time (RE2).
 */
final class UnlistedLog implements LogForm {
    private static final int LONGEST_LINE = 512;

    /** Lines looked at to tell whether a text is a log. */
    private static final int SAMPLE = 100;

    /** A line with more words behind its time is a diary's. */
    private static final int MOST_WORDS = 8;

    /** A line of no more words is a counter's alone. */
    private static final int FEW_WORDS = 4;

    /** Words from the time to the code, or from "error". */
    private static final int REACH = 4;

    private static final Pattern CODE = Pattern.compile("0x[0-9A-Fa-f]{1,8}|[A-Za-z]{1,5}-?\\d{1,5}[A-Za-z]?");

    /** Mere figures are a code where a word in front says so. */
    private static final Pattern FIGURES = Pattern.compile("[0-9A-F]{2,5}|\\d{1,2}-\\d{1,3}");

    private static final Words LEVELS =
            Words.spaced("err error errors warn warning fatal fault flt alarm alm msg message code ecode"
                    + " event entry fail failed bad crit critical fehler hist history");

    /** What may number the line that a code stands in. */
    private static final Words SERIALS = Words.spaced("err error entry event slot last message msg no nr");

    /** Letters that number something else. */
    private static final Words NO_CODES =
            Words.spaced("usb hdmi ch rev ver v slot page pass step track disc day week run try port"
                    + " line core bank pad no nr t ts seq ev boot x");

    private static final Words CODE_HEADS = Words.spaced("code codes ecode err error fault");
    private static final Words COUNT_HEADS = Words.spaced("cnt count counts n times number");
    private static final Pattern KEYED =
            Pattern.compile("(?i)\"?\\b(?:code|ecode|err|error|fault|e)\"?[=:]\"?(?P<code>[A-Za-z0-9-]{1,12})");
    private static final Pattern TIMES =
            Pattern.compile("(?i)\\b[x×] ?(\\d{1,6})\\b|\\b(\\d{1,6}) ?(?:x|times)\\b|\\.{3,} ?(\\d{1,6})$"
                    + "|\\((\\d{1,6})\\)|\"(?:n|count|cnt)\" ?: ?(\\d{1,6})");
    private static final Splitter LINES = Splitter.on('\n');

    /** Columns of a table. */
    private record Table(char separator, int code, int count) {}

    private final boolean log;

    /** That of the last heading. */
    private @Nullable Table table;

    private UnlistedLog(boolean log) {
        this.log = log;
    }

    /** The form of a text; of one that is no log only the counters are read. */
    static UnlistedLog of(String text) {
        int lines = 0;
        int coded = 0;
        int others = 0;
        for (String line : text.indexOf('\n') < 0 ? List.<String>of() : LINES.split(text)) {
            if (lines++ == SAMPLE) {
                break;
            }
            if (line.length() > LONGEST_LINE) {
                continue;
            }
            if (line.chars().noneMatch(Character::isDigit)) {
                coded += head(line) == null ? 0 : 2;
                continue;
            }
            Optional<Stamp> stamp = Stamp.of(line);
            coded += marks(line, stamp).isEmpty() ? 0 : 1;
            others += stamp.isPresent() || !NamedCounters.in(line).isEmpty() ? 1 : 0;
        }
        return new UnlistedLog(coded > 0 && coded + others > 1);
    }

    @Override
    public boolean none() {
        return !log;
    }

    @Override
    public Optional<Hit> match(String line) {
        if (line.isBlank() || line.length() > LONGEST_LINE) {
            return Optional.empty();
        }
        List<Count> counts = NamedCounters.in(line);
        Optional<Stamp> stamp = log ? Stamp.of(line) : Optional.empty();
        List<Mark> marks = log ? logged(line, stamp) : List.of();
        int words = cells(line, stamp.map(Stamp::end).orElse(0)).size();
        boolean entry = stamp.isPresent() && words <= MOST_WORDS;
        if (!entry && marks.isEmpty() && counts.isEmpty()) {
            return Optional.empty();
        }
        boolean row = table != null && !marks.isEmpty();
        boolean counter = log && !counts.isEmpty() && words <= FEW_WORDS;
        return Optional.of(new Hit(
                stamp.flatMap(Stamp::time), stamp.flatMap(Stamp::clock), marks, counts, !entry && !row && !counter));
    }

    private List<Mark> logged(String line, Optional<Stamp> stamp) {
        Table head = head(line);
        if (head != null) {
            table = head;
            return List.of();
        }
        return table == null ? marks(line, stamp) : row(line, table);
    }

    /** The codes of a line of its own. */
    private static List<Mark> marks(String line, Optional<Stamp> stamp) {
        Matcher keyed = KEYED.matcher(line);
        if (keyed.find() && keyed.group("code").chars().anyMatch(Character::isDigit)) {
            int times = times(line);
            return times == 0
                    ? List.of()
                    : List.of(new Mark(new Part(keyed.group("code"), keyed.start("code")), times));
        }
        List<Part> cells = cells(line, stamp.map(Stamp::end).orElse(0));
        if (stamp.isEmpty() && cells.size() > MOST_WORDS) {
            return List.of();
        }
        List<Mark> marks = codes(line, cells, stamp.isPresent());
        // "A001 13:40:02 KEY"
        return marks.isEmpty() && stamp.isPresent()
                ? codes(line, cells(line.substring(0, stamp.get().start()), 0), true)
                : marks;
    }

    private static List<Mark> codes(String line, List<Part> cells, boolean stamped) {
        List<Mark> marks = new ArrayList<>();
        boolean called = false;
        for (int i = 0; i < cells.size() && (i <= REACH || !marks.isEmpty()); i++) {
            String cell = cells.get(i).text();
            String word = cell.toLowerCase(Locale.ROOT);
            if (LEVELS.contains(word)) {
                called = true;
                // "err 1 : LMP7"
                boolean serial = SERIALS.contains(word)
                        && i + 2 < cells.size()
                        && figures(cells.get(i + 1).text())
                        && CODE.matches(cells.get(i + 2).text());
                i += serial ? 1 : 0;
                continue;
            }
            boolean code = code(cell) || (called && FIGURES.matches(cell));
            boolean alone = i == 0 && (cells.size() <= 2 || TIMES.matcher(line).find());
            if (code && (stamped || (called && i <= REACH) || alone || !marks.isEmpty())) {
                marks.add(new Mark(cells.get(i), 1));
            } else if (!marks.isEmpty()) {
                break;
            }
        }
        if (marks.size() == 1) {
            int times = times(line);
            return times == 0 ? List.of() : List.of(new Mark(marks.get(0).part(), times));
        }
        return marks;
    }

    private static boolean code(String cell) {
        if (!CODE.matches(cell)) {
            return false;
        }
        int letters = 0;
        while (letters < cell.length() && Character.isLetter(cell.charAt(letters))) {
            letters++;
        }
        return !NO_CODES.contains(cell.substring(0, letters).toLowerCase(Locale.ROOT));
    }

    private static boolean figures(String cell) {
        return cell.chars().allMatch(Character::isDigit);
    }

    private static int times(String line) {
        Matcher matcher = TIMES.matcher(line);
        if (matcher.find()) {
            for (int i = 1; i <= matcher.groupCount(); i++) {
                if (matcher.group(i) != null) {
                    return Integer.parseInt(matcher.group(i));
                }
            }
        }
        return 1;
    }

    private static @Nullable Table head(String line) {
        char separator = separator(line);
        List<Part> cells = columns(line, separator);
        int code = -1;
        int count = -1;
        for (int i = 0; i < cells.size(); i++) {
            String word = cells.get(i).text().toLowerCase(Locale.ROOT);
            if (word.chars().anyMatch(Character::isDigit)) {
                return null;
            }
            code = code < 0 && CODE_HEADS.contains(word) ? i : code;
            count = count < 0 && COUNT_HEADS.contains(word) ? i : count;
        }
        boolean columns = separator == ' ' ? cells.size() > 2 && count >= 0 : cells.size() > 1;
        return code >= 0 && columns ? new Table(separator, code, count) : null;
    }

    private static List<Mark> row(String line, Table table) {
        List<Part> cells = columns(line, table.separator);
        if (cells.size() <= Math.max(table.code, table.count)) {
            return List.of();
        }
        Part code = cells.get(table.code);
        boolean written =
                code.text().chars().anyMatch(Character::isDigit) && code.text().length() <= 12;
        String count = table.count < 0 ? "1" : cells.get(table.count).text();
        if (!written || !figures(count) || count.length() > 6 || count.isEmpty()) {
            return List.of();
        }
        int times = Integer.parseInt(count);
        return times == 0 ? List.of() : List.of(new Mark(code, times));
    }

    private static char separator(String line) {
        for (char c : new char[] {'|', ';', '\t', ','}) {
            if (line.indexOf(c) >= 0) {
                return c;
            }
        }
        return ' ';
    }

    /** The cells of a table's line; of columns parted by blanks no cell is empty. */
    private static List<Part> columns(String line, char separator) {
        if (separator == ' ') {
            return cells(line, 0);
        }
        List<Part> columns = new ArrayList<>();
        int from = line.startsWith("|") ? 1 : 0;
        while (from < line.length()) {
            int end = line.indexOf(separator, from);
            int to = end < 0 ? line.length() : end;
            String cell = line.substring(from, to);
            columns.add(new Part(
                    cell.strip(), from + (cell.length() - cell.stripLeading().length())));
            from = to + 1;
        }
        return columns;
    }

    /** Words and figures without the punctuation around them. */
    private static List<Part> cells(String line, int from) {
        List<Part> cells = new ArrayList<>();
        int i = from;
        while (i < line.length()) {
            int start = i;
            while (i < line.length() && inside(line.charAt(i))) {
                i++;
            }
            if (i > start) {
                cells.add(new Part(line.substring(start, i), start));
            } else {
                i++;
            }
        }
        return cells;
    }

    private static boolean inside(char c) {
        return Character.isLetterOrDigit(c) || "-_/=#".indexOf(c) >= 0;
    }
}
