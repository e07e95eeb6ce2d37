package org.benchlore.kb.knowledge;

import com.google.re2j.Pattern;
import com.google.re2j.PatternSyntaxException;
import java.time.DateTimeException;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Log line patterns, compiled once to see that they are sound. */
final class LogLineBinder {
    private static final int MAX_PATTERN = 500;
    private static final int MAX_TIME_FORMAT = 60;
    private static final int MAX_PATTERN_WEIGHT = 5_000;
    private static final List<String> GROUPS = List.of("time", "code", "text", "counter", "value");

    /** Written out once, since some letters are only refused then. */
    private static final ZonedDateTime ANY_TIME = ZonedDateTime.of(2001, 2, 3, 4, 5, 6, 0, ZoneOffset.UTC);

    private final Values values;
    private final Problems problems;

    LogLineBinder(Values values, Problems problems) {
        this.values = values;
        this.problems = problems;
    }

    List<Device.LogLine> bind(Fields device) {
        List<Device.LogLine> lines = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (Fields fields : device.tables("log-lines", "a log line")) {
            String id = fields.id("id");
            if (!id.isEmpty() && !ids.add(id)) {
                problems.error(
                        fields.place("id"),
                        device.subject() + " has the log line " + Problems.quote(id) + " twice",
                        "rename one of them");
            }
            Optional<YamlNode> node = fields.require("pattern");
            String pattern = node.map(n -> values.text(n, fields.what("pattern"), MAX_PATTERN))
                    .orElse("");
            Set<String> groups = node.isPresent() ? groups(pattern, node.get().place(), fields) : Set.of();
            String format = fields.find("time").map(n -> timeFormat(n, fields)).orElse(null);
            if (format != null && node.isPresent() && !groups.isEmpty() && !groups.contains("time")) {
                problems.error(
                        fields.place("time"),
                        fields.what("time") + " is given, but the pattern has no group 'time'",
                        "name the group: (?P<time>…)");
            } else if (format == null && groups.contains("time") && !fields.has("time")) {
                problems.error(
                        fields.place("pattern"),
                        fields.what("pattern") + " has a group 'time' but there is no 'time' format",
                        "add it, as in 'time: yyyy-MM-dd HH:mm:ss'");
            }
            lines.add(new Device.LogLine(id, pattern, format));
            fields.finish();
        }
        return lines;
    }

    /** Names of the pattern's groups; empty when it does not compile. */
    private Set<String> groups(String pattern, Place place, Fields fields) {
        if (pattern.isEmpty()) {
            return Set.of();
        }
        if (PatternWeight.of(pattern) > MAX_PATTERN_WEIGHT) {
            problems.error(
                    place,
                    fields.what("pattern") + " repeats too much",
                    "use * or + in place of large or nested {n} repeats");
            return Set.of();
        }
        Set<String> groups;
        try {
            groups = Pattern.compile(pattern).namedGroups().keySet();
        } catch (PatternSyntaxException e) {
            problems.error(
                    place,
                    fields.what("pattern") + " is not a sound pattern: " + e.getDescription() + " near "
                            + Problems.quote(String.valueOf(e.getPattern())),
                    "mend it; RE2 syntax has neither look-around nor back-references");
            return Set.of();
        }
        if (groups.isEmpty()) {
            problems.error(
                    place,
                    fields.what("pattern") + " has no named group",
                    "name what it finds, as in (?P<code>K-\\d{3}); known: " + String.join(", ", GROUPS));
        }
        for (String group : groups) {
            if (!GROUPS.contains(group)) {
                problems.error(
                        place,
                        fields.what("pattern") + " has an unknown group " + Problems.quote(group),
                        Nearest.remedy(group, GROUPS, "choose from " + String.join(", ", GROUPS)));
            }
        }
        return groups;
    }

    private @Nullable String timeFormat(YamlNode node, Fields fields) {
        String format = values.text(node, fields.what("time"), MAX_TIME_FORMAT);
        if (format.isEmpty()) {
            return null;
        }
        if (isTimeFormat(format)) {
            return format;
        }
        problems.error(
                node.place(),
                fields.what("time") + " " + Problems.quote(format) + " is not a date and time format",
                "use letters such as yyyy-MM-dd HH:mm:ss, other letters in single quotes");
        return null;
    }

    private static boolean isTimeFormat(String format) {
        try {
            return !DateTimeFormatter.ofPattern(format, Locale.ROOT)
                    .format(ANY_TIME)
                    .isBlank();
        } catch (IllegalArgumentException | DateTimeException e) {
            return false;
        }
    }
}
