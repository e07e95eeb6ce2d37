package org.benchlore.kb.search;

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
    static final String NOTES = "notes";
    static final String CONCLUSION = "conclusion";

    /**
     * Text fields and their boosts. Cases have fields of their own, so that a million of them do not change how rare a
     * word is among the entries.
     */
    static final Map<String, Float> TEXTS = new LinkedHashMap<>();

    static {
        TEXTS.put(CODES, 4f);
        TEXTS.put(NAME, 3f);
        TEXTS.put(CALLED, 2.5f);
        TEXTS.put(ABOUT, 1f);
        TEXTS.put(CONCLUSION, 1.2f);
        TEXTS.put(NOTES, 1.2f);
    }

    private Fields() {}
}
