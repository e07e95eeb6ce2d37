package org.benchlore.kb.search;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;

/**
 * Answer to a {@link SearchQuery}, from one consistent state of the index.
 *
 * @param hits this page, best first, equal scores in order of id, then kind
 * @param total everything found, over all pages
 * @param kinds how many of each kind were found; kinds without a hit are left out
 * @param scopes how many belong to each scope: the {@value #MAX_SCOPES} most frequent
 * @param outcomes how many cases ended in each way
 * @param didYouMean the words with likely slips of the pen mended; empty where none is suspected
 * @param reached the events that the index had taken in
 */
public record SearchResult(
        List<SearchHit> hits,
        long total,
        SortedMap<HitKind, Long> kinds,
        SortedMap<DeviceScope, Long> scopes,
        SortedMap<Outcome, Long> outcomes,
        Optional<String> didYouMean,
        Reached reached) {
    /** Scopes counted at most. */
    public static final int MAX_SCOPES = 100;

    public SearchResult {
        hits = List.copyOf(hits);
        kinds = copy(kinds);
        scopes = copy(scopes);
        outcomes = copy(outcomes);
    }

    private static <K extends Comparable<K>> SortedMap<K, Long> copy(Map<K, Long> given) {
        return Collections.unmodifiableSortedMap(new TreeMap<>(given));
    }
}
