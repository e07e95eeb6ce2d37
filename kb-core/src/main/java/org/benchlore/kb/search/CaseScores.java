package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.PostingsEnum;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;
import org.apache.lucene.util.Bits;
import org.apache.lucene.util.FixedBitSet;
import org.benchlore.kb.knowledge.DeviceScope;
import org.jspecify.annotations.Nullable;

/**
 * How well every case fits the words and findings of one query. Lucene scores them once; what they gain by their cause and
 * by a near scope is added, and all of them are counted, in one run over columns, where a second query would have to score
 * them again.
 */
final class CaseScores {
    private static final float UNWANTED = -1;

    private final Snapshot snapshot;
    private final float[] scores; // by number of the document; 0 where nothing fits
    private final FixedBitSet fitting; // those that score, so that no step is spent on the others
    private final Shortlist fittest;

    private CaseScores(Snapshot snapshot, int most) {
        this.snapshot = snapshot;
        this.fittest = new Shortlist(most);
        this.scores = new float[snapshot.reader().maxDoc()];
        this.fitting = new FixedBitSet(scores.length);
    }

    /**
     * Scores what the query matches.
     *
     * @param most how many of those that fit best to keep as {@link #precedents}
     */
    static CaseScores of(Snapshot snapshot, Query query, int most) throws IOException {
        CaseScores made = new CaseScores(snapshot, most);
        return snapshot.searcher().search(query, made.collecting());
    }

    /** No case fits any better than another. */
    static CaseScores none(Snapshot snapshot) {
        CaseScores made = new CaseScores(snapshot, 0);
        made.fitting.set(0, made.scores.length);
        return made;
    }

    private CollectorManager<SimpleCollector, CaseScores> collecting() {
        return new CollectorManager<>() {
            @Override
            public SimpleCollector newCollector() {
                return new Scores();
            }

            @Override
            public CaseScores reduce(Collection<SimpleCollector> collectors) {
                return CaseScores.this;
            }
        };
    }

    private final class Scores extends SimpleCollector {
        private int base;
        private @Nullable LeafReaderContext segment;
        private @Nullable Scorable scorer;

        @Override
        protected void doSetNextReader(LeafReaderContext leaf) throws IOException {
            finish();
            base = leaf.docBase;
            segment = leaf;
            fittest.enter(snapshot.columns(leaf));
        }

        @Override
        public void finish() throws IOException {
            if (segment != null) {
                fittest.leave(segment);
                segment = null;
            }
        }

        @Override
        public void setScorer(Scorable given) {
            scorer = given;
        }

        @Override
        public void collect(int doc) throws IOException {
            if (scorer != null) {
                float score = scorer.score();
                scores[base + doc] = score;
                if (score > 0) {
                    fitting.set(base + doc);
                    fittest.offer(doc, score);
                }
            }
        }

        @Override
        public ScoreMode scoreMode() {
            return ScoreMode.COMPLETE;
        }
    }

    /** The concluded ones among those that fit best. */
    List<Relevance.Precedent> precedents() throws IOException {
        List<LeafReaderContext> leaves = snapshot.reader().leaves();
        List<Relevance.Precedent> precedents = new ArrayList<>();
        for (Found found : fittest.best()) {
            LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(found.at(), leaves));
            SortedDocValues causes = DocValues.getSorted(leaf.reader(), Fields.CAUSE);
            String cause = causes.advanceExact(found.at() - leaf.docBase)
                    ? causes.lookupOrd(causes.ordValue()).utf8ToString()
                    : "";
            precedents.add(new Relevance.Precedent(cause, found.score()));
        }
        return precedents;
    }

    /** Adds what the cases of each cause gain by it. */
    void gain(Map<String, Double> gains) throws IOException {
        for (LeafReaderContext leaf : snapshot.reader().leaves()) {
            for (Map.Entry<String, Double> e : gains.entrySet()) {
                PostingsEnum cases = leaf.reader().postings(new Term(Fields.CAUSE, e.getKey()), PostingsEnum.NONE);
                if (cases != null) {
                    float gain = e.getValue().floatValue();
                    for (int doc = cases.nextDoc(); doc != DocIdSetIterator.NO_MORE_DOCS; doc = cases.nextDoc()) {
                        scores[leaf.docBase + doc] += gain;
                        fitting.set(leaf.docBase + doc);
                    }
                }
            }
        }
    }

    /** Catches those that fit, as far as the query lets them through. */
    void matching(SearchQuery query, Catch caught) throws IOException {
        Shortlist best = new Shortlist(query.offset() + query.limit());
        long counted = 0;
        for (LeafReaderContext leaf : snapshot.reader().leaves()) {
            best.enter(snapshot.columns(leaf));
            counted += new Look(leaf, query).take(best, caught);
            best.leave(leaf);
        }
        caught.cases(best.best(), counted);
    }

    /** One segment, each group of its cases looked at once. */
    private final class Look {
        private final LeafReaderContext leaf;
        private final CaseColumns columns;
        private final float[] near; // by group; UNWANTED for those that the query does not let through

        Look(LeafReaderContext leaf, SearchQuery query) throws IOException {
            this.leaf = leaf;
            columns = snapshot.columns(leaf);
            float[] byScope = new float[columns.scopes.size()];
            for (int i = 0; i < byScope.length; i++) {
                DeviceScope other = columns.scopes.get(i);
                byScope[i] = other.relatedTo(query.scope()) ? (float) Queries.nearness(query.scope(), other) : UNWANTED;
            }
            near = new float[columns.scopeOf.length];
            for (int i = 0; i < near.length; i++) {
                int outcome = columns.outcomeOf[i];
                boolean ended = query.outcomes().isEmpty()
                        || (outcome != CaseColumns.NONE && query.outcomes().contains(columns.outcomes.get(outcome)));
                near[i] = ended ? byScope[columns.scopeOf[i]] : UNWANTED;
            }
        }

        long take(Shortlist best, Catch caught) throws IOException {
            Bits live = leaf.reader().getLiveDocs();
            int[] byGroup = new int[near.length];
            int end = leaf.docBase + columns.group.length;
            for (int at = next(leaf.docBase, end); at < end; at = next(at + 1, end)) {
                int doc = at - leaf.docBase;
                int group = columns.group[doc];
                boolean passes =
                        group != CaseColumns.NONE && near[group] != UNWANTED && (live == null || live.get(doc));
                if (passes) {
                    byGroup[group]++;
                    best.offer(doc, scores[at] + near[group]);
                }
            }
            return count(byGroup, caught);
        }

        private int next(int from, int end) {
            return from < end ? fitting.nextSetBit(from, end) : DocIdSetIterator.NO_MORE_DOCS;
        }

        private long count(int[] byGroup, Catch caught) {
            long counted = 0;
            long[] byScope = new long[columns.scopes.size()];
            long[] byOutcome = new long[columns.outcomes.size()];
            for (int i = 0; i < byGroup.length; i++) {
                counted += byGroup[i];
                byScope[columns.scopeOf[i]] += byGroup[i];
                if (columns.outcomeOf[i] != CaseColumns.NONE) {
                    byOutcome[columns.outcomeOf[i]] += byGroup[i];
                }
            }
            for (int i = 0; i < byScope.length; i++) {
                if (byScope[i] > 0) {
                    caught.countScope(columns.scopes.get(i), byScope[i]);
                }
            }
            for (int i = 0; i < byOutcome.length; i++) {
                if (byOutcome[i] > 0) {
                    caught.countOutcome(columns.outcomes.get(i), byOutcome[i]);
                }
            }
            return counted;
        }
    }
}
