package org.benchlore.kb.reading;

import java.util.Comparator;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.jspecify.annotations.Nullable;

/** A finding in the making: a symptom, a state, the tokens it rests on. */
final class Claim {
    /** How likely the other states are, relative to the one said, when the writer is in doubt. Our own choice. */
    private static final double DOUBTED = 0.35;

    /** In the order of the text; at one place by symptom, so that it does not depend on how they were found. */
    static final Comparator<Claim> BY_PLACE = Comparator.comparingInt((Claim c) -> c.from)
            .thenComparingInt(c -> c.to)
            .thenComparing(c -> c.symptom.id());

    /** How likely another fault is when one is denied, relative to none. Our own choice; it decides what stands first. */
    private static final double ANOTHER_FAULT = 0.95;

    final Symptom symptom;
    final Passage.@Nullable Item name;

    /** The word or phrase that gave the state, if one did. */
    Passage.@Nullable Item word;

    int state;
    int from;
    int to;

    /** The stretch of text that is about it, in tokens; set when all claims are known. */
    int stretchFrom;

    int stretchTo;
    boolean negated;

    /** Whether the state comes from "no NAME" alone. */
    boolean bareNegation;

    /** Whether a negated state means any other, whatever its opposite. */
    boolean anyOther;

    /** Whether it shares what is said of it with other members of its list. */
    boolean listed;

    /** Whether it is told as long over, even where what once happened counts. */
    boolean over;

    /** Set when a later exception takes it back. */
    boolean dropped;

    String note = "";

    /** Set for measurements: likelihood per state id. */
    @Nullable
    Map<String, Double> measured;

    Claim(Symptom symptom, int state, Passage.@Nullable Item name, int from, int to) {
        this.symptom = symptom;
        this.state = state;
        this.name = name;
        this.from = from;
        this.to = to;
    }

    /** Whether the state that is named is the normal one; negated or not. */
    boolean normal() {
        return symptom.states().get(state).normal();
    }

    void cover(int otherFrom, int otherTo) {
        from = Math.min(from, otherFrom);
        to = Math.max(to, otherTo);
    }

    /** The one state that it says, null where it leaves several open. */
    private @Nullable String certain() {
        State said = symptom.states().get(state);
        return !negated ? said.id() : anyOther ? null : said.opposite();
    }

    /** The state it speaks for most. */
    String likeliest() {
        String certain = measured == null ? certain() : null;
        return certain != null ? certain : finding(false).state();
    }

    /** The finding, softened when the writer is in doubt. */
    Finding finding(boolean doubt) {
        if (measured != null) {
            return Finding.soft(symptom.id(), measured);
        }
        String certain = certain();
        if (certain != null && !doubt) {
            return Finding.of(symptom.id(), certain);
        }
        SortedMap<String, Double> likelihoods = new TreeMap<>();
        State said = symptom.states().get(state);
        if (certain != null) {
            likelihoods.put(certain, 1.0);
        } else {
            for (State other : symptom.states()) {
                if (!other.id().equals(said.id())) {
                    likelihoods.put(other.id(), other.normal() || said.normal() ? 1.0 : ANOTHER_FAULT);
                }
            }
        }
        if (doubt) {
            for (State other : symptom.states()) {
                likelihoods.putIfAbsent(other.id(), DOUBTED);
            }
        }
        return Finding.soft(symptom.id(), likelihoods);
    }
}
