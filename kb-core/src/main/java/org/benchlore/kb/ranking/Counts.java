package org.benchlore.kb.ranking;

import java.util.HashMap;
import java.util.Map;
import org.benchlore.kb.knowledge.DeviceScope;
import org.jspecify.annotations.Nullable;

/**
 * What was learnt of one cause: per device scope, how many cases lie within it and how often each symptom showed each
 * state, in millionths of a case. Whole numbers, so that any order of adding and taking back ends at the same place.
 * Never changed once a model holds it; {@link #copy} first.
 */
final class Counts {
    static final Counts NONE = new Counts(0, new HashMap<>());

    /** Cases that ended with this cause, not weighted; those that only had a share in it are not among them. */
    long cases;

    private final Map<DeviceScope, Node> nodes;

    private Counts(long cases, Map<DeviceScope, Node> nodes) {
        this.cases = cases;
        this.nodes = nodes;
    }

    private static final class Node {
        long weight;
        final Map<Integer, long[]> states = new HashMap<>();

        Node copy() {
            Node copy = new Node();
            copy.weight = weight;
            states.forEach((s, n) -> copy.states.put(s, n.clone()));
            return copy;
        }
    }

    Counts copy() {
        Map<DeviceScope, Node> copied = new HashMap<>();
        nodes.forEach((scope, node) -> copied.put(scope, node.copy()));
        return new Counts(cases, copied);
    }

    boolean isEmpty() {
        return cases == 0 && nodes.isEmpty();
    }

    /**
     * Adds one case, or takes it back.
     *
     * @param sign 1 or -1
     * @param concluded whether the case ended with this cause
     * @param states per finding, the share of each state, summing to 1
     */
    void add(int sign, boolean concluded, DeviceScope scope, long weight, int[] symptoms, double[][] states) {
        cases += concluded ? sign : 0;
        for (DeviceScope within : scope.lineage()) {
            Node node = nodes.computeIfAbsent(within, k -> new Node());
            node.weight += sign * weight;
            for (int i = 0; i < symptoms.length; i++) {
                int width = states[i].length;
                long[] n = node.states.computeIfAbsent(symptoms[i], k -> new long[width]);
                for (int x = 0; x < n.length; x++) {
                    n[x] += sign * Math.round(weight * states[i][x]);
                }
            }
            if (node.weight == 0) {
                nodes.remove(within);
            }
        }
    }

    /** Cases within a scope, in cases. */
    double weight(DeviceScope scope) {
        Node node = nodes.get(scope);
        return node == null ? 0 : node.weight / (double) Lesson.WHOLE;
    }

    /** Millionths of a case per state within a scope, or null when nothing was seen. Not to be changed. */
    long @Nullable [] states(DeviceScope scope, int symptom) {
        Node node = nodes.get(scope);
        return node == null ? null : node.states.get(symptom);
    }
}
