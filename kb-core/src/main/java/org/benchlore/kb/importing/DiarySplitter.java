package org.benchlore.kb.importing;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchlore.kb.cases.ImportProblem;
import org.benchlore.kb.importing.CaseTeller.Vocabulary;
import org.benchlore.kb.importing.DiaryLine.Kind;
import org.jspecify.annotations.Nullable;

/**
 * Splits a diary into records. Headings, separators, dated lines and repeated labels begin a record; a line that only
 * goes on with work does not. Days and devices named by a heading hold for what stands under it.
 */
final class DiarySplitter {
    /** Longest record, in UTF-16 units. */
    static final int LONGEST_RECORD = 1 << 16;

    private static final int NO_HEADING = 7;

    /** A year is taken from a later day only so many months back. */
    private static final int MONTHS_BACK = 6;

    /** Days without a year where none is known: fewer may be anything. */
    private static final int SEVERAL = 2;

    /** Days that a case waits for a line further down. */
    private static final int LONGEST_WAIT = 60;

    /** Cases that wait for a line further down. */
    private static final int MOST_WAITING = 256;

    private static final Pattern COUNTED = Pattern.compile("\\A#(\\d{1,4}) ");

    /** Lines marked so from which on they count. */
    private static final int LEAST_COUNTED = 3;

    /** What a heading said for what stands under it; {@code day} as in {@link DiaryLine}. */
    private record Context(Optional<LocalDate> date, String day, String title) {}

    private enum How {
        DATED,
        PARAGRAPH,
        /** As the layout of the diary has it, or else behind a bullet. */
        LAID_OUT
    }

    private final List<String> lines;
    private final ImportSettings settings;
    private final Vocabulary vocabulary;
    private final String source;
    private final Consumer<ImportProblem> problems;
    private final List<DiaryLine> parsed;
    private final Deque<RawRecord> ready = new ArrayDeque<>();
    private final TreeMap<Integer, Context> contexts = new TreeMap<>();
    /** Cases without an ending by what tells their units from others, the eldest first: a line further down may go on. */
    private final Map<String, DiaryRecord> waiting = new LinkedHashMap<>();

    private @Nullable DiaryRecord current;
    private boolean starters;
    private final Optional<Layout> layout;
    /** The first line that gives a day; 0 without one. */
    private long firstDay;

    private int at;
    private boolean gap;
    private Layout.Above above = Layout.Above.NOTHING;
    private int bulletIndent;

    DiarySplitter(
            String text,
            ImportSettings settings,
            Vocabulary vocabulary,
            String source,
            Consumer<ImportProblem> problems) {
        this.lines = counted(text.lines().toList());
        this.settings = settings;
        this.vocabulary = vocabulary;
        this.source = source;
        this.problems = problems;
        this.parsed = parsed();
        this.layout = layout();
    }

    /** Looks at the first lines that tell something, each for itself. */
    private Optional<Layout> layout() {
        List<Layout.Spot> spots = new ArrayList<>();
        Layout.Above over = Layout.Above.NOTHING;
        boolean worked = false;
        for (DiaryLine line : parsed) {
            if (spots.size() == Layout.SAMPLE) {
                break;
            }
            if (laid(line)) {
                Glance glance = glance(line.text(), Clause.of(line.text()), worked);
                spots.add(Layout.Spot.of(line, raw(line), over, glance));
                worked = glance.worked();
            }
            over = over.then(line);
        }
        return Layout.of(spots);
    }

    /** Whether nothing but its place and its words say what a line is about. */
    private static boolean laid(DiaryLine line) {
        return (line.is(Kind.TEXT) || line.is(Kind.BULLET)) && !line.labelled() && !line.dayOnly();
    }

    private String raw(DiaryLine line) {
        return lines.get((int) line.number() - 1);
    }

    /** "#1", "#2", "#3" at the beginning of lines count them and are no tags; they become "1)", "2)", "3)". */
    private static List<String> counted(List<String> lines) {
        int next = 1;
        for (String line : lines) {
            Matcher mark = COUNTED.matcher(line);
            if (mark.lookingAt() && Integer.parseInt(mark.group(1)) != next++) {
                return lines;
            }
        }
        return next <= LEAST_COUNTED
                ? lines
                : lines.stream()
                        .map(line -> COUNTED.matcher(line).replaceFirst("$1) "))
                        .toList();
    }

    private List<DiaryLine> parsed() {
        List<DiaryLine> parsed = new ArrayList<>(lines.size());
        boolean above = false;
        DayScan days = beginning();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            boolean underlined = !above && i + 1 < lines.size() && DiaryLine.underlines(lines.get(i + 1));
            if (line.length() > LONGEST_RECORD) {
                report(i + 1, "the line is longer than " + LONGEST_RECORD + " characters", "split it");
                line = "";
            }
            DiaryLine made =
                    DiaryLine.of(i + 1, line, days, underlined && !line.isBlank() && !DiaryLine.underlines(line));
            days = after(made, i == 0 || lines.get(i - 1).isBlank(), days);
            if (firstDay == 0 && (made.dated() || (made.labelled() && made.field() == ImportField.DATE))) {
                firstDay = made.number();
            }
            above = made.is(Kind.TEXT) || made.is(Kind.BULLET);
            starters |= made.is(Kind.HEADING) || made.is(Kind.SEPARATOR) || made.dated() || begins(made);
            parsed.add(made);
        }
        return parsed;
    }

    /**
     * How days are read at the beginning: without a year they are of that which leads to the first full date, else of that
     * given for undated cases, else of none that is known.
     */
    private DayScan beginning() {
        DayScan unknown = new DayScan(settings.dates(), null, true);
        int yearless = 0;
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            DiaryLine made = DiaryLine.of(i + 1, line.length() > LONGEST_RECORD ? "" : line, unknown, false);
            if (made.date().isPresent()) {
                return new DayScan(settings.dates(), made.date().get().minusMonths(MONTHS_BACK), false);
            }
            yearless += made.dated() ? 1 : 0;
        }
        LocalDate year = settings.undated().map(day -> day.withDayOfYear(1)).orElse(null);
        return new DayScan(settings.dates(), year, yearless >= SEVERAL);
    }

    /** How days are read below a line; the year of a title goes on, too. */
    private DayScan after(DiaryLine line, boolean apart, DayScan days) {
        LocalDate above = line.date().orElse(days.above());
        if (!line.dated() && (line.is(Kind.HEADING) || (line.is(Kind.TEXT) && apart))) {
            OptionalInt year = DiaryTitle.year(line.text());
            boolean said = firstDay > 0 && above != null && above.getYear() == year.orElse(0);
            above = year.isPresent() && !said ? LocalDate.of(year.getAsInt(), 1, 1) : above;
        }
        return new DayScan(days.order(), above, days.yearless());
    }

    /** The next record, in order of line but for those that waited for more; empty at the end. */
    Optional<RawRecord> next() {
        while (ready.isEmpty() && at < parsed.size()) {
            int table = DiaryTable.end(lines, at);
            if (table > at) {
                table(table);
                continue;
            }
            int i = at++;
            boolean underline = i > 0 && parsed.get(i - 1).is(Kind.HEADING) && DiaryLine.underlines(lines.get(i));
            if (!underline || lines.get(i - 1).strip().startsWith("#")) {
                take(parsed.get(i));
            }
        }
        if (ready.isEmpty()) {
            finish();
            waiting.values().forEach(this::close);
            waiting.clear();
        }
        return Optional.ofNullable(ready.poll());
    }

    /** The rows of a table up to a line; the words over it introduce them. */
    private void table(int end) {
        DiaryRecord over = current;
        if (over != null && (over.headingOnly() || (over.plain() && DiaryTitle.is(over.opening())))) {
            if (over.headed()) {
                context(over);
            }
            over.preamble();
        }
        finish();
        try {
            for (RawRecord row : DiaryTable.records(lines, at, end, vocabulary, settings.dates(), source, problems)) {
                ready.add(new RawRecord(row.line(), row.date().or(this::day), row.parts(), false));
            }
        } catch (BadImportException e) {
            parsed.subList(at, end).forEach(this::take);
        }
        at = end;
        gap = false;
        above = Layout.Above.NOTHING;
    }

    private static boolean begins(DiaryLine line) {
        return line.labelled()
                && (line.field() == ImportField.DATE
                        || line.field() == ImportField.UNIT
                        || line.field() == ImportField.DEVICE);
    }

    private void take(DiaryLine line) {
        if (line.noSuchDay()) {
            report(line.number(), "there is no such day as this line begins with", "correct the date");
            finish();
            current = new DiaryRecord(line.number(), Optional.empty(), "", false);
            current.spoil();
            return;
        }
        switch (line.kind()) {
            case BLANK -> {
                gap = true;
                if (current != null) {
                    current.paragraph();
                }
            }
            case SEPARATOR -> finish();
            case HEADING -> heading(line);
            case BULLET, TEXT -> content(line);
        }
        gap = line.is(Kind.BLANK);
        above = above.then(line);
    }

    private void heading(DiaryLine line) {
        DiaryRecord record = current;
        if (line.labelled() && record != null) {
            record.section(line.field());
            return;
        }
        if (record != null && record.level() < line.level()) {
            if (record.headingOnly()) {
                context(record);
                current = null;
            } else if (!line.dated() && !named(line.text())) {
                record.add(line, ImportField.NOTES, Optional.empty(), Clause.of(line.text()));
                return;
            } else {
                context(record);
                record.preamble();
            }
        }
        finish();
        contexts.tailMap(line.level(), true).clear();
        if (line.dayOnly()) {
            contexts.put(line.level(), new Context(line.date(), line.day(), ""));
            return;
        }
        begin(line, true).title(line);
    }

    private boolean named(String title) {
        return glance(title, Clause.of(title), false).named();
    }

    private boolean names(String title) {
        Glance glance = glance(title, Clause.of(title), false);
        return glance.named() || glance.naming().names();
    }

    private Glance glance(String text, List<Clause> clauses, boolean worked) {
        return Glance.at(text, clauses, worked, vocabulary);
    }

    /** A title and what stands below it up to the first day introduce cases; a heading's words hold for what is under it. */
    private void introduction(DiaryLine line) {
        DiaryRecord record = current;
        boolean day = line.dated() || (line.labelled() && line.field() == ImportField.DATE);
        if (record != null
                && (day || titleAlone(record))
                && record.plain()
                && DiaryTitle.is(record.opening())
                && !record.named()
                && !named(record.opening())) {
            if (record.headed()) {
                context(record);
            }
            record.preamble();
            finish();
        }
    }

    /** Whether a record is one line with a blank one below it. */
    private boolean titleAlone(DiaryRecord record) {
        int below = (int) record.line();
        return gap && below < parsed.size() && parsed.get(below).is(Kind.BLANK);
    }

    private void content(DiaryLine read) {
        boolean unit = read.labelled()
                && read.field() == ImportField.UNIT
                && vocabulary.units().describes(read.text());
        DiaryLine line = unit ? read.about(ImportField.DEVICE) : read;
        introduction(line);
        if (line.dayOnly()) {
            DiaryRecord record = current;
            if (record != null && record.headed() && record.date().isPresent()) {
                record.day(line);
                return;
            }
            finish();
            contexts.tailMap(NO_HEADING, true).clear();
            contexts.put(NO_HEADING, new Context(line.date(), line.day(), ""));
            return;
        }
        if (line.labelled() && line.field() == ImportField.DATE) {
            label(line);
            return;
        }
        DiaryRecord record = current;
        List<Clause> clauses = Clause.of(line.text());
        if (record == null) {
            start(line, clauses, glance(line.text(), clauses, false));
            return;
        }
        if (line.labelled()) {
            if (begins(line) || line.field() == ImportField.COMPLAINT) {
                boolean again = record.has(line.field()) && !record.bare() && (!record.headed() || record.ended());
                if (again) {
                    start(line, clauses, glance(line.text(), clauses, false));
                    return;
                }
            }
            add(record, line, line.field(), clauses);
            return;
        }
        boolean top = line.is(Kind.BULLET) && (record.bullets() == 0 || line.level() <= bulletIndent);
        How how = line.dated() ? How.DATED : gap && !top ? How.PARAGRAPH : How.LAID_OUT;
        if (line.is(Kind.BULLET) && record.bullets() == 0) {
            bulletIndent = line.level();
        }
        Glance glance = glance(line.text(), clauses, record.worked());
        boolean place = opens(line, above, glance).orElse(line.dated() || top || gap);
        if (place && record.headingOnly() && glance.naming().names() && !names(record.title())) {
            context(record); // "June" over cases
            record.preamble();
            start(line, clauses, glance);
        } else if (place
                && begins(glance, place && layout.isPresent() ? naming(line, glance) : glance.naming(), how, record)) {
            // "ok" ended the case before, if there was work before it; here it may say something else
            boolean sure = !glance.ended() || glance.worked() || !record.worked();
            start(line, clauses, sure ? glance : glance(line.text(), clauses, false));
        } else {
            add(record, line, ImportField.NOTES, clauses);
            record.notice(glance);
        }
    }

    private Optional<Boolean> opens(DiaryLine line, Layout.Above over, Glance glance) {
        return layout.map(way -> way.opens(Layout.Spot.of(line, raw(line), over, glance)));
    }

    /** What a line where a case may begin names, or else one of the next: an owner or a day may stand above the unit. */
    private Naming naming(DiaryLine line, Glance glance) {
        if (glance.naming().names() || glance.goesOn()) {
            return glance.naming();
        }
        return below(line).stream()
                .map(Glance::naming)
                .filter(Naming::names)
                .findFirst()
                .orElse(glance.naming());
    }

    /** What the next lines say that belong to the piece that a line begins. */
    private List<Glance> below(DiaryLine line) {
        List<Glance> below = new ArrayList<>();
        int end = (int) Math.min(parsed.size(), line.number() - 1 + Layout.HEAD);
        for (int i = (int) line.number(); i < end && laid(parsed.get(i)); i++) {
            DiaryLine next = parsed.get(i);
            Glance glance = glance(next.text(), Clause.of(next.text()), false);
            if (opens(next, Layout.Above.TEXT, glance).orElse(false)) {
                break;
            }
            below.add(glance);
        }
        return below;
    }

    private static void add(DiaryRecord record, DiaryLine line, ImportField field, List<Clause> clauses) {
        DiaryLine wordy = line.wordy();
        record.add(wordy, field, line.date(), line.day().isEmpty() ? clauses : Clause.of(wordy.text()));
    }

    /** "Date: 12.3.2024" belongs to the record, or begins one when it has a day already. */
    private void label(DiaryLine line) {
        Optional<DateScan.Found> day = DateScan.whole(line.text(), settings.dates());
        if (day.isPresent() && day.get().date().isEmpty()) {
            report(line.number(), "there is no such day as '" + Wording.cut(line.text()) + "'", "correct the date");
        }
        DiaryRecord record = current;
        if (record == null || record.dated() || record.ended()) {
            finish();
            record = new DiaryRecord(line.number(), Optional.empty(), "", false);
            current = record;
            under(record);
        }
        record.date(day.flatMap(DateScan.Found::date).or(this::day));
        if (day.isEmpty()) {
            record.written(line.text());
        }
    }

    private void start(DiaryLine line, List<Clause> clauses, Glance glance) {
        finish();
        String identity = glance.unit()
                .orElseGet(() -> String.join(" ", new TreeSet<>(glance.naming().identity())));
        String person =
                clauses.isEmpty() ? "" : UnitVisits.person(clauses.get(0).words());
        DiaryRecord known = waiting.get(identity);
        Optional<LocalDate> date = line.dated() ? line.date() : day();
        if (known != null && near(known, date) && goesOn(known, line, glance, person)) {
            waiting.remove(identity);
            current = known;
            known.add(line, line.field(), date, clauses);
            known.notice(glance);
            return;
        }
        DiaryRecord record = begin(line, false);
        record.identify(identity, person);
        bulletIndent = line.level();
        record.add(line, line.field(), line.date(), clauses);
        record.notice(glance);
    }

    private static boolean near(DiaryRecord record, Optional<LocalDate> date) {
        return date.isEmpty()
                || record.date()
                        .filter(day -> day.plusDays(LONGEST_WAIT).isBefore(date.get()))
                        .isEmpty();
    }

    /** Whether a line about the unit of a case without an ending tells how it went on, and not of another one of its kind. */
    private boolean goesOn(DiaryRecord record, DiaryLine line, Glance glance, String person) {
        boolean others = !person.isEmpty() && !record.person().isEmpty() && !person.equals(record.person());
        if (others || glance.back()) {
            return false;
        }
        return further(record, glance)
                || below(line).stream()
                        .findFirst()
                        .filter(next -> further(record, next))
                        .isPresent();
    }

    private static boolean further(DiaryRecord record, Glance glance) {
        return record.worked()
                ? glance.ended() && !glance.worked()
                : glance.worked() || glance.ended() || glance.goesOn() || glance.waits();
    }

    private DiaryRecord begin(DiaryLine line, boolean headed) {
        Optional<LocalDate> date = line.dated() ? line.date() : day();
        String words = line.dated() ? line.day() : dayWords();
        DiaryRecord record = new DiaryRecord(line.number(), date, words, headed);
        current = record;
        under(record);
        return record;
    }

    /** Whether a line begins another case. */
    private boolean begins(Glance glance, Naming naming, How how, DiaryRecord record) {
        if (record.bare()) {
            return false;
        }
        boolean sameUnit = glance.unit().isPresent() && glance.unit().equals(record.unit());
        if (record.headed()) {
            // days below a heading tell how its case went on, unless they name another unit
            return how == How.DATED
                    && !sameUnit
                    && (glance.named() || glance.naming().otherKind(record.terms()));
        }
        if (sameUnit) {
            return record.ended() && !glance.goesOn();
        }
        boolean other = how == How.DATED && glance.naming().otherThan(record.terms());
        if (glance.named() || other || (layout.isPresent() && another(naming, record))) {
            return true;
        }
        return switch (how) {
            case DATED -> record.ended() ? !glance.back() : !glance.goesOn();
            case LAID_OUT -> record.ended() && !glance.goesOn();
            case PARAGRAPH -> !starters || (record.ended() && !contexts.isEmpty() && !glance.goesOn());
        };
    }

    /** Where the layout lets a case begin, the name of another unit begins one, and its kind does behind work or an ending. */
    private static boolean another(Naming naming, DiaryRecord record) {
        boolean told = record.worked() || record.ended();
        return !record.terms().containsAll(naming.unit()) || (told && naming.otherKind(record.terms()));
    }

    private Optional<LocalDate> day() {
        return contexts.descendingMap().values().stream()
                .flatMap(c -> c.date().stream())
                .findFirst();
    }

    private String dayWords() {
        return contexts.descendingMap().values().stream()
                .filter(c -> c.date().isPresent() || !c.day().isEmpty())
                .findFirst()
                .map(Context::day)
                .orElse("");
    }

    /** Lets a record's heading hold for what stands under it. */
    private void context(DiaryRecord record) {
        contexts.put(record.level(), new Context(record.date(), record.day(), record.title()));
    }

    /** Gives a record what the headings over it say. */
    private void under(DiaryRecord record) {
        for (Context context : contexts.values()) {
            if (!context.title().isEmpty()) {
                record.under(context.title(), vocabulary.devices());
            }
        }
    }

    private void finish() {
        DiaryRecord record = current;
        current = null;
        if (record != null) {
            if (record.line() < firstDay && record.plain()) {
                record.preamble();
            }
            if (record.identity().isEmpty() || record.ended()) {
                close(record);
                return;
            }
            DiaryRecord another = waiting.put(record.identity(), record);
            if (another != null) {
                close(another);
            }
            if (waiting.size() > MOST_WAITING) {
                Iterator<DiaryRecord> eldest = waiting.values().iterator();
                close(eldest.next());
                eldest.remove();
            }
        }
    }

    private void close(DiaryRecord record) {
        if (record.tooLong()) {
            report(record.line(), "the record is longer than " + LONGEST_RECORD + " characters", "split it");
        } else {
            record.made().ifPresent(ready::add);
        }
    }

    private void report(long line, String what, String remedy) {
        problems.accept(new ImportProblem(source, line, what, remedy));
    }
}
