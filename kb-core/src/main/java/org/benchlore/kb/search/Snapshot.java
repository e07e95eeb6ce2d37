package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.MultiReader;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.similarities.BM25Similarity;
import org.apache.lucene.search.similarities.PerFieldSimilarityWrapper;
import org.apache.lucene.search.similarities.Similarity;
import org.jspecify.annotations.Nullable;

/**
 * One consistent state of the index, counted by its users: it stays open until the last of them lets go, whatever
 * happens to the index meanwhile.
 */
final class Snapshot {
    /**
     * BM25 (Robertson and Zaragoza, Foundations and Trends in IR 3, 2009), set with {@code SearchMeasure}: a word of an
     * entry's name counts for four, so that k1 is larger; how long a case is hardly counts. Elsewhere Lucene's usual 1.2
     * and 0.75.
     */
    static final Similarity SIMILARITY = new PerFieldSimilarityWrapper() {
        private final Similarity entries = new BM25Similarity(3f, 0.75f);
        private final Similarity cases = new FewDocuments(1.8f, 0.1f);
        private final Similarity caseConcepts = new FewDocuments(1.2f, 0.75f);
        private final Similarity others = new BM25Similarity(1.2f, 0.75f);

        @Override
        public Similarity get(String field) {
            return switch (field) {
                case Fields.TEXT -> entries;
                case Fields.STORY -> cases;
                case Fields.CASE_CONCEPTS -> caseConcepts;
                default -> others;
            };
        }
    };

    /** BM25 where a bench's first cases must hold their own: in a collection of one, no word would be rare. */
    private static final class FewDocuments extends BM25Similarity {
        private static final long ENOUGH = 300;

        private FewDocuments(float k1, float b) {
            super(k1, b);
        }

        @Override
        protected float idf(long docFreq, long docCount) {
            return super.idf(docFreq, Math.max(ENOUGH, docCount));
        }
    }

    private final List<DirectoryReader> held = new ArrayList<>();
    private final AtomicInteger users = new AtomicInteger(1);
    private final IndexSearcher searcher;
    private final Reached reached;
    private final AtomicReferenceArray<@Nullable CaseColumns> columns; // by segment, made when first asked for

    /** The first user is the caller. */
    Snapshot(Shelf shelf, @Nullable Overlay overlay) throws IOException {
        List<IndexReader> parts = new ArrayList<>();
        if (overlay == null) {
            parts.add(hold(shelf.reader()));
        } else {
            for (LeafReaderContext leaf : hold(shelf.reader()).leaves()) {
                parts.add(HidingReader.of(leaf.reader(), overlay));
            }
            parts.add(hold(overlay.shelf().reader()));
        }
        // The readers are held here, and the composite is only a view of them that nothing has to close.
        searcher = new IndexSearcher(new MultiReader(parts.toArray(IndexReader[]::new), false));
        searcher.setSimilarity(SIMILARITY);
        searcher.setQueryCache(null); // the default one is shared by the whole process
        columns = new AtomicReferenceArray<>(searcher.getIndexReader().leaves().size());
        reached = (overlay == null ? shelf : overlay.shelf()).reached();
    }

    private DirectoryReader hold(DirectoryReader reader) {
        reader.incRef();
        held.add(reader);
        return reader;
    }

    IndexSearcher searcher() {
        return searcher;
    }

    IndexReader reader() {
        return searcher.getIndexReader();
    }

    CaseColumns columns(LeafReaderContext leaf) throws IOException {
        CaseColumns made = columns.get(leaf.ord);
        if (made == null) {
            made = new CaseColumns(leaf);
            columns.set(leaf.ord, made);
        }
        return made;
    }

    Reached reached() {
        return reached;
    }

    /** Becomes a user, unless the last one has gone. */
    boolean enter() {
        return users.getAndUpdate(n -> n == 0 ? 0 : n + 1) > 0;
    }

    void leave() throws IOException {
        if (users.decrementAndGet() == 0) {
            searcher.getIndexReader().close();
            for (DirectoryReader reader : held) {
                reader.decRef();
            }
        }
    }
}
