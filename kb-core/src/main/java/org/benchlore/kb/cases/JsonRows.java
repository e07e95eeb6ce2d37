package org.benchlore.kb.cases;

import java.io.IOException;
import java.io.Reader;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/**
 * Lines of JSON of other programs, each an object, as rows: texts, numbers and truth values by key. Keys of inner objects
 * follow their object's name and a full stop; what a list holds, however deep, is joined. A bad line is reported and stops nothing. For one
 * thread and one use.
 */
public final class JsonRows {
    /** Most keys of one object. */
    private static final int MOST_KEYS = 256;

    /**
     * An object.
     *
     * @param line from 1
     * @param fields its texts by key, in order
     */
    public record Row(long line, Map<String, String> fields) {}

    private final Lines lines;
    private final String source;
    private final Consumer<ImportProblem> problems;

    /**
     * @param lines one JSON object of at most 1 MiB per line, blank lines skipped; not closed
     * @param source how problems name it, usually the file
     * @param problems takes each bad line
     */
    public JsonRows(Reader lines, String source, Consumer<ImportProblem> problems) {
        this.lines = new Lines(lines);
        this.source = source;
        this.problems = problems;
    }

    /**
     * The next good object; empty at the end.
     *
     * @throws IOException if the source throws it
     */
    public Optional<Row> next() throws IOException {
        for (Lines.Line line = lines.next(); line != null; line = lines.next()) {
            if (line.text().isBlank()) {
                continue;
            }
            try {
                Map<String, String> fields = new LinkedHashMap<>();
                flatten("", CaseJson.object(line.text()), fields);
                return Optional.of(new Row(line.number(), fields));
            } catch (BadLineException e) {
                problems.accept(new ImportProblem(source, line.number(), e.what(), e.remedy()));
            }
        }
        return Optional.empty();
    }

    private static void flatten(String prefix, JsonNode object, Map<String, String> fields) {
        object.properties().forEach(e -> {
            if (fields.size() >= MOST_KEYS) {
                throw new BadLineException("the object has more than " + MOST_KEYS + " keys", "split it", null);
            }
            String key = prefix + e.getKey();
            JsonNode value = e.getValue();
            if (value.isObject()) {
                flatten(key + ".", value, fields);
            } else {
                fields.put(key, texts(value).collect(Collectors.joining("; ")));
            }
        });
    }

    private static Stream<String> texts(JsonNode value) {
        return value.isContainer()
                ? value.valueStream().flatMap(JsonRows::texts)
                : Stream.of(value.isNull() ? "" : value.asString()).filter(text -> !text.isEmpty());
    }
}
