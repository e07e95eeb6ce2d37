package org.benchlore.kb.reading;

import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.jspecify.annotations.Nullable;

/**
 * Tells readings from nominal values: "3.26 V on the 3.3 V rail", "12V reads 11.2", "5 V is at 4.98". What is named is a
 * rail, what is said of it is a reading.
 */
final class Values {
    private static final int REACH = 7;
    private static final Set<String> PLACE =
            Set.of("on", "at", "for", "across", "from", "of", "in", "to", "onto", "over");
    private static final Set<String> SAYS = Set.of(
            "read", "reads", "reading", "measur", "measure", "show", "at", "be", "=", ":", "to", "only", "say", "(",
            "give", "just", "about", "around", "get", "approx", "roughly", "have", "output", "deliver", "~");
    private static final Set<String> CLEARLY =
            Set.of("read", "reads", "reading", "measur", "at", "=", ":", "to", "only", "show", "(");
    private static final Set<String> BETWEEN = Set.of(
            "rail",
            "line",
            "supply",
            "voltag",
            "output",
            "it",
            "now",
            "still",
            "sit",
            "hover",
            "up",
            "down",
            "with",
            "come",
            "go",
            "drop",
            "sag",
            "dip",
            "fall",
            "collaps",
            "creep",
            "settl",
            "hang",
            "stay",
            "there",
            "meter",
            "i",
            "under",
            "load",
            "than",
            "less",
            "more",
            "below",
            "above",
            "over",
            "pull",
            "rise",
            "climb",
            "resistanc",
            "ground",
            "dc",
            "dmm");

    private final Passage passage;
    private final Lexicon lexicon;
    private final List<Claim> claims;

    Values(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.claims = claims;
    }

    void link() {
        boolean[] used = new boolean[passage.size()];
        for (int i = 0; i < passage.size(); i++) {
            Token token = passage.token(i);
            boolean reading = (token.kind() == Kind.QUANTITY || token.kind() == Kind.NUMBER)
                    && !token.tolerance()
                    && !token.unit().equals("times");
            if (!reading || used[i] || passage.unreal(i) || blocked(i)) {
                continue;
            }
            Named named = onRail(i);
            if (named == null) {
                named = saidOf(i);
            }
            if (named != null) {
                used[i] = true;
                for (int t = named.from; t < named.to; t++) {
                    used[t] = true;
                }
                claim(i, named);
            }
        }
    }

    /** A name and the symptom of it that fits the reading's unit; the item is null for a bare number. */
    private record Named(@Nullable Item item, Symptom symptom, int from, int to) {}

    private boolean blocked(int i) {
        return passage.item(i)
                .filter(item -> item.done || item.name || item.to - item.from > 1)
                .isPresent();
    }

    /** "3.9 V on 5 V", "1.79 on 1.8", "80 mV ripple". */
    private @Nullable Named onRail(int reading) {
        Token value = passage.token(reading);
        boolean placed = false;
        for (int i = reading + 1; i < passage.size() && i <= reading + REACH && passage.sameSegment(reading, i); i++) {
            Token token = passage.token(i);
            Item item = passage.item(i).orElse(null);
            boolean adjacent = i == reading + 1
                    && value.kind() == Kind.QUANTITY
                    && passage.item(reading).isEmpty();
            if (item != null && !item.entry.names.isEmpty()) {
                // a name may bring its own preposition: "on the bulk cap"
                placed |= PLACE.contains(passage.token(item.from).term());
                Named named = placed || adjacent || count(value, item) ? named(item, value) : null;
                return named != null && followedBySign(item.to) ? null : named;
            }
            if (token.kind() == Kind.NUMBER || token.kind() == Kind.QUANTITY) {
                Optional<Symptom> rail =
                        placed && token.kind() == Kind.NUMBER ? lexicon.rail(token.value()) : Optional.empty();
                int at = i;
                return rail.filter(r -> fits(r, value))
                        .map(r -> new Named(null, r, at, at + 1))
                        .orElse(null);
            }
            if (token.kind() == Kind.PUNCTUATION && !token.is("/")) {
                return null;
            }
            boolean place = PLACE.contains(token.term());
            if (!placed && !place && !Plain.skipped(token) && !token.term().equals("dc") && !measuring(token)) {
                return null;
            }
            placed |= place;
        }
        return null;
    }

    private static boolean measuring(Token token) {
        return token.term().startsWith("measur") || token.term().equals("read");
    }

    private static boolean count(Token value, Item name) {
        return value.kind() == Kind.NUMBER
                && name.entry.names.stream().anyMatch(s -> {
                    Quantity quantity = s.symptom().quantity();
                    return quantity != null && quantity.unit().equals("1");
                });
    }

    /** "12 V reads 11.2", "12 V: 11.98", "5 V rail is at 4.98", "12 V low, 11.2 V". */
    private @Nullable Named saidOf(int reading) {
        Token value = passage.token(reading);
        boolean nominal = passage.item(reading).isPresent();
        boolean says = false;
        boolean clearly = false;
        Item word = null;
        if (nominal && followedBySign(reading + 1)) {
            return null;
        }
        for (int i = reading - 1; i >= 0 && i >= reading - REACH && passage.sameClause(reading, i); i--) {
            Token token = passage.token(i);
            Item item = passage.item(i).orElse(null);
            if (item != null && !item.entry.names.isEmpty() && !item.done && !item.name) {
                Named named = named(item, value);
                if (named == null) {
                    return null;
                }
                boolean near = reading - item.to <= 1 && (value.kind() == Kind.QUANTITY || value.resolution() < 1);
                boolean comma = !passage.sameSegment(reading, item.from);
                boolean foreign = nominal && !names(reading, named.symptom());
                boolean told = foreign ? clearly : says || near || value.kind() == Kind.QUANTITY;
                boolean commaAllowed = !comma || clearly || (word != null && value.resolution() < 1);
                return told && commaAllowed ? named : null;
            }
            says |= SAYS.contains(token.term());
            clearly |= CLEARLY.contains(token.term());
            if (item != null && !item.entry.words.isEmpty()) {
                word = item;
            } else if (!between(token, item)) {
                return null;
            }
        }
        return null;
    }

    /** Whether the reading is itself a name of the symptom, as "320 V" may be of the bulk voltage, which has no nominal. */
    private boolean names(int reading, Symptom symptom) {
        Quantity quantity = symptom.quantity();
        if (quantity == null || quantity.nominal() != null) {
            return false;
        }
        return passage.item(reading)
                .filter(item ->
                        item.entry.names.stream().anyMatch(s -> s.symptom().id().equals(symptom.id())))
                .isPresent();
    }

    private static boolean between(Token token, @Nullable Item item) {
        if (item != null && item.entry.cue != null) {
            return item.entry.cue != Cue.NEGATION;
        }
        return SAYS.contains(token.term())
                || BETWEEN.contains(token.term())
                || Plain.skipped(token)
                || token.is(",")
                || token.is(")")
                || token.is("-");
    }

    private boolean followedBySign(int i) {
        return i < passage.size()
                && (passage.token(i).is(":") || passage.token(i).is("="));
    }

    private @Nullable Named named(Item item, Token value) {
        if (item.done || item.name) {
            return null;
        }
        for (Sense sense : item.entry.names) {
            if (fits(sense.symptom(), value)) {
                return new Named(item, sense.symptom(), item.from, item.to);
            }
            Optional<Symptom> paired =
                    lexicon.paired(sense.symptom(), value.unit()).filter(s -> fits(s, value));
            if (paired.isPresent() && value.kind() == Kind.QUANTITY) {
                return new Named(item, paired.get(), item.from, item.to);
            }
        }
        return null;
    }

    private static boolean fits(Symptom symptom, Token value) {
        Quantity quantity = symptom.quantity();
        if (quantity == null || symptom.states().stream().noneMatch(s -> s.range() != null)) {
            return false;
        }
        String unit = quantity.unit();
        return value.unit().equals(unit)
                || (value.kind() == Kind.NUMBER && !unit.equals("s") && !unit.equals("h"))
                || (unit.equals("h") && value.unit().equals("s"));
    }

    private void claim(int reading, Named named) {
        Token value = passage.token(reading);
        Item own = passage.item(reading).orElse(null);
        if (own != null) {
            own.done = true;
        }
        int negation = negatedAt(reading);
        if (negation >= 0) {
            // "no 5 V on the standby rail": what is negated is the rail, not the number
            return;
        }
        Item name = named.item();
        Claim claim = new Claim(named.symptom(), 0, name, named.from(), named.to());
        claim.cover(reading, reading + 1);
        if (name != null) {
            name.name = true;
            absorb(claim);
        }
        Verdict verdict = Verdict.of(named.symptom(), value, comparison(reading));
        claim.state = verdict.state();
        claim.measured = new HashMap<>(verdict.likelihoods());
        claim.note = verdict.note();
        passage.read(reading, claim);
        claims.add(claim);
    }

    private int negatedAt(int reading) {
        for (int i = reading - 1; i >= 0 && i >= reading - 2 && passage.sameSegment(i, reading); i--) {
            if (passage.item(i).filter(item -> item.cue(Cue.NEGATION)).isPresent()) {
                return i;
            }
        }
        return -1;
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
            if (Set.of("more", "above", "over", ">").contains(term)) {
                return 1;
            }
        }
        return 0;
    }
}
