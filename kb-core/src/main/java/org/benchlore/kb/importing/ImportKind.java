package org.benchlore.kb.importing;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How a source of cases is written. */
public enum ImportKind {
    /** Plain text or Markdown, as people keep it: dated lines, headings, paragraphs, bullets. */
    DIARY("txt", "text", "md", "markdown"),
    /** A table, one case a row, separated by commas, semicolons, tabs or bars (RFC 4180). */
    CSV("csv", "tsv", "tab"),
    /** Lines of JSON as Benchlore writes them, events and whole cases; each bears a {@code schema}. */
    JSON("jsonl", "ndjson", "json"),
    /** Lines of JSON of other programs, whose keys are read like the columns of a table. */
    OBJECTS();

    private final ImmutableList<String> endings;

    ImportKind(String... endings) {
        this.endings = ImmutableList.copyOf(endings);
    }

    /** The name on the command line. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The kind of a source; empty if neither its name nor its beginning tells.
     *
     * @param name usually a file's; its ending counts
     * @param beginning of its text, the first line at least
     */
    public static Optional<ImportKind> of(String name, String beginning) {
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        Optional<ImportKind> named = List.of(values()).stream()
                .filter(kind -> kind.endings.contains(ending))
                .findFirst();
        if (named.isPresent() && named.get() != JSON) {
            return named;
        }
        String first = beginning
                .lines()
                .filter(l -> !l.isBlank())
                .findFirst()
                .orElse("")
                .strip();
        if (first.startsWith("\uFEFF")) {
            first = first.substring(1);
        }
        if (first.startsWith("{")) {
            return Optional.of(first.contains("\"schema\"") ? JSON : OBJECTS);
        }
        return named;
    }
}
