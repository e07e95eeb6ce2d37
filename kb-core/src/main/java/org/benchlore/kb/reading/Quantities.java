package org.benchlore.kb.reading;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.reading.Reading.Value;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/**
 * The quantities of a text: readings, settings, ratings and limits, without the voltages that only name a rail ("the 12 V is
 * gone"), and with the bare numbers that turned out to be readings ("the 1.8 sits at 1.31").
 */
final class Quantities {
    /** In front of a voltage that names something. */
    private static final Words NAMING = Words.terms("no the its his her my without any this that neither nor miss");

    /** In front of a voltage that is set or read. */
    private static final Words VALUED =
            Words.terms("at to read = measur only give about show get sit around roughly than between limit up down "
                    + "of ~ < > put set barely nearly almost say fed feed inject hung");

    private static final Words RATES = Words.of("once", "twice", "times", "per");

    /** What puts a bare number beside a quantity of the same kind. */
    private static final Words COMPARING = Words.terms("say take want instead to label print book spec manual sheet");

    /** In front of a bare decimal that is a reading. */
    private static final Words LENDING = Words.terms("at to from between and have be = : , on read show");

    /** Steps of the last digit up to which a double tells each apart, whatever the prefix. */
    private static final double MOST_STEPS = 1e9;

    private static final double WHOLE_STEP = 1e-6; // a few ulp of the largest

    /** Tokens from a bare number back to the quantity it borrows its unit from. */
    private static final int COMPARED = 8;

    private final Passage passage;
    private final Lexicon lexicon;

    Quantities(Passage passage, Lexicon lexicon) {
        this.passage = passage;
        this.lexicon = lexicon;
    }

    List<Value> list() {
        List<Value> values = new ArrayList<>();
        for (int i = 0; i < passage.size(); i++) {
            Token token = passage.token(i);
            String unit = unit(i);
            if (unit.isEmpty()
                    || unit.equals("times")
                    || (unit.equals("V") && names(i))
                    || (unit.equals("s") && rate(i))) {
                continue;
            }
            Reading.Span span = passage.span(i, i + 1);
            if (token.spread() > 0) {
                values.add(new Value(exact(token.value() - token.spread()), unit, span));
                values.add(new Value(exact(token.value() + token.spread()), unit, span));
            } else {
                values.add(new Value(token.value() * scale(i), unit, span));
            }
        }
        return values;
    }

    /** Ends of a range are told to fewer digits than doubles have. */
    private static double exact(double value) {
        return BigDecimal.valueOf(value).round(new MathContext(12)).doubleValue();
    }

    /** "Twice a second", "per hour". */
    private boolean rate(int i) {
        String before = i == 0 ? "" : passage.token(i - 1).surface();
        return RATES.contains(before) || (i > 0 && passage.token(i - 1).unit().equals("times"));
    }

    /** A borrowed prefix: "48 mV, book says 12"; but "350 mV instead of 1.2" is in volts. */
    private double scale(int i) {
        Token token = passage.token(i);
        if (token.kind() != Kind.NUMBER || passage.readAt(i) != null) {
            return 1;
        }
        return compared(i).map(q -> nearest(token.value(), q)).orElse(1.0);
    }

    /** The prefix of a quantity, or none, whichever brings a number closer to it. */
    static double nearest(double number, Token quantity) {
        double prefixed = Math.abs(Math.log(number * quantity.factor() / quantity.value()));
        double bare = Math.abs(Math.log(number / quantity.value()));
        return prefixed <= bare ? quantity.factor() : 1;
    }

    private String unit(int i) {
        Token token = passage.token(i);
        if (token.kind() == Kind.QUANTITY) {
            return token.unit();
        }
        if (token.kind() != Kind.NUMBER) {
            return "";
        }
        Claim read = passage.readAt(i);
        if (read == null) {
            return compared(i).map(Token::unit).orElse(lent(i) ? "V" : "");
        }
        Quantity quantity = read.symptom.quantity();
        return quantity == null || quantity.unit().equals("1") ? "" : quantity.unit();
    }

    /** "The mute pin is held at 4.8", "wanders between 11.2 and 12.4": a decimal said of a line that has volts. */
    private boolean lent(int number) {
        Token value = passage.token(number);
        String before = number == 0 ? "" : passage.token(number - 1).term();
        if (value.resolution() >= 1 || value.tolerance() || !LENDING.contains(before) || passage.unreal(number)) {
            return false;
        }
        if (number + 1 < passage.size()
                && passage.sameSegment(number, number + 1)
                && passage.token(number + 1).kind() == Token.Kind.WORD
                && passage.content(number + 1)) {
            return false;
        }
        for (int i = number - 1;
                i >= Math.max(0, number - COMPARED) && passage.sentence(i) == passage.sentence(number);
                i--) {
            Passage.Item item = passage.itemAt(i);
            if (item != null && ofVolts(item)) {
                return true;
            }
        }
        return false;
    }

    private static boolean ofVolts(Passage.Item item) {
        for (Sense named : item.entry.names) {
            Quantity quantity = named.symptom().quantity();
            if (quantity != null && quantity.unit().equals("V")) {
                return true;
            }
        }
        return false;
    }

    /** "48 mV, book says 12": the quantity whose unit a bare number borrows, which it is compared with or leads on from. */
    private Optional<Token> compared(int number) {
        boolean comparing = false;
        for (int i = number - 1;
                i >= 0 && i >= number - COMPARED && passage.sentence(i) == passage.sentence(number);
                i--) {
            Token token = passage.token(i);
            if (token.kind() == Kind.QUANTITY && token.unit().equals("V") && names(i)) {
                continue;
            }
            if (token.kind() == Kind.QUANTITY && !token.unit().equals("times")) {
                return comparing ? Optional.of(token) : Optional.empty();
            }
            if (token.kind() == Kind.CODE || token.kind() == Kind.NUMBER) {
                return Optional.empty();
            }
            comparing |= i >= number - 3 && COMPARING.contains(token.term());
        }
        return Optional.empty();
    }

    /** Whether a voltage is a rail's, socket's or adapter's name: as round as a name is, and not said of anything. */
    private boolean names(int i) {
        Token token = passage.token(i);
        boolean quantity = token.kind() == Kind.QUANTITY && passage.readAt(i) == null;
        if (!quantity || !(round(token) || letterWithin(token))) {
            return false;
        }
        String before = i == 0 ? "" : passage.token(i - 1).term();
        if (NAMING.contains(before)) {
            return true;
        }
        boolean rating = i + 1 < passage.size()
                && (passage.token(i + 1).unit().equals("A")
                        || passage.token(i + 1).unit().equals("W"));
        if (rating || rangeEnd(i)) {
            return false;
        }
        boolean known = lexicon.rail(token.value()).isPresent();
        boolean unread = i > 1 && passage.token(i - 2).term().equals("not");
        return known && (unread || !VALUED.contains(before));
    }

    /** "Between 7 V and 12 V". */
    private boolean rangeEnd(int i) {
        return i > 2
                && passage.token(i - 1).term().equals("and")
                && passage.token(i - 3).term().equals("between");
    }

    /** "5V0" names a rail as "5V" does. */
    private boolean letterWithin(Token token) {
        boolean letter = false;
        for (int i = token.start(); i < token.end() - 1; i++) {
            letter |= Character.isLetter(passage.text.charAt(i)) && Character.isDigit(passage.text.charAt(i + 1));
        }
        return letter;
    }

    /** Whether no digit is written that a name would not have: "12 V", not "12.0 V". */
    static boolean round(Token token) {
        double factor = token.factor() > 0 ? token.factor() : 1;
        if (token.spread() > 0) {
            return false;
        }
        if (token.resolution() >= 0.999 * factor) {
            return true;
        }
        double steps = Math.abs(token.value()) / token.resolution();
        double whole = Math.rint(steps);
        if (whole < MOST_STEPS && Math.abs(steps - whole) < WHOLE_STEP) {
            return whole % 10 != 0;
        }
        BigDecimal written = BigDecimal.valueOf(exact(Math.abs(token.value()) / factor));
        double step = Math.pow(10, -Math.max(0, written.stripTrailingZeros().scale()));
        return token.resolution() >= 0.999 * factor * step;
    }
}
