package org.benchlore.kb.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanQuery;
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

/**
 * Runs queries on one snapshot. Entries are few and all of them are scored, by words, findings and {@link Relevance};
 * cases may be a million, and Lucene finds the best.
 */
final class Finder {
    /** Equal scores in order of id, then kind; Lucene's own order changes with insertion and merges. */
    private static final Sort BEST_FIRST = new Sort(
            SortField.FIELD_SCORE,
            new SortField(Fields.ID, SortField.Type.STRING),
            new SortField(Fields.KIND, SortField.Type.STRING));

    private static final int PRECEDENTS = 50; // cases that speak for the causes behind them

    private final Snapshot snapshot;
    private final Wordbook wordbook;

    Finder(Snapshot snapshot, Wordbook wordbook) {
        this.snapshot = snapshot;
        this.wordbook = wordbook;
    }

    /** What was found in the index, one part of it after the other. */
    private static final class Catch {
        final List<Hits.Found> found = new ArrayList<>();
        final Map<HitKind, Long> kinds = new TreeMap<>();
        final Map<String, Long> scopes = new TreeMap<>();
        final Map<String, Long> outcomes = new TreeMap<>();

        void add(TopFieldDocs docs, Map<String, Map<String, Long>> counts) {
            for (ScoreDoc doc : docs.scoreDocs) {
                Object[] fields = ((FieldDoc) doc).fields;
                found.add(new Hits.Found((Float) fields[0], Hits.text(fields[1]), Hits.text(fields[2]), doc.doc));
            }
            counts.getOrDefault(Fields.KIND, Map.of())
                    .forEach((kind, n) -> kinds.merge(HitKind.parse(kind), n, Long::sum));
            counts.getOrDefault(Fields.SCOPE, Map.of()).forEach((scope, n) -> scopes.merge(scope, n, Long::sum));
            counts.getOrDefault(Fields.OUTCOME, Map.of()).forEach((end, n) -> outcomes.merge(end, n, Long::sum));
        }

        void add(Draft entry, double score) {
            found.add(new Hits.Found((float) score, entry.id(), entry.kind().id(), Hits.Found.UNKNOWN));
            kinds.merge(entry.kind(), 1L, Long::sum);
            scopes.merge(entry.scope().toString(), 1L, Long::sum);
        }
    }

    SearchResult search(SearchQuery query) throws IOException {
        String typed = Snippets.cut(query.words(), 0, SearchQuery.MAX_WORDS_LENGTH);
        String mended = wordbook.speller().mend(typed, this::written).orElse(null);
        List<Word> words = wordbook.words(mended == null ? typed : mended);
        Catch caught = new Catch();
        if (query.words().isBlank() && query.findings().isEmpty()) {
            look(Queries.filtered(Queries.everything(), query), query, caught);
        } else {
            search(query, words, caught);
        }
        caught.found.sort(Hits.Found.BEST_FIRST);
        List<Hits.Found> page = caught.found.subList(
                Math.min(query.offset(), caught.found.size()),
                Math.min(query.offset() + query.limit(), caught.found.size()));
        return new SearchResult(
                new Hits(snapshot, wordbook, words).of(page),
                caught.kinds.values().stream().mapToLong(n -> n).sum(),
                new TreeMap<>(caught.kinds),
                keyed(caught.scopes, DeviceScope::parse, SearchResult.MAX_SCOPES),
                keyed(caught.outcomes, Outcome::parse, Integer.MAX_VALUE),
                mended,
                snapshot.reached());
    }

    private void search(SearchQuery query, List<Word> words, Catch caught) throws IOException {
        Collection<String> concepts =
                wordbook.concepts().in(words, query.scope()).keySet();
        Relevance relevance = new Relevance(wordbook.ties(), query.scope());
        snapshot.searcher().search(Queries.entries(words, concepts), new EntryScores(relevance));
        concepts.forEach(relevance::named);
        String asked = EntryLink.idIn(query.words());
        relevance.asked(asked);
        relevance.findings(query.findings());
        BooleanQuery.Builder cases = Queries.cases(words, concepts, query.findings());
        Queries.addAsked(cases, asked);
        relevance.spread(precedents(Queries.within(cases.build(), query.scope()).build()));
        if (query.outcomes().isEmpty()) {
            for (int place : relevance.found()) {
                Draft entry = wordbook.ties().entry(place);
                if (query.kinds().isEmpty() || query.kinds().contains(entry.kind())) {
                    caught.add(entry, relevance.of(place) + Queries.nearness(query.scope(), entry.scope()));
                }
            }
        }
        if (query.kinds().isEmpty() || query.kinds().contains(HitKind.CASE)) {
            Queries.addCauses(cases, relevance.causes());
            look(Queries.filtered(cases.build(), query), query, caught);
        }
    }

    /** The best of what a query matches, and the counts of all of it. */
    private void look(Query matches, SearchQuery query, Catch caught) throws IOException {
        TopFieldCollectorManager top =
                new TopFieldCollectorManager(BEST_FIRST, query.offset() + query.limit(), null, Integer.MAX_VALUE);
        FacetCounter facets = new FacetCounter(Fields.KIND, Fields.SCOPE, Fields.OUTCOME);
        Object[] both = snapshot.searcher().search(matches, new MultiCollectorManager(top, facets));
        @SuppressWarnings("unchecked") // what the second manager reduces to
        Map<String, Map<String, Long>> counts = (Map<String, Map<String, Long>>) both[1];
        caught.add((TopFieldDocs) both[0], counts);
    }

    /** The concluded ones among the cases that fit best. */
    private List<Relevance.Precedent> precedents(Query cases) throws IOException {
        TopFieldDocs best = snapshot.searcher()
                .search(cases, new TopFieldCollectorManager(BEST_FIRST, PRECEDENTS, null, PRECEDENTS));
        List<LeafReaderContext> leaves = snapshot.reader().leaves();
        List<Relevance.Precedent> precedents = new ArrayList<>();
        for (ScoreDoc doc : best.scoreDocs) {
            LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(doc.doc, leaves));
            SortedDocValues causes = leaf.reader().getSortedDocValues(Fields.CAUSE);
            String cause = causes != null && causes.advanceExact(doc.doc - leaf.docBase)
                    ? causes.lookupOrd(causes.ordValue()).utf8ToString()
                    : "";
            precedents.add(new Relevance.Precedent(cause, (Float) ((FieldDoc) doc).fields[0]));
        }
        return precedents;
    }

    List<SearchHit> best(Query query, int limit, List<Word> words) throws IOException {
        Catch caught = new Catch();
        caught.add(
                snapshot.searcher()
                        .search(query, new TopFieldCollectorManager(BEST_FIRST, limit, null, Integer.MAX_VALUE)),
                Map.of());
        return new Hits(snapshot, wordbook, words).of(caught.found);
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

    private static <K extends Comparable<K>> SortedMap<K, Long> keyed(
            Map<String, Long> counts, Function<String, K> key, int most) {
        SortedMap<K, Long> keyed = new TreeMap<>();
        counts.entrySet().stream()
                .sorted(Comparator.comparing((Map.Entry<String, Long> e) -> -e.getValue())
                        .thenComparing(Map.Entry::getKey))
                .limit(most)
                .forEach(e -> keyed.put(key.apply(e.getKey()), e.getValue()));
        return keyed;
    }
}
