package org.benchlore.kb.reading;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/**
 * The time in front of a log line.
 *
 * @param time as written; empty where it has no date in figures, since such times are not weighed
 * @param clock the same as a date and time; empty for a day that never was
 * @param start where it begins in the line, a serial number or the like in front of it
 * @param end where the rest of the line begins
 */
record Stamp(Optional<LogForm.Part> time, Optional<LocalDateTime> clock, int start, int end) {
    private static final String CLOCK = "\\d{1,2}:\\d{2}(?::\\d{2})?";
    private static final Pattern FORMS = Pattern.compile("^[\\s\\[(|#*]*(?:\\S{1,12}[\\s|;]+){0,2}?[\\[(|]?(?P<time>"
            + "(?P<ymd>\\d{4}[-/.]\\d{1,2}[-/.]\\d{1,2}[ T;,|]+" + CLOCK + ")"
            + "|(?P<dmy>\\d{1,2}[./-]\\d{1,2}[./-]\\d{4}[ T;,|]+" + CLOCK + ")"
            + "|\\d{1,2}-[A-Za-z]{3}-\\d{2,4} " + CLOCK
            + "|[A-Z][a-z]{2} (?:\\d{1,2} )?(?:\\d{4} )?" + CLOCK
            + "|" + CLOCK
            + "|ts?=\\d+)(?:[.,]\\d{1,6})?[\\])]?(?:$|[\\s;|,])");
    private static final Pattern SEPARATORS = Pattern.compile("[^0-9:]+");
    private static final DateTimeFormatter YEAR_FIRST = DateTimeFormatter.ofPattern("yyyy-M-d-H:m[:s]", Locale.ROOT);
    private static final DateTimeFormatter DAY_FIRST = DateTimeFormatter.ofPattern("d-M-yyyy-H:m[:s]", Locale.ROOT);

    static Optional<Stamp> of(String line) {
        Matcher matcher = FORMS.matcher(line);
        if (!matcher.find()) {
            return Optional.empty();
        }
        String ymd = matcher.group("ymd");
        String dated = ymd == null ? matcher.group("dmy") : ymd;
        int start = matcher.start("time");
        if (dated == null) {
            return Optional.of(new Stamp(Optional.empty(), Optional.empty(), start, matcher.end()));
        }
        return Optional.of(new Stamp(
                Optional.of(new LogForm.Part(dated, start)),
                clock(dated, ymd == null ? DAY_FIRST : YEAR_FIRST),
                start,
                matcher.end()));
    }

    private static Optional<LocalDateTime> clock(String dated, DateTimeFormatter format) {
        try {
            return Optional.of(LocalDateTime.parse(SEPARATORS.matcher(dated).replaceAll("-"), format));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
