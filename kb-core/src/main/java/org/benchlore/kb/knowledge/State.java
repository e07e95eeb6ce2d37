package org.benchlore.kb.knowledge;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One of the exclusive states of a symptom.
 *
 * @param id kebab-case, unique within the symptom
 * @param name how it reads in a sentence, "in tolerance"
 * @param normal whether a sound unit shows it; exactly one state of a symptom is normal
 * @param usual background probability in (0,1): how often a unit on the bench shows it when its cause is not known
 * @param range for quantities, the values that mean this state; else null
 * @param words said beside the symptom's name to mean this state
 * @param phrases whole phrases that mean it without naming the symptom
 * @param opposite the state that a negated mention means, or null for "any other"
 */
public record State(
        String id,
        String name,
        boolean normal,
        double usual,
        @Nullable Range range,
        List<String> words,
        List<String> phrases,
        @Nullable String opposite) {
    public State {
        words = List.copyOf(words);
        phrases = List.copyOf(phrases);
        if (!(usual > 0 && usual < 1)) {
            throw new IllegalArgumentException("state '" + id + "': usual " + usual + " is not between 0 and 1");
        }
    }
}
