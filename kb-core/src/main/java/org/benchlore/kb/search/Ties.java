package org.benchlore.kb.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;

/**
 * What the entries have to do with each other: causes with the symptoms they show, the tests that confirm them and the
 * fixes that cure them. Entries are known by their place among the drafts. Immutable.
 */
final class Ties {
    /** From this weight on, in nats, a symptom belongs to a cause wholly: twenty times as likely as usual. */
    private static final double WHOLLY = 3;

    /**
     * One tie.
     *
     * @param from place of a cause, or of a symptom that tests reveal
     * @param to place of the symptom, test or fix
     * @param strength in (0,1]
     */
    record Tie(int from, int to, double strength) {}

    private final Knowledge knowledge;
    private final List<Draft> entries;
    private final Map<HitKind, Map<String, Integer>> places = new EnumMap<>(HitKind.class);
    private final List<Tie> symptoms = new ArrayList<>();
    private final List<Tie> remedies = new ArrayList<>();
    private final List<Tie> tests = new ArrayList<>();

    Ties(Knowledge knowledge, List<Draft> entries) {
        this.knowledge = knowledge;
        this.entries = entries;
        for (int i = 0; i < entries.size(); i++) {
            Draft entry = entries.get(i);
            places.computeIfAbsent(entry.kind(), kind -> new HashMap<>()).put(entry.id(), i);
        }
        for (BenchTest test : knowledge.tests()) {
            for (String symptomId : test.reveals()) {
                tie(tests, place(HitKind.SYMPTOM, symptomId), HitKind.TEST, test.id(), 1);
            }
        }
        for (Cause cause : knowledge.causes()) {
            int from = place(HitKind.CAUSE, cause.id());
            entries.get(from)
                    .findings()
                    .forEach((term, weight) -> tie(
                            symptoms,
                            from,
                            HitKind.SYMPTOM,
                            term.substring(0, term.indexOf('=')),
                            Math.min(WHOLLY, weight) / WHOLLY));
            cause.confirmedBy().forEach(id -> tie(remedies, from, HitKind.TEST, id, 1));
            cause.fixedBy().forEach(remedy -> tie(remedies, from, HitKind.FIX, remedy.fixId(), remedy.works()));
        }
    }

    private void tie(List<Tie> ties, int from, HitKind kind, String id, double strength) {
        int to = place(kind, id);
        if (to >= 0) {
            ties.add(new Tie(from, to, strength));
        }
    }

    Knowledge knowledge() {
        return knowledge;
    }

    int size() {
        return entries.size();
    }

    /** Where the entry stands, or -1 if the packs do not have it. */
    int place(HitKind kind, String id) {
        return places.getOrDefault(kind, Map.of()).getOrDefault(id, -1);
    }

    DeviceScope scope(int place) {
        return entries.get(place).scope();
    }

    Draft entry(int place) {
        return entries.get(place);
    }

    /** Causes with the symptoms that they make likelier. */
    List<Tie> symptoms() {
        return symptoms;
    }

    /** Symptoms with the tests that reveal them. */
    List<Tie> tests() {
        return tests;
    }

    /** Causes with what confirms and what cures them, by how often it does. */
    List<Tie> remedies() {
        return remedies;
    }
}
