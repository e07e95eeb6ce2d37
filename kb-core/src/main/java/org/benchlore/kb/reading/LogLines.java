package org.benchlore.kb.reading;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.benchlore.kb.knowledge.Device;
import org.jspecify.annotations.Nullable;

/** Line patterns and counters of the device packs of one scope, the nearest device's first. Linear time (RE2). */
final class LogLines {
    /** Longer lines are prose or dumps. */
    private static final int LONGEST_LINE = 4096;

    private record Line(Pattern pattern, @Nullable DateTimeFormatter time) {}

    /** A group's text and where it starts in the line. */
    record Part(String text, int start) {}

    /** What a pattern found in a line; each part may be missing. */
    record Hit(
            Optional<Part> time,
            Optional<LocalDateTime> clock,
            Optional<Part> code,
            Optional<Part> counter,
            Optional<Part> value) {}

    private final List<Line> lines = new ArrayList<>();
    private final Map<String, Device.Counter.Meaning> counters = new HashMap<>();

    LogLines(List<Device> outermostFirst) {
        for (int i = outermostFirst.size() - 1; i >= 0; i--) {
            Device device = outermostFirst.get(i);
            for (Device.LogLine line : device.logLines()) {
                String format = line.timeFormat();
                lines.add(new Line(
                        Pattern.compile(line.pattern()),
                        format == null ? null : DateTimeFormatter.ofPattern(format, Locale.ROOT)));
            }
            for (Device.Counter counter : device.counters()) {
                counters.putIfAbsent(counter.counter(), counter.means());
            }
        }
    }

    boolean none() {
        return lines.isEmpty();
    }

    Optional<Device.Counter.Meaning> meaning(String counter) {
        return Optional.ofNullable(counters.get(counter));
    }

    /** The first pattern that fits the line. */
    Optional<Hit> match(String line) {
        if (line.isBlank() || line.length() > LONGEST_LINE) {
            return Optional.empty();
        }
        for (Line candidate : lines) {
            Matcher matcher = candidate.pattern.matcher(line);
            if (matcher.find()) {
                Optional<Part> time = part(candidate.pattern, matcher, "time");
                return Optional.of(new Hit(
                        time,
                        time.flatMap(t -> clock(t.text(), candidate.time)),
                        part(candidate.pattern, matcher, "code"),
                        part(candidate.pattern, matcher, "counter"),
                        part(candidate.pattern, matcher, "value")));
            }
        }
        return Optional.empty();
    }

    private static Optional<Part> part(Pattern pattern, Matcher matcher, String group) {
        Integer index = pattern.namedGroups().get(group);
        String text = index == null ? null : matcher.group(index);
        return index == null || text == null ? Optional.empty() : Optional.of(new Part(text, matcher.start(index)));
    }

    private static Optional<LocalDateTime> clock(String text, @Nullable DateTimeFormatter format) {
        if (format == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDateTime.parse(text, format));
        } catch (DateTimeException e) {
            return Optional.empty(); // the 31st of June and the like: reported as implausible
        }
    }
}
