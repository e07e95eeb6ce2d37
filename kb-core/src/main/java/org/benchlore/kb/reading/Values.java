package org.benchlore.kb.reading;

import com.google.common.base.Splitter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.jspecify.annotations.Nullable;

/**
 * Gives readings to what they were read on: "3.26 V on the 3.3 V rail", "12V reads 11.2", "5 V is at 4.98". What is named is
 * a rail, what is said of it is a reading. Every reading and every name within a few tokens of each other is a pair with a
 * cost for what stands between; the cheapest pairs are taken first.
 */
final class Values {
    private static final int REACH = 9;
    private static final double DEAREST = 5;

    /** What a name of another kind costs on the way to the one that a reading fits. */
    private static final double PASSED_NAME = 1.5;

    /** Below it a voltage is none; contacts and meters make some millivolts of nothing. */
    private static final double NO_VOLTAGE = 0.2;

    private static final double SOME_VOLTAGE = 0.5;

    /** From so many on a bare number beside a name of hours counts them. */
    private static final double SOME_HOURS = 100;

    private static final double RIPPLE_SHARE = 0.3;

    private static final Set<String> PLACE =
            words("on at for across from of in to onto over between behind before after");
    private static final Set<String> CLEARLY = words("read reads reading measur measure at = : to only show (");
    private static final Set<String> SAYS =
            words("read reads reading measur measure show at be = : to only say ( give just about around "
                    + "get approx roughly have output deliver ~ put draw take pull barely nearly almost already down up lose "
                    + "amount exceed equal reach total");
    private static final Set<String> FILLERS =
            words("rail line supply voltag output it now still sit hover with come go drop sag dip "
                    + "fall collaps creep settl hang stay ther meter i under load than less more below above over rise climb resistanc ground "
                    + "dc ac dmm pin there side way each main very already in");
    private static final Set<String> NOT_READ = words("instead where mark rate nominal spec limit set rated marked");
    private static final Set<String> NUMBERED = words("pin bit string port slot key channel row");
    private static final Set<String> TRENDS =
            words("fall sag drop dip rise climb go creep settl collaps now unload load run idle cold warm "
                    + "hot later after under to then with once when it at in standby but only up down and also stabl rippl on of them ther "
                    + "without");
    private static final Set<String> MOVES = words("move budge drift stray chang shift waver");
    private static final Set<String> PRESENT = Set.of("present", "right", "there", "given");
    private static final Set<String> ABSENT = Set.of("absent", "missing", "none");

    /** A reading and the name it may belong to. */
    private record Pair(int reading, Item item, Symptom symptom, double cost) {}

    private final Passage passage;
    private final Lexicon lexicon;
    private final List<Claim> claims;

    Values(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.claims = claims;
    }

    private static Set<String> words(String spaced) {
        return Set.copyOf(Splitter.on(' ').splitToList(spaced));
    }

    void link() {
        new Ratios(passage, this).link();
        RailLists.link(passage, lexicon, this);
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < passage.size(); i++) {
            if (reading(i)) {
                behind(i, pairs);
                before(i, pairs);
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::cost)
                .thenComparingInt(Pair::reading)
                .thenComparingInt(p -> p.item().from));
        for (Pair pair : pairs) {
            if (reading(pair.reading) && !pair.item.done && !pair.item.name) {
                claim(pair);
            }
        }
        new Trends(passage, claims).follow(this, lexicon);
    }

    /** Whether a token may be a reading that is not used yet. */
    boolean reading(int i) {
        Token token = passage.token(i);
        boolean number =
                (token.kind() == Kind.QUANTITY && !token.unit().equals("times")) || token.kind() == Kind.NUMBER;
        if (!number || token.tolerance() || passage.unreal(i) || passage.readAt(i) != null) {
            return false;
        }
        if (i > 0
                && token.kind() == Kind.NUMBER
                && token.resolution() >= 1
                && NUMBERED.contains(passage.token(i - 1).term())) {
            return false;
        }
        for (int b = i - 1; b >= Math.max(0, i - 2) && passage.sameSegment(b, i); b--) {
            if (NOT_READ.contains(passage.token(b).term())
                    || NOT_READ.contains(passage.token(b).surface())) {
                return false;
            }
        }
        return passage.item(i)
                .filter(item -> item.done || item.name || item.word || item.to - item.from > 1)
                .isEmpty();
    }

    /** Whether a reading is written as a name is, and names something. */
    private boolean nominal(int i) {
        return passage.item(i).isPresent()
                && (passage.token(i).kind() == Kind.NUMBER || Quantities.round(passage.token(i)));
    }

    /** "3.9 V on 5 V", "1.79 on 1.8", "80 mV ripple": the name stands behind. */
    private void behind(int reading, List<Pair> pairs) {
        Token value = passage.token(reading);
        double cost = 0;
        boolean placed = false;
        for (int i = reading + 1; i < passage.size() && i <= reading + REACH && passage.sameSegment(reading, i); i++) {
            Token token = passage.token(i);
            Item item = passage.item(i).orElse(null);
            if (item != null && !item.entry.names.isEmpty()) {
                boolean own = PLACE.contains(passage.token(item.from).term());
                boolean close =
                        i == reading + 1 && !nominal(reading) && (value.kind() == Kind.QUANTITY || count(value, item));
                boolean told = (placed || own || close) && !followedBySign(item.to);
                boolean added = told && add(pairs, reading, item, cost + (close ? 0.7 : 0));
                if (added || !ofAnotherKind(value, item)) {
                    return;
                }
                i = item.to - 1;
                cost += PASSED_NAME;
                continue;
            }
            boolean number = token.kind() == Kind.NUMBER || token.kind() == Kind.QUANTITY;
            if (number || (token.kind() == Kind.PUNCTUATION && !token.is("/"))) {
                return;
            }
            placed |= PLACE.contains(token.term());
            cost += step(i, token);
        }
    }

    /** "12 V reads 11.2", "12 V: 11.98", "5 V rail is at 4.98", "12 V low, 11.2 V": the name stands in front. */
    private void before(int reading, List<Pair> pairs) {
        Token value = passage.token(reading);
        boolean nominal = nominal(reading);
        if (nominal && followedBySign(reading + 1)) {
            return;
        }
        double cost = 0.2;
        boolean says = false;
        boolean clearly = false;
        boolean word = false;
        boolean moves = false;
        for (int i = reading - 1; i >= 0 && i >= reading - REACH && passage.sameClause(reading, i); i--) {
            Token token = passage.token(i);
            Item item = passage.item(i).orElse(null);
            if (item != null && !item.entry.names.isEmpty() && !item.done && !item.name) {
                boolean comma = !passage.sameSegment(reading, item.from);
                boolean near = reading - item.to <= 1 && (value.kind() == Kind.QUANTITY || value.resolution() < 1);
                boolean told = nominal
                        ? clearly || names(reading, item) || (reading == item.to && closes(reading + 1))
                        : says || near || value.kind() == Kind.QUANTITY;
                boolean commaAllowed = !comma || clearly || (word && value.resolution() < 1);
                boolean added = told && commaAllowed && add(pairs, reading, item, cost + (comma ? 2 : 0));
                if (added || !ofAnotherKind(value, item)) {
                    return;
                }
                i = item.from;
                cost += PASSED_NAME;
                continue;
            }
            boolean number = token.kind() == Kind.NUMBER || token.kind() == Kind.QUANTITY;
            boolean negation = item != null && item.entry.cue == Cue.NEGATION && !moves;
            moves |= MOVES.contains(token.term());
            if ((number && (item == null || item.entry.names.isEmpty())) || negation) {
                return;
            }
            says |= SAYS.contains(token.term());
            clearly |= CLEARLY.contains(token.term());
            word |= item != null && !item.entry.words.isEmpty();
            cost += step(i, token);
        }
    }

    /** Whether a reading has a unit that rules a name out, so that it may be of one further off. */
    private boolean ofAnotherKind(Token value, Item item) {
        return value.kind() == Kind.QUANTITY
                && !value.unit().equals("V")
                && item.entry.names.stream().noneMatch(s -> fits(s.symptom(), value));
    }

    private boolean closes(int i) {
        return i == passage.size()
                || (passage.token(i).kind() == Kind.PUNCTUATION
                        && !passage.token(i).is(":")
                        && !passage.token(i).is("=")
                        && !passage.token(i).is("/"));
    }

    private double step(int i, Token token) {
        if (SAYS.contains(token.term()) || FILLERS.contains(token.term()) || Plain.skipped(token)) {
            return 0.2;
        }
        if (token.kind() == Kind.PUNCTUATION) {
            return token.is(",") || token.is(";") ? 1 : 0.2;
        }
        boolean own = passage.item(i)
                .filter(item -> item.entry.cue != null || !item.entry.words.isEmpty())
                .isPresent();
        return own ? 0.5 : Plain.content(token) ? 1.2 : 0.4;
    }

    private static boolean count(Token value, Item name) {
        return value.kind() == Kind.NUMBER && name.entry.names.stream().anyMatch(s -> counts(s.symptom()));
    }

    private static boolean counts(Symptom symptom) {
        Quantity quantity = symptom.quantity();
        return quantity != null && quantity.unit().equals("1");
    }

    /** Whether the reading is itself a name of the symptom, as "320 V" may be of the bulk voltage, which has no nominal. */
    private boolean names(int reading, Item name) {
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

    private boolean followedBySign(int i) {
        return i < passage.size()
                && (passage.token(i).is(":") || passage.token(i).is("="));
    }

    private boolean add(List<Pair> pairs, int reading, Item item, double cost) {
        if (cost > DEAREST || item.done || item.name) {
            return false;
        }
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
                pairs.add(new Pair(reading, item, fitting.get(), cost));
                return true;
            }
        }
        for (Sense sense : item.entry.names) {
            if (presence(sense.symptom(), value) >= 0 && !nominal(reading) && !said(sense.symptom(), item, reading)) {
                pairs.add(new Pair(reading, item, sense.symptom(), cost + 0.5));
                return true;
            }
        }
        return false;
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
    private static int presence(Symptom symptom, Token value) {
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
            Item word = itemAt(i);
            if (word != null
                    && word.entry.words.stream().anyMatch(s -> s.symptom().id().equals(symptom.id()))) {
                return true;
            }
        }
        return false;
    }

    private void claim(Pair pair) {
        int reading = pair.reading;
        passage.item(reading).ifPresent(own -> own.done = true);
        if (negated(reading)) {
            // "no 5 V on the standby rail": what is negated is the rail, not the number
            return;
        }
        Item name = pair.item;
        name.name = true;
        Claim claim = new Claim(pair.symptom, 0, name, name.from, name.to);
        claim.cover(reading, reading + 1);
        absorb(claim);
        if (pair.symptom.quantity() == null) {
            claim.state = presence(pair.symptom, passage.token(reading));
            claims.add(claim);
            return;
        }
        measure(claim, reading);
    }

    /** Makes a claim that of a reading. */
    void measure(Claim claim, int reading) {
        Verdict verdict = Verdict.of(claim.symptom, passage.token(reading), comparison(reading));
        claim.state = verdict.state();
        claim.measured = new HashMap<>(verdict.likelihoods());
        claim.note = verdict.note();
        add(claim, reading);
    }

    /** Adds a claim that rests on a reading. */
    void add(Claim claim, int reading) {
        passage.read(reading, claim);
        claims.add(claim);
    }

    private boolean negated(int reading) {
        for (int i = reading - 1; i >= 0 && i >= reading - 2 && passage.sameSegment(i, reading); i--) {
            if (passage.item(i).filter(item -> item.cue(Cue.NEGATION)).isPresent()) {
                return true;
            }
        }
        return false;
    }

    /** State words between the name and its value say the same in other words. */
    private void absorb(Claim claim) {
        for (int i = claim.from; i < claim.to; i++) {
            passage.item(i)
                    .filter(item -> item.entry.words.stream()
                            .anyMatch(s -> s.symptom().id().equals(claim.symptom.id())))
                    .ifPresent(item -> item.done = true);
        }
    }

    /** -1 for "less than", 1 for "more than", else 0. */
    private int comparison(int reading) {
        for (int i = reading - 1; i >= 0 && i >= reading - 2; i--) {
            String term = passage.token(i).term();
            if (Set.of("less", "below", "under", "<").contains(term)) {
                return -1;
            }
            if (Set.of("more", "above", "over", "exceed", "least", ">").contains(term)) {
                return 1;
            }
        }
        return 0;
    }

    /** Whether a word may stand between a reading and the claim before that it goes on about. */
    static boolean trend(Token token) {
        return TRENDS.contains(token.term()) || Plain.skipped(token);
    }

    @Nullable
    Item itemAt(int token) {
        return passage.item(token).orElse(null);
    }
}
