package org.benchlore.kb.reading;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.Device.Counter.Meaning;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.LogReading.CodeCount;
import org.benchlore.kb.reading.Reading.CodeSeen;
import org.benchlore.kb.reading.Reading.Source;
import org.benchlore.kb.reading.Reading.Span;
import org.benchlore.kb.reading.Reading.Understood;

/** The log lines in a text: codes counted, times weighed, counters read. What is left is prose. */
final class LogParse {
    /** The symptom that counters of starts and clean stops speak of, where a pack has it. */
    private static final String UNCLEAN_STOPS = "unclean-stops";

    /** However often the lines say. */
    private static final long MOST_TIMES = 1_000_000;

    private record CodeLine(int line, Span span, int count) {}

    private final String text;
    private final Lexicon lexicon;
    private final LogForm form;
    private final char[] prose;
    private final List<Optional<LocalDateTime>> clocks = new ArrayList<>();
    private final List<Span> clockSpans = new ArrayList<>();
    private final Map<String, List<CodeLine>> codeLines = new LinkedHashMap<>();
    private final Map<Meaning, Span> counterSpans = new LinkedHashMap<>();
    private final Map<Meaning, Long> counters = new LinkedHashMap<>();
    private final List<Span> unmatched = new ArrayList<>();

    /** What stamped lines say that hold neither a code nor a counter. */
    private final List<Span> unread = new ArrayList<>();

    private final List<CodeCount> codes = new ArrayList<>();
    private final List<Span> implausible = new ArrayList<>();
    private final List<Understood> understood = new ArrayList<>();

    private LogParse(String text, Lexicon lexicon, LogForm form) {
        this.text = text;
        this.lexicon = lexicon;
        this.form = form;
        this.prose = form.none() ? new char[0] : text.toCharArray();
    }

    /** A note, parts of which may be a log. */
    static LogParse inNote(String text, Lexicon lexicon) {
        LogForm form = form(text, lexicon);
        return form.none() ? new LogParse(text, lexicon, form) : parsed(text, lexicon, form);
    }

    /** What is given as a log. */
    static LogParse of(String text, Lexicon lexicon) {
        return parsed(text, lexicon, form(text, lexicon));
    }

    /** By the line patterns of the lexicon's device packs; where there are none, by what logs have in common. */
    private static LogForm form(String text, Lexicon lexicon) {
        return lexicon.logLines().none() ? UnlistedLog.of(text) : lexicon.logLines();
    }

    private static LogParse parsed(String text, Lexicon lexicon, LogForm form) {
        LogParse parse = new LogParse(text, lexicon, form);
        parse.lines();
        parse.countCodes();
        parse.uncleanStops();
        parse.understood.sort(Comparator.comparingInt((Understood u) -> u.span().start())
                .thenComparing(u -> u.finding().symptomId()));
        return parse;
    }

    /** The text with log lines blanked, so that nothing is read twice. */
    String prose() {
        return form.none() ? text : new String(prose);
    }

    List<Understood> understood() {
        return understood;
    }

    /** What lines of the log say that was not understood, in order. */
    List<Span> unread() {
        return unread;
    }

    /** Whether the log itself counts a code of this symptom. */
    boolean counts(String symptomId) {
        return !understood.isEmpty()
                && understood.stream().anyMatch(u -> u.finding().symptomId().equals(symptomId));
    }

    /** Codes seen in the prose and in the log together, in order of first place. */
    List<CodeSeen> with(List<CodeSeen> inProse) {
        if (codes.isEmpty()) {
            return inProse;
        }
        Map<String, CodeSeen> all = new LinkedHashMap<>();
        inProse.forEach(seen -> all.put(seen.code(), seen));
        for (CodeCount code : codes) {
            all.merge(
                    code.code(),
                    new CodeSeen(code.code(), code.known(), code.count(), false, code.span()),
                    (a, b) -> new CodeSeen(
                            a.code(),
                            a.known(),
                            a.count() + b.count(),
                            false,
                            a.span().start() < b.span().start() ? a.span() : b.span()));
        }
        return all.values().stream()
                .sorted(Comparator.comparingInt(seen -> seen.span().start()))
                .toList();
    }

    LogReading reading() {
        return new LogReading(
                codes,
                counter(Meaning.STARTS),
                counter(Meaning.CLEAN_STOPS),
                unclean(),
                counter(Meaning.HOURS),
                understood,
                implausible,
                unmatched);
    }

    private void lines() {
        int start = 0;
        while (start < text.length()) {
            int feed = text.indexOf('\n', start);
            int end = feed < 0 ? text.length() : feed;
            int trimmed = end > start && text.charAt(end - 1) == '\r' ? end - 1 : end;
            line(start, trimmed);
            start = end + 1;
        }
    }

    private void line(int start, int end) {
        String line = text.substring(start, end);
        Optional<LogForm.Hit> hit = form.match(line);
        if (hit.isEmpty()) {
            if (!line.isBlank()) {
                unmatched.add(new Span(line, start, end));
            }
            return;
        }
        LogForm.Hit found = hit.get();
        if (!found.prose()) {
            blank(start, end);
            if (found.codes().isEmpty() && found.counts().isEmpty()) {
                leave(line, found.time(), start);
            }
        }
        for (LogForm.Mark mark : found.codes()) {
            String code = mark.part().text();
            blank(start + mark.part().start(), start + mark.part().start() + code.length());
            String canonical = lexicon.code(code).map(Device.Code::code).orElse(code);
            codeLines
                    .computeIfAbsent(canonical, c -> new ArrayList<>())
                    .add(new CodeLine(clocks.size(), span(start, mark.part()), mark.count()));
        }
        clocks.add(found.clock());
        clockSpans.add(found.time().map(time -> span(start, time)).orElse(new Span("", start, start)));
        found.counts().forEach(count -> counter(count, start));
    }

    /** Keeps what a line says behind its time. */
    private void leave(String line, Optional<LogForm.Part> time, int start) {
        int from = time.map(t -> t.start() + t.text().length()).orElse(0);
        int to = line.length();
        while (from < to && !Character.isLetter(line.charAt(from))) {
            from++;
        }
        while (to > from && !Character.isLetterOrDigit(line.charAt(to - 1))) {
            to--;
        }
        String words = line.substring(from, to);
        if (!words.isEmpty()) {
            unread.add(new Span(words, start + from, start + to));
        }
    }

    private void blank(int from, int to) {
        for (int i = from; i < to; i++) {
            prose[i] = ' ';
        }
    }

    private void counter(LogForm.Count count, int start) {
        LogForm.Part value = count.value();
        try {
            // the last line wins: logs are pasted as they grew
            counters.put(count.means(), Long.parseLong(value.text()));
            LogForm.Part name = count.name();
            int from = start + Math.min(name.start(), value.start());
            int to = start
                    + Math.max(
                            name.start() + name.text().length(),
                            value.start() + value.text().length());
            counterSpans.put(count.means(), new Span(text.substring(from, to), from, to));
        } catch (NumberFormatException e) {
            unmatched.add(span(start, value));
        }
    }

    private void countCodes() {
        boolean[] plausible = Clocks.plausible(clocks);
        for (int i = 0; i < plausible.length; i++) {
            if (!plausible[i] && !clockSpans.get(i).text().isEmpty()) {
                implausible.add(clockSpans.get(i));
            }
        }
        Map<String, Integer> counted = new LinkedHashMap<>();
        Map<String, Span> firsts = new LinkedHashMap<>();
        codeLines.forEach((code, lines) -> {
            List<LocalDateTime> dated = lines.stream()
                    .filter(l -> plausible[l.line()])
                    .map(l -> clocks.get(l.line()).orElseThrow())
                    .sorted()
                    .toList();
            Optional<Device.Code> known = lexicon.code(code);
            Span first = lines.get(0).span();
            int times = (int) Math.min(
                    MOST_TIMES, lines.stream().mapToLong(CodeLine::count).sum());
            codes.add(new CodeCount(
                    code,
                    known.isPresent(),
                    times,
                    dated.stream().findFirst(),
                    dated.isEmpty() ? Optional.empty() : Optional.of(dated.get(dated.size() - 1)),
                    first));
            known.ifPresent(c -> {
                counted.merge(c.symptomId(), times, Integer::sum);
                firsts.putIfAbsent(c.symptomId(), first);
            });
        });
        // several codes may speak of one symptom
        counted.forEach((id, count) -> lexicon.symptom(id)
                .ifPresent(symptom -> finding(symptom, count, Objects.requireNonNull(firsts.get(id)))));
    }

    private void finding(Symptom symptom, int count, Span span) {
        String state = count > 1 ? "recurring" : "once";
        if (symptom.indexOf(state) >= 0) {
            understood.add(new Understood(Finding.of(symptom.id(), state), span, Source.SEEN, List.of(), false, ""));
        }
    }

    private void uncleanStops() {
        Span span = counterSpans.getOrDefault(Meaning.UNCLEAN_STOPS, counterSpans.get(Meaning.STARTS));
        Symptom symptom = lexicon.symptom(UNCLEAN_STOPS).orElse(null);
        Quantity quantity = symptom == null ? null : symptom.quantity();
        if (span == null
                || symptom == null
                || quantity == null
                || !quantity.unit().equals("1")) {
            return;
        }
        unclean().ifPresent(count -> {
            Verdict verdict = Verdict.ofCount(symptom, quantity, count);
            understood.add(new Understood(
                    Finding.soft(symptom.id(), verdict.likelihoods()),
                    span,
                    Source.MEASURED,
                    List.of(),
                    false,
                    verdict.note()));
        });
    }

    /** As counted, else starts less clean stops; counters that contradict each other say nothing. */
    private OptionalLong unclean() {
        if (counters.containsKey(Meaning.UNCLEAN_STOPS)) {
            return counter(Meaning.UNCLEAN_STOPS);
        }
        Long starts = counters.get(Meaning.STARTS);
        Long clean = counters.get(Meaning.CLEAN_STOPS);
        return starts == null || clean == null || clean > starts
                ? OptionalLong.empty()
                : OptionalLong.of(starts - clean);
    }

    private OptionalLong counter(Meaning meaning) {
        Long value = counters.get(meaning);
        return value == null ? OptionalLong.empty() : OptionalLong.of(value);
    }

    private Span span(int lineStart, LogForm.Part part) {
        int from = lineStart + part.start();
        return new Span(part.text(), from, from + part.text().length());
    }
}
