package org.benchlore.kb.reading;

import java.util.HashMap;
import java.util.Map;

/** Numbers for the terms of a lexicon, 1 and up, since comparing numbers is cheaper than comparing words. */
final class Terms {
    /** What every term is that the packs do not use. */
    static final int UNKNOWN = 0;

    private final Map<String, Integer> numbers = new HashMap<>();

    /** The number of a term, given out when new. */
    int number(String term) {
        return numbers.computeIfAbsent(term, t -> numbers.size() + 1);
    }

    int of(String term) {
        return numbers.getOrDefault(term, UNKNOWN);
    }
}
