/**
 * Finding things again: knowledge entries and cases in one index, suggestions while typing, "did you mean", and cases
 * like this one. Read {@link org.benchlore.kb.search.SearchIndex} first.
 *
 * <pre>{@code
 * try (SearchIndex index = SearchIndex.open(home.resolve("index"), knowledge)) {
 *   SearchResult result = index.search(SearchQuery.of("-12V missing").in(DeviceScope.parse("disc-player")));
 *   result.hits().forEach(hit -> show(hit.uri(), hit.title(), hit.snippet()));
 * }
 * }</pre>
 */
@NullMarked
package org.benchlore.kb.search;

import org.jspecify.annotations.NullMarked;
