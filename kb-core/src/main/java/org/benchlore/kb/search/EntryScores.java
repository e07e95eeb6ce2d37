package org.benchlore.kb.search;

import java.io.IOException;
import java.util.Collection;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;
import org.jspecify.annotations.Nullable;

/** Hands the score of every entry that a query matches to {@link Relevance}. */
final class EntryScores implements CollectorManager<SimpleCollector, Relevance> {
    private final Relevance relevance;

    EntryScores(Relevance relevance) {
        this.relevance = relevance;
    }

    @Override
    public SimpleCollector newCollector() {
        return new Scores(relevance);
    }

    @Override
    public Relevance reduce(Collection<SimpleCollector> collectors) {
        return relevance;
    }

    private static final class Scores extends SimpleCollector {
        private final Relevance relevance;
        private NumericDocValues places = DocValues.emptyNumeric();
        private @Nullable Scorable scorer;

        private Scores(Relevance relevance) {
            this.relevance = relevance;
        }

        @Override
        protected void doSetNextReader(LeafReaderContext leaf) throws IOException {
            places = DocValues.getNumeric(leaf.reader(), Fields.ORDINAL);
        }

        @Override
        public void setScorer(Scorable given) {
            scorer = given;
        }

        @Override
        public void collect(int doc) throws IOException {
            if (scorer != null && places.advanceExact(doc)) {
                relevance.words((int) places.longValue(), scorer.score());
            }
        }

        @Override
        public ScoreMode scoreMode() {
            return ScoreMode.COMPLETE;
        }
    }
}
