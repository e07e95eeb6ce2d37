package org.benchlore.kb.reading;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Range;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.analysis.Token;

/**
 * What a reading says about a symptom's states.
 *
 * @param state position of the likeliest state
 * @param likelihoods per state id, its probability given the reading, for a flat state of knowledge beforehand
 * @param note in words
 */
record Verdict(int state, Map<String, Double> likelihoods, String note) {
    /** States less likely than this are ruled out by the reading; a meter's specification means no more. */
    private static final double NEGLIGIBLE = 1e-3;

    /** In standard uncertainties; beyond them lie 2e-9 of a normal distribution. */
    private static final double FAR = 6;

    /** Counts are exact; a normal state of knowledge needs some width. */
    private static final double COUNT_UNCERTAINTY = 1e-9;

    private static final double SECONDS_PER_HOUR = 3600;

    /** Whole numbers below it have no more digits than are shown. */
    private static final double MOST_WHOLE = 1e6;

    private static final int MOST_DECIMALS = 3;

    /** Weighs a count, which is exact. */
    static Verdict ofCount(Symptom symptom, Quantity quantity, long count) {
        return weigh(symptom, quantity, (double) count, COUNT_UNCERTAINTY, Long.toString(count));
    }

    /**
     * Weighs a reading.
     *
     * @param symptom with a quantity and ranges
     * @param token the reading
     * @param comparison -1 for "less than", 1 for "more than", 0 for the value itself
     */
    static Verdict of(Symptom symptom, Token token, int comparison) {
        Quantity quantity = symptom.quantity();
        if (quantity == null) {
            throw new IllegalArgumentException("symptom '" + symptom.id() + "' has no quantity");
        }
        double scale = quantity.unit().equals("h") && token.unit().equals("s") ? 1 / SECONDS_PER_HOUR : 1;
        double value = token.value() * scale;
        Double nominal = quantity.nominal();
        // a minus sign in front of a rail's value is often left out, never added; an offset counts by its size
        boolean turned = nominal == null ? value < 0 && quantity.unit().equals("V") : nominal < 0 && value > 0;
        if (turned) {
            value = -value;
        }
        double count = count(token.resolution() * scale, value, nominal == null ? 0 : nominal);
        double spread = token.spread() * scale;
        double meter = Measurement.uncertainty(value, count);
        double uncertainty = quantity.unit().equals("1") ? COUNT_UNCERTAINTY : Math.hypot(meter, spread / Math.sqrt(3));
        if (comparison != 0) {
            // somewhere beyond the limit: take the middle of the next fifth
            value += (turned ? -comparison : comparison) * 0.1 * Math.abs(value);
            uncertainty = Math.hypot(uncertainty, 0.1 * Math.abs(value) / Math.sqrt(3));
        }
        boolean sameUnit = token.kind() == Token.Kind.NUMBER || token.unit().equals(quantity.unit());
        double shown = sameUnit ? token.value() : token.value() / SECONDS_PER_HOUR;
        return weigh(symptom, quantity, value, uncertainty, plain(shown));
    }

    private static Verdict weigh(Symptom symptom, Quantity quantity, double value, double uncertainty, String shown) {
        List<State> states = symptom.states();
        TreeMap<String, Double> likelihoods = new TreeMap<>();
        int best = -1;
        double share = 0;
        boolean likely = anyHolds(states, value);
        for (int i = 0; i < states.size(); i++) {
            Range range = states.get(i).range();
            double p = range == null || (likely && far(range, value, uncertainty))
                    ? 0
                    : Measurement.share(range, value, uncertainty);
            if (p >= NEGLIGIBLE) {
                likelihoods.put(states.get(i).id(), p);
            }
            if (p > share) {
                best = i;
                share = p;
            }
        }
        if (best < 0) {
            best = states.indexOf(symptom.normal());
            likelihoods.put(symptom.normal().id(), 1.0);
        }
        return new Verdict(best, likelihoods, note(symptom, quantity, states.get(best), share, shown));
    }

    private static boolean anyHolds(List<State> states, double value) {
        for (State state : states) {
            Range range = state.range();
            if (range != null && range.contains(value)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a range lies so far off that its share is negligible. */
    private static boolean far(Range range, double value, double uncertainty) {
        return range.low() - value > FAR * uncertainty || value - range.high() > FAR * uncertainty;
    }

    /**
     * One step of the last digit, but no coarser than a meter shows: who writes "5 V" read at least three digits.
     */
    private static double count(double written, double value, double nominal) {
        double size = Math.max(Math.abs(value), Math.abs(nominal));
        double third = size > 0 ? Math.pow(10, Math.floor(Math.log10(size)) - 2) : written;
        return Math.max(Math.min(written > 0 ? written : third, third), Double.MIN_NORMAL);
    }

    private static String note(Symptom symptom, Quantity quantity, State state, double share, String shown) {
        String unit = spelled(quantity.unit());
        Double nominal = quantity.nominal();
        String on = nominal == null
                ? symptom.name()
                : plain(nominal)
                        + unit
                        + (quantity.toleranceShare() > 0 ? " ±" + plain(100 * quantity.toleranceShare()) + " %" : "");
        return shown + unit + (nominal == null ? ", " : " on ") + on + ": " + state.name() + ", " + percent(share);
    }

    private static String spelled(String unit) {
        return switch (unit) {
            case "1" -> "";
            case "ohm" -> " Ω";
            case "degC" -> " °C";
            default -> " " + unit;
        };
    }

    /** Never "100 %" nor "0 %": no reading is that good. */
    static String percent(double share) {
        if (share >= 0.9995) {
            return ">99.9 %";
        }
        return share < 0.0005 ? "<0.1 %" : String.format(Locale.ROOT, "%.1f %%", 100 * share);
    }

    private static String plain(double value) {
        for (int decimals = 0, tens = 1; decimals <= MOST_DECIMALS; decimals++, tens *= 10) {
            double digits = Math.rint(value * tens);
            if (digits / tens == value && Math.abs(digits) < MOST_WHOLE) {
                return BigDecimal.valueOf((long) digits, decimals).toPlainString();
            }
        }
        return BigDecimal.valueOf(value)
                .round(new MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
    }
}
