package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The D-matrix of IEEE Std 1522-2004: causes against the symptoms that tests read. A cell holds the state to expect, the
 * likeliest one under the cause; it is left out where that is what to expect of any unit. A symptom of which the cause says
 * nothing is expected as in any unit. Only tests that apply wherever the cause does count. How sure the expectation is does
 * not count here; see {@link Lookalikes} for that.
 */
final class DependencyMatrix {
    private final Map<String, Map<String, String>> rows = new LinkedHashMap<>();
    private final Knowledge knowledge;

    DependencyMatrix(Knowledge knowledge) {
        this.knowledge = knowledge;
        knowledge.causes().forEach(cause -> rows.put(cause.id(), rowOf(cause)));
    }

    private Map<String, String> rowOf(Cause cause) {
        Map<String, String> row = new TreeMap<>();
        for (Link link : cause.shows()) {
            boolean read = knowledge.testsRevealing(link.symptomId()).stream()
                    .anyMatch(test -> test.scope().contains(cause.scope()));
            if (read) {
                knowledge.symptom(link.symptomId()).ifPresent(symptom -> {
                    String expected = likeliest(symptom, link.states());
                    if (!expected.equals(likeliest(symptom, background(symptom)))) {
                        row.put(symptom.id(), expected);
                    }
                });
            }
        }
        return row;
    }

    /** The likeliest state; of equal ones that with the first id. */
    static String likeliest(Symptom symptom, Map<String, Double> shares) {
        return symptom.states().stream()
                .map(State::id)
                .max(Comparator.comparingDouble((String state) -> shares.getOrDefault(state, 0.0))
                        .thenComparing(Comparator.reverseOrder()))
                .orElse("");
    }

    /** What a unit at large shows. */
    static Map<String, Double> background(Symptom symptom) {
        Map<String, Double> background = new LinkedHashMap<>();
        symptom.states().forEach(state -> background.put(state.id(), state.usual()));
        return background;
    }

    /** Symptoms that are expected otherwise than in a unit at large, with the state to expect. */
    Map<String, String> row(Cause cause) {
        return rows.getOrDefault(cause.id(), Map.of());
    }

    /** Whether some symptom of the row is out of order, so that a test finds that something is wrong. */
    boolean detected(Cause cause) {
        return row(cause).entrySet().stream()
                .anyMatch(cell -> knowledge
                        .symptom(cell.getKey())
                        .filter(symptom -> !symptom.normal().id().equals(cell.getValue()))
                        .isPresent());
    }

    /** Causes with one row, those that stand alone among them. */
    Collection<List<Cause>> byRow(Collection<Cause> causes) {
        Map<Map<String, String>, List<Cause>> byRow = new LinkedHashMap<>();
        causes.forEach(cause ->
                byRow.computeIfAbsent(row(cause), row -> new ArrayList<>()).add(cause));
        return byRow.values();
    }

    /**
     * Groups of two or more causes with one row that meet on one device: causes of two families are never up for choice
     * together. A group that lies within another is left out.
     */
    List<List<Cause>> ambiguityGroups(Collection<Cause> causes) {
        return byRow(causes).stream()
                .filter(group -> group.size() > 1)
                .flatMap(group -> meeting(group).stream())
                .toList();
    }

    private static Set<List<Cause>> meeting(List<Cause> causes) {
        Set<List<Cause>> groups = new LinkedHashSet<>();
        causes.stream().map(Cause::scope).distinct().forEach(scope -> {
            List<Cause> meeting =
                    causes.stream().filter(c -> c.scope().contains(scope)).toList();
            boolean within = groups.stream().anyMatch(group -> group.containsAll(meeting));
            if (meeting.size() > 1 && !within) {
                groups.removeIf(meeting::containsAll);
                groups.add(meeting);
            }
        });
        return groups;
    }
}
