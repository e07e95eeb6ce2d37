package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;

/**
 * How the columns of a table are read. Written and read as a text file of lines {@code key = value}; the format is in
 * {@code docs/importing.md}.
 *
 * @param separator between the fields of a row: comma, semicolon, tab or bar
 * @param header whether the first row names the columns
 * @param dates how dates with slashes are meant
 * @param columns per field the columns it is in, by name or as {@code #3} for the third, read one after the other
 * @param outcomes what the shop's own words for an ending mean, such as "RDY"; compared without case
 * @param devices what the shop's own words for a device mean; compared without case
 */
public record ColumnMapping(
        char separator,
        boolean header,
        DateOrder dates,
        SortedMap<ImportField, List<String>> columns,
        SortedMap<String, Outcome> outcomes,
        SortedMap<String, DeviceScope> devices) {
    private static final String FIELDS =
            List.of(ImportField.values()).stream().map(ImportField::id).collect(Collectors.joining(", "));

    public ColumnMapping {
        Map<ImportField, List<String>> copies = new EnumMap<>(ImportField.class);
        columns.forEach((field, names) -> copies.put(field, List.copyOf(names)));
        columns = Collections.unmodifiableSortedMap(new TreeMap<>(copies));
        outcomes = Collections.unmodifiableSortedMap(new TreeMap<>(outcomes));
        devices = Collections.unmodifiableSortedMap(new TreeMap<>(devices));
    }

    /**
     * Reads a mapping file.
     *
     * @param text the whole of it
     * @param source how messages name it, usually the file
     * @throws BadImportException with the line, if it cannot be understood
     */
    public static ColumnMapping parse(String text, String source) {
        char separator = ',';
        boolean header = true;
        DateOrder dates = DateOrder.DMY;
        SortedMap<ImportField, List<String>> columns = new TreeMap<>();
        SortedMap<String, Outcome> outcomes = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        SortedMap<String, DeviceScope> devices = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        Set<String> seen = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.startsWith("\uFEFF")) {
                line = line.substring(1).strip();
            }
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            String where = source + ":" + (i + 1);
            int sign = line.indexOf('=');
            if (sign < 1) {
                throw new BadImportException(
                        where, "'" + Wording.cut(line) + "' is not 'key = value'", "add the sign =");
            }
            String key = line.substring(0, sign).strip();
            String value = line.substring(sign + 1).strip();
            if (!seen.add(key.replaceFirst(":\\s+", ":"))) {
                throw new BadImportException(
                        where, "'" + Wording.cut(key) + "' stands here twice", "join the lines, or drop one");
            }
            if (names(value).isEmpty()) {
                throw new BadImportException(
                        where, "'" + Wording.cut(key) + "' has no value", "give one, or drop the line");
            }
            if (key.equals("separator")) {
                separator = separator(value, where);
            } else if (key.equals("header")) {
                header = choice(value, List.of("no", "yes"), where) == 1;
            } else if (key.equals("dates")) {
                dates = choice(value, List.of("dmy", "mdy"), where) == 0 ? DateOrder.DMY : DateOrder.MDY;
            } else if (key.startsWith("outcome:")) {
                outcomes.put(key.substring("outcome:".length()).strip(), outcome(value, where));
            } else if (key.startsWith("device:")) {
                devices.put(key.substring("device:".length()).strip(), scope(value, where));
            } else {
                columns.put(field(key, where), names(value));
            }
        }
        if (columns.keySet().stream().noneMatch(ImportField::wordy)) {
            throw new BadImportException(
                    source,
                    "no column holds text",
                    "map at least one of complaint, notes, measured, cause, work, outcome");
        }
        return new ColumnMapping(separator, header, dates, columns, outcomes, devices);
    }

    private static List<String> names(String value) {
        List<String> names = new ArrayList<>();
        for (String name : value.split("\\|", -1)) {
            if (!name.isBlank()) {
                names.add(name.strip());
            }
        }
        return names;
    }

    private static char separator(String value, String where) {
        return switch (value) {
            case "tab" -> '\t';
            case "bar" -> '|';
            case ",", ";" -> value.charAt(0);
            default ->
                throw new BadImportException(
                        where, "separator is '" + Wording.cut(value) + "'", "use one of: , ; tab bar");
        };
    }

    private static int choice(String value, List<String> choices, String where) {
        int at = choices.indexOf(value);
        if (at < 0) {
            throw new BadImportException(
                    where,
                    "'" + Wording.cut(value) + "' cannot be used here",
                    "use one of: " + String.join(" ", choices));
        }
        return at;
    }

    private static Outcome outcome(String value, String where) {
        try {
            return Outcome.parse(value);
        } catch (IllegalArgumentException e) {
            throw new BadImportException(
                    where,
                    "'" + Wording.cut(value) + "' is no outcome",
                    "use one of: "
                            + List.of(Outcome.values()).stream()
                                    .map(Outcome::id)
                                    .collect(Collectors.joining(", ")));
        }
    }

    private static DeviceScope scope(String value, String where) {
        try {
            return DeviceScope.parse(value);
        } catch (IllegalArgumentException e) {
            throw new BadImportException(
                    where, "'" + Wording.cut(value) + "' is no device scope", "write class/family/model/revision");
        }
    }

    private static ImportField field(String key, String where) {
        return List.of(ImportField.values()).stream()
                .filter(f -> f.id().equals(key))
                .findFirst()
                .orElseThrow(() -> new BadImportException(
                        where,
                        "unknown key '" + Wording.cut(key) + "'",
                        "use one of: separator, header, dates, " + FIELDS + ", outcome:WORD, device:WORD"));
    }

    /** The text of a mapping file that {@link #parse} reads. */
    public String text() {
        StringBuilder text = new StringBuilder();
        text.append("# How a table of cases is read. Columns not named here are left out.\n");
        text.append("separator = ")
                .append(separator == '\t' ? "tab" : separator == '|' ? "bar" : String.valueOf(separator))
                .append('\n');
        text.append("header = ").append(header ? "yes" : "no").append('\n');
        text.append("dates = ").append(dates.id()).append('\n');
        columns.forEach((field, names) -> text.append(field.id())
                .append(" = ")
                .append(String.join(" | ", names))
                .append('\n'));
        outcomes.forEach((word, outcome) -> text.append("outcome:")
                .append(word)
                .append(" = ")
                .append(outcome.id())
                .append('\n'));
        devices.forEach((word, scope) ->
                text.append("device:").append(word).append(" = ").append(scope).append('\n'));
        return text.toString();
    }

    Optional<Outcome> outcome(String cell) {
        return Optional.ofNullable(folded(outcomes).get(cell.strip()));
    }

    Optional<DeviceScope> device(String cell) {
        return Optional.ofNullable(folded(devices).get(cell.strip()));
    }

    private static <T> Map<String, T> folded(SortedMap<String, T> words) {
        if (words.isEmpty()) {
            return Map.of();
        }
        Map<String, T> folded = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        folded.putAll(words);
        return folded;
    }
}
