package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;

/**
 * What is said by pointing back: "the 5 is fine and so is the 3.3", "same on the 5 V", "SUP5 not there, SUP12 is", and of
 * former troubles "not now", "none of that this time".
 */
final class Echoes {
    /** Claims that "none of that" may deny. */
    private static final int MOST_DENIED = 4;

    private static final int LOOK_BACK = 4;
    private static final Words SAME = Words.terms("so same ditto likewise similarly");
    private static final Words DOES = Words.terms("be do work");
    private static final Words TOO = Words.terms("too also likewise same ditto");
    private static final Words BETWEEN = Words.terms("be do have will for on with the of at go story thing its a");

    private static final Words DETERMINERS = Words.terms("the that this veri very");
    private static final Words WITH = Words.terms("with use from off through over via by");

    private final Passage passage;
    private final List<Claim> claims;

    Echoes(Passage passage, List<Claim> claims) {
        this.passage = passage;
        this.claims = claims;
    }

    /** Adds the claims that echo others. */
    void add() {
        claims.sort(Claim.BY_PLACE);
        List<Claim> more = new ArrayList<>();
        int at = 0;
        for (Item item : passage.items) {
            while (at < claims.size() && claims.get(at).from < item.from) {
                at++;
            }
            Claim last = at > 0 ? claims.get(at - 1) : null;
            boolean sameSentence = last != null && passage.sentence(last.from) == passage.sentence(item.from);
            if (last == null || !sameSentence || !item.free()) {
                continue;
            }
            if (!item.entry.names.isEmpty()) {
                echo(item, last).ifPresent(more::add);
            } else if (item.entry.cue == Cue.NEGATION && denies(item)) {
                deny(item, at, more);
            }
        }
        claims.addAll(more);
    }

    private Optional<Claim> echo(Item name, Claim last) {
        int from = name.from;
        for (int i = name.from - 1; i >= Math.max(last.to, name.from - LOOK_BACK); i--) {
            String term = passage.token(i).term();
            if (SAME.contains(term) && companion(i)) {
                return Optional.empty();
            }
            if (SAME.contains(term)) {
                return copy(name, last, i, name.to, false);
            }
            if (!BETWEEN.contains(term)) {
                break;
            }
            from = i;
        }
        Token next = name.to < passage.size() ? passage.token(name.to) : null;
        if (next == null || !passage.sameSegment(name.from, name.to)) {
            return Optional.empty();
        }
        if (TOO.contains(next.term())) {
            return copy(name, last, from, name.to + 1, false);
        }
        boolean ends = name.to + 1 == passage.size() || !passage.sameSegment(name.to, name.to + 1) || stop(name.to + 1);
        boolean does = DOES.contains(next.term());
        return does && ends && last.negated ? copy(name, last, from, name.to + 1, true) : Optional.empty();
    }

    /** "With the same lead" tells what a trial was done with. */
    private boolean companion(int same) {
        int i = same - 1;
        while (i >= 0 && DETERMINERS.contains(passage.token(i).term())) {
            i--;
        }
        return i >= 0
                && passage.sameSegment(i, same)
                && WITH.contains(passage.token(i).term());
    }

    private boolean stop(int token) {
        String term = passage.token(token).term();
        return term.equals(".") || term.equals("\n") || term.equals("!");
    }

    private Optional<Claim> copy(Item name, Claim last, int from, int to, boolean turned) {
        String state = last.symptom.states().get(last.state).id();
        for (Sense named : name.entry.names) {
            Symptom symptom = named.symptom();
            int index = symptom.indexOf(state);
            if (index >= 0) {
                name.name = true;
                Claim claim = new Claim(symptom, index, name, from, to);
                claim.negated = last.negated && !turned;
                return Optional.of(claim);
            }
        }
        return Optional.empty();
    }

    /** Whether a negation stands for a whole former complaint: "not now", "none of that". */
    private boolean denies(Item negation) {
        boolean now = false;
        boolean content = false;
        for (int i = negation.to; i < passage.size() && passage.sameSegment(negation.from, i); i++) {
            Item item = passage.itemAt(i);
            now |= item != null && item.entry.cue == Cue.NOW;
            now |= passage.token(i).term().equals("that");
            content |= item == null && passage.content(i);
            content |= item != null && item.entry.rank() < Entry.LANGUAGE;
        }
        return now && !content;
    }

    private void deny(Item negation, int before, List<Claim> more) {
        int sentence = passage.sentence(negation.from);
        boolean past = false;
        for (int i = negation.index - 1; i >= 0 && passage.sentence(passage.items.get(i).from) == sentence; i--) {
            past |= passage.items.get(i).entry.cue == Cue.PAST;
        }
        if (!past) {
            return;
        }
        int to = negation.to;
        while (to < passage.size() && passage.sameSegment(negation.from, to) && !stop(to)) {
            to++;
        }
        negation.done = true;
        for (int i = before - 1; i >= Math.max(0, before - MOST_DENIED); i--) {
            Claim claim = claims.get(i);
            if (passage.sentence(claim.from) == sentence && claim.measured == null) {
                Claim denied = new Claim(claim.symptom, claim.state, null, negation.from, to);
                denied.negated = !claim.negated;
                more.add(denied);
            }
        }
    }
}
