package org.benchlore.kb.search;

import java.util.List;
import java.util.Map;
import java.util.Set;

/** Fields of the index. */
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

    /** Place of an entry in {@link EntryDrafts}, by which {@link Ties} know it. */
    static final String ORDINAL = "ordinal";

    /** The cause that a case was concluded on. */
    static final String CAUSE = "cause";

    /** Ids of symptoms and causes that an entry speaks of under any of their names. */
    static final String CONCEPTS = "concepts";

    /** The same for a case: a million of them must not change how rare a concept is among the entries. */
    static final String CASE_CONCEPTS = "case-concepts";

    /** What was found in a case, by rarity; see {@link FindingWeights}. */
    static final String FINDINGS = "findings";

    /** The same, tempered by how much else was found. */
    static final String LIKENESS = "likeness";

    static final String NAME = "name";

    /** The terms of an entry's name, all in one. */
    static final String WHOLE_NAME = "whole-name";

    static final String CALLED = "called";
    static final String CODES = "codes";
    static final String ABOUT = "about";

    /** How people tell of a cause, and the words for a symptom's states: found by, but no description to show. */
    static final String SAID = "said";

    /** Names of the entries it is linked to: a fix is also found by what it cures. */
    static final String LINKED = "linked";

    /** A case's id, and its unit's tag: the words of each, all in one. */
    static final String TAG = "tag";

    static final String NOTES = "notes";
    static final String CONCLUSION = "conclusion";

    /** Everything written in an entry, each passage as often as it weighs. */
    static final String TEXT = "text";

    /** Everything written in a case. */
    static final String STORY = "story";

    /**
     * How much a word counts in each passage of an entry: as if it stood there so often, which for BM25 is the sound way to
     * weigh fields (Robertson, Zaragoza and Taylor, CIKM 2004). Set with {@code SearchMeasure}.
     */
    static final Map<String, Integer> TIMES = Map.of(NAME, 4, CALLED, 4, CODES, 4, ABOUT, 1, SAID, 1, LINKED, 1);

    /** Where the passage shown of a hit is taken from, the first at a tie. */
    static final List<String> SHOWN = List.of(ABOUT, NOTES, CALLED, CONCLUSION, CODES);

    /** Fields that list names and spellings of one thing. */
    static final Set<String> LISTS = Set.of(CALLED, CODES, LINKED);

    private Fields() {}
}
