package org.benchlore.cli;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.search.HitKind;
import org.benchlore.kb.search.SearchHit;
import org.benchlore.kb.search.SearchResult;
import org.benchlore.kb.search.Suggestion;

/** What a search found, as plain text: hits, then what they could be narrowed down to. */
final class SearchPage {
    private static final int KIND_WIDTH = 8;
    private static final int MOST_VALUES = 6; // two lines of a terminal

    private final Page page;

    SearchPage(Page page) {
        this.page = page;
    }

    void result(SearchResult result) {
        hits(result.hits());
        if (result.hits().isEmpty()) {
            return;
        }
        facet(result.total() + " found", "", result.kinds(), HitKind::id);
        if (result.scopes().size() > 1) {
            facet("by device", " (--device)", result.scopes(), DeviceScope::toString);
        }
        if (!result.outcomes().isEmpty()) {
            facet("by outcome", " (--outcome)", result.outcomes(), Outcome::id);
        }
    }

    void hits(List<SearchHit> hits) {
        for (SearchHit hit : hits) {
            page.hanging(
                    lead(hit.kind()),
                    KIND_WIDTH,
                    hit.title() + " [" + hit.id() + "]"
                            + hit.outcome().map(o -> ", " + o.id()).orElse(""));
            if (!hit.snippet().text().isBlank()) {
                page.marked(KIND_WIDTH, hit.snippet());
            }
        }
    }

    void suggestions(List<Suggestion> suggestions) {
        suggestions.forEach(s -> page.hanging(lead(s.kind()), KIND_WIDTH, s.text() + " [" + s.id() + "]"));
    }

    /** The most frequent values first. */
    private <K extends Comparable<K>> void facet(
            String name, String how, Map<K, Long> counts, Function<K, String> shown) {
        String listed = counts.entrySet().stream()
                .sorted(Map.Entry.<K, Long>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(MOST_VALUES)
                .map(e -> shown.apply(e.getKey()) + " " + e.getValue())
                .collect(Collectors.joining(", "));
        page.hanging(0, 2, name + how + ": " + listed + (counts.size() > MOST_VALUES ? ", …" : ""));
    }

    private static String lead(HitKind kind) {
        return String.format(Locale.ROOT, "%-" + KIND_WIDTH + "s", kind.id());
    }
}
