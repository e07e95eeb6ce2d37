package org.benchlore.kb.knowledge;

import java.util.Map;

/**
 * A pack's opinion of how often a cause shows each state of one symptom.
 *
 * @param symptomId the symptom
 * @param states every state of the symptom with its probability, each in (0,1), summing to 1
 * @param cases how many cases the opinion is worth, 0.5 to 1000
 * @param from origin of the numbers
 */
public record Link(String symptomId, Map<String, Double> states, double cases, Provenance from) {
    public Link {
        states = Map.copyOf(states);
    }
}
