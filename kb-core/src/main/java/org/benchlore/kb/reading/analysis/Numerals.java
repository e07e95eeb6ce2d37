package org.benchlore.kb.reading.analysis;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Objects;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Units.Unit;
import org.jspecify.annotations.Nullable;

/** Numbers in folded text: values with units, ranges, tolerances, dates and times, RKM notation. */
final class Numerals {
    /** More digits than any meter or counter has; longer runs are taken for serial numbers. */
    private static final int MOST_DIGITS = 15;

    private static final String MINUS = "minus";

    private static final String FUSE_SPEEDS = "TFMtf";

    /** What may follow "degrees". */
    private static final Words SCALES = Words.of("c", "celsius", "f", "fahrenheit");

    private final Folded folded;
    private @Nullable Token token;

    Numerals(Folded folded) {
        this.folded = folded;
    }

    /** What the last successful {@link #scan} found. */
    Token token() {
        return Objects.requireNonNull(token);
    }

    /** Scans a number that starts at {@code from}. @return its end, or {@code from} when none starts there */
    int scan(int from) {
        char c = folded.at(from);
        char before = folded.at(from - 1);
        if (Lexer.letterOrDigit(before)) {
            return from;
        }
        if (c == '±' || ((c == '+') && tail(from, "+/-", "+-") > from)) {
            int number = spaces(c == '±' ? from + 1 : tail(from, "+/-", "+-"));
            return starts(number) ? number(from, number, false, true) : from;
        }
        if ((c == '+' || c == '-') && starts(from + 1) && before != ')') {
            return number(from, from + 1, c == '-', false);
        }
        if ((c == 'm' || c == 'M') && minus(from)) {
            int number = spaces(from + MINUS.length());
            return number > from + MINUS.length() && starts(number) ? number(from, number, true, false) : from;
        }
        if (Lexer.digit(folded.at(from + 1)) && FUSE_SPEEDS.indexOf(c) >= 0) {
            return rating(from);
        }
        return starts(from) ? number(from, from, false, false) : from;
    }

    private boolean minus(int from) {
        for (int i = 0; i < MINUS.length(); i++) {
            if (Character.toLowerCase(folded.at(from + i)) != MINUS.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    /** The current of a fuse marked with its speed, "T2A" (IEC 60127-1, from memory). */
    private int rating(int from) {
        int end = number(from, from + 1, false, false);
        boolean amps = end > from
                && token().kind() == Kind.QUANTITY
                && token().unit().equals("A")
                && folded.slice(from, end).indexOf(' ') < 0;
        return amps ? end : from;
    }

    private int number(int from, int digits, boolean negative, boolean tolerance) {
        int end = numberEnd(digits);
        int date = from == digits ? dateEnd(digits, end) : digits;
        if (date > digits) {
            return other(from, date);
        }
        if (end - digits > MOST_DIGITS) {
            return other(from, end);
        }
        BigDecimal value = parse(digits, end);
        int suffix = unitEnd(end);
        if (suffix > end && Lexer.digit(folded.at(suffix))) {
            return letterCode(from, digits, end, suffix, negative);
        }
        if (suffix > end) {
            Unit unit = Units.attached(folded.slice(end, suffix));
            if (unit == null) {
                return ordinal(end, suffix) ? other(from, suffix) : from;
            }
            return range(from, suffix, value, unit, negative, tolerance);
        }
        if (!negative && !tolerance && rangeSign(end) > end) {
            int second = rangeSign(end);
            int secondEnd = numberEnd(second);
            int[] unitAt = unitSpan(secondEnd);
            Unit unit = unit(unitAt, secondEnd);
            BigDecimal top = parse(second, secondEnd);
            if (unit != null && top.compareTo(value) > 0) {
                return quantity(from, unitAt[1], value, top, unit, false, false);
            }
        }
        int[] unitAt = unitSpan(end);
        Unit unit = unit(unitAt, end);
        if (unit != null) {
            int unitEnd = degrees(unit, unitAt[1]);
            return range(from, unitEnd, value, scaled(unit, unitAt[1], unitEnd), negative, tolerance);
        }
        BigDecimal signed = negative ? value.negate() : value;
        String term = (tolerance ? "±" : "") + plain(signed);
        token = new Token(
                Kind.NUMBER,
                folded.start(from),
                folded.end(end - 1),
                term,
                term,
                signed.doubleValue(),
                "",
                step(value).doubleValue(),
                0,
                0);
        return end;
    }

    /** "3.2V-3.3V", or the plain quantity. */
    private int range(int from, int end, BigDecimal value, Unit unit, boolean negative, boolean tolerance) {
        int second = negative || tolerance ? end : rangeSign(end);
        if (second > end) {
            int secondEnd = numberEnd(second);
            int[] unitAt = unitSpan(secondEnd);
            Unit topUnit = unit(unitAt, secondEnd);
            BigDecimal top = parse(second, secondEnd);
            if (unit.equals(topUnit) && top.compareTo(value) > 0) {
                return quantity(from, unitAt[1], value, top, unit, false, false);
            }
        }
        return quantity(from, end, value, value, unit, negative, tolerance);
    }

    private int quantity(
            int from, int end, BigDecimal low, BigDecimal high, Unit unit, boolean negative, boolean tolerance) {
        BigDecimal middle = low.add(high).multiply(new BigDecimal("0.5"));
        BigDecimal value = unit.inBase(negative ? middle.negate() : middle);
        double spread = high.subtract(low).multiply(unit.factor()).doubleValue() / 2;
        String term = (tolerance ? "±" : "") + plain(value) + unit.base().toLowerCase(Locale.ROOT);
        token = new Token(
                Kind.QUANTITY,
                folded.start(from),
                folded.end(end - 1),
                term,
                term,
                value.doubleValue(),
                unit.base(),
                step(high).multiply(unit.factor()).doubleValue(),
                spread,
                unit.factor().doubleValue());
        return end;
    }

    /** "4k7": the letter stands for the decimal sign. */
    private int letterCode(int from, int digits, int letterAt, int fraction, boolean negative) {
        Unit unit = fraction == letterAt + 1 ? Units.letterCode(folded.at(letterAt)) : null;
        int end = fraction;
        while (Lexer.digit(folded.at(end))) {
            end++;
        }
        boolean whole = folded.slice(digits, letterAt).chars().allMatch(c -> Lexer.digit((char) c));
        if (unit == null || !whole || end - fraction > 3 || Lexer.letterOrDigit(folded.at(end))) {
            return from;
        }
        BigDecimal value = new BigDecimal(folded.slice(digits, letterAt) + "." + folded.slice(fraction, end));
        return quantity(from, end, value, value, unit, negative, false);
    }

    private int other(int from, int end) {
        String text = folded.slice(from, end);
        token = Token.plain(Kind.OTHER, folded.start(from), folded.end(end - 1), text, text);
        return end;
    }

    private boolean starts(int i) {
        return Lexer.digit(folded.at(i)) || (folded.at(i) == '.' && Lexer.digit(folded.at(i + 1)));
    }

    /** Digits with at most one decimal sign; a comma counts when it cannot be a thousands or a list comma. */
    private int numberEnd(int from) {
        int end = from;
        while (Lexer.digit(folded.at(end))) {
            end++;
        }
        char sign = folded.at(end);
        if ((sign != '.' && sign != ',') || !Lexer.digit(folded.at(end + 1))) {
            return end;
        }
        int grouped = groupsEnd(from, end);
        if (grouped > end) {
            return grouped;
        }
        int fraction = end + 1;
        while (Lexer.digit(folded.at(fraction))) {
            fraction++;
        }
        return fraction;
    }

    /** End of "1,234.5" or "1,234,567", where groups of three are told from a decimal comma; else {@code whole}. */
    private int groupsEnd(int from, int whole) {
        int end = whole;
        while (whole - from <= 3 && folded.at(end) == ',' && threeDigits(end + 1)) {
            end += 4;
        }
        int fraction = end + 1;
        while (folded.at(end) == '.' && Lexer.digit(folded.at(fraction))) {
            fraction++;
        }
        boolean decimal = end > whole && fraction > end + 1;
        return decimal ? fraction : end > whole + 4 ? end : whole;
    }

    private boolean threeDigits(int i) {
        return twoDigits(i) && Lexer.digit(folded.at(i + 2)) && !Lexer.digit(folded.at(i + 3));
    }

    private BigDecimal parse(int from, int end) {
        String text = folded.slice(from, end);
        int comma = text.indexOf(',');
        if (comma >= 0 && (text.indexOf('.') > comma || text.indexOf(',', comma + 1) > 0)) {
            text = text.replace(",", "");
        } else if (comma >= 0) {
            boolean thousands = text.length() - comma == 4 && comma <= 3 && text.charAt(0) != '0';
            text = thousands ? text.replace(",", "") : text.replace(',', '.');
        }
        return new BigDecimal(text.startsWith(".") ? "0" + text : text);
    }

    /** End of a date or time of day that starts at {@code from}, or {@code from}. */
    private int dateEnd(int from, int numberEnd) {
        char next = folded.at(numberEnd);
        boolean clock = next == ':' && numberEnd - from <= 2 && twoDigits(numberEnd + 1);
        boolean date =
                next == '-' && numberEnd - from == 4 && twoDigits(numberEnd + 1) && folded.at(numberEnd + 3) == '-';
        boolean dotted = (next == '.' || next == '/')
                && Lexer.digit(folded.at(numberEnd + 1))
                && (next == '.' || (numberEnd - from <= 2 && slashes(numberEnd)));
        if (!clock && !date && !dotted) {
            return from;
        }
        int end = numberEnd;
        while (Lexer.digit(folded.at(end))
                || ("-:./T".indexOf(folded.at(end)) >= 0 && Lexer.digit(folded.at(end + 1)))) {
            end++;
        }
        return end;
    }

    private boolean slashes(int first) {
        int i = first + 1;
        while (Lexer.digit(folded.at(i))) {
            i++;
        }
        if (folded.at(i) != '/') {
            return false;
        }
        int year = i + 1;
        while (Lexer.digit(folded.at(year))) {
            year++;
        }
        boolean decimal = folded.at(year) == '.' && Lexer.digit(folded.at(year + 1));
        return !decimal && (year - i == 3 || year - i == 5);
    }

    private boolean twoDigits(int i) {
        return Lexer.digit(folded.at(i)) && Lexer.digit(folded.at(i + 1));
    }

    /** Where the second number of a range starts, or {@code end}; a second one of absurd length makes no range. */
    private int rangeSign(int end) {
        int sign = tail(end, "..", "-");
        boolean range = sign > end && Lexer.digit(folded.at(sign)) && numberEnd(sign) - sign <= MOST_DIGITS;
        return range ? sign : end;
    }

    private int unitEnd(int from) {
        int end = from;
        while (end - from < 12
                && (Character.isLetter(folded.at(end)) || folded.at(end) == '°' || folded.at(end) == '%')) {
            end++;
        }
        return end;
    }

    /** Where a unit word may stand behind a number that ends at {@code from}: attached, one space, or a hyphen. */
    private int[] unitSpan(int from) {
        int at = folded.at(from) == '-' && Character.isLetter(folded.at(from + 1)) ? from + 1 : spaces(from);
        return new int[] {at, unitEnd(at)};
    }

    private @Nullable Unit unit(int[] span, int numberEnd) {
        if (span[1] == span[0] || Lexer.letterOrDigit(folded.at(span[1]))) {
            return null;
        }
        String spelled = folded.slice(span[0], span[1]);
        if (spelled.equals("k")) {
            return Units.attached(spelled);
        }
        return span[0] == numberEnd ? Units.attached(spelled) : Units.spaced(spelled);
    }

    /** The end of the scale's name in "45 degrees C", "120 degrees Fahrenheit"; {@code end} where there is none. */
    private int degrees(Unit unit, int end) {
        int next = spaces(end);
        int scale = unitEnd(next);
        boolean degrees = unit.base().equals("degC") && scale > next && next > end;
        return degrees && SCALES.contains(folded.slice(next, scale).toLowerCase(Locale.ROOT)) ? scale : end;
    }

    private Unit scaled(Unit unit, int end, int scaleEnd) {
        char scale = scaleEnd > end ? folded.at(spaces(end)) : ' ';
        return scale == 'F' || scale == 'f' ? Units.FAHRENHEIT : unit;
    }

    private boolean ordinal(int from, int end) {
        String ending = folded.slice(from, end).toLowerCase(Locale.ROOT);
        return ending.equals("st") || ending.equals("nd") || ending.equals("rd") || ending.equals("th");
    }

    private int spaces(int from) {
        int i = from;
        while (i - from < 2 && folded.at(i) == ' ') {
            i++;
        }
        return i;
    }

    private int tail(int from, String... signs) {
        for (String sign : signs) {
            if (from + sign.length() <= folded.length()
                    && folded.slice(from, from + sign.length()).equals(sign)) {
                return from + sign.length();
            }
        }
        return from;
    }

    static BigDecimal step(BigDecimal written) {
        return BigDecimal.ONE.scaleByPowerOfTen(-written.scale());
    }

    static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
