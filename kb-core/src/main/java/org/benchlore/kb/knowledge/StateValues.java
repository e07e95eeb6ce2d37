package org.benchlore.kb.knowledge;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/** Reads what is written per state, checking that each state exists. */
final class StateValues {
    private final Set<String> states;
    private final Values values;
    private final Problems problems;

    StateValues(StateList list, Values values, Problems problems) {
        this(list.states().keySet(), values, problems);
    }

    StateValues(Symptom symptom, Values values, Problems problems) {
        this(ids(symptom), values, problems);
    }

    private StateValues(Set<String> states, Values values, Problems problems) {
        this.states = states;
        this.values = values;
        this.problems = problems;
    }

    private static Set<String> ids(Symptom symptom) {
        Set<String> ids = new LinkedHashSet<>();
        symptom.states().forEach(state -> ids.add(state.id()));
        return ids;
    }

    /** Probabilities by state; a state that does not exist, or whose number is bad, is reported and left out. */
    Map<String, Double> read(Map<String, YamlNode.Field> fields, Object what) {
        Map<String, Double> shares = new LinkedHashMap<>();
        fields.forEach((state, field) -> {
            int before = problems.errors();
            double share = values.probability(field.value(), Subject.of(what, ": ", Subject.quoted(state)));
            if (known(state, field.key(), what) && problems.errors() == before) {
                shares.put(state, share);
            }
        });
        return shares;
    }

    /** Whether a state exists; reported if not, unless its states could not be read at all. */
    boolean known(String state, Place place, Object what) {
        if (states.isEmpty() || state.isEmpty()) {
            return false;
        }
        if (!states.contains(state)) {
            problems.error(
                    place,
                    what + ": there is no state " + Problems.quote(state),
                    Nearest.remedy(state, states, "choose from " + String.join(", ", states)));
            return false;
        }
        return true;
    }
}
