package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

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

    /** What it costs that a voltage only tells of being there. */
    private static final double BARELY_TOLD = 0.5;

    private static final Words PLACE =
            Words.terms("on at for across from of in to onto over between behind befor after wher");
    private static final Words CLEARLY = Words.terms("read reads reading measur measure at = : to only show (");
    private static final Words SAYS =
            Words.terms("read reads reading measur measure show at be = : to only say ( give just about around "
                    + "get approx roughly have output deliver ~ put draw take pull barely nearly almost already down up lose "
                    + "amount exceed equal reach total");
    private static final Words FILLERS =
            Words.terms("rail line supply voltag output it now still sit hover with come go drop sag dip "
                    + "fall collaps creep settl hang stay ther meter i under load than less more below above over rise climb resistanc ground "
                    + "dc ac dmm pin there side way each main very already in");
    private static final Words NOT_READ = Words.spaced("instead where mark rate nominal spec limit set rated marked");
    private static final Words LESS = Words.terms("less below under <");
    private static final Words MORE = Words.terms("more abov over exceed least >");
    private static final Words MOVES = Words.terms("move budge drift stray chang shift waver");

    /** A reading and the name it may belong to. */
    private record Pair(int reading, Item item, Symptom symptom, double cost) {}

    private static final Comparator<Pair> CHEAPEST_FIRST = Comparator.comparingDouble(Pair::cost)
            .thenComparingInt(Pair::reading)
            .thenComparingInt(p -> p.item().from);

    private final Passage passage;
    private final Lexicon lexicon;
    private final Fitting fitting;
    private final Told told;
    private final List<Claim> claims;

    /** Numbers that may be readings, as the items stand. */
    private final BitSet readable = new BitSet();

    private final Beyond beyond;
    private final Ratios ratios;
    private final RailLists railLists;

    Values(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.fitting = new Fitting(passage, lexicon);
        this.told = new Told(passage);
        this.claims = claims;
        this.beyond = new Beyond(passage, claims);
        this.ratios = new Ratios(passage, told, this);
        this.railLists = new RailLists(passage, lexicon, this);
    }

    void link() {
        beyond.link();
        if (passage.numerals.length == 0) {
            return;
        }
        for (int i : passage.numerals) {
            readable.set(i, readable(i));
        }
        setAside();
        ratios.link();
        new Against(passage, told, this).link();
        new Expected(passage, lexicon, told, this).link();
        railLists.link();
        List<Pair> pairs = new ArrayList<>();
        for (int i : passage.numerals) {
            if (reading(i)) {
                behind(i, pairs);
                before(i, pairs);
            }
        }
        if (pairs.size() > 1) {
            pairs.sort(CHEAPEST_FIRST);
        }
        for (Pair pair : pairs) {
            if (reading(pair.reading) && !pair.item.done && !pair.item.name) {
                claim(pair);
            }
        }
        railLists.close();
        new Trends(passage, claims).follow(this, lexicon);
        new Sides(passage, this).link();
    }

    /** Numbers that are told for something else name no rail either. */
    private void setAside() {
        for (int i : passage.numerals) {
            Item item = passage.itemAt(i);
            if (item != null
                    && item.free()
                    && item.to - item.from == 1
                    && !Ordinals.at(passage.tokens, i)
                    && (told.asNothing(i) || (item.names && told.throughput(i)))) {
                item.done = true;
            }
        }
    }

    /** Whether a token may be a reading that is not used yet. */
    boolean reading(int i) {
        if (!readable.get(i) || passage.readAt(i) != null) {
            return false;
        }
        Item own = passage.itemAt(i);
        return own == null || (own.free() && own.to - own.from == 1);
    }

    private boolean readable(int i) {
        Token token = passage.token(i);
        if (token.unit().equals("times") || token.tolerance() || passage.unreal(i)) {
            return false;
        }
        if (Ordinals.at(passage.tokens, i) || told.asNothing(i) || told.asMarking(i)) {
            return false;
        }
        for (int b = i - 1; b >= Math.max(0, i - 2) && passage.sameSegment(b, i); b--) {
            if (NOT_READ.contains(passage.token(b).term())
                    || NOT_READ.contains(passage.token(b).surface())) {
                return false;
            }
        }
        return true;
    }

    /** "3.9 V on 5 V", "1.79 on 1.8", "80 mV ripple": the name stands behind. */
    private void behind(int reading, List<Pair> pairs) {
        Token value = passage.token(reading);
        double cost = 0;
        boolean placed = false;
        if ((told.reached(reading) && subjectBefore(reading)) || fitting.ofSupply(reading)) {
            return;
        }
        for (int i = reading + 1; i < passage.size() && i <= reading + REACH && passage.sameSegment(reading, i); i++) {
            Token token = passage.token(i);
            Item item = passage.itemAt(i);
            if (item != null && item.names) {
                boolean own = PLACE.contains(passage.token(item.from).term());
                boolean close = i == reading + 1
                        && !fitting.nominal(reading)
                        && (value.kind() == Kind.QUANTITY || counted(value, item));
                boolean said = (placed || own || close) && !followedBySign(item.to);
                boolean added = said && add(pairs, reading, item, cost + (close ? 0.7 : 0));
                if (added || !Fitting.ofAnotherKind(value, item)) {
                    return;
                }
                i = item.to - 1;
                cost += PASSED_NAME;
                continue;
            }
            if (Token.denies(token.term()) || number(i) || (token.kind() == Kind.PUNCTUATION && !token.is("/"))) {
                return;
            }
            placed |= PLACE.contains(token.term());
            cost += step(i, token);
        }
    }

    /** "12 V reads 11.2", "12 V: 11.98", "5 V rail is at 4.98", "12 V low, 11.2 V": the name stands in front. */
    private void before(int reading, List<Pair> pairs) {
        Token value = passage.token(reading);
        boolean nominal = fitting.nominal(reading);
        if (nominal && followedBySign(reading + 1)) {
            return;
        }
        double cost = 0.2;
        boolean share = told.asShare(reading);
        boolean says = told.reached(reading);
        boolean clearly = false;
        boolean word = false;
        boolean drops = false;
        boolean moves = false;
        for (int i = reading - 1; i >= 0 && i >= reading - REACH && passage.sameClause(reading, i); i--) {
            Token token = passage.token(i);
            Item item = passage.itemAt(i);
            if (item != null && item.names && !item.done && !item.name) {
                boolean comma = !passage.sameSegment(reading, item.from);
                boolean near = reading - item.to <= 1
                        && (value.kind() == Kind.QUANTITY || value.resolution() < 1 || counted(value, item));
                boolean said = nominal
                        ? clearly
                                || (drops && Fitting.hasVolts(item))
                                || fitting.names(reading, item)
                                || (reading == item.to && stands(reading, item))
                        : says || near || value.kind() == Kind.QUANTITY;
                boolean commaAllowed = !comma || clearly || share || (word && value.resolution() < 1);
                boolean elsewhere = fitting.placeOnly(item, reading);
                boolean added = said
                        && commaAllowed
                        && !elsewhere
                        && add(pairs, reading, item, cost + (comma && !share ? 2 : 0));
                if (added || !(elsewhere || Fitting.ofAnotherKind(value, item))) {
                    return;
                }
                i = item.from;
                cost += PASSED_NAME;
                continue;
            }
            boolean number = number(i);
            boolean negation = item != null && item.entry.cue == Cue.NEGATION && !moves;
            moves |= MOVES.contains(token.term());
            boolean passed = told.asMarking(i) || (share && !token.unit().equals("%"));
            if ((number && !passed && (item == null || !item.names)) || negation) {
                return;
            }
            says |= SAYS.contains(token.term());
            clearly |= CLEARLY.contains(token.term());
            drops |= token.term().equals("drop");
            word |= item != null && !item.entry.words.isEmpty();
            cost += number ? 0.2 : step(i, token);
        }
    }

    /** "Unclean stops 640"; but "clean stops 640" are others. */
    private boolean counted(Token value, Item name) {
        boolean whole =
                name.from == 0 || !passage.sameSegment(name.from - 1, name.from) || !passage.content(name.from - 1);
        return whole && Fitting.count(value, name);
    }

    /** Whether a name in front can have a reading that its subject moved to. */
    private boolean subjectBefore(int reading) {
        for (int i = reading - 1; i >= 0 && i >= reading - REACH && passage.sameClause(reading, i); i--) {
            Item item = passage.itemAt(i);
            if (item != null && item.free() && fitting.of(item, reading).isPresent()) {
                return true;
            }
        }
        return false;
    }

    /** "Cell 1.8 V at the tabs", "panel supply 12 V.": a voltage that stands alone behind a name, as a rail's own may. */
    private boolean stands(int reading, Item item) {
        boolean place = reading + 1 < passage.size()
                && Fitting.hasVolts(item)
                && passage.token(reading).kind() == Kind.QUANTITY
                && PLACE.contains(passage.token(reading + 1).term());
        return place || closes(reading + 1);
    }

    /** Whether a token is a number that may be a reading, and so stands in the way of another one. */
    private boolean number(int i) {
        return passage.token(i).numeric() && !Ordinals.at(passage.tokens, i);
    }

    private boolean closes(int i) {
        return i == passage.size()
                || (passage.token(i).kind() == Kind.PUNCTUATION
                        && !passage.token(i).is(":")
                        && !passage.token(i).is("=")
                        && !passage.token(i).is("/"));
    }

    private double step(int i, Token token) {
        if (SAYS.contains(token.term()) || FILLERS.contains(token.term()) || passage.skipped(i)) {
            return 0.2;
        }
        if (token.kind() == Kind.PUNCTUATION) {
            return token.is(",") || token.is(";") ? 1 : 0.2;
        }
        Item item = passage.itemAt(i);
        boolean own = item != null && (item.entry.cue != null || !item.entry.words.isEmpty());
        return own ? 0.5 : passage.content(i) ? 1.2 : 0.4;
    }

    private boolean followedBySign(int i) {
        return i < passage.size()
                && (passage.token(i).is(":") || passage.token(i).is("="));
    }

    private boolean add(List<Pair> pairs, int reading, Item item, double cost) {
        if (cost > DEAREST || item.done || item.name) {
            return false;
        }
        Optional<Symptom> measured = fitting.of(item, reading);
        Optional<Symptom> named = measured.isPresent() ? measured : fitting.there(item, reading);
        if (named.isPresent()) {
            pairs.add(new Pair(reading, item, named.get(), measured.isPresent() ? cost : cost + BARELY_TOLD));
        }
        return named.isPresent();
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
        if (told.reached(reading) && name.to <= reading) {
            passage.item(reading - 2).filter(Item::free).ifPresent(verb -> verb.done = true);
        }
        Claim claim = new Claim(pair.symptom, 0, name, name.from, name.to);
        claim.cover(reading, reading + 1);
        absorb(claim);
        if (pair.symptom.quantity() == null) {
            claim.state = Fitting.presence(pair.symptom, passage.token(reading));
            claims.add(claim);
            return;
        }
        measure(claim, reading);
    }

    /** Makes a claim that of a reading. */
    void measure(Claim claim, int reading) {
        Token value = told.bySize(reading) ? passage.token(reading).size() : passage.token(reading);
        Verdict verdict = Verdict.of(claim.symptom, value, comparison(reading));
        claim.state = verdict.state();
        claim.measured = verdict.likelihoods();
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
            Item item = passage.itemAt(i);
            if (item != null && item.cue(Cue.NEGATION)) {
                return true;
            }
        }
        return false;
    }

    /** State words between the name and its value say the same in other words. */
    private void absorb(Claim claim) {
        for (int i = claim.from; i < claim.to; i++) {
            Item item = passage.itemAt(i);
            if (item != null && item.entry.saidOf(claim.symptom.id()) != null) {
                item.done = true;
            }
        }
    }

    /** -1 for "less than", 1 for "more than", else 0. */
    private int comparison(int reading) {
        for (int i = reading - 1; i >= 0 && i >= reading - 2; i--) {
            String term = passage.token(i).term();
            if (LESS.contains(term)) {
                return -1;
            }
            if (MORE.contains(term)) {
                return 1;
            }
        }
        return 0;
    }
}
