package org.benchlore.kb.search;

import java.io.IOException;
import java.util.Collection;
import java.util.function.IntToDoubleFunction;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;
import org.jspecify.annotations.Nullable;

/** Hands the score of every entry that a query matches to {@link Relevance}, less where little of what was asked is there. */
final class EntryScores implements CollectorManager<SimpleCollector, Relevance> {
    private final Relevance relevance;
    private final IntToDoubleFunction coverage; // by place

    EntryScores(Relevance relevance, IntToDoubleFunction coverage) {
        this.relevance = relevance;
        this.coverage = coverage;
    }

    @Override
    public SimpleCollector newCollector() {
        return new Scores();
    }

    @Override
    public Relevance reduce(Collection<SimpleCollector> collectors) {
        return relevance;
    }

    private final class Scores extends SimpleCollector {
        private NumericDocValues places = DocValues.emptyNumeric();
        private @Nullable Scorable scorer;

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
                int place = (int) places.longValue();
                relevance.add(place, scorer.score() * Math.sqrt(coverage.applyAsDouble(place)));
            }
        }

        @Override
        public ScoreMode scoreMode() {
            return ScoreMode.COMPLETE;
        }
    }
}
