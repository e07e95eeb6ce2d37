package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.benchlore.kb.importing.CaseTeller.Vocabulary;
import org.benchlore.kb.reading.analysis.Token;

/**
 * Guesses how a table is to be read: first from the names of its columns, then from what the first rows hold. A guess is
 * for people to look at before anything is stored.
 */
final class MappingGuess {
    /** Rows looked at. */
    static final int SAMPLE = 50;

    /** Share of a column's cells that must look alike. */
    private static final double MOSTLY = 0.8;

    /** Mean length from which cells are taken for sentences. */
    private static final int SENTENCE = 15;

    /** What a column tells of before it tells of work: "found and done". */
    private static final Set<ImportField> BEFORE_WORK =
            EnumSet.of(ImportField.CAUSE, ImportField.COMPLAINT, ImportField.MEASURED);

    private static final char[] SEPARATORS = {',', ';', '\t', '|'};

    private static final PhraseTable<Label> LABELS = new PhraseTable<>();

    static {
        for (ImportField field : ImportField.values()) {
            List<String> labels = field.labels();
            for (int i = 0; i < labels.size(); i++) {
                LABELS.add(labels.get(i), new Label(field, i));
            }
        }
    }

    /** A name that a field goes by, and its place among those, from 0. */
    private record Label(ImportField field, int rank) {}

    private final DeviceNames devices;
    private final UnitNames units;
    private final DateOrder dates;

    MappingGuess(Vocabulary vocabulary, DateOrder dates) {
        this.devices = vocabulary.devices();
        this.units = vocabulary.units();
        this.dates = dates;
    }

    /** What a label in front of a colon, a heading or a column's name is about. */
    static Optional<ImportField> field(String label) {
        return LABELS.whole(label).map(Label::field);
    }

    /**
     * A mapping for a table.
     *
     * @throws BadImportException if no column seems to hold text
     */
    ColumnMapping of(String text, String source) {
        char separator = separator(text);
        List<List<String>> rows = rows(text, separator, SAMPLE + 1);
        if (rows.isEmpty()) {
            throw new BadImportException(source, "there is no row in it", "give a table with one case a row");
        }
        boolean header = header(rows.get(0));
        return of(rows, separator, header, source);
    }

    /** A mapping for objects whose keys are the first of the rows. */
    ColumnMapping of(List<List<String>> rows, char separator, boolean header, String source) {
        SortedMap<ImportField, List<String>> columns = new TreeMap<>();
        int width = rows.stream().mapToInt(List::size).max().orElse(0);
        List<String> names = header ? rows.get(0) : List.of();
        List<List<String>> data = header ? rows.subList(1, rows.size()) : rows;
        Set<Integer> taken = new HashSet<>();
        int unit = unit(names);
        for (int i = 0; i < names.size(); i++) {
            int column = i;
            Optional<ImportField> field =
                    named(names.get(i)).map(Label::field).flatMap(f -> fitting(f, cells(data, column)));
            boolean other = field.filter(ImportField.UNIT::equals).isPresent() && i != unit;
            if (field.isPresent() && !other && put(columns, field.get(), name(names, i))) {
                taken.add(i);
            }
        }
        for (int i = 0; i < width; i++) {
            if (!taken.contains(i)) {
                int column = i;
                byContent(cells(data, i), columns).ifPresent(field -> put(columns, field, name(names, column)));
            }
        }
        if (columns.keySet().stream().noneMatch(ImportField::wordy)) {
            throw new BadImportException(
                    source, "no column seems to hold text about a case", "say with a mapping which columns do");
        }
        return new ColumnMapping(separator, header, dates, columns, new TreeMap<>(), new TreeMap<>());
    }

    /** "Out" names the day of the outcome, or, where there are mostly no days below it, the outcome. */
    private Optional<ImportField> fitting(ImportField field, List<String> cells) {
        boolean day = field == ImportField.DATE || field == ImportField.CLOSED;
        long days = day
                ? cells.stream()
                        .filter(c -> DateScan.whole(c, dates).isPresent())
                        .count()
                : 0;
        if (!day || cells.isEmpty() || 2 * days >= cells.size()) {
            return Optional.of(field);
        }
        return field == ImportField.CLOSED ? Optional.of(ImportField.OUTCOME) : Optional.empty();
    }

    /** The column that numbers units: a serial number tells one from another better than that of a job. -1 without one. */
    private static int unit(List<String> names) {
        int best = -1;
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < names.size(); i++) {
            Optional<Label> label = named(names.get(i));
            if (label.isPresent()
                    && label.get().field() == ImportField.UNIT
                    && label.get().rank() < least) {
                least = label.get().rank();
                best = i;
            }
        }
        return best;
    }

    /** The separator that splits the first rows into most fields, alike in every row. */
    private static char separator(String text) {
        char best = ',';
        double most = 0;
        for (char separator : SEPARATORS) {
            List<List<String>> rows = rows(text, separator, SAMPLE);
            int first = rows.isEmpty() ? 0 : rows.get(0).size();
            long alike = rows.stream().filter(r -> r.size() == first).count();
            double score = first < 2 ? 0 : (double) alike / rows.size() * (1 + Math.log(first));
            if (score > most) {
                most = score;
                best = separator;
            }
        }
        return best;
    }

    private static List<List<String>> rows(String text, char separator, int most) {
        CsvReader reader = new CsvReader(text, separator, "", problem -> {});
        List<List<String>> rows = new ArrayList<>();
        for (Optional<CsvReader.Row> row = reader.next(); row.isPresent() && rows.size() < most; row = reader.next()) {
            rows.add(row.get().fields());
        }
        return rows;
    }

    private boolean header(List<String> first) {
        if (first.stream().anyMatch(cell -> named(cell).isPresent())) {
            return true;
        }
        return first.stream()
                .allMatch(cell -> cell.length() <= 40
                        && DateScan.whole(cell, dates).isEmpty()
                        && cell.chars().anyMatch(Character::isLetter));
    }

    /** What a column is by its name: all of it, else the longest label in it. */
    private static Optional<Label> named(String name) {
        if (name.length() > 60) {
            return Optional.empty();
        }
        Optional<Label> whole = LABELS.whole(name);
        if (whole.isPresent()) {
            return whole;
        }
        List<Token> words = PhraseTable.words(name.replace('_', ' '));
        if (words.size() > 4) {
            return Optional.empty();
        }
        Optional<PhraseTable.Match<Label>> longest = Optional.empty();
        Set<ImportField> fields = EnumSet.noneOf(ImportField.class);
        for (int i = 0; i < words.size(); i++) {
            Optional<PhraseTable.Match<Label>> match = LABELS.longest(words, i);
            match.ifPresent(m -> fields.add(m.value().field()));
            boolean longer = match.isPresent()
                    && words.get(i).surface().length() > 2
                    && longest.map(l -> match.get().to() - match.get().from() >= l.to() - l.from())
                            .orElse(true);
            longest = longer ? match : longest;
        }
        boolean all = fields.contains(ImportField.WORK) && fields.stream().anyMatch(BEFORE_WORK::contains);
        return all ? Optional.of(new Label(ImportField.NOTES, 0)) : longest.map(PhraseTable.Match::value);
    }

    /** @return whether the column is used */
    private static boolean put(SortedMap<ImportField, List<String>> columns, ImportField field, String name) {
        boolean more = field.wordy() || field == ImportField.DEVICE;
        if (columns.containsKey(field) && !more) {
            return false;
        }
        columns.computeIfAbsent(field, f -> new ArrayList<>()).add(name);
        return true;
    }

    /** How a mapping file names a column; by its place where its name would not do. */
    private static String name(List<String> names, int i) {
        String name = i < names.size() ? names.get(i).strip() : "";
        boolean plain = !name.isEmpty()
                && !name.startsWith("#")
                && name.indexOf('|') < 0
                && name.length() <= 60
                && name.chars().noneMatch(Character::isISOControl)
                && names.stream().filter(n -> n.strip().equalsIgnoreCase(name)).count() == 1;
        return plain ? name : "#" + (i + 1);
    }

    private static List<String> cells(List<List<String>> rows, int column) {
        return rows.stream()
                .filter(r -> column < r.size() && !r.get(column).isBlank())
                .map(r -> r.get(column).strip())
                .toList();
    }

    private Optional<ImportField> byContent(List<String> cells, SortedMap<ImportField, List<String>> columns) {
        if (cells.isEmpty()) {
            return Optional.empty();
        }
        if (mostly(cells, c -> DateScan.whole(c, dates).isPresent())) {
            return free(ImportField.DATE, columns);
        }
        double length = cells.stream().mapToInt(String::length).average().orElse(0);
        if (mostly(cells, c -> devices.find(PhraseTable.words(c), true).isPresent())) {
            return free(ImportField.DEVICE, columns);
        }
        if (mostly(cells, units::kind)) {
            return Optional.of(ImportField.DEVICE);
        }
        if (length >= SENTENCE && mostly(cells, c -> c.indexOf(' ') > 0)) {
            return Optional.of(ImportField.NOTES);
        }
        boolean distinct = new HashSet<>(cells).size() >= MOSTLY * cells.size();
        boolean number = mostly(
                cells,
                c -> c.indexOf(' ') < 0
                        && c.chars().anyMatch(Character::isDigit)
                        && c.chars().anyMatch(Character::isLetter));
        return distinct && number ? free(ImportField.UNIT, columns) : Optional.empty();
    }

    private static boolean mostly(List<String> cells, Predicate<String> looks) {
        return cells.stream().filter(looks).count() >= MOSTLY * cells.size();
    }

    private static Optional<ImportField> free(ImportField field, SortedMap<ImportField, List<String>> columns) {
        return columns.containsKey(field) ? Optional.empty() : Optional.of(field);
    }
}
