package org.benchlore.kb.ranking;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * What one ended case teaches. Weights are whole millionths of a case, so that learning and taking back are exact and
 * their order is of no consequence.
 *
 * @param scope device scope of the unit
 * @param weights per cause id (or "unlisted"), millionths of a case, above 0
 * @param findings at most one per symptom
 * @param concluded whether the case ended with the one cause in it, rather than being shared out among those it may have been
 */
public record Lesson(DeviceScope scope, SortedMap<String, Long> weights, List<Finding> findings, boolean concluded) {
    /** One whole case. */
    public static final long WHOLE = 1_000_000;

    public Lesson {
        weights = Collections.unmodifiableSortedMap(new TreeMap<>(weights));
        findings = List.copyOf(findings);
        if (concluded && weights.size() != 1) {
            throw new IllegalArgumentException(
                    "a case concluded on " + weights.keySet() + "; give the one cause it ended with");
        }
        for (Map.Entry<String, Long> e : weights.entrySet()) {
            if (e.getValue() <= 0 || e.getValue() > WHOLE) {
                throw new IllegalArgumentException("lesson gives cause '" + e.getKey() + "' weight " + e.getValue()
                        + "; give 1 to " + WHOLE + " millionths of a case");
            }
        }
    }

    /** The cause it teaches most, if it teaches it at least half a case; ties go to the last id. */
    public Optional<String> likeliest() {
        return weights.entrySet().stream()
                .max(Map.Entry.<String, Long>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .filter(e -> 2 * e.getValue() >= WHOLE)
                .map(Map.Entry::getKey);
    }

    /** A case known to have had one cause. */
    public static Lesson of(DeviceScope scope, String causeId, List<Finding> findings) {
        return new Lesson(scope, new TreeMap<>(Map.of(causeId, WHOLE)), findings, true);
    }
}
