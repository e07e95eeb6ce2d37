package org.benchlore.kb.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.StoredFields;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.FieldDoc;
import org.apache.lucene.search.MultiCollectorManager;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import org.apache.lucene.search.TopFieldCollectorManager;
import org.apache.lucene.search.TopFieldDocs;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.jspecify.annotations.Nullable;

/** Runs queries on one snapshot and makes hits of what they find. */
final class Finder {
    /** Equal scores in order of id, then kind; Lucene's own order changes with insertion and merges. */
    private static final Sort BEST_FIRST = new Sort(
            SortField.FIELD_SCORE,
            new SortField(Fields.ID, SortField.Type.STRING),
            new SortField(Fields.KIND, SortField.Type.STRING));

    private static final List<String> SNIPPETS_FROM =
            List.of(Fields.ABOUT, Fields.NOTES, Fields.CALLED, Fields.CONCLUSION, Fields.CODES);

    private final Snapshot snapshot;
    private final Wordbook wordbook;

    Finder(Snapshot snapshot, Wordbook wordbook) {
        this.snapshot = snapshot;
        this.wordbook = wordbook;
    }

    SearchResult search(SearchQuery query) throws IOException {
        String typed = Snippets.cut(query.words(), 0, SearchQuery.MAX_WORDS_LENGTH);
        String mended = wordbook.speller().mend(typed, this::written).orElse(null);
        List<Word> words = wordbook.words(mended == null ? typed : mended);
        Query scored = query.words().isBlank() && query.findings().isEmpty()
                ? Queries.everything()
                : Queries.scored(
                        words, wordbook.concepts().in(words, query.scope()).keySet(), query.findings());
        TopFieldCollectorManager top =
                new TopFieldCollectorManager(BEST_FIRST, query.offset() + query.limit(), null, Integer.MAX_VALUE);
        FacetCounter facets = new FacetCounter(Fields.KIND, Fields.SCOPE, Fields.OUTCOME);
        Object[] found =
                snapshot.searcher().search(Queries.filtered(scored, query), new MultiCollectorManager(top, facets));
        TopFieldDocs docs = (TopFieldDocs) found[0];
        @SuppressWarnings("unchecked") // what the second manager reduces to
        Map<String, Map<String, Long>> counts = (Map<String, Map<String, Long>>) found[1];
        return new SearchResult(
                hits(docs, query.offset(), words),
                docs.totalHits.value,
                keyed(counts.get(Fields.KIND), HitKind::parse, Integer.MAX_VALUE),
                keyed(counts.get(Fields.SCOPE), DeviceScope::parse, SearchResult.MAX_SCOPES),
                keyed(counts.get(Fields.OUTCOME), Outcome::parse, Integer.MAX_VALUE),
                mended,
                snapshot.reached());
    }

    List<SearchHit> best(Query query, int limit, List<Word> words) throws IOException {
        TopFieldCollectorManager top = new TopFieldCollectorManager(BEST_FIRST, limit, null, Integer.MAX_VALUE);
        return hits(snapshot.searcher().search(query, top), 0, words);
    }

    /** Whether a term stands in any text of the index. */
    boolean written(String term) {
        try {
            for (String field : Fields.TEXTS.keySet()) {
                if (snapshot.reader().docFreq(new Term(field, term)) > 0) {
                    return true;
                }
            }
            return false;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<SearchHit> hits(TopFieldDocs docs, int offset, List<Word> words) throws IOException {
        Set<String> terms = new HashSet<>();
        words.forEach(word -> terms.add(word.term()));
        Snippets snippets = new Snippets(wordbook.analyzer(), terms);
        StoredFields stored = snapshot.searcher().storedFields();
        List<SearchHit> hits = new ArrayList<>();
        for (int i = offset; i < docs.scoreDocs.length; i++) {
            ScoreDoc doc = docs.scoreDocs[i];
            hits.add(hit(stored.document(doc.doc), ((Float) ((FieldDoc) doc).fields[0]), snippets));
        }
        return hits;
    }

    private static SearchHit hit(Document document, float score, Snippets snippets) {
        List<String> passages = new ArrayList<>();
        for (String field : SNIPPETS_FROM) {
            passages.addAll(Arrays.asList(document.getValues(field)));
        }
        @Nullable String outcome = document.get(Fields.OUTCOME);
        return new SearchHit(
                HitKind.parse(document.get(Fields.KIND)),
                document.get(Fields.ID),
                document.get(Fields.TITLE),
                DeviceScope.parse(document.get(Fields.SCOPE)),
                outcome == null ? null : Outcome.parse(outcome),
                score,
                snippets.of(passages));
    }

    private static <K extends Comparable<K>> SortedMap<K, Long> keyed(
            @Nullable Map<String, Long> counts, Function<String, K> key, int most) {
        SortedMap<K, Long> keyed = new TreeMap<>();
        if (counts != null) {
            counts.entrySet().stream()
                    .sorted(Comparator.comparing((Map.Entry<String, Long> e) -> -e.getValue())
                            .thenComparing(Map.Entry::getKey))
                    .limit(most)
                    .forEach(e -> keyed.put(key.apply(e.getKey()), e.getValue()));
        }
        return keyed;
    }
}
