package org.benchlore.kb.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.FieldDoc;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import org.apache.lucene.search.TopFieldCollectorManager;
import org.apache.lucene.util.BytesRef;

/**
 * Runs queries on one snapshot. Entries are few and all of them are scored, by words, findings and {@link Relevance};
 * cases may be a million, and Lucene scores them, once.
 */
final class Finder {
    private static final Sort BEST_FIRST =
            new Sort(SortField.FIELD_SCORE, new SortField(Fields.ID, SortField.Type.STRING));

    private static final int PRECEDENTS = 50; // cases that speak for the causes behind them

    private final Snapshot snapshot;
    private final Wordbook wordbook;

    Finder(Snapshot snapshot, Wordbook wordbook) {
        this.snapshot = snapshot;
        this.wordbook = wordbook;
    }

    SearchResult search(SearchQuery query) throws IOException {
        String typed = Snippets.cut(query.words(), 0, SearchQuery.MAX_WORDS_LENGTH);
        Optional<String> mended = wordbook.speller().mend(typed, this::written);
        List<Word> words = wordbook.words(mended.orElse(typed));
        Catch caught = new Catch();
        if (query.words().isBlank() && query.findings().isEmpty()) {
            list(query, caught);
        } else {
            search(query, words, caught);
        }
        return new SearchResult(
                new Hits(snapshot, wordbook, words).of(caught.page(query.offset(), query.limit())),
                caught.total(),
                new TreeMap<>(caught.kinds()),
                mostFrequent(caught.scopes(), SearchResult.MAX_SCOPES),
                new TreeMap<>(caught.outcomes()),
                mended,
                snapshot.reached());
    }

    private void search(SearchQuery query, List<Word> words, Catch caught) throws IOException {
        Collection<String> concepts =
                wordbook.concepts().in(words, query.scope()).keySet();
        Relevance relevance = new Relevance(wordbook.ties(), query.scope());
        Coverage coverage =
                Coverage.of(snapshot, Queries.distinct(words), wordbook.ties().size());
        snapshot.searcher().search(Queries.entries(words), new EntryScores(relevance, coverage::of));
        snapshot.searcher().search(Queries.speakingOf(concepts), new EntryScores(relevance, place -> 1));
        concepts.forEach(relevance::named);
        String asked = EntryLink.idIn(query.words());
        relevance.asked(asked);
        relevance.findings(query.findings());
        BooleanQuery.Builder cases = Queries.cases(words, concepts, query.findings());
        Queries.addAsked(cases, asked, words);
        CaseScores scores = CaseScores.of(snapshot, Queries.within(cases.build(), query.scope()), PRECEDENTS);
        relevance.spread(scores.precedents());
        for (int place : relevance.found()) {
            add(place, relevance.of(place), query, caught);
        }
        if (wants(HitKind.CASE, query)) {
            scores.gain(relevance.causes());
            scores.matching(query, caught);
        }
    }

    /** All that the filters let through. */
    private void list(SearchQuery query, Catch caught) throws IOException {
        Ties ties = wordbook.ties();
        for (int place = 0; place < ties.size(); place++) {
            if (ties.scope(place).relatedTo(query.scope())) {
                add(place, 0, query, caught);
            }
        }
        if (wants(HitKind.CASE, query)) {
            CaseScores.none(snapshot).matching(query, caught);
        }
    }

    private void add(int place, double score, SearchQuery query, Catch caught) {
        Draft entry = wordbook.ties().entry(place);
        if (query.outcomes().isEmpty() && wants(entry.kind(), query)) {
            caught.entry(entry, place, score + Queries.nearness(query.scope(), entry.scope()));
        }
    }

    private static boolean wants(HitKind kind, SearchQuery query) {
        return query.kinds().isEmpty() || query.kinds().contains(kind);
    }

    /** The best cases by the query's own score. */
    List<SearchHit> best(Query query, int limit, List<Word> words) throws IOException {
        List<Found> found = new ArrayList<>();
        for (ScoreDoc doc : snapshot.searcher()
                .search(query, new TopFieldCollectorManager(BEST_FIRST, limit, null, Integer.MAX_VALUE))
                .scoreDocs) {
            Object[] fields = ((FieldDoc) doc).fields;
            found.add(new Found((Float) fields[0], ((BytesRef) fields[1]).utf8ToString(), HitKind.CASE, doc.doc));
        }
        return new Hits(snapshot, wordbook, words).of(found);
    }

    /** Whether a term stands in any text of the index. */
    boolean written(String term) {
        try {
            return snapshot.reader().docFreq(new Term(Fields.TEXT, term)) > 0
                    || snapshot.reader().docFreq(new Term(Fields.STORY, term)) > 0;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static <K extends Comparable<K>> SortedMap<K, Long> mostFrequent(Map<K, Long> counts, int most) {
        SortedMap<K, Long> frequent = new TreeMap<>();
        counts.entrySet().stream()
                .sorted(Map.Entry.<K, Long>comparingByValue().reversed().thenComparing(Map.Entry.comparingByKey()))
                .limit(most)
                .forEach(e -> frequent.put(e.getKey(), e.getValue()));
        return frequent;
    }
}
