package org.benchlore.kb.report;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;

/** Log codes as bars from their first to their last time, with how often. */
final class LogPicture {
    private static final int MOST = 8;
    private static final int MOST_LETTERS = 12;
    private static final double LEFT = 92;
    private static final double RIGHT = 356;
    private static final double LANE = 20;
    private static final double TOP = 14;

    private LogPicture() {}

    /** Needs a code with a time. */
    static String draw(Sheet.Log log) {
        List<Sheet.LogLine> timed = log.lines().stream()
                .filter(l -> l.first().isPresent() && l.last().isPresent())
                .toList();
        LocalDateTime from = timed.stream()
                .map(l -> l.first().orElseThrow())
                .min(Comparator.naturalOrder())
                .orElseThrow();
        LocalDateTime to = timed.stream()
                .map(l -> l.last().orElseThrow())
                .max(Comparator.naturalOrder())
                .orElseThrow();
        double span = Math.max(1, Duration.between(from, to).toSeconds());
        List<Sheet.LogLine> shown = timed.stream()
                .sorted(Comparator.comparingInt((Sheet.LogLine l) -> -l.count()).thenComparing(Sheet.LogLine::code))
                .limit(MOST)
                .toList();
        double floor = TOP + LANE * shown.size();
        Svg svg = new Svg(
                floor + 16,
                "Log from " + Terms.clock(from) + " to " + Terms.clock(to) + ", "
                        + Terms.count(timed.size(), "code", "codes"));
        for (int i = 0; i < shown.size(); i++) {
            Sheet.LogLine line = shown.get(i);
            double y = TOP + LANE * i;
            double x1 = x(from, line.first().orElseThrow(), span);
            double x2 = x(from, line.last().orElseThrow(), span);
            svg.line("grid", LEFT, y, RIGHT, y);
            svg.text("small", LEFT - 8, y + 4, "end", shorten(line.code()));
            svg.bar("span", x1 - 3, y - 4, x2 - x1 + 6, 8);
            svg.text("small", RIGHT + 8, y + 4, "start", "×" + line.count());
        }
        svg.text("small", LEFT, floor + 8, "start", Terms.clock(from).substring(0, 10));
        svg.text("small", RIGHT, floor + 8, "end", Terms.clock(to).substring(0, 10));
        return svg.end();
    }

    private static double x(LocalDateTime from, LocalDateTime at, double span) {
        return LEFT + 3 + (RIGHT - LEFT - 6) * Duration.between(from, at).toSeconds() / span;
    }

    private static String shorten(String code) {
        int length = code.codePointCount(0, code.length());
        return length <= MOST_LETTERS ? code : code.substring(0, code.offsetByCodePoints(0, MOST_LETTERS - 1)) + "…";
    }
}
