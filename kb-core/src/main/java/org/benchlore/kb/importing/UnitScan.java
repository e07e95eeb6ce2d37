package org.benchlore.kb.importing;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds serial numbers and tags: "S/N C3-0417", "serial no. 12345", "job: 2231", "#17". */
final class UnitScan {
    private static final String VALUE = "([\\p{L}\\d][\\p{L}\\d/._-]{0,38}+)";

    /**
     * Every part is bounded and no two of them can match the same characters, so it runs in linear time. Right behind "SN" a
     * number is that of a chip.
     */
    private static final Pattern SERIAL = Pattern.compile(
            "(?<![\\p{L}\\d])(?:s/n|(?:sn|snr|ser(?:ial)?)(?=[ .:#=]|no|nr))\\.?"
                    + "(?: {0,2}(?:no|nr|num|number)(?!\\p{L}))?\\.? {0,2}[:#=]? {0,2}"
                    + VALUE,
            Pattern.CASE_INSENSITIVE);

    /** A plain word such as "unit" needs a sign behind it. */
    private static final Pattern TAG = Pattern.compile(
            "(?<![\\p{L}\\d])(?:unit|tag|asset|job|ticket|order)(?: {0,2}(?:no|nr|number|id))?\\.? {0,2}(?:[:=]#?|#)"
                    + " {0,2}"
                    + VALUE,
            Pattern.CASE_INSENSITIVE);

    /** "Job 114: Ostrel radio": at the beginning a plain word will do. */
    private static final Pattern LEADING = Pattern.compile(
            "\\A\\s{0,9}+(?:job|ticket|order)(?: {0,2}(?:no|nr|number))?\\.? {0,2}#?(\\d{1,9}+)(?![\\p{L}\\d])"
                    + "(?! {0,2}(?:h|hours?|days?|weeks?|min|minutes?)(?!\\p{L}))",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern NUMBER_SIGN = Pattern.compile("(?<![\\p{L}\\d#&])#(\\d[\\p{L}\\d/._-]{0,38}+)");

    /** A number found: the whole expression and the number itself. */
    record Found(int start, int end, String unit) {}

    private UnitScan() {}

    /** The first serial number, else the first tag. */
    static Optional<Found> first(String text) {
        return first(SERIAL, text)
                .or(() -> first(TAG, text))
                .or(() -> first(LEADING, text))
                .or(() -> first(NUMBER_SIGN, text));
    }

    private static Optional<Found> first(Pattern pattern, String text) {
        Matcher matcher = pattern.matcher(text);
        while (matcher.find()) {
            String unit = trimmed(matcher.group(1));
            if (unit.chars().anyMatch(Character::isDigit)) {
                return Optional.of(new Found(matcher.start(), matcher.start(1) + unit.length(), unit));
            }
        }
        return Optional.empty();
    }

    /** The number in a cell or line that is there to give it: behind a label of its own, else all of it. */
    static String labelled(String cell) {
        return first(cell).map(Found::unit).orElse(cell.strip());
    }

    /** Without the full stop of a sentence. */
    private static String trimmed(String value) {
        int end = value.length();
        while (end > 0 && "./_-".indexOf(value.charAt(end - 1)) >= 0) {
            end--;
        }
        return value.substring(0, end);
    }
}
