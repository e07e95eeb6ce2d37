package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.StoredFields;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.util.BytesRef;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.jspecify.annotations.Nullable;

/** Makes hits, with the passage that fits the words best, of what was found. */
final class Hits {
    private static final List<String> SNIPPETS_FROM =
            List.of(Fields.ABOUT, Fields.NOTES, Fields.CALLED, Fields.CONCLUSION, Fields.CODES);

    /**
     * Something found, before it is looked up.
     *
     * @param doc its number in the snapshot, or {@link #UNKNOWN}
     */
    record Found(float score, String id, String kind, int doc) {
        static final int UNKNOWN = -1;

        /** Equal scores in order of id, then kind. */
        static final Comparator<Found> BEST_FIRST = Comparator.comparing((Found found) -> -found.score)
                .thenComparing(Found::id)
                .thenComparing(Found::kind);
    }

    private final Snapshot snapshot;
    private final Snippets snippets;

    Hits(Snapshot snapshot, Wordbook wordbook, List<Word> words) {
        this.snapshot = snapshot;
        Set<String> terms = new HashSet<>();
        words.forEach(word -> terms.add(word.term()));
        this.snippets = new Snippets(wordbook.analyzer(), terms);
    }

    List<SearchHit> of(List<Found> page) throws IOException {
        StoredFields stored = snapshot.searcher().storedFields();
        List<SearchHit> hits = new ArrayList<>();
        for (Found found : page) {
            int doc = found.doc == Found.UNKNOWN ? entry(found) : found.doc;
            hits.add(hit(stored.document(doc), found.score));
        }
        return hits;
    }

    private int entry(Found found) throws IOException {
        TermQuery key = new TermQuery(Documents.key(HitKind.parse(found.kind), found.id));
        return snapshot.searcher().search(key, 1).scoreDocs[0].doc;
    }

    private SearchHit hit(Document document, float score) {
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

    static String text(Object value) {
        return ((BytesRef) value).utf8ToString();
    }
}
