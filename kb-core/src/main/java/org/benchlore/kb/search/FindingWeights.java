package org.benchlore.kb.search;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;

/**
 * What a document has to do with each finding, as weights in nats. A cause carries, per state, how much likelier it
 * makes that state than it is on the bench at large, ln(p / usual), where that speaks for it: a state that every unit
 * shows weighs nothing. A fix carries those of its causes as far as it cures them. A test carries what it reveals, a
 * symptom and a case what was seen, each by its rarity, -ln(usual).
 *
 * <p>Retrieval wants what speaks for a document; what speaks against a cause is the ranking's business.
 */
final class FindingWeights {
    /** From here on a finding is a subject of the entry: twice as likely as usual. */
    static final double SUBJECT = 0.7;

    private static final double LEAST = 0.05; // less than a twentieth of a nat is within the packs' own guesswork
    private static final double MOST = 7; // 1 in 1000, as rare as the packs know
    private static final double OF_A_TEST = 0.5; // a test shows either outcome
    private static final double OF_A_FIX = 0.5; // one step further from the finding than its cause

    private final Knowledge knowledge;

    FindingWeights(Knowledge knowledge) {
        this.knowledge = knowledge;
    }

    /** The term that stands for a symptom in a state. */
    static String term(String symptomId, String stateId) {
        return symptomId + "=" + stateId;
    }

    SortedMap<String, Double> of(Symptom symptom) {
        SortedMap<String, Double> weights = new TreeMap<>();
        for (State state : symptom.states()) {
            put(weights, term(symptom.id(), state.id()), rarity(state));
        }
        return weights;
    }

    SortedMap<String, Double> of(Cause cause) {
        SortedMap<String, Double> weights = new TreeMap<>();
        for (Link link : cause.shows()) {
            knowledge.symptom(link.symptomId()).ifPresent(symptom -> {
                for (State state : symptom.states()) {
                    double p = link.states().getOrDefault(state.id(), 0.0);
                    put(weights, term(symptom.id(), state.id()), StrictMath.log(p / state.usual()));
                }
            });
        }
        return weights;
    }

    SortedMap<String, Double> of(BenchTest test) {
        SortedMap<String, Double> weights = new TreeMap<>();
        for (String symptomId : test.reveals()) {
            knowledge.symptom(symptomId).ifPresent(symptom -> {
                for (State state : symptom.states()) {
                    put(weights, term(symptomId, state.id()), OF_A_TEST * rarity(state));
                }
            });
        }
        return weights;
    }

    SortedMap<String, Double> of(Fix fix) {
        SortedMap<String, Double> weights = new TreeMap<>();
        for (Cause cause : knowledge.causesFixedBy(fix.id())) {
            double works = cause.fixedBy().stream()
                    .filter(remedy -> remedy.fixId().equals(fix.id()))
                    .mapToDouble(Remedy::works)
                    .max()
                    .orElse(0);
            of(cause).forEach((term, weight) -> put(weights, term, OF_A_FIX * works * weight));
        }
        return weights;
    }

    /** Weights of what was found in one case; an uncertain finding spreads over its states. */
    SortedMap<String, Double> of(List<Finding> findings) {
        SortedMap<String, Double> weights = new TreeMap<>();
        for (Finding finding : findings) {
            double sum = finding.likelihoods().values().stream()
                    .mapToDouble(Double::doubleValue)
                    .sum();
            finding.likelihoods()
                    .forEach((stateId, likelihood) -> put(
                            weights,
                            term(finding.symptomId(), stateId),
                            likelihood / sum * rarity(finding.symptomId(), stateId)));
        }
        return weights;
    }

    /**
     * Weights divided by the square root of their length: half-way between counting what two cases share, which favours
     * long histories, and the cosine between them, which favours the shortest.
     */
    static SortedMap<String, Double> tempered(Map<String, Double> weights) {
        double length =
                Math.sqrt(weights.values().stream().mapToDouble(w -> w * w).sum());
        SortedMap<String, Double> tempered = new TreeMap<>();
        weights.forEach((term, weight) -> tempered.put(term, weight / Math.sqrt(length)));
        return tempered;
    }

    private double rarity(String symptomId, String stateId) {
        return knowledge
                .symptom(symptomId)
                .flatMap(symptom -> symptom.state(stateId))
                .map(FindingWeights::rarity)
                .orElse(1.0); // of a pack that is no longer here
    }

    private static double rarity(State state) {
        return -StrictMath.log(state.usual());
    }

    private static void put(Map<String, Double> weights, String term, double weight) {
        if (weight >= LEAST) {
            weights.merge(term, Math.min(MOST, weight), Math::max);
        }
    }
}
