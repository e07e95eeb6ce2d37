package org.benchlore.kb.importing;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Finds dates as people write them: 2024-03-12, 12.3.2024, 12/3/24, 12 Mar 2024, March 12th, 2024, with a weekday or not.
 * Years of two digits are 1969 to 2068, as POSIX has it. Below a full date 14.3., 14 March, 14/3: and March 14: do, too: the year
 * goes on. Looks at a bounded stretch only.
 */
final class DateScan {
    static final List<String> MONTHS =
            List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");
    static final List<String> MONTH_NAMES = List.of(
            "january",
            "february",
            "march",
            "april",
            "may",
            "june",
            "july",
            "august",
            "september",
            "october",
            "november",
            "december");
    static final List<String> WEEKDAYS = List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun");
    static final List<String> WEEKDAY_NAMES =
            List.of("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday");
    private static final List<String> GERMAN_WEEKDAYS = List.of("mo", "di", "mi", "do", "fr", "sa", "so");
    private static final int LONGEST_WORD = 12;

    private static final int MOST_ZONE_HOURS = 14;

    /** A day so many months before the one above is of the next year. */
    private static final int YEAR_TURNS = 6;

    /**
     * A date in a text.
     *
     * @param start where it begins, weekday included
     * @param end behind it, time of day included
     * @param date empty when there is no such day, such as 31.2.2024
     */
    record Found(int start, int end, Optional<LocalDate> date) {}

    private final String text;
    private final DateOrder order;
    private final @Nullable LocalDate above;
    private int at;

    private DateScan(String text, int from, DateOrder order, @Nullable LocalDate above) {
        this.text = text;
        this.at = from;
        this.order = order;
        this.above = above;
    }

    /** The date that begins at an offset, after blanks. */
    static Optional<Found> at(String text, int from, DateOrder order) {
        return at(text, from, order, null);
    }

    /**
     * As {@link #at(String, int, DateOrder)}, dates without a year included.
     *
     * @param above the date above it, or null
     */
    static Optional<Found> at(String text, int from, DateOrder order, @Nullable LocalDate above) {
        return new DateScan(text, from, order, above).scan();
    }

    /** The date that a whole text is, blanks aside; a time of day may follow. */
    static Optional<Found> whole(String text, DateOrder order) {
        return at(text, 0, order).filter(f -> text.substring(f.end()).isBlank());
    }

    /** Words behind which a day is not that on which a unit came in. */
    private static final Set<String> OTHER_DAYS = Set.of(
            "bought", "built", "made", "from", "since", "until", "till", "purchased", "sold", "dated", "before", "of");

    /** The first full date in a text that stands at a word and is not told as another day. */
    static Optional<Found> within(String text, DateOrder order) {
        String before = "";
        int word = -1;
        for (int i = 0; i < text.length(); i++) {
            if (!Character.isLetterOrDigit(text.charAt(i))) {
                before = word < 0 ? before : text.substring(word, i).toLowerCase(Locale.ROOT);
                word = -1;
            } else if (word < 0) {
                word = i;
                Optional<Found> found = OTHER_DAYS.contains(before) ? Optional.empty() : at(text, i, order);
                if (found.flatMap(Found::date).isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private Optional<Found> scan() {
        blanks();
        int start = at;
        boolean bracket = charAt(at) == '[';
        skip('[');
        clock();
        weekday();
        Optional<Found> found = digit(at) ? numbers(start) : monthFirst(start);
        return found.filter(f -> !Character.isLetterOrDigit(charAt(f.end())))
                .flatMap(f -> bracket ? closed(f) : Optional.of(f));
    }

    /** "[10/05/2025, 09:12]" as far as the bracket behind it. */
    private Optional<Found> closed(Found found) {
        return charAt(found.end()) == ']'
                ? Optional.of(new Found(found.start(), found.end() + 1, found.date()))
                : Optional.empty();
    }

    /** A time or a span before the day, "09:00-10:30 Mon 2 June 2025"; without a day behind it there is nothing to find. */
    private void clock() {
        int before = at;
        do {
            skip('-');
            skip('–');
            if (number(2) < 0 || charAt(at) != ':' || !(digit(at + 1) && digit(at + 2)) || digit(at + 3)) {
                at = before;
                return;
            }
            at += 3;
        } while (charAt(at) == '-' || charAt(at) == '–');
        skip(',');
        blanks();
    }

    private void weekday() {
        int before = at;
        String word = word();
        boolean german = GERMAN_WEEKDAYS.contains(word) && (charAt(at) == '.' || charAt(at) == ',');
        if (german || WEEKDAYS.contains(word) || WEEKDAY_NAMES.contains(word)) {
            skip('.');
            skip(',');
            blanks();
        } else {
            at = before;
        }
    }

    /** A date that begins with a number. */
    private Optional<Found> numbers(int start) {
        int firstAt = at;
        int first = number(4);
        int firstDigits = at - firstAt;
        char separator = charAt(at);
        if (first < 0) {
            return Optional.empty();
        }
        if ("-./".indexOf(separator) >= 0 && digit(at + 1)) {
            at++;
            int second = number(2);
            if (second < 0 || charAt(at) != separator || !digit(at + 1)) {
                return second < 0 || firstDigits > 2 ? Optional.empty() : dayAndMonth(start, separator, first, second);
            }
            at++;
            int thirdAt = at;
            int third = number(4);
            int thirdDigits = at - thirdAt;
            if (third < 0) {
                return Optional.empty();
            }
            if (firstDigits == 4) {
                return thirdDigits <= 2 ? found(start, first, second, third) : Optional.empty();
            }
            if (firstDigits > 2 || (thirdDigits != 4 && thirdDigits != 2)) {
                return Optional.empty();
            }
            boolean monthFirst = separator == '/' && order == DateOrder.MDY;
            int year = thirdDigits == 2 ? century(third) : third;
            return found(start, year, monthFirst ? first : second, monthFirst ? second : first);
        }
        if (firstDigits > 2) {
            return Optional.empty();
        }
        ordinal();
        skip('.');
        if (charAt(at) == '-') {
            at++;
        }
        blanks();
        int month = month();
        if (month == 0) {
            return Optional.empty();
        }
        int end = at;
        skip('.');
        skip(',');
        if (charAt(at) == '-') {
            at++;
        }
        blanks();
        return year(start, month, first).or(() -> withoutYear(start, end, month, first));
    }

    /** "14.3." and "14/3:", "14/3 -". */
    private Optional<Found> dayAndMonth(int start, char separator, int first, int second) {
        if (separator == '.' && charAt(at) == '.') {
            return withoutYear(start, at + 1, second, first);
        }
        boolean closed = charAt(at) == ':' || (charAt(at) == ' ' && charAt(at + 1) == '-');
        boolean monthFirst = order == DateOrder.MDY;
        return separator == '/' && closed
                ? withoutYear(start, at, monthFirst ? first : second, monthFirst ? second : first)
                : Optional.empty();
    }

    private Optional<Found> withoutYear(int start, int end, int month, int day) {
        if (above == null) {
            return Optional.empty();
        }
        try {
            LocalDate date = LocalDate.of(above.getYear(), month, day);
            boolean turned = date.isBefore(above.minusMonths(YEAR_TURNS));
            at = end;
            return Optional.of(new Found(start, end, Optional.of(turned ? date.plusYears(1) : date)));
        } catch (DateTimeException e) {
            return Optional.empty(); // "30/4: " may be anything
        }
    }

    /** "March 12th, 2024". */
    private Optional<Found> monthFirst(int start) {
        int month = month();
        if (month == 0) {
            return Optional.empty();
        }
        skip('.');
        blanks();
        int day = digit(at) ? number(2) : -1;
        if (day < 0) {
            return Optional.empty();
        }
        ordinal();
        int end = at;
        skip(',');
        blanks();
        boolean closed = charAt(end) == ':' || (charAt(end) == ' ' && charAt(end + 1) == '-');
        return year(start, month, day).or(() -> closed ? withoutYear(start, end, month, day) : Optional.empty());
    }

    private Optional<Found> year(int start, int month, int day) {
        int yearAt = at;
        int year = digit(at) ? number(4) : -1;
        if (year < 0 || (at - yearAt != 4 && at - yearAt != 2)) {
            return Optional.empty();
        }
        return found(start, at - yearAt == 2 ? century(year) : year, month, day);
    }

    private Optional<Found> found(int start, int year, int month, int day) {
        if (year < 1900 || year > 2199) {
            return Optional.empty();
        }
        timeOfDay();
        try {
            return Optional.of(new Found(start, at, Optional.of(LocalDate.of(year, month, day))));
        } catch (DateTimeException e) {
            return Optional.of(new Found(start, at, Optional.empty()));
        }
    }

    /** "T10:15:30+01:00", ", 3:15 pm". The zone does not move the day: it is that of the bench. */
    private void timeOfDay() {
        int before = at;
        boolean exact = charAt(at) == 'T';
        if (exact || charAt(at) == ',') {
            at++;
        }
        blanks();
        int hour = digit(at) ? number(2) : -1;
        boolean time = hour >= 0 && hour < 24 && charAt(at) == ':' && digit(at + 1);
        int parts = 1;
        while (time && (charAt(at) == ':' || charAt(at) == '.') && digit(at + 1)) {
            at++;
            parts++;
            while (digit(at)) {
                at++;
            }
        }
        if (!time) {
            at = before;
        } else if (charAt(at) == 'Z') {
            at++;
        } else if (exact || parts > 2) {
            zone(); // behind hours and minutes alone, "10:15-11:30" is how long it took
        }
        if (time && hour >= 1 && hour <= 12) {
            halfOfDay();
        }
    }

    /** "+01:00", "-0330" or "+02". */
    private void zone() {
        int before = at;
        if (charAt(at) != '+' && charAt(at) != '-') {
            return;
        }
        at++;
        int hours = twoDigits();
        if (charAt(at) == ':' && digit(at + 1)) {
            at++;
        }
        int minutes = digit(at) ? twoDigits() : 0;
        if (hours < 0 || hours > MOST_ZONE_HOURS || minutes < 0 || minutes > 59 || digit(at)) {
            at = before;
        }
    }

    private int twoDigits() {
        if (!digit(at) || !digit(at + 1)) {
            return -1;
        }
        at += 2;
        return (charAt(at - 2) - '0') * 10 + charAt(at - 1) - '0';
    }

    /** "AM", "p.m.". */
    private void halfOfDay() {
        int before = at;
        blanks();
        boolean half = "aApP".indexOf(charAt(at)) >= 0;
        at++;
        skip('.');
        half &= charAt(at) == 'm' || charAt(at) == 'M';
        at++;
        if (half && charAt(at - 2) == '.') {
            skip('.');
        }
        if (!half || Character.isLetterOrDigit(charAt(at))) {
            at = before;
        }
    }

    private static int century(int twoDigits) {
        return twoDigits < 69 ? 2000 + twoDigits : 1900 + twoDigits;
    }

    private int month() {
        String word = word();
        int month = Math.max(MONTHS.indexOf(word), MONTH_NAMES.indexOf(word));
        return word.equals("sept") ? 9 : month + 1;
    }

    private String word() {
        int from = at;
        while (Character.isLetter(charAt(at)) && at - from <= LONGEST_WORD) {
            at++;
        }
        return text.substring(from, at).toLowerCase(Locale.ROOT);
    }

    private void ordinal() {
        String two = text.substring(at, Math.min(text.length(), at + 2)).toLowerCase(Locale.ROOT);
        if (List.of("st", "nd", "rd", "th").contains(two)) {
            at += 2;
        }
    }

    /** A number of at most so many digits; -1 when it is longer or none. */
    private int number(int most) {
        int value = 0;
        int digits = 0;
        while (digit(at) && digits <= most) {
            value = value * 10 + charAt(at) - '0';
            at++;
            digits++;
        }
        return digits == 0 || digits > most ? -1 : value;
    }

    private void skip(char c) {
        if (charAt(at) == c) {
            at++;
        }
    }

    private void blanks() {
        while (charAt(at) == ' ' || charAt(at) == '\t' || charAt(at) == '\u00a0' || charAt(at) == '\u202f') {
            at++;
        }
    }

    private boolean digit(int i) {
        return charAt(i) >= '0' && charAt(i) <= '9';
    }

    private char charAt(int i) {
        return i >= 0 && i < text.length() ? text.charAt(i) : '\n';
    }
}
