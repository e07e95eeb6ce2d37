package org.benchlore.kb.reading;

import java.util.BitSet;
import java.util.List;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;

/** Names said to lie beyond what they should be, without a reading: "well under its 12 V", "above the rated 12 V". */
final class Beyond {
    private static final int ARTICLES = 4;
    private static final Words BELOW = Words.terms("below under less");
    private static final Words EITHER = Words.terms("abov over exceed more below under less");
    private static final Words LEADING = Words.terms("the its their his her any all a than lower upper");
    private static final Words LIMITS =
            Words.terms("limit toleranc spec norm nominal rate rated rating label mark marking print");
    private static final Words FIGURES = Words.terms("value valu voltag figure figur limit mark");
    private static final Words SLIGHTLY = Words.terms("just slightly bit hair touch barely tad");

    private final Passage passage;
    private final List<Claim> claims;

    /** Where "above", "below" and the like stand. */
    private final BitSet comparisons = new BitSet();

    Beyond(Passage passage, List<Claim> claims) {
        this.passage = passage;
        this.claims = claims;
        for (int i = 1; i + 1 < passage.size(); i++) {
            if (EITHER.contains(passage.token(i).term())
                    && !passage.unreal(i)
                    && !SLIGHTLY.contains(passage.token(i - 1).term())) {
                comparisons.set(i);
            }
        }
    }

    void link() {
        for (int i = comparisons.nextSetBit(0); i >= 0; i = comparisons.nextSetBit(i + 1)) {
            link(i, BELOW.contains(passage.token(i).term()) ? Levels.LOW : Levels.HIGH);
        }
    }

    private void link(int at, List<String> states) {
        int limit = at + 1;
        while (limit < passage.size()
                && limit <= at + ARTICLES
                && LEADING.contains(passage.token(limit).term())) {
            limit++;
        }
        if (limit == passage.size() || !passage.sameSegment(at, limit)) {
            return;
        }
        for (int i = at - 1; i >= 0 && i >= at - Linker.REACH && passage.sameClause(i, at); i--) {
            Item item = passage.itemAt(i);
            if (item != null && item.cue(Cue.NEGATION)) {
                return;
            }
            if (item != null && !item.entry.names.isEmpty() && item.to <= at && claim(item, at, limit, states)) {
                return;
            }
            if (passage.token(i).numeric() && !Ordinals.at(passage.tokens, i)) {
                return;
            }
        }
    }

    private boolean claim(Item name, int at, int limit, List<String> states) {
        Symptom symptom = name.entry.names.get(0).symptom();
        int state = Levels.of(symptom, states);
        int to = end(limit, symptom);
        boolean taught = passage.item(at)
                .filter(word -> word.to >= to && !word.entry.words.isEmpty())
                .isPresent();
        if (state < 0 || to == limit || taught || !name.free()) {
            return false;
        }
        name.name = true;
        Claim claim = new Claim(symptom, state, name, name.from, name.to);
        claim.cover(at, to);
        for (int i = name.to; i < to; i++) {
            passage.item(i).filter(Item::free).ifPresent(item -> item.done = true);
        }
        claims.add(claim);
        return true;
    }

    /** End of the limit that starts here, of a symptom; {@code from} when none does. */
    private int end(int from, Symptom symptom) {
        Token token = passage.token(from);
        if (LIMITS.contains(token.term())) {
            int value = from + 1;
            boolean goesOn = value < passage.size() && passage.sameSegment(from, value);
            if (goesOn
                    && (nominal(value, symptom)
                            || FIGURES.contains(passage.token(value).term()))) {
                return value + 1;
            }
            // "under rated load" is a condition
            return goesOn && passage.content(value) ? from : value;
        }
        if (nominal(from, symptom)) {
            return from + 1;
        }
        boolean should = token.term().equals("what")
                && from + 2 < passage.size()
                && passage.token(from + 2).surface().equals("should");
        return should ? from + 3 : from;
    }

    private boolean nominal(int i, Symptom symptom) {
        Token value = passage.token(i);
        Quantity quantity = symptom.quantity();
        Double nominal = quantity == null ? null : quantity.nominal();
        return value.numeric() && nominal != null && Math.abs(value.value()) == Math.abs(nominal);
    }
}
