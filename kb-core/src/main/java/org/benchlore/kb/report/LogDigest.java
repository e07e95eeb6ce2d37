package org.benchlore.kb.report;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.LogReading;
import org.benchlore.kb.reading.LogReading.CodeCount;

/**
 * What the logs in a case's notes say, put together. A log pasted twice counts once.
 *
 * @param codes in order of first place
 * @param counters in words, the latest
 * @param implausible how many times in it were not believed
 */
record LogDigest(List<Entry> codes, List<String> counters, int implausible) {
    /**
     * One code.
     *
     * @param line how often and when
     * @param known whether the device's pack knows it
     * @param means what it stands for, or empty
     * @param innocent when it is written without a fault, or empty
     */
    record Entry(Sheet.LogLine line, boolean known, String means, String innocent) {}

    LogDigest {
        codes = List.copyOf(codes);
        counters = List.copyOf(counters);
    }

    boolean isEmpty() {
        return codes.isEmpty() && counters.isEmpty();
    }

    static LogDigest of(CaseHistory history, Readings readings, List<Device> devices) {
        List<LogReading> logs = history.events().stream()
                .map(Readings::found)
                .distinct()
                .flatMap(text -> readings.log(text).stream())
                .toList();
        Map<String, Entry> codes = new LinkedHashMap<>();
        Map<String, String> counters = new LinkedHashMap<>();
        int implausible = 0;
        for (LogReading log : logs) {
            implausible += log.implausible().size();
            for (CodeCount code : log.codes()) {
                Entry entry = entry(code, history.scope(), devices);
                codes.merge(code.code(), entry, LogDigest::add);
            }
            counter(counters, "starts", log.starts());
            counter(counters, "clean stops", log.cleanStops());
            counter(counters, "stops that were not clean", log.uncleanStops());
            counter(counters, "hours of use", log.hours());
        }
        return new LogDigest(
                List.copyOf(codes.values()),
                counters.entrySet().stream()
                        .map(e -> e.getKey() + ": " + e.getValue())
                        .toList(),
                implausible);
    }

    private static void counter(Map<String, String> counters, String name, OptionalLong value) {
        value.ifPresent(v -> counters.put(name, Long.toString(v)));
    }

    private static Entry entry(CodeCount code, DeviceScope scope, List<Device> devices) {
        Optional<Device.Code> meaning = devices.stream()
                .filter(d -> d.scope().contains(scope))
                .sorted(Comparator.comparingInt((Device d) -> -d.scope().depth()))
                .flatMap(d -> d.codes().stream())
                .filter(c -> c.code().equals(code.code()))
                .findFirst();
        return new Entry(
                new Sheet.LogLine(code.code(), code.count(), code.first(), code.last()),
                code.known(),
                meaning.map(Device.Code::means).orElse(""),
                meaning.map(Device.Code::innocent).orElse(""));
    }

    private static Entry add(Entry a, Entry b) {
        Sheet.LogLine line = new Sheet.LogLine(
                a.line.code(),
                a.line.count() + b.line.count(),
                pick(a.line.first(), b.line.first(), -1),
                pick(a.line.last(), b.line.last(), 1));
        return new Entry(line, a.known, a.means, a.innocent);
    }

    private static Optional<LocalDateTime> pick(Optional<LocalDateTime> a, Optional<LocalDateTime> b, int sign) {
        Comparator<LocalDateTime> order = Comparator.naturalOrder();
        return Stream.of(a, b).flatMap(Optional::stream).reduce((x, y) -> sign * order.compare(x, y) >= 0 ? x : y);
    }

    /** As a picture and a table. */
    List<Sheet.Block> blocks() {
        List<Sheet.Block> blocks = new ArrayList<>();
        if (codes.stream().anyMatch(e -> e.line.first().isPresent())) {
            blocks.add(new Sheet.Log(codes.stream().map(Entry::line).toList()));
        }
        if (!codes.isEmpty()) {
            blocks.add(new Sheet.Table(
                    List.of("Code", "Means", "Times", "First", "Last", "Also without a fault"),
                    codes.stream()
                            .map(e -> List.of(
                                    e.line.code(),
                                    e.means.isEmpty() ? "not known here" : e.means,
                                    Integer.toString(e.line.count()),
                                    e.line.first().map(Terms::clock).orElse("–"),
                                    e.line.last().map(Terms::clock).orElse("–"),
                                    e.innocent.isEmpty() ? "–" : e.innocent))
                            .toList()));
        }
        remarks(blocks);
        return blocks;
    }

    /** What may be shown to anybody: codes that the packs know, how often and over how many days, and counters. */
    List<Sheet.Block> withoutDates() {
        List<Sheet.Block> blocks = new ArrayList<>();
        List<Entry> known = codes.stream().filter(Entry::known).toList();
        if (!known.isEmpty()) {
            blocks.add(new Sheet.Table(
                    List.of("Code", "Means", "Times", "Within", "Also without a fault"),
                    known.stream()
                            .map(e -> List.of(
                                    e.line.code(),
                                    e.means,
                                    Integer.toString(e.line.count()),
                                    within(e.line),
                                    e.innocent.isEmpty() ? "–" : e.innocent))
                            .toList()));
        }
        int unknown = codes.size() - known.size();
        if (unknown > 0) {
            blocks.add(new Sheet.Words(Terms.count(unknown, "further code", "further codes") + " not known here."));
        }
        remarks(blocks);
        return blocks;
    }

    private static String within(Sheet.LogLine line) {
        return line.first().isEmpty() || line.last().isEmpty()
                ? "–"
                : Terms.count(
                        1
                                + (int) ChronoUnit.DAYS.between(
                                        line.first().get().toLocalDate(),
                                        line.last().get().toLocalDate()),
                        "day",
                        "days");
    }

    private void remarks(List<Sheet.Block> blocks) {
        if (!counters.isEmpty()) {
            blocks.add(new Sheet.Words("Counters: " + String.join(", ", counters) + "."));
        }
        if (implausible > 0) {
            blocks.add(
                    new Sheet.Words(
                            Terms.count(implausible, "line has a time", "lines have times")
                                    + " that cannot be right; the log's clock may have lost its cell. Counts are kept, times are not."));
        }
    }
}
