package org.benchlore.kb.search;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.jspecify.annotations.Nullable;

/**
 * What will be indexed of one entry or case, before Lucene comes in.
 *
 * @param kind what it is
 * @param id its id
 * @param title what a hit is headed with
 * @param scope where it belongs
 * @param outcome how the case ended, or null
 * @param causeId what the case was concluded on, or null
 * @param texts passages by field, in a fixed order
 * @param findings see {@link FindingWeights}
 */
record Draft(
        HitKind kind,
        String id,
        String title,
        DeviceScope scope,
        @Nullable Outcome outcome,
        @Nullable String causeId,
        Map<String, List<String>> texts,
        SortedMap<String, Double> findings) {
    Draft {
        Map<String, List<String>> copy = new LinkedHashMap<>();
        texts.forEach((field, passages) ->
                copy.put(field, passages.stream().filter(p -> !p.isBlank()).toList()));
        texts = Collections.unmodifiableMap(copy);
    }

    String key() {
        return key(kind, id);
    }

    static String key(HitKind kind, String id) {
        return kind.id() + "/" + id;
    }
}
