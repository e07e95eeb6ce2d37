package org.benchlore.kb.reading;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Range;
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
    private static final Words RIPPLE = Words.terms("rippl nois hash hum buzz crud rubbish sawtooth ac");
    private static final Words LOST = Words.terms("lose loss lost");
    private static final Words PLACES = Words.of("at", "on", "across", "of");
    private static final List<String> SUPPLIES = List.of("voltage", "supply", "feed", "rails", "power in");
    private static final String RIGHT = "right";

    /** Voltages that most adapters are made for; common practice, no source. */
    private static final double[] ADAPTERS = {5, 6, 9, 12, 15, 18, 19, 20, 24};

    private static final double MADE_FROM = 0.97;
    private static final double MADE_TO = 1.08;
    private static final Words PRESENT = Words.of("present", RIGHT, "there", "given");
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
        boolean lost = lost(reading);
        boolean rippling = ofRipple(reading) || besideRipple(reading);
        for (Sense sense : item.entry.names) {
            Symptom named = sense.symptom();
            if (lost && named.quantity() != null && named.quantity().nominal() != null) {
                // "loses 0.35 V at the 12 V pin" is no reading of the rail
                continue;
            }
            // a small part of a rail's voltage is its ripple where the reading or, for millivolts, the sentence speaks
            // of ripple
            boolean rest = rippling && small(named, value);
            Optional<Symptom> ripple = rest ? lexicon.ripple(named) : Optional.empty();
            if (rest && ripple.isEmpty()) {
                continue;
            }
            Optional<Symptom> fitting =
                    ripple.isPresent() ? ripple : Optional.of(named).filter(s -> fits(s, value));
            if (fitting.isEmpty() && value.kind() == Kind.QUANTITY) {
                if (term(reading - 1).equals("to") && said(named, item, reading)) {
                    // "the pack drops to 9 V": how it moves says more than that some voltage is left
                    return Optional.empty();
                }
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
        if (!passage.token(reading).unit().equals("V") || nominal(reading)) {
            return Optional.empty();
        }
        for (Sense sense : item.entry.names) {
            Symptom named = sense.symptom();
            if (tells(named, reading) && !said(named, item, reading)) {
                return Optional.of(named);
            }
        }
        return Optional.empty();
    }

    /** "Only 4 V" may be there, and says that it is not as it should be. */
    private boolean tells(Symptom named, int reading) {
        int state = presence(named, passage.token(reading));
        boolean only = reading > 0 && passage.token(reading - 1).term().equals("only");
        boolean normal = state >= 0 && named.states().get(state).normal();
        return state >= 0 && !(normal && (only || (named.normal().id().equals(RIGHT) && !usual(reading))));
    }

    /** Whether a voltage may well be what is meant to be there: near one that adapters are made for, and beside no other. */
    private boolean usual(int reading) {
        double volts = Math.abs(passage.token(reading).value());
        for (int i = reading + 1; i < passage.size() && passage.sentence(i) == passage.sentence(reading); i++) {
            boolean wanted = passage.token(i).unit().equals("V")
                    && (Math.abs(passage.token(i).value()) > volts || Plain.ARTICLES.contains(term(i - 1)));
            if (wanted) {
                return false;
            }
        }
        for (double made : ADAPTERS) {
            if (volts >= MADE_FROM * made && volts <= MADE_TO * made) {
                return true;
            }
        }
        return false;
    }

    /** Whether a reading stands right behind a supply that has no limits: "amp rails +42 and -42 V on the big caps". */
    boolean ofSupply(int reading) {
        int i = reading - 1;
        while (i > 0
                && (Plain.joining(passage.token(i))
                        || (passage.token(i).kind() == Kind.NUMBER && passage.itemAt(i) == null))) {
            i--;
        }
        Item item = i >= 0 && passage.sameSegment(i, reading) ? passage.itemAt(i) : null;
        if (item == null || !item.names || !item.free()) {
            return false;
        }
        Symptom symptom = item.entry.names.get(0).symptom();
        return symptom.quantity() == null && supplies(symptom);
    }

    /** Whether a name only tells where a reading was taken: "TMDS pin 1 at the socket drops 1.8 V". */
    boolean placeOnly(Item item, int reading) {
        int at = item.from;
        while (at > 0 && !PLACES.contains(passage.token(at).term()) && passage.skipped(at - 1)) {
            at--;
        }
        boolean own = PLACES.contains(passage.token(at).term());
        int place = own ? at : at - 1;
        if (place <= 0 || !PLACES.contains(passage.token(place).term()) || !passage.sameSegment(place - 1, place)) {
            return false;
        }
        int before = place - 1;
        while (before > 0 && Ordinals.at(passage.tokens, before)) {
            before--;
        }
        Item subject = passage.itemAt(before);
        if (subject == null || subject == item || subject.entry.names.isEmpty() || !subject.free()) {
            return false;
        }
        Optional<Symptom> here = of(item, reading);
        Optional<Symptom> there = of(subject, reading);
        return there.isPresent() && (here.isEmpty() || anotherRail(here.get(), there.get()));
    }

    private static boolean anotherRail(Symptom a, Symptom b) {
        Quantity first = a.quantity();
        Quantity second = b.quantity();
        return first != null
                && second != null
                && first.nominal() != null
                && second.nominal() != null
                && !first.nominal().equals(second.nominal());
    }

    /** Whether a reading is written as a name is, and names something. */
    boolean nominal(int i) {
        Token token = passage.token(i);
        Item item = passage.itemAt(i);
        return item != null && (token.kind() == Kind.NUMBER || (item.names && Quantities.round(token)));
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

    /** Whether a name is of voltages of its own rather than of a rail. */
    static boolean hasVolts(Item name) {
        return name.entry.names.stream()
                .map(sense -> sense.symptom().quantity())
                .anyMatch(q -> q != null && q.unit().equals("V") && q.nominal() == null);
    }

    private static boolean counts(Symptom symptom) {
        Quantity quantity = symptom.quantity();
        return quantity != null && quantity.unit().equals("1");
    }

    /** Whether the reading is itself a name of the symptom, as "320 V" may be of the bulk voltage, which has no nominal. */
    boolean names(int reading, Item name) {
        Item own = passage.itemAt(reading);
        if (own == null || !own.names) {
            return false;
        }
        for (Sense named : name.entry.names) {
            Quantity quantity = named.symptom().quantity();
            if (quantity != null && quantity.nominal() == null && own.entry.names(named.symptom())) {
                return true;
            }
        }
        return false;
    }

    private boolean lost(int reading) {
        return LOST.contains(term(reading + 1)) || LOST.contains(term(reading - 1)) || LOST.contains(term(reading - 2));
    }

    /** "180 mV ripple", "clean 2 mV". */
    private boolean besideRipple(int reading) {
        return passage.token(reading).factor() < 1
                && (passage.speaksOfRipple(reading) || term(reading - 1).equals("clean"));
    }

    private static boolean small(Symptom rail, Token value) {
        Quantity quantity = rail.quantity();
        Double nominal = quantity == null ? null : quantity.nominal();
        Range usual = rail.normal().range();
        if (nominal == null && usual != null && Double.isFinite(usual.low())) {
            nominal = usual.low();
        }
        return nominal != null
                && value.unit().equals("V")
                && Math.abs(value.value()) < RIPPLE_SHARE * Math.abs(nominal);
    }

    /** "0.05 V p-p", "0.35 Vpp", "0.25 V of hash": never the voltage of the rail itself. */
    private boolean ofRipple(int reading) {
        Token value = passage.token(reading);
        if (!value.unit().equals("V")) {
            return false;
        }
        boolean of = term(reading + 1).equals("of") && RIPPLE.contains(term(reading + 2));
        boolean apart = (term(reading + 1).equals("p") && term(reading + 2).equals("p"))
                || term(reading + 1).equals("pp")
                || term(reading + 1).equals("peak");
        return of || apart || passage.text.regionMatches(true, value.end() - 3, "Vpp", 0, 3);
    }

    private String term(int i) {
        return i >= 0 && i < passage.size() ? passage.token(i).term() : "";
    }

    static boolean fits(Symptom symptom, Token value) {
        Quantity quantity = symptom.quantity();
        if (quantity == null || !ranges(symptom)) {
            return false;
        }
        String unit = quantity.unit();
        return value.unit().equals(unit)
                || (value.kind() == Kind.NUMBER
                        && !quantity.written()
                        && !unit.equals("s")
                        && !unit.equals("h")
                        && !unit.equals("%"))
                || (unit.equals("h") && (value.unit().equals("s") || value.value() >= SOME_HOURS));
    }

    private static boolean ranges(Symptom symptom) {
        for (State state : symptom.states()) {
            if (state.range() != null) {
                return true;
            }
        }
        return false;
    }

    /** The state of a supply that is only there or not, told by a voltage on it; -1 where that says nothing. */
    static int presence(Symptom symptom, Token value) {
        if (symptom.quantity() != null || !value.unit().equals("V")) {
            return -1;
        }
        double volts = Math.abs(value.value());
        if (!PRESENT.contains(symptom.normal().id()) && !(volts < NO_VOLTAGE && supplies(symptom))) {
            return -1;
        }
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

    /** Whether a symptom is a voltage by what its pack calls it, so that a zero reading is its absence. */
    private static boolean supplies(Symptom symptom) {
        String name = symptom.name().toLowerCase(Locale.ROOT);
        return SUPPLIES.stream().anyMatch(name::contains);
    }

    /** Whether a word between a name and its reading says more than that a voltage is there: "sags to 14 V". */
    private boolean said(Symptom symptom, Item name, int reading) {
        for (int i = Math.min(name.to, reading); i < Math.max(name.from, reading); i++) {
            Item word = passage.itemAt(i);
            if (word != null && word.entry.saidOf(symptom.id()) != null) {
                return true;
            }
        }
        return false;
    }
}
