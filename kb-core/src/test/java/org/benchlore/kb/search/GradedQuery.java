package org.benchlore.kb.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.knowledge.DeviceScope;

/**
 * Words as a bench writes them, with the grade of everything judged for them. The file format is in {@code docs/search.md}.
 *
 * @param words what is asked
 * @param scope the device it is about
 * @param grades by key ({@code KIND/ID}): 3 the very entry, 2 useful, 1 related, 0 looked at and not relevant
 */
record GradedQuery(String words, DeviceScope scope, Map<String, Integer> grades) {
    private static final int BEST = 3;

    GradedQuery {
        grades = Collections.unmodifiableMap(new LinkedHashMap<>(grades));
    }

    static List<GradedQuery> read(Path file) {
        try {
            List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
            List<GradedQuery> queries = new ArrayList<>();
            for (int i = 0; i < lines.size(); i++) {
                if (!lines.get(i).isBlank() && !lines.get(i).startsWith("#")) {
                    queries.add(parse(lines.get(i), file + ":" + (i + 1)));
                }
            }
            return queries;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static GradedQuery parse(String line, String where) {
        String[] parts = line.split("\t", -1);
        if (parts.length < 2 || parts.length > 3 || parts[0].isBlank()) {
            throw new IllegalArgumentException(where + ": write WORDS, a tab, SCOPE, a tab, KIND/ID=GRADE ...");
        }
        Map<String, Integer> grades = new LinkedHashMap<>();
        for (String grade : parts.length < 3 ? new String[0] : parts[2].trim().split(" +", -1)) {
            int equals = grade.lastIndexOf('=');
            if (equals < 0 || !grade.substring(equals + 1).matches("[0-" + BEST + "]")) {
                throw new IllegalArgumentException(where + ": '" + grade + "' is not KIND/ID=GRADE with 0 to " + BEST);
            }
            grades.put(grade.substring(0, equals), Integer.valueOf(grade.substring(equals + 1)));
        }
        return new GradedQuery(parts[0], DeviceScope.parse(parts[1]), grades);
    }
}
