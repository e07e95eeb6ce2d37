package org.benchlore.kb.knowledge;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A range as written, {@code "10%..-tol"}: each end a share of nominal, a tolerance limit, a plain number, or open.
 *
 * <p>Shares and tolerance limits are magnitudes. For a rail of -12 V, {@code "..10%"} runs from -1.2 V up and
 * {@code "+tol.."} from -12.6 V down; the mirrored span keeps its ends, up to which of the two is excluded.
 */
record RangeText(Bound low, Bound high) {
    /** What kind of end. */
    enum Kind {
        OPEN,
        PERCENT,
        LOWER_LIMIT,
        UPPER_LIMIT,
        NUMBER
    }

    /** One end; {@code value} is a share for PERCENT, in the quantity's unit for NUMBER. */
    record Bound(Kind kind, double value) {
        private boolean relative() {
            return kind == Kind.PERCENT || kind == Kind.LOWER_LIMIT || kind == Kind.UPPER_LIMIT;
        }

        /** The end in the quantity's unit, or null when it needs a nominal that is not there. */
        private @Nullable Double in(Quantity quantity) {
            if (kind == Kind.NUMBER) {
                return value;
            }
            Double nominal = quantity.nominal();
            if (nominal == null) {
                return null;
            }
            return switch (kind) {
                case PERCENT -> nominal * value;
                case LOWER_LIMIT -> nominal * (1 - quantity.toleranceShare());
                case UPPER_LIMIT -> nominal * (1 + quantity.toleranceShare());
                default -> null;
            };
        }
    }

    private static final String NUMBER = "[-+]?[0-9]{1,12}(?:\\.[0-9]{1,12})?";
    private static final Pattern RANGE =
            Pattern.compile("\\s*(%1$s%%?|[-+]tol|)\\s*\\.\\.\\s*(%1$s%%?|[-+]tol|)\\s*".formatted(NUMBER));

    /** The two ends, or empty when the text is no range. */
    static Optional<RangeText> parse(String text) {
        Matcher matcher = RANGE.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        RangeText range = new RangeText(bound(matcher.group(1)), bound(matcher.group(2)));
        boolean open = range.low.kind == Kind.OPEN && range.high.kind == Kind.OPEN;
        return open ? Optional.empty() : Optional.of(range);
    }

    private static Bound bound(String text) {
        return switch (text) {
            case "" -> new Bound(Kind.OPEN, 0);
            case "-tol" -> new Bound(Kind.LOWER_LIMIT, 0);
            case "+tol" -> new Bound(Kind.UPPER_LIMIT, 0);
            default ->
                text.endsWith("%")
                        ? new Bound(Kind.PERCENT, Double.parseDouble(text.substring(0, text.length() - 1)) / 100)
                        : new Bound(Kind.NUMBER, Double.parseDouble(text));
        };
    }

    /** Whether an end is meant relative to a nominal value. */
    boolean relative() {
        return low.relative() || high.relative();
    }

    /** Whether an end is a tolerance limit. */
    boolean usesTolerance() {
        return isLimit(low) || isLimit(high);
    }

    private static boolean isLimit(Bound bound) {
        return bound.kind == Kind.LOWER_LIMIT || bound.kind == Kind.UPPER_LIMIT;
    }

    /** The span in the quantity's unit; empty when it is upside down or has no width. */
    Optional<Range> in(Quantity quantity) {
        Double nominal = quantity.nominal();
        boolean mirrored = nominal != null && nominal < 0 && relative();
        Double first = low.in(quantity);
        Double second = high.in(quantity);
        double from = first != null ? first : mirrored ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        double to = second != null ? second : mirrored ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
        double least = mirrored ? to : from;
        double most = mirrored ? from : to;
        return least < most ? Optional.of(new Range(least, most)) : Optional.empty();
    }
}
