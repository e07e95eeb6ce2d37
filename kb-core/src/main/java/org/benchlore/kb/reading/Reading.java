package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.DeviceScope;

/**
 * What was read from a text, with exact spans, and what was not understood. Spans are UTF-16 offsets into {@link #text},
 * end exclusive.
 *
 * @param text as given
 * @param scope device scope it was read in
 * @param understood findings with the words they came from, in order of start
 * @param notUnderstood stretches that carry meaning but led to no finding, in order of start
 * @param quantities every reading, setting, rating and limit, whether or not it led to a finding; a voltage that only
 *     names a rail is none, of a range both ends are, and a bare number is one where what is named gives its unit
 * @param contradictions symptoms for which the text says two things that exclude each other
 * @param codes log codes seen, known or not
 * @param kinds ids of the device classes that the text names, in order; the class of the scope alone where that is given.
 *     Whose unit it is is guessed: one that the text only compares with or plugs into is left out
 */
public record Reading(
        String text,
        DeviceScope scope,
        List<Understood> understood,
        List<Span> notUnderstood,
        List<Value> quantities,
        List<Contradiction> contradictions,
        List<CodeSeen> codes,
        List<String> kinds) {
    /** Who says it. */
    public enum Source {
        OWNER,
        SEEN,
        MEASURED
    }

    /** When the state held, or how often. */
    public enum Condition {
        COLD,
        WARM,
        UNDER_LOAD,
        AFTER_A_WHILE,
        INTERMITTENT,
        STANDBY
    }

    /** A stretch of the text. */
    public record Span(String text, int start, int end) {}

    /**
     * One finding and the words it came from.
     *
     * @param finding the finding
     * @param span the words, negation and value included
     * @param source who says it
     * @param conditions when it held; empty when unsaid
     * @param past whether it is told as history and is not the unit's state now
     * @param note a plain verdict for measurements ("3.26 V on 3.3 V ±5 %: in tolerance, 99.9 %"), else empty
     */
    public record Understood(
            Finding finding, Span span, Source source, List<Condition> conditions, boolean past, String note) {
        public Understood {
            conditions = List.copyOf(conditions);
        }
    }

    /**
     * A value with its unit.
     *
     * @param value in the base unit (V, A, ohm, F, Hz, s, W, degC, %)
     * @param unit base unit
     * @param span where it stands
     */
    public record Value(double value, String unit, Span span) {}

    /**
     * Two understood findings that exclude each other; neither is dropped.
     *
     * @param symptomId the symptom
     * @param first index into {@link Reading#understood}
     * @param second index into {@link Reading#understood}
     */
    public record Contradiction(String symptomId, int first, int second) {}

    /**
     * A log code.
     *
     * @param code canonical spelling when known, else as written
     * @param known whether the scope's device pack knows it
     * @param count how often it came by what the text says, else how often it stands there
     * @param past whether it is only told of former times ("last year", "none since")
     * @param span first place
     */
    public record CodeSeen(String code, boolean known, int count, boolean past, Span span) {}

    /** Share of the most likely state from which on a finding speaks for another state as well. */
    private static final double AGREED = 0.5;

    public Reading {
        understood = List.copyOf(understood);
        notUnderstood = List.copyOf(notUnderstood);
        quantities = List.copyOf(quantities);
        contradictions = List.copyOf(contradictions);
        codes = List.copyOf(codes);
        kinds = List.copyOf(kinds);
    }

    /** Codes that the scope's device packs do not know, as written, but for those of former times. */
    public List<String> unknownCodes() {
        return codes.stream()
                .filter(seen -> !seen.known() && !seen.past())
                .map(CodeSeen::code)
                .toList();
    }

    /** The stretches that led to no finding, joined; empty where all was understood. */
    public String unread() {
        return notUnderstood.stream().map(Span::text).collect(Collectors.joining("\n"));
    }

    /**
     * One finding per symptom for ranking, history left out. Agreeing mentions count once (the most certain stands), of those
     * that leave several states open the states that suit all; contradicting ones become a soft finding that favours neither.
     */
    public List<Finding> findings() {
        SortedMap<String, Finding> merged = new TreeMap<>();
        for (Understood u : understood) {
            if (!u.past()) {
                merged.merge(u.finding().symptomId(), u.finding(), Reading::merge);
            }
        }
        return List.copyOf(new ArrayList<>(merged.values()));
    }

    /** Whether a state can be that both findings speak of: "lamp off, no blinks". */
    static boolean agree(Finding a, Finding b) {
        return a.state().equals(b.state()) || !shared(a, b).isEmpty();
    }

    /** The likelihoods of states that neither finding speaks against. */
    private static SortedMap<String, Double> shared(Finding a, Finding b) {
        SortedMap<String, Double> shared = new TreeMap<>();
        double least = AGREED * Math.min(most(a), most(b));
        a.likelihoods().forEach((state, p) -> {
            double both = Math.min(p, b.likelihoods().getOrDefault(state, 0.0));
            if (both >= least) {
                shared.put(state, both);
            }
        });
        return shared;
    }

    private static double most(Finding finding) {
        return finding.likelihoods().values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
    }

    private static Finding merge(Finding a, Finding b) {
        if (a.state().equals(b.state())) {
            return a.likelihoods().size() <= b.likelihoods().size() ? a : b;
        }
        SortedMap<String, Double> shared = shared(a, b);
        if (!shared.isEmpty()) {
            return Finding.soft(a.symptomId(), shared);
        }
        SortedMap<String, Double> both = new TreeMap<>();
        for (Finding f : List.of(a, b)) {
            for (Map.Entry<String, Double> e : f.likelihoods().entrySet()) {
                both.merge(e.getKey(), e.getValue(), Math::max);
            }
        }
        return Finding.soft(a.symptomId(), both);
    }
}
