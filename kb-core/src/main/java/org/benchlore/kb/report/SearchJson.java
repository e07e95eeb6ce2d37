package org.benchlore.kb.report;

import java.util.List;
import org.benchlore.kb.search.SearchHit;
import org.benchlore.kb.search.SearchResult;
import org.benchlore.kb.search.Suggestion;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What a search found and what may be typed, as JSON. */
final class SearchJson {
    private SearchJson() {}

    static ObjectNode search(SearchResult result) {
        ObjectNode root = hits(result.hits(), result.total());
        ObjectNode facets = root.putObject("facets");
        ObjectNode kinds = facets.putObject("kinds");
        result.kinds().forEach((kind, n) -> kinds.put(kind.id(), n));
        ObjectNode scopes = facets.putObject("scopes");
        result.scopes().forEach((scope, n) -> scopes.put(scope.toString(), n));
        ObjectNode outcomes = facets.putObject("outcomes");
        result.outcomes().forEach((outcome, n) -> outcomes.put(outcome.id(), n));
        result.didYouMean().ifPresent(words -> root.put("didYouMean", words));
        return root;
    }

    static ObjectNode similar(List<SearchHit> hits) {
        return hits(hits, hits.size());
    }

    private static ObjectNode hits(List<SearchHit> found, long total) {
        ObjectNode root = JsonNodes.root("search");
        ArrayNode hits = root.putArray("hits");
        for (SearchHit hit : found) {
            ObjectNode node = hits.addObject();
            node.put("kind", hit.kind().id());
            node.put("id", hit.id());
            node.put("title", hit.title());
            node.put("score", hit.score());
            node.put("snippet", hit.snippet().text());
            ArrayNode matches = node.putArray("matches");
            hit.snippet()
                    .matches()
                    .forEach(m -> matches.addArray().add(m.start()).add(m.end()));
            node.put("scope", hit.scope().toString());
            node.put("uri", hit.uri());
            hit.outcome().ifPresent(outcome -> node.put("outcome", outcome.id()));
        }
        root.put("total", total);
        return root;
    }

    static ObjectNode suggestions(List<Suggestion> suggestions) {
        ObjectNode root = JsonNodes.root("suggestions");
        ArrayNode list = root.putArray("suggestions");
        for (Suggestion suggestion : suggestions) {
            ObjectNode node = list.addObject();
            node.put("text", suggestion.text());
            node.put("kind", suggestion.kind().id());
            node.put("id", suggestion.id());
            node.put("uri", suggestion.uri());
        }
        return root;
    }
}
