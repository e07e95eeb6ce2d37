package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.UnknownPhrase.Proposal;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;

/** Which state a phrase may stand for: by the words it shares with what is taught, and by what its cause shows. */
final class LikelyStates {
    private static final int PROPOSALS = 3;

    /** How much the leaning cause counts beside the words. Our own choice. */
    private static final double BY_CAUSE = 0.3;

    /** Least likeness by words that name nothing, without a cause to go by: less is no guess worth making. Our own choice. */
    private static final double BY_WORDS = 0.5;

    /** A text that is taught; {@code name} are all terms of the name in it, none for a phrase. */
    private record Known(Symptom symptom, State state, Set<String> terms, Set<String> name) {
        boolean namedBy(Collection<String> said) {
            return !name.isEmpty() && said.containsAll(name);
        }
    }

    private final Knowledge knowledge;
    private final Map<String, List<Known>> byTerm = new HashMap<>();
    private final Map<String, Double> weights = new HashMap<>();
    private int phrases;

    LikelyStates(Knowledge knowledge) {
        this.knowledge = knowledge;
        Map<String, Integer> often = new HashMap<>();
        for (Symptom symptom : knowledge.symptoms()) {
            for (State state : symptom.states()) {
                state.phrases().forEach(text -> learn(symptom, state, text, Set.of(), often));
                symptom.called().forEach(name -> learn(symptom, state, name + " " + state.name(), words(name), often));
            }
        }
        often.forEach((term, n) -> weights.put(term, Math.log((phrases + 1.0) / n)));
    }

    private static Set<String> terms(String text) {
        Set<String> terms = new HashSet<>();
        for (Token token : Lexer.tokens(text)) {
            if (Plain.content(token)) {
                terms.add(token.term());
            }
        }
        return terms;
    }

    private static Set<String> words(String name) {
        return Lexer.tokens(name).stream().map(Token::term).collect(Collectors.toSet());
    }

    private void learn(Symptom symptom, State state, String text, Set<String> name, Map<String, Integer> often) {
        Set<String> terms = terms(text);
        phrases++;
        Known known = new Known(symptom, state, terms, name);
        for (String term : terms) {
            often.merge(term, 1, Integer::sum);
            byTerm.computeIfAbsent(term, t -> new ArrayList<>()).add(known);
        }
    }

    /** Whether a word stands in any phrase or name. */
    boolean taught(String term) {
        return byTerm.containsKey(term);
    }

    /**
     * At most three, the likeliest first; without a cause only what the words name, or what shares half of them by weight.
     *
     * @param terms of the phrase
     * @param causeId the cause it leans to
     */
    List<Proposal> proposals(List<String> terms, Optional<String> causeId) {
        Map<String, Proposal> best = new HashMap<>();
        double whole = weight(terms);
        for (String term : terms) {
            for (Known known : byTerm.getOrDefault(term, List.of())) {
                double shared = terms.stream()
                        .filter(known.terms()::contains)
                        .mapToDouble(this::weight)
                        .sum();
                double likeness = 2 * shared / (whole + weight(known.terms()));
                if (causeId.isPresent() || likeness >= BY_WORDS || known.namedBy(terms)) {
                    keep(best, known.symptom().id(), known.state().id(), likeness);
                }
            }
        }
        Optional<Cause> cause = causeId.flatMap(knowledge::cause);
        if (cause.isPresent()) {
            Map<String, Proposal> byCause = new HashMap<>();
            for (Link link : cause.get().shows()) {
                Symptom symptom = knowledge.symptom(link.symptomId()).orElseThrow();
                link.states().forEach((state, p) -> {
                    String key = symptom.id() + " " + state;
                    double words = best.containsKey(key) ? best.get(key).likeness() : 0;
                    if (!state.equals(symptom.normal().id())) {
                        keep(byCause, symptom.id(), state, (1 - BY_CAUSE) * words + BY_CAUSE * p);
                    }
                });
            }
            best.putAll(byCause);
        }
        return best.values().stream()
                .sorted(Comparator.comparingDouble(Proposal::likeness)
                        .reversed()
                        .thenComparing(Proposal::symptomId)
                        .thenComparing(Proposal::stateId))
                .limit(PROPOSALS)
                .toList();
    }

    private static void keep(Map<String, Proposal> best, String symptom, String state, double likeness) {
        Proposal proposal = new Proposal(symptom, state, likeness);
        best.merge(symptom + " " + state, proposal, (a, b) -> a.likeness() >= b.likeness() ? a : b);
    }

    private double weight(Iterable<String> terms) {
        double sum = 0;
        for (String term : terms) {
            sum += weight(term);
        }
        return sum;
    }

    private double weight(String term) {
        return weights.getOrDefault(term, Math.log(phrases + 1.0));
    }
}
