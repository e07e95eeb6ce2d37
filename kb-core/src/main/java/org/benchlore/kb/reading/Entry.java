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

    /** Set when it praises or damns whatever it is said of. */
    @Nullable
    Polarity polarity;

    /** The rank of what the packs say nothing about. */
    static final int LANGUAGE = 3;

    /** Rank among matches of equal length: the packs' words before the language's. */
    int rank() {
        return !phrases.isEmpty() ? 0 : code != null || !names.isEmpty() ? 1 : says() ? 2 : LANGUAGE;
    }

    /** Whether it can be said of a name. */
    boolean says() {
        return polarity != null || !words.isEmpty();
    }

    /** Whether {@code name} names a symptom that this phrase or name is about. */
    boolean speaksOf(Entry name) {
        List<Sense> own = phrases.isEmpty() ? names : phrases;
        return !own.isEmpty()
                && name.names.stream()
                        .anyMatch(s ->
                                s.symptom().id().equals(own.get(0).symptom().id()));
    }

    static void addOnce(List<Sense> senses, Sense sense) {
        if (!senses.contains(sense)) {
            senses.add(sense);
        }
    }
}
