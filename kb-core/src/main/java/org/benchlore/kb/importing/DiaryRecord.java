package org.benchlore.kb.importing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.importing.DiaryLine.Kind;
import org.benchlore.kb.importing.RawRecord.Part;

/** A record of a diary while its lines come in. */
final class DiaryRecord {
    private final long line;
    private final boolean headed;
    private final List<Part> parts = new ArrayList<>();
    private final Set<ImportField> fields = EnumSet.noneOf(ImportField.class);
    private final Set<String> terms = new HashSet<>();
    private final StringBuilder text = new StringBuilder();
    private Optional<LocalDate> date;
    private ImportField field = ImportField.NOTES;
    private Optional<LocalDate> partDate = Optional.empty();
    private long partLine;
    private List<Clause> lineClauses = List.of();
    private long length;
    private ImportField section = ImportField.NOTES;
    private final String day;
    private String title = "";
    private String opening = "";
    private int level = 7;
    private int bullets;
    private int lineLength;
    /** Whether a label stands on a line of its own, so that the lines below it are what it says. */
    private boolean openLabel;

    private boolean body;
    private boolean spoilt;
    private boolean preamble;
    private boolean named;
    private boolean worked;
    private boolean ended;
    private Optional<String> unit = Optional.empty();
    private String identity = "";
    private String person = "";

    /**
     * @param line where it begins
     * @param date its day, where known
     * @param day the words of a day whose year is not known, else empty
     * @param headed whether a heading began it, so that only another heading ends it
     */
    DiaryRecord(long line, Optional<LocalDate> date, String day, boolean headed) {
        this.line = line;
        this.date = date;
        this.day = day;
        this.headed = headed;
        written(day);
    }

    long line() {
        return line;
    }

    boolean headed() {
        return headed;
    }

    int level() {
        return level;
    }

    String title() {
        return title;
    }

    Optional<LocalDate> date() {
        return date;
    }

    String day() {
        return day;
    }

    /** Keeps the words of a day that is not understood. */
    void written(String words) {
        if (!words.isBlank()) {
            parts.add(new Part(ImportField.DATE, words.strip(), line, Optional.empty()));
        }
    }

    /** Its heading, else its first line. */
    String opening() {
        return opening;
    }

    /** Terms of all its words so far. */
    Set<String> terms() {
        return terms;
    }

    /** Whether nothing gives a day or says what it is about, and no work or ending is told yet. */
    boolean plain() {
        return date.isEmpty()
                && day.isEmpty()
                && EnumSet.of(ImportField.NOTES).containsAll(fields)
                && !worked
                && !ended;
    }

    void date(Optional<LocalDate> day) {
        date = day;
        fields.add(ImportField.DATE);
    }

    boolean dated() {
        return fields.contains(ImportField.DATE);
    }

    boolean has(ImportField other) {
        return fields.contains(other);
    }

    boolean named() {
        return named;
    }

    boolean worked() {
        return worked;
    }

    boolean ended() {
        return ended;
    }

    int bullets() {
        return bullets;
    }

    Optional<String> unit() {
        return unit;
    }

    /** Whether it has a heading and no text yet. */
    boolean headingOnly() {
        return headed && !body && !title.isEmpty();
    }

    /** Whether nothing says yet what happened. */
    boolean bare() {
        return !body;
    }

    /** Drops it and what follows up to the next one: something in it was reported. */
    void spoil() {
        spoilt = true;
        body = true;
    }

    /** Says that it only introduces what stands under further headings, so that nobody misses a case in it. */
    void preamble() {
        preamble = true;
    }

    void title(DiaryLine heading) {
        title = heading.text();
        opening = title;
        PhraseTable.words(title).forEach(w -> terms.add(w.term()));
        level = heading.level();
        open(ImportField.NOTES, heading.number(), Optional.empty());
        lineClauses = List.of();
        append(heading.text());
    }

    /** Lines from here on tell of one thing, as a heading inside the record says. */
    void section(ImportField about) {
        section = about;
        close();
        field = about;
    }

    /** A day inside a record; what follows tells of it. */
    void day(DiaryLine day) {
        close();
        partDate = day.date();
    }

    /** The end of a paragraph ends what a label in front of it says. */
    void paragraph() {
        openLabel = false;
        lineLength = 0;
        if (field != section) {
            close();
            field = section;
        } else if (!text.isEmpty()) {
            append("");
        }
    }

    /** @param clauses of the line's text */
    void add(DiaryLine added, ImportField about, Optional<LocalDate> day, List<Clause> clauses) {
        boolean bullet = added.is(Kind.BULLET);
        ImportField now = about;
        if (!added.labelled()) {
            boolean goesOn = openLabel || added.level() > 0 || lineLength >= Clause.WRAPPED_LINE;
            now = goesOn && !(bullet && !openLabel) ? field : section;
        }
        openLabel = added.labelled() ? added.text().isEmpty() : openLabel;
        lineLength = added.text().length();
        bullets += bullet ? 1 : 0;
        opening = opening.isEmpty() ? added.text() : opening;
        clauses.forEach(c -> c.words().forEach(w -> terms.add(w.term())));
        fields.add(now);
        body |= now.wordy();
        if (now != field || day.isPresent() || text.isEmpty() || added.labelled()) {
            open(now, added.number(), day);
        }
        lineClauses = text.isEmpty() ? clauses : List.of();
        append(added.text());
        if (!now.wordy()) {
            close();
            field = section;
        }
    }

    /** Notes what a line of it says at first sight. */
    void notice(Glance glance) {
        named |= glance.named();
        worked |= glance.worked();
        ended |= glance.ended();
        unit = unit.or(glance::unit);
    }

    /** Notes what tells its unit from others, and whose it is; both may be empty. */
    void identify(String unitAs, String owner) {
        identity = unitAs;
        person = owner;
    }

    String identity() {
        return identity;
    }

    String person() {
        return person;
    }

    /** Takes device and unit from a heading over it. */
    void under(String heading, DeviceNames devices) {
        if (devices.find(PhraseTable.words(heading), false).isPresent()) {
            parts.add(new Part(ImportField.DEVICE, heading, line, Optional.empty()));
        }
        UnitScan.first(heading)
                .ifPresent(found -> parts.add(new Part(ImportField.UNIT, found.unit(), line, Optional.empty())));
    }

    private void open(ImportField about, long at, Optional<LocalDate> day) {
        Optional<LocalDate> kept = day.or(() -> partDate);
        close();
        field = about;
        partLine = at;
        partDate = kept;
    }

    private void append(String words) {
        length += words.length();
        if (length <= DiarySplitter.LONGEST_RECORD) {
            text.append(text.isEmpty() ? "" : "\n").append(words);
        }
    }

    private void close() {
        String all = text.toString().strip();
        if (!all.isEmpty()) {
            boolean oneLine = !lineClauses.isEmpty() && all.length() == text.length() && field.wordy();
            parts.add(
                    oneLine
                            ? new Part(field, all, partLine, partDate, lineClauses)
                            : new Part(field, all, partLine, partDate));
        }
        lineClauses = List.of();
        text.setLength(0);
    }

    boolean tooLong() {
        return length > DiarySplitter.LONGEST_RECORD;
    }

    /** The record; empty if it holds no text or was spoilt. */
    Optional<RawRecord> made() {
        close();
        boolean told = parts.stream().anyMatch(p -> p.field().wordy());
        return told && !spoilt ? Optional.of(new RawRecord(line, date, parts, preamble)) : Optional.empty();
    }
}
