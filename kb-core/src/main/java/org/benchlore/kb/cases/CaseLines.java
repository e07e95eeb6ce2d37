package org.benchlore.kb.cases;

import java.io.IOException;
import java.io.Reader;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * Reads lines of JSON: events ({@code benchlore/event/1}, as {@link CaseExport} writes them) and whole cases
 * ({@code benchlore/case/1}, as people write them), mixed as they come. A bad line is reported and stops nothing. For one
 * thread and one use.
 */
public final class CaseLines {
    /** Our spelling of an event may be longer than the line's, most for escaped half characters: 6 for 1. */
    private static final int MOST_GROWTH = 8;

    private final Lines lines;
    private final String source;
    private final CaseLineReader cases;
    private final Consumer<ImportProblem> problems;

    /**
     * @param lines text, one JSON object of at most 1 MiB per line, blank lines skipped; not closed
     * @param source how problems name it, usually the file
     * @param words reads the findings of a note in a whole case that has text but no findings
     * @param problems takes each bad line
     */
    public CaseLines(
            Reader lines,
            String source,
            BiFunction<String, DeviceScope, List<Finding>> words,
            Consumer<ImportProblem> problems) {
        this.lines = new Lines(lines);
        this.source = source;
        this.cases = new CaseLineReader(words);
        this.problems = problems;
    }

    /**
     * The next good line; empty at the end.
     *
     * @throws IOException if the source throws it
     */
    public Optional<CaseRecord> next() throws IOException {
        for (Lines.Line line = lines.next(); line != null; line = lines.next()) {
            if (line.text().isBlank()) {
                continue;
            }
            try {
                return Optional.of(parse(line));
            } catch (BadLineException e) {
                problems.accept(new ImportProblem(source, line.number(), e.what(), e.remedy()));
            }
        }
        return Optional.empty();
    }

    private CaseRecord parse(Lines.Line line) {
        if (line.tooLong()) {
            throw CaseJson.tooLong();
        }
        JsonFields fields;
        try {
            fields = CaseJson.parse(line.text(), "line");
        } catch (BadLineException e) {
            if (line.ended()) {
                throw e;
            }
            throw new BadLineException(
                    "the text ends in the middle of this line", "fetch or export the whole of it again", e);
        }
        CaseRecord good = parse(line.number(), fields);
        boolean mayOutgrow = line.text().length() > CaseJson.MAX_LINE / MOST_GROWTH;
        return fields.checked(() -> {
            good.events().forEach(mayOutgrow ? EventTable::body : UnfitEventException::requireUnit);
            return good;
        });
    }

    private CaseRecord parse(long number, JsonFields fields) {
        String schema = fields.text("schema");
        if (schema.equals(CaseJson.EVENT)) {
            return new CaseRecord(number, List.of(EventReader.read(fields)), Set.of());
        }
        if (schema.equals(CaseJson.CASE)) {
            CaseLineReader.Read read = cases.read(fields);
            return new CaseRecord(number, read.events(), read.readFromWords());
        }
        throw new BadLineException(
                "unknown schema '" + JsonFields.shown(schema) + "'",
                "this version reads " + CaseJson.EVENT + " and " + CaseJson.CASE + "; update if it is newer",
                null);
    }
}
