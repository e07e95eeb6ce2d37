package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.knowledge.Symptom;

/** What packs call too little and too much, for symptoms whose states have no limits of their own. */
final class Levels {
    static final List<String> NONE = List.of("absent", "none", "missing");
    static final List<String> LOW = List.of("low", "too-low", "weak");
    static final List<String> HIGH = List.of("high", "too-high");

    private Levels() {}

    /** The first of some states that a symptom has, as a number; -1 for none. */
    static int of(Symptom symptom, List<String> states) {
        return states.stream()
                .mapToInt(symptom::indexOf)
                .filter(state -> state >= 0)
                .findFirst()
                .orElse(-1);
    }
}
