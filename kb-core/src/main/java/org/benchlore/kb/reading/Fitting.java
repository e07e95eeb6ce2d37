package org.benchlore.kb.reading;

import java.util.Optional;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/** What a reading can be a reading of, by its unit, its size and the words around it. */
final class Fitting {
    /** Below it a voltage is none; contacts and meters make some millivolts of nothing. */
    private static final double NO_VOLTAGE = 0.2;

    private static final double SOME_VOLTAGE = 0.5;

    /** From so many on a bare number beside a name of hours counts them. */
    private static final double SOME_HOURS = 100;

    private static final double RIPPLE_SHARE = 0.3;
    private static final Words PRESENT = Words.of("present", "right", "there", "given");
    private static final Words ABSENT = Words.of("absent", "missing", "none");

    private final Passage passage;
    private final Lexicon lexicon;

    Fitting(Passage passage, Lexicon lexicon) {
        this.passage = passage;
        this.lexicon = lexicon;
    }

    /** What a name means when the reading is of it; empty if it cannot be. */
    Optional<Symptom> of(Item item, int reading) {
        Token value = passage.token(reading);
        for (Sense sense : item.entry.names) {
            Symptom named = sense.symptom();
            if (lost(reading) && named.quantity() != null && named.quantity().nominal() != null) {
                // "loses 0.35 V at the 12 V pin" is no reading of the rail
                continue;
            }
            Optional<Symptom> ripple = rippling(named, reading);
            Optional<Symptom> fitting =
                    ripple.isPresent() ? ripple : Optional.of(named).filter(s -> fits(s, value));
            if (fitting.isEmpty() && value.kind() == Kind.QUANTITY) {
                fitting = lexicon.paired(named, value.unit()).filter(s -> fits(s, value));
            }
            if (fitting.isPresent()) {
                return fitting;
            }
        }
        return Optional.empty();
    }

    /** What a name means when the reading only tells that a voltage is there or not. */
    Optional<Symptom> there(Item item, int reading) {
        Token value = passage.token(reading);
        return item.entry.names.stream()
                .map(Sense::symptom)
                .filter(named -> presence(named, value) >= 0 && !nominal(reading) && !said(named, item, reading))
                .findFirst();
    }

    /** Whether a reading is written as a name is, and names something. */
    boolean nominal(int i) {
        return passage.item(i).isPresent()
                && (passage.token(i).kind() == Kind.NUMBER || Quantities.round(passage.token(i)));
    }

    /** Whether a reading has a unit that rules a name out, so that it may be of one further off. */
    static boolean ofAnotherKind(Token value, Item item) {
        return value.kind() == Kind.QUANTITY
                && !value.unit().equals("V")
                && item.entry.names.stream().noneMatch(s -> fits(s.symptom(), value));
    }

    static boolean count(Token value, Item name) {
        return value.kind() == Kind.NUMBER && name.entry.names.stream().anyMatch(s -> counts(s.symptom()));
    }

    private static boolean counts(Symptom symptom) {
        Quantity quantity = symptom.quantity();
        return quantity != null && quantity.unit().equals("1");
    }

    /** Whether the reading is itself a name of the symptom, as "320 V" may be of the bulk voltage, which has no nominal. */
    boolean names(int reading, Item name) {
        return passage.item(reading)
                .filter(item -> name.entry.names.stream().anyMatch(n -> {
                    Quantity quantity = n.symptom().quantity();
                    return quantity != null
                            && quantity.nominal() == null
                            && item.entry.names.stream()
                                    .anyMatch(s ->
                                            s.symptom().id().equals(n.symptom().id()));
                }))
                .isPresent();
    }

    private boolean lost(int reading) {
        for (int i = reading - 1; i >= Math.max(0, reading - 2); i--) {
            String term = passage.token(i).term();
            if (term.equals("lose") || term.equals("loss") || term.equals("lost")) {
                return true;
            }
        }
        return false;
    }

    /** Millivolts on a rail are its ripple where the sentence speaks of ripple. */
    private Optional<Symptom> rippling(Symptom rail, int reading) {
        Token value = passage.token(reading);
        Quantity quantity = rail.quantity();
        Double nominal = quantity == null ? null : quantity.nominal();
        boolean small = nominal != null
                && value.unit().equals("V")
                && value.factor() < 1
                && Math.abs(value.value()) < RIPPLE_SHARE * Math.abs(nominal);
        return small && passage.speaksOfRipple(reading) ? lexicon.ripple(rail) : Optional.empty();
    }

    static boolean fits(Symptom symptom, Token value) {
        Quantity quantity = symptom.quantity();
        if (quantity == null || symptom.states().stream().noneMatch(s -> s.range() != null)) {
            return false;
        }
        String unit = quantity.unit();
        return value.unit().equals(unit)
                || (value.kind() == Kind.NUMBER && !unit.equals("s") && !unit.equals("h") && !unit.equals("%"))
                || (unit.equals("h") && (value.unit().equals("s") || value.value() >= SOME_HOURS));
    }

    /** The state of a supply that is only there or not, told by a voltage on it; -1 where that says nothing. */
    static int presence(Symptom symptom, Token value) {
        if (symptom.quantity() != null
                || !value.unit().equals("V")
                || !PRESENT.contains(symptom.normal().id())) {
            return -1;
        }
        double volts = Math.abs(value.value());
        for (int i = 0; i < symptom.states().size(); i++) {
            State state = symptom.states().get(i);
            if (ABSENT.contains(state.id()) && volts < NO_VOLTAGE) {
                return i;
            }
            if (ABSENT.contains(state.id()) && volts > SOME_VOLTAGE) {
                return symptom.indexOf(symptom.normal().id());
            }
        }
        return -1;
    }

    /** Whether a word between a name and its reading says more than that a voltage is there: "sags to 14 V". */
    private boolean said(Symptom symptom, Item name, int reading) {
        for (int i = Math.min(name.to, reading); i < Math.max(name.from, reading); i++) {
            Item word = passage.itemAt(i);
            if (word != null
                    && word.entry.words.stream().anyMatch(s -> s.symptom().id().equals(symptom.id()))) {
                return true;
            }
        }
        return false;
    }
}
