package org.benchlore.kb.importing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.benchlore.kb.cases.ImportProblem;
import org.benchlore.kb.importing.RawRecord.Part;

/** Rows of a table as records, after a mapping. */
final class TableRecords {
    private final ColumnMapping mapping;
    private final String source;
    private final Consumer<ImportProblem> problems;
    private final Map<ImportField, List<Integer>> columns = new EnumMap<>(ImportField.class);
    private final int width;
    private final int spare;

    /**
     * @param names the columns' names, or none
     * @param places how many columns there are
     * @param spare how many {@linkplain #spare empty fields} every row has behind those of the header
     * @throws BadImportException if a column of the mapping is not there
     */
    TableRecords(
            ColumnMapping mapping,
            List<String> names,
            int places,
            int spare,
            String source,
            Consumer<ImportProblem> problems) {
        this.mapping = mapping;
        this.source = source;
        this.problems = problems;
        this.width = names.size();
        this.spare = spare;
        mapping.columns().forEach((field, wanted) -> {
            List<Integer> of = new ArrayList<>();
            wanted.forEach(name -> of.add(place(name, names, places)));
            columns.put(field, of);
        });
    }

    /**
     * How many empty fields every row has behind those of the header, as programs write them that end each row with a
     * separator. Of a single row it cannot be told whether it is so or runs one column late, so that is none.
     *
     * @param rows those below the header
     */
    static int spare(CsvReader rows, int width) {
        int spare = 0;
        int seen = 0;
        for (Optional<CsvReader.Row> row = rows.next(); row.isPresent(); row = rows.next()) {
            List<String> fields = row.get().fields();
            int empty = 0;
            while (empty < fields.size() - width
                    && fields.get(fields.size() - 1 - empty).isBlank()) {
                empty++;
            }
            if (empty == 0) {
                return 0;
            }
            spare = seen == 0 ? empty : Math.min(spare, empty);
            seen++;
        }
        return seen > 1 ? spare : 0;
    }

    /** How many fields the widest row has. */
    static int widest(CsvReader rows) {
        int widest = 0;
        for (Optional<CsvReader.Row> row = rows.next(); row.isPresent(); row = rows.next()) {
            widest = Math.max(widest, row.get().fields().size());
        }
        return widest;
    }

    private int place(String name, List<String> names, int places) {
        if (name.matches("#[1-9]\\d{0,2}")) {
            int place = Integer.parseInt(name.substring(1));
            if (place > places) {
                throw new BadImportException(
                        source, "there is no column '" + name + "'", "the last of them is #" + places);
            }
            return place - 1;
        }
        for (int i = 0; i < names.size(); i++) {
            if (names.get(i).strip().equalsIgnoreCase(name)) {
                return i;
            }
        }
        throw new BadImportException(
                source,
                "there is no column '" + Wording.cut(name) + "'",
                names.isEmpty()
                        ? "the table has no header; name columns by place, such as #1"
                        : "there are: " + Wording.cut(String.join(", ", names)));
    }

    /** The record of a row; empty, and reported, if it is bad; empty if it says nothing. */
    Optional<RawRecord> record(long line, List<String> row) {
        if (width > 1 && row.size() == 1) {
            return bad(line, "the row has one field of " + width, "put texts with line breaks in quotes");
        }
        boolean late = row.size() > width + spare || row.stream().skip(width).anyMatch(cell -> !cell.isBlank());
        if (width > 0 && late) {
            return bad(
                    line,
                    "the row has " + row.size() + " fields, the header " + width,
                    "put texts that hold the separator in quotes");
        }
        if (row.stream().anyMatch(cell -> cell.length() > CsvReader.LONGEST_FIELD)) {
            return bad(line, CsvReader.tooLong(), "split it");
        }
        for (ImportField field : List.of(ImportField.DATE, ImportField.CLOSED)) {
            String cell = cell(row, field);
            if (!cell.isEmpty() && date(cell).isEmpty()) {
                return bad(
                        line, "'" + Wording.cut(cell) + "' is no date", "write it like 2024-03-12, or leave it empty");
            }
        }
        Optional<LocalDate> closed = date(cell(row, ImportField.CLOSED));
        List<Part> parts = new ArrayList<>();
        for (ImportField field : ImportField.values()) {
            if (field == ImportField.DATE || field == ImportField.CLOSED) {
                continue;
            }
            for (int place : columns.getOrDefault(field, List.of())) {
                String cell = place < row.size() ? row.get(place) : "";
                if (!cell.isBlank()) {
                    Optional<LocalDate> on = field == ImportField.OUTCOME ? closed : Optional.empty();
                    parts.add(new Part(field, translated(field, cell), line, on));
                }
            }
        }
        return parts.stream().anyMatch(p -> p.field().wordy())
                ? Optional.of(new RawRecord(line, date(cell(row, ImportField.DATE)), parts, false))
                : Optional.empty();
    }

    private String translated(ImportField field, String cell) {
        return switch (field) {
            case OUTCOME -> mapping.outcome(cell).map(o -> o.id()).orElse(cell);
            case DEVICE -> mapping.device(cell).map(d -> d.toString()).orElse(cell);
            default -> cell;
        };
    }

    private Optional<RawRecord> bad(long line, String what, String remedy) {
        problems.accept(new ImportProblem(source, line, what, remedy));
        return Optional.empty();
    }

    private String cell(List<String> row, ImportField field) {
        List<Integer> places = columns.getOrDefault(field, List.of());
        return places.isEmpty() || places.get(0) >= row.size()
                ? ""
                : row.get(places.get(0)).strip();
    }

    private Optional<LocalDate> date(String cell) {
        return DateScan.whole(cell, mapping.dates()).flatMap(DateScan.Found::date);
    }
}
