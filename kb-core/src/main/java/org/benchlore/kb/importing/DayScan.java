package org.benchlore.kb.importing;

import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Finds days at one place of a diary.
 *
 * @param order how dates with slashes are meant
 * @param above the day above, whose year goes on; null where no year is known
 * @param yearless whether days without a year are looked for where none is known
 */
record DayScan(DateOrder order, @Nullable LocalDate above, boolean yearless) {
    private static final Pattern SAME =
            Pattern.compile("\\s*((?:the )?same day|ditto)(?=\\s*[/:|–—-])", Pattern.CASE_INSENSITIVE);

    /** Of a leap year, so that 29 February is a day. */
    private static final LocalDate SOME_YEAR = LocalDate.of(2000, 1, 1);

    /**
     * A day found.
     *
     * @param start where it begins, weekday included
     * @param end behind it
     * @param date empty where its year is not known, or there is no such day
     * @param exists whether a calendar can have it
     */
    record Day(int start, int end, Optional<LocalDate> date, boolean exists) {}

    /** The day that begins at an offset, after blanks; "same day /" is the day above. */
    Optional<Day> at(String text, int from) {
        Matcher same = SAME.matcher(text);
        if (above != null && same.region(from, text.length()).lookingAt()) {
            return Optional.of(new Day(same.start(1), same.end(1), Optional.of(above), true));
        }
        Optional<Day> day = DateScan.at(text, from, order, above)
                .map(f -> new Day(f.start(), f.end(), f.date(), f.date().isPresent()));
        if (day.isPresent() || above != null || !yearless) {
            return day;
        }
        return DateScan.at(text, from, order, SOME_YEAR).map(f -> new Day(f.start(), f.end(), Optional.empty(), true));
    }
}
