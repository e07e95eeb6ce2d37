package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * Joins names with what is said of them: the nearest state word of the same clause, negations, lists. Every step looks
 * only a few tokens around, so the cost grows with the text.
 */
final class Linker {
    /** Tokens between a name and what is said of it. */
    static final int REACH = 12;

    /** Tokens between a denied thing and the next of its list. */
    private static final int LIST_REACH = 4;

    private static final Words NONE = Words.of("none", "no");

    private final Passage passage;
    private final Lexicon lexicon;
    private final int negationReach;
    private final List<Claim> claims = new ArrayList<>();
    private final List<Item> items;
    private final Values values;
    private final WordLinks wordLinks;
    private final Fragments fragments;
    private final Strays strays;
    private final Outcomes outcomes;
    private final ListSpread listSpread;

    Linker(Passage passage, Lexicon lexicon, int negationReach) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.negationReach = negationReach;
        this.items = passage.items;
        this.values = new Values(passage, lexicon, claims);
        this.wordLinks = new WordLinks(passage, lexicon, claims);
        this.fragments = new Fragments(passage, lexicon, claims);
        this.strays = new Strays(passage, lexicon, claims);
        this.outcomes = new Outcomes(passage, lexicon, claims);
        this.listSpread = new ListSpread(passage, claims);
    }

    /** Claims in order of their first token. */
    List<Claim> link() {
        pass();
        for (boolean names : new boolean[] {false, true}) {
            if (passage.release(names)) {
                pass();
            }
        }
        Loose.outdo(passage, lexicon, claims);
        claims.removeIf(c -> c.dropped);
        new Echoes(passage, claims).add();
        new Loose(passage, lexicon, claims).add();
        bare();
        Searches.deny(passage, claims);
        Alternatives.apply(passage, lexicon, claims);
        Limits.apply(passage, claims);
        claims.removeIf(c -> c.dropped);
        Circumstances.drop(passage, claims);
        Nothing.drop(passage, claims);
        Thin.drop(passage, lexicon, claims);
        claims.sort(Claim.BY_PLACE);
        return Repeats.merged(passage, claims);
    }

    private void pass() {
        Unmeant unmeant = new Unmeant(passage);
        for (Item item : items) {
            item.done = item.done || unmeant.is(item);
        }
        Ticks.add(passage, claims);
        values.link();
        for (Item item : items) {
            item.done = item.done || (item.free() && unmeant.reached(item));
        }
        phrases(false);
        wordLinks.link();
        fragments.link();
        phrases(true);
        shared();
        strays.link();
        outcomes.take();
        new Negations(passage, claims, negationReach).apply();
        listSpread.spread();
    }

    /** Phrases; one that may also be a word for a name beside it waits until the words are linked. */
    private void phrases(boolean alsoWords) {
        for (Item item : items) {
            boolean open = item.free() && !item.entry.phrases.isEmpty();
            if (open && (alsoWords || item.entry.words.isEmpty()) && !waits(item)) {
                claim(item);
            }
        }
    }

    /** What a phrase says by itself. */
    private void claim(Item phrase) {
        Sense sense = phrase.entry.phrases.get(0);
        phrase.done = true;
        Claim claim = new Claim(sense.symptom(), sense.state(), null, phrase.from, phrase.to);
        claim.word = phrase;
        claims.add(claim);
        Item next = denied(phrase, sense);
        if (next != null) {
            claim.state = sense.symptom().indexOf(sense.symptom().normal().id());
            claim.cover(next.from, next.to);
            next.word = true;
        }
    }

    /** "None of the rails is missing": the trouble behind a phrase that denies the thing, which is then as it should be. */
    private @Nullable Item denied(Item phrase, Sense sense) {
        int at = phrase.to;
        while (at < passage.size()
                && passage.sameSegment(at, phrase.from)
                && passage.term(at).equals("be")) {
            at++;
        }
        Item next = at < passage.size() ? passage.itemAt(at) : null;
        boolean none =
                NONE.contains(passage.term(phrase.from)) && !sense.stateOf().normal();
        boolean near = next != null && next.free() && passage.sameSegment(next.from, phrase.from);
        if (!none || next == null || !near || Token.denies(passage.term(next.from))) {
            return null;
        }
        Sense said =
                next.entry.names.isEmpty() ? next.entry.saidOf(sense.symptom().id()) : null;
        return said == null || said.stateOf().normal() ? null : next;
    }

    /** "Picture and sound good": what is said of the picture speaks of the sound by itself. */
    private void shared() {
        for (Item item : items) {
            boolean joined = item.word && !item.done && item.from > 0 && Plain.joining(passage.token(item.from - 1));
            if (joined && !item.entry.phrases.isEmpty() && lexicon.namesItself(passage, item)) {
                claim(item);
            }
        }
    }

    /** "Nothing burnt in the supply" is no nothing, "cooling the chips does nothing" no cure: the next item decides. */
    private boolean waits(Item item) {
        return Negations.deniesNext(passage, item) || turned(item);
    }

    private boolean turned(Item item) {
        Sense sense = item.entry.phrases.get(0);
        Item next = item.index + 1 < items.size() ? items.get(item.index + 1) : null;
        if (next == null || !next.free() || next.from > item.to || !passage.sameSegment(item.from, next.from)) {
            return false;
        }
        Sense said = next.entry.saidOf(sense.symptom().id());
        return item.entry.names(sense.symptom()) && said != null && said.state() != sense.state();
    }

    private void bare() {
        @Nullable Claim[] endAt = new Claim[passage.size() + 1];
        claims.forEach(claim -> endAt[claim.to] = claim);
        for (Item item : items) {
            if (!item.names || !item.free()) {
                continue;
            }
            for (Sense named : item.entry.names) {
                String bare = named.symptom().bare();
                if (bare != null && denied(item, named, endAt)) {
                    item.name = true;
                    break;
                }
                if (bare != null) {
                    item.name = true;
                    claims.add(new Claim(named.symptom(), named.symptom().indexOf(bare), item, item.from, item.to));
                    break;
                }
            }
        }
    }

    /** "Clean of webs, nests and vermin": the rest of a list of which the same was denied just before. */
    private boolean denied(Item item, Sense named, @Nullable Claim[] endAt) {
        for (int to = item.from - 1; to >= Math.max(0, item.from - LIST_REACH); to--) {
            Claim claim = endAt[to];
            boolean normal = claim != null && claim.normal() != claim.negated;
            if (normal && claim.symptom.id().equals(named.symptom().id()) && listed(to, item.from)) {
                claim.cover(item.from, item.to);
                return true;
            }
        }
        return false;
    }

    private boolean listed(int from, int to) {
        boolean joined = false;
        int others = 0;
        for (int i = from; i < to; i++) {
            boolean joint = Plain.joining(passage.token(i));
            joined |= joint;
            others += joint ? 0 : 1;
        }
        return joined && others <= 1 && passage.sentence(from) == passage.sentence(to);
    }
}
