package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Ambiguity groups in the sense of IEEE Std 1522-2004: causes that no available test can tell apart, because under
 * each of them every symptom that a test reveals is expected in the same state.
 */
final class AmbiguityCheck {
    private final Binding binding;
    private final Knowledge knowledge;
    private final Problems problems;

    AmbiguityCheck(Binding binding, Problems problems) {
        this.binding = binding;
        this.knowledge = binding.knowledge();
        this.problems = problems;
    }

    void run() {
        Map<Map<String, String>, List<Cause>> byRow = new LinkedHashMap<>();
        for (Cause cause : knowledge.causes()) {
            if (!binding.damaged(EntryKind.CAUSE, cause.id())) {
                byRow.computeIfAbsent(row(cause), row -> new ArrayList<>()).add(cause);
            }
        }
        byRow.forEach((row, causes) -> groups(causes).forEach(group -> report(row, group)));
    }

    /** The tested symptoms that the cause is expected to show otherwise than a unit at large, with the state. */
    private Map<String, String> row(Cause cause) {
        Map<String, String> row = new TreeMap<>();
        for (Link link : cause.shows()) {
            if (knowledge.testsRevealing(link.symptomId()).isEmpty()) {
                continue;
            }
            knowledge.symptom(link.symptomId()).ifPresent(symptom -> {
                Map<String, Double> background = new LinkedHashMap<>();
                symptom.states().forEach(state -> background.put(state.id(), state.usual()));
                String expected = likeliest(symptom, link.states());
                if (!expected.equals(likeliest(symptom, background))) {
                    row.put(symptom.id(), expected);
                }
            });
        }
        return row;
    }

    private static String likeliest(Symptom symptom, Map<String, Double> shares) {
        return symptom.states().stream()
                .map(State::id)
                .max(Comparator.comparingDouble((String state) -> shares.getOrDefault(state, 0.0))
                        .thenComparing(Comparator.reverseOrder()))
                .orElse("");
    }

    /** Those of the causes that meet on one device: causes of two families are never up for choice together. */
    private static Set<List<Cause>> groups(List<Cause> causes) {
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

    private void report(Map<String, String> row, List<Cause> group) {
        String ids = String.join(", ", group.stream().map(Cause::id).toList());
        String shown = row.isEmpty() ? "nothing unusual" : String.join(", ", row.keySet());
        problems.warn(
                binding.place(EntryKind.CAUSE, group.get(0).id(), "id"),
                "no test tells these " + group.size() + " causes apart: " + ids + " (all show " + shown + ")",
                "add a test, or a link to a tested symptom in which they differ");
    }
}
