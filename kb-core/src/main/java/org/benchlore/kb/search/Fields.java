package org.benchlore.kb.search;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Fields of the index, and how much a match in each counts. */
final class Fields {
    /** Kind and id together: what one document is. */
    static final String KEY = "key";

    static final String ID = "id";
    static final String KIND = "kind";
    static final String TITLE = "title";
    static final String SCOPE = "scope";

    /** The scope and every scope around it. */
    static final String WITHIN = "within";

    static final String OUTCOME = "outcome";

    /** Ids of symptoms and causes that a text speaks of under any of their names. */
    static final String CONCEPTS = "concepts";

    /** Weights of findings; see {@link FindingWeights}. */
    static final String FINDINGS = "findings";

    /** The same for cases, tempered by how much else was found. */
    static final String LIKENESS = "likeness";

    static final String NAME = "name";
    static final String CALLED = "called";
    static final String CODES = "codes";
    static final String ABOUT = "about";

    /** Names of the entries it is linked to: a fix is also found by what it cures. */
    static final String LINKED = "linked";

    static final String NOTES = "notes";
    static final String CONCLUSION = "conclusion";

    /**
     * Text fields and their boosts, set with {@code SearchMeasure}. A word that matches in a short field such as the name
     * already scores more there, since BM25 divides by length; that is why the boosts are so even. Cases have fields of
     * their own, so that a million of them do not change how rare a word is among the entries.
     */
    static final Map<String, Float> TEXTS;

    static {
        Map<String, Float> texts = new LinkedHashMap<>();
        texts.put(CODES, 2f);
        texts.put(NAME, 1f);
        texts.put(CALLED, 0.8f);
        texts.put(ABOUT, 1f);
        texts.put(LINKED, 1f);
        texts.put(CONCLUSION, 1f);
        texts.put(NOTES, 1f);
        TEXTS = Collections.unmodifiableMap(texts);
    }

    private Fields() {}
}
