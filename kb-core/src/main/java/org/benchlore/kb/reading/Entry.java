package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.knowledge.Device;
import org.jspecify.annotations.Nullable;

/** Everything one sequence of terms may mean. Filled while a lexicon is built, read-only afterwards. */
final class Entry {
    final List<Sense> names = new ArrayList<>(1);
    final List<Sense> words = new ArrayList<>(1);
    final List<Sense> phrases = new ArrayList<>(1);
    Device.@Nullable Code code;

    @Nullable
    Cue cue;

    /** Rank among matches of equal length: the packs' words before the language's. */
    int rank() {
        return !phrases.isEmpty() ? 0 : code != null || !names.isEmpty() ? 1 : !words.isEmpty() ? 2 : 3;
    }

    static void addOnce(List<Sense> senses, Sense sense) {
        if (!senses.contains(sense)) {
            senses.add(sense);
        }
    }
}
