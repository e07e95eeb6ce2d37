package org.benchlore.kb.reading.analysis;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Units as benches write them, and the letter-for-the-decimal-sign notation of IEC 60062 ("4k7", "0R4"), with "3V3" in
 * the same style. Upper and lower case differ where SI says so (m, M); beyond that spelling is forgiven.
 */
final class Units {
    /**
     * A unit.
     *
     * @param factor what one of it is in the base unit
     * @param zero what it reads where the base unit has its zero: 32 for degrees Fahrenheit
     */
    record Unit(String base, BigDecimal factor, BigDecimal zero) {
        Unit(String base, BigDecimal factor) {
            this(base, factor, BigDecimal.ZERO);
        }

        BigDecimal inBase(BigDecimal number) {
            return number.subtract(zero).multiply(factor);
        }
    }

    /** Five ninths. */
    static final Unit FAHRENHEIT = new Unit("degC", new BigDecimal("0.5555555555555556"), BigDecimal.valueOf(32));

    private static final Map<String, Unit> ANYWHERE = new HashMap<>();
    private static final Map<String, Unit> ATTACHED = new HashMap<>();
    private static final Map<Character, Unit> LETTER_CODE = new HashMap<>();

    static {
        spell("V", 0, "V", "v", "volt", "volts", "vdc", "vac", "vpp", "vrms", "vpk");
        spell("V", -3, "mV", "mv", "millivolt", "millivolts", "mvpp", "mvrms");
        spell("V", -6, "uV", "uv");
        spell("V", 3, "kV", "kv", "kilovolt", "kilovolts");
        spell("A", 0, "A", "amp", "amps", "ampere", "amperes");
        spell("A", -3, "mA", "ma", "milliamp", "milliamps");
        spell("A", -6, "uA", "ua", "microamp", "microamps");
        spell("W", 0, "W", "watt", "watts");
        spell("W", -3, "mW");
        spell("W", 3, "kW", "kw");
        spell("ohm", 0, "Ω", "ohm", "ohms");
        spell("ohm", -3, "mΩ", "mohm", "mohms", "milliohm", "milliohms");
        spell("ohm", 3, "kΩ", "KΩ", "kohm", "kohms", "kilohm", "kilohms");
        spell("ohm", 6, "MΩ", "Mohm", "Mohms", "MOhm", "MOhms", "MOHM", "megohm", "megohms", "meg");
        spell("F", -3, "mF");
        spell("F", -6, "uF", "uf", "microfarad", "microfarads");
        spell("F", -9, "nF", "nf", "nanofarad", "nanofarads");
        spell("F", -12, "pF", "pf", "picofarad", "picofarads");
        spell("Hz", 0, "Hz", "hz", "hertz");
        spell("Hz", 3, "kHz", "khz", "kilohertz");
        spell("Hz", 6, "MHz", "mhz", "megahertz");
        spell("Hz", 9, "GHz", "ghz");
        spell("s", 0, "s", "sec", "secs", "second", "seconds");
        spell("s", -3, "ms", "millisecond", "milliseconds");
        spell("s", -6, "us", "microsecond", "microseconds");
        spell("degC", 0, "°C", "°c", "degC", "degc", "°", "deg", "degs", "degree", "degrees", "celsius", "C");
        for (String spelling : List.of("°F", "°f", "degF", "degf", "fahrenheit")) {
            ANYWHERE.put(spelling, FAHRENHEIT);
        }
        spell("%", 0, "%", "percent", "pct");
        spell("times", 0, "times", "time");
        long minute = 60;
        times("s", minute, "min", "mins", "minute", "minutes");
        times("s", 60 * minute, "h", "hr", "hrs", "hour", "hours");

        attach("ohm", 0, "R", "r");
        attach("ohm", 3, "k", "K");
        attach("ohm", 6, "M");
        attach("F", -6, "u");
        attach("F", -9, "n");
        attach("F", -12, "p");
        attach("F", 0, "F");
        attach("W", 0, "w");
        attach("A", 0, "a");
        attach("times", 0, "x", "X");

        letter('V', "V", 0);
        letter('v', "V", 0);
        letter('R', "ohm", 0);
        letter('r', "ohm", 0);
        letter('K', "ohm", 3);
        letter('k', "ohm", 3);
        letter('M', "ohm", 6);
        letter('p', "F", -12);
        letter('n', "F", -9);
        letter('u', "F", -6);
        letter('m', "F", -3);
        letter('F', "F", 0);
    }

    private Units() {}

    /** A unit written straight behind the number, "12V", "10k". */
    static @Nullable Unit attached(String spelled) {
        Unit unit = ATTACHED.get(spelled);
        return unit != null ? unit : spaced(spelled);
    }

    /** A unit written as a word of its own, "12 volts". */
    static @Nullable Unit spaced(String spelled) {
        Unit unit = ANYWHERE.get(spelled);
        if (unit == null && spelled.length() > 1) {
            unit = ANYWHERE.get(spelled.toLowerCase(Locale.ROOT));
        }
        return unit;
    }

    /** The unit that a letter in the place of the decimal sign stands for. */
    static @Nullable Unit letterCode(char letter) {
        return LETTER_CODE.get(letter);
    }

    private static void spell(String base, int power, String... spellings) {
        for (String spelling : spellings) {
            ANYWHERE.put(spelling, new Unit(base, BigDecimal.ONE.scaleByPowerOfTen(power)));
        }
    }

    private static void times(String base, long factor, String... spellings) {
        for (String spelling : spellings) {
            ANYWHERE.put(spelling, new Unit(base, BigDecimal.valueOf(factor)));
        }
    }

    private static void attach(String base, int power, String... spellings) {
        for (String spelling : spellings) {
            ATTACHED.put(spelling, new Unit(base, BigDecimal.ONE.scaleByPowerOfTen(power)));
        }
    }

    private static void letter(char letter, String base, int power) {
        LETTER_CODE.put(letter, new Unit(base, BigDecimal.ONE.scaleByPowerOfTen(power)));
    }
}
