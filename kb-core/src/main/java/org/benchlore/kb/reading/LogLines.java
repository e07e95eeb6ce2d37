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
final class LogLines implements LogForm {
    /** Longer lines are prose or dumps. */
    private static final int LONGEST_LINE = 4096;

    private record Line(Pattern pattern, @Nullable DateTimeFormatter time) {}

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

    @Override
    public boolean none() {
        return lines.isEmpty();
    }

    /** By the first pattern that fits. */
    @Override
    public Optional<Hit> match(String line) {
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
                        part(candidate.pattern, matcher, "code").stream()
                                .map(code -> new Mark(code, 1))
                                .toList(),
                        count(candidate.pattern, matcher).stream().toList(),
                        false));
            }
        }
        return Optional.empty();
    }

    private Optional<Count> count(Pattern pattern, Matcher matcher) {
        Optional<Part> counter = part(pattern, matcher, "counter");
        Device.Counter.Meaning means = counter.map(c -> counters.get(c.text())).orElse(null);
        return means == null
                ? Optional.empty()
                : part(pattern, matcher, "value").map(value -> new Count(means, counter.orElseThrow(), value));
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
