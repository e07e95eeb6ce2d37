package org.benchlore.kb.knowledge;

import java.math.BigDecimal;
import java.math.MathContext;
import org.jspecify.annotations.Nullable;

/**
 * What a measured symptom is measured in.
 *
 * @param unit V, A, W, ohm, Hz, degC, h, F, s, % or 1 for a count
 * @param nominal the value a sound unit has, or null where there is none; may be negative (a minus rail)
 * @param toleranceShare half-width of the tolerance as a share of |nominal|, e.g. 0.05; 0 where there is no nominal
 * @param written whether only a number with its unit is a reading of it: a bare one beside a fuse is its rating
 * @param from where the nominal value and the limits of the states come from
 */
public record Quantity(String unit, @Nullable Double nominal, double toleranceShare, boolean written, Provenance from) {
    /** Four significant digits at most, with the prefix that reads best: "4.7 kΩ", "−12.6 V", "70 °C". */
    public String text(double value) {
        if (unit.equals("%") || unit.equals("1") || unit.equals("degC") || unit.equals("h") || value == 0) {
            return digits(value) + (unit.equals("1") ? "" : unit.equals("degC") ? " °C" : " " + unit);
        }
        String name = unit.equals("ohm") ? "Ω" : unit;
        double size = Math.abs(value);
        if (size >= 1e6) {
            return digits(value / 1e6) + " M" + name;
        }
        if (size >= 1e3) {
            return digits(value / 1e3) + " k" + name;
        }
        if (size >= 1) {
            return digits(value) + " " + name;
        }
        if (size >= 1e-3) {
            return size >= 0.1 ? digits(value) + " " + name : digits(value * 1e3) + " m" + name;
        }
        return size >= 1e-6 ? digits(value * 1e6) + " µ" + name : digits(value * 1e9) + " n" + name;
    }

    /** A span in this unit: "11.4 V to 12.6 V", "below 2 V", "150 Ω and more". */
    public String text(Range range) {
        if (Double.isInfinite(range.low())) {
            return Double.isInfinite(range.high()) ? "any value" : "below " + text(range.high());
        }
        return Double.isInfinite(range.high())
                ? text(range.low()) + " and more"
                : text(range.low()) + " to " + text(range.high());
    }

    /** Nominal value and tolerance, "12 V ± 5 %"; empty where there is no nominal value. */
    public String rated() {
        return nominal == null ? "" : text(nominal) + " ± " + digits(100 * toleranceShare) + " %";
    }

    private static String digits(double value) {
        return new BigDecimal(value)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString()
                .replace("-", "−");
    }
}
