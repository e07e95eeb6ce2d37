package org.benchlore.kb.reading;

import com.google.common.base.Splitter;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.LogReading.CodeCount;
import org.benchlore.kb.reading.Reading.Condition;
import org.benchlore.kb.reading.Reading.Source;

/**
 * A text and what a careful person reads from it. The format is described in {@code kb-core/docs/reading.md}.
 *
 * @param line where the text starts in its file, from 1
 * @param text as the reader gets it
 * @param scope device it is about
 * @param expected findings that must be read
 * @param arguable findings that may be read
 * @param quantities every quantity of the text
 * @param codes every log code of the text
 * @param counters what the log's counters say, by name
 * @param clockDoubtful whether some of the log's times cannot be trusted
 */
record GoldText(
        int line,
        String text,
        DeviceScope scope,
        List<Expected> expected,
        List<Said> arguable,
        List<Quantity> quantities,
        List<Code> codes,
        List<Counter> counters,
        boolean clockDoubtful) {
    /** A symptom in a state. */
    record Said(String symptom, String state) {
        static Said of(Reading.Understood u) {
            return new Said(u.finding().symptomId(), u.finding().state());
        }
    }

    /** How sure, and of when, a finding is told. */
    enum Mark {
        SAID,
        DOUBTED,
        PAST
    }

    /**
     * One finding to be read.
     *
     * @param mark how it is told
     * @param said at least one; any of them is right
     * @param span the words that carry it; empty for findings from logs
     * @param kind what its state comes from
     * @param conditions under which it holds
     * @param source who says so, where the text says it outright
     */
    record Expected(
            Mark mark, List<Said> said, String span, Kind kind, Set<Condition> conditions, Optional<Source> source) {}

    /** What a finding's state comes from; the measure has a line for each, and one for conditions. */
    enum Kind {
        STATE,
        NEGATION,
        VALUE,
        CODE,
        CONDITION;

        String label() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    record Quantity(double value, String unit, String span) {}

    record Code(String code, int count, boolean known) {
        static Code of(Reading.CodeSeen seen) {
            return new Code(seen.code(), seen.count(), seen.known());
        }

        static Code of(CodeCount counted) {
            return new Code(counted.code(), counted.count(), counted.known());
        }
    }

    record Counter(String name, long value) {}

    /** Whether nothing may be found in it. */
    boolean holdsNothing() {
        return expected.isEmpty();
    }

    /** The lines of one text, gathered while a file is read. */
    static final class Draft {
        private static final Splitter BAR =
                Splitter.onPattern("(?<=^|\\s)\\|(?=\\s|$)").trimResults();
        private static final Splitter SLASH = Splitter.on(" / ").trimResults();
        private static final Splitter BLANKS =
                Splitter.onPattern("\\s+").omitEmptyStrings().trimResults();

        private final int line;
        private final String text;
        private DeviceScope scope = DeviceScope.ANY;
        private final List<Expected> expected = new ArrayList<>();
        private final List<Said> arguable = new ArrayList<>();
        private final List<Quantity> quantities = new ArrayList<>();
        private final List<Code> codes = new ArrayList<>();
        private final List<Counter> counters = new ArrayList<>();
        private boolean clockDoubtful;

        Draft(int line, String text) {
            this.line = line;
            this.text = text;
        }

        GoldText done() {
            return new GoldText(line, text, scope, expected, arguable, quantities, codes, counters, clockDoubtful);
        }

        /** Takes one line below the text. @throws IllegalArgumentException that says what is wrong with it */
        void add(String line) {
            List<String> parts = BAR.splitToList(line.substring(1));
            String what = parts.get(0);
            String span = parts.size() > 1 ? parts.get(1) : "";
            List<String> tags = parts.size() > 2 ? BLANKS.splitToList(parts.get(2)) : List.of();
            switch (line.charAt(0)) {
                case '@' -> scope = DeviceScope.parse(what);
                case '=' -> expected.add(expected(Mark.SAID, what, span, tags));
                case '~' -> expected.add(expected(Mark.DOUBTED, what, span, tags));
                case 'p' -> expected.add(expected(Mark.PAST, what, span, tags));
                case '?' -> arguable.addAll(said(what));
                case 'v' -> quantities.add(quantity(words(what, 2), inText(span)));
                case 'c' -> codes.add(code(BLANKS.splitToList(what)));
                case 'k' -> counter(words(what, 2));
                default -> throw new IllegalArgumentException("no line starts with '" + line.charAt(0) + "'");
            }
        }

        private Expected expected(Mark mark, String what, String span, List<String> tags) {
            Kind kind = Kind.STATE;
            Set<Condition> conditions = EnumSet.noneOf(Condition.class);
            Optional<Source> source = Optional.empty();
            for (String tag : tags) {
                String name = tag.toUpperCase(Locale.ROOT).replace('-', '_');
                switch (tag) {
                    case "negation", "value", "code" -> kind = Kind.valueOf(name);
                    case "owner", "measured" -> source = Optional.of(Source.valueOf(name));
                    default -> conditions.add(Condition.valueOf(name));
                }
            }
            return new Expected(mark, said(what), inText(span), kind, conditions, source);
        }

        private static List<Said> said(String what) {
            List<Said> said = new ArrayList<>();
            for (String one : SLASH.split(what)) {
                List<String> words = words(one, 2);
                said.add(new Said(words.get(0), words.get(1)));
            }
            return said;
        }

        private String inText(String span) {
            if (!text.contains(span)) {
                throw new IllegalArgumentException("'" + span + "' is not in the text");
            }
            return span;
        }

        private static Quantity quantity(List<String> words, String span) {
            return new Quantity(Double.parseDouble(words.get(0)), words.get(1), span);
        }

        private static Code code(List<String> words) {
            boolean unknown = words.get(words.size() - 1).equals("unknown");
            int n = words.size() - (unknown ? 2 : 1);
            String code = String.join(" ", words.subList(0, n));
            return new Code(code, Integer.parseInt(words.get(n)), !unknown);
        }

        private void counter(List<String> words) {
            if (words.get(0).equals("clock")) {
                clockDoubtful = true;
            } else {
                counters.add(new Counter(words.get(0), Long.parseLong(words.get(1))));
            }
        }

        private static List<String> words(String what, int n) {
            List<String> words = BLANKS.splitToList(what);
            if (words.size() != n) {
                throw new IllegalArgumentException("'" + what + "' should have " + n + " words");
            }
            return words;
        }
    }
}
