package org.benchlore.kb.knowledge;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Collects what is wrong, so that one run reports everything. */
final class Problems {
    /** Beyond this many per file the list helps nobody, and a hostile file must not fill the memory. */
    static final int MAX_PER_FILE = 1000;

    private static final int QUOTED_CHARS = 60;
    private static final int DIGITS = 6;

    private final List<PackProblem> problems = new ArrayList<>();
    private final Map<String, Integer> perFile = new HashMap<>();

    /** Per file the first problem beyond the list, an error before a warning. */
    private final Map<String, PackProblem> beyond = new HashMap<>();

    private int errors;

    void error(Place place, String what, String remedy) {
        errors++;
        add(place, PackProblem.Severity.ERROR, what, remedy);
    }

    void warn(Place place, String what, String remedy) {
        add(place, PackProblem.Severity.WARNING, what, remedy);
    }

    private void add(Place place, PackProblem.Severity severity, String what, String remedy) {
        if (perFile.merge(place.file(), 1, Integer::sum) <= MAX_PER_FILE) {
            problems.add(problem(place, severity, what, remedy));
            return;
        }
        PackProblem more = problem(
                place,
                severity,
                "more than " + MAX_PER_FILE + " problems in this file",
                "mend those listed, then check again");
        beyond.merge(
                place.file(), more, (first, next) -> next.severity().compareTo(first.severity()) < 0 ? next : first);
    }

    private static PackProblem problem(Place place, PackProblem.Severity severity, String what, String remedy) {
        return new PackProblem(place.file(), place.line(), place.column(), severity, what, remedy);
    }

    /** Errors and warnings so far that will be listed. */
    int count() {
        return problems.size() + beyond.size();
    }

    /** Errors so far; a rise while an entry is bound marks the entry as damaged. */
    int errors() {
        return errors;
    }

    /** Everything found, each problem once, in file order. */
    List<PackProblem> sorted() {
        return Stream.concat(problems.stream(), beyond.values().stream())
                .distinct()
                .sorted()
                .toList();
    }

    /** The author's own text for a message: in quotes, short, on one line. */
    static String quote(String text) {
        StringBuilder quoted = new StringBuilder("'");
        int shown = Math.min(text.length(), QUOTED_CHARS);
        for (int i = 0; i < shown; i++) {
            char c = text.charAt(i);
            quoted.append(Character.isISOControl(c) || Character.isSurrogate(c) ? ' ' : c);
        }
        return quoted.append(text.length() > shown ? "…'" : "'").toString();
    }

    /** A number for a message, without exponent or trailing zeros. */
    static String plain(double value) {
        if (Double.isNaN(value) || Double.isInfinite(value)) {
            return value > 0 ? "no upper end" : "no lower end";
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(DIGITS, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
