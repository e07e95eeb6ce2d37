package org.benchlore.kb.importing;

import com.google.common.base.CharMatcher;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Finds days at one place of a diary.
 *
 * @param order how dates with slashes are meant
 * @param above the day above, whose year goes on; null where no year is known
 * @param yearless whether days without a year are looked for where none is known
 */
record DayScan(DateOrder order, @Nullable LocalDate above, boolean yearless) {
    private static final List<String> SAME = List.of("the same day", "same day", "ditto");
    private static final CharMatcher BEHIND_SAME = CharMatcher.anyOf("/:|–—-");

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
        Optional<Day> same = above == null ? Optional.empty() : same(text, afterBlanks(text, from), above);
        if (same.isPresent()) {
            return same;
        }
        Optional<Day> day = DateScan.at(text, from, order, above)
                .map(f -> new Day(f.start(), f.end(), f.date(), f.date().isPresent()));
        if (day.isPresent() || above != null || !yearless) {
            return day;
        }
        return DateScan.at(text, from, order, SOME_YEAR).map(f -> new Day(f.start(), f.end(), Optional.empty(), true));
    }

    private static Optional<Day> same(String text, int from, LocalDate above) {
        for (String words : SAME) {
            int end = from + words.length();
            int sign = afterBlanks(text, end);
            if (text.regionMatches(true, from, words, 0, words.length())
                    && sign < text.length()
                    && BEHIND_SAME.matches(text.charAt(sign))) {
                return Optional.of(new Day(from, end, Optional.of(above), true));
            }
        }
        return Optional.empty();
    }

    private static int afterBlanks(String text, int from) {
        int at = from;
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
        return at;
    }
}
