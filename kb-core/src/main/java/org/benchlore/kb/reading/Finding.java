package org.benchlore.kb.reading;

import static java.util.Objects.requireNonNull;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What was observed in one case: a symptom with a state, or a likelihood over its states when the reading is uncertain.
 * A symptom nobody looked at has no finding; that is not the same as an absent state.
 *
 * @param symptomId the symptom
 * @param likelihoods per state id, the relative likelihood of what was observed given that state, in (0,1] with the
 *     largest 1; states left out have likelihood 0. Immutable, in order of state id
 */
public record Finding(String symptomId, SortedMap<String, Double> likelihoods) {
    public Finding {
        requireNonNull(symptomId, "symptomId");
        requireNonNull(likelihoods, "likelihoods");
        if (symptomId.isBlank() || blank(likelihoods)) {
            throw new IllegalArgumentException(
                    "finding '" + symptomId + "'=" + likelihoods.keySet() + " has a blank id; name symptom and state");
        }
        if (likelihoods.isEmpty()) {
            throw new IllegalArgumentException("finding of '" + symptomId + "' names no state; give at least one");
        }
        double largest = 0;
        for (Map.Entry<String, Double> e : likelihoods.entrySet()) {
            double likelihood = e.getValue();
            if (!(likelihood > 0 && likelihood < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("finding " + symptomId + "=" + e.getKey() + " has likelihood "
                        + likelihood + "; give a number above 0");
            }
            largest = Math.max(largest, likelihood);
        }
        TreeMap<String, Double> scaled = new TreeMap<>();
        for (Map.Entry<String, Double> e : likelihoods.entrySet()) {
            scaled.put(e.getKey(), e.getValue() / largest);
        }
        likelihoods = Collections.unmodifiableSortedMap(scaled);
    }

    private static boolean blank(SortedMap<String, Double> likelihoods) {
        for (String stateId : likelihoods.keySet()) {
            if (stateId.isBlank()) {
                return true;
            }
        }
        return false;
    }

    /** A symptom seen for certain in one state. */
    public static Finding of(String symptomId, String stateId) {
        requireNonNull(stateId, "stateId");
        TreeMap<String, Double> likelihoods = new TreeMap<>();
        likelihoods.put(stateId, 1.0);
        return new Finding(symptomId, likelihoods);
    }

    /** An uncertain observation. @see #likelihoods */
    public static Finding soft(String symptomId, Map<String, Double> likelihoods) {
        requireNonNull(likelihoods, "likelihoods");
        return new Finding(
                symptomId,
                likelihoods instanceof SortedMap<String, Double> sorted ? sorted : new TreeMap<>(likelihoods));
    }

    /** The state the observation speaks for most; ties go to the first id. */
    public String state() {
        String best = likelihoods.firstKey();
        for (Map.Entry<String, Double> e : likelihoods.entrySet()) {
            if (e.getValue() > likelihoods.getOrDefault(best, 0.0)) {
                best = e.getKey();
            }
        }
        return best;
    }

    /** The states at least half as likely as the best, the likeliest first: those worth naming. */
    public List<String> likely() {
        return likelihoods.entrySet().stream()
                .filter(e -> e.getValue() >= 0.5)
                .sorted(Map.Entry.<String, Double>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey)
                .toList();
    }

    /** Whether one state is certain. */
    public boolean certain() {
        return likelihoods.size() == 1;
    }
}
