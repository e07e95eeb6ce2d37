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
import org.benchlore.kb.knowledge.DeviceScope;
import org.jspecify.annotations.Nullable;

/**
 * How well every case fits the words and findings of one query. Lucene scores them once; what they gain by their cause and
 * by a near scope is added, and all of them are counted, in one run over columns, where a second query would have to score
 * them again.
 */
final class CaseScores {
    private static final float UNRELATED = -1;

    private final Snapshot snapshot;
    private final float[] scores; // by number of the document; 0 where nothing fits

    private CaseScores(Snapshot snapshot) {
        this.snapshot = snapshot;
        this.scores = new float[snapshot.reader().maxDoc()];
    }

    /** Scores what the query matches. */
    static CaseScores of(Snapshot snapshot, Query query) throws IOException {
        CaseScores made = new CaseScores(snapshot);
        return snapshot.searcher().search(query, made.collecting());
    }

    /** No case fits any better than another. */
    static CaseScores none(Snapshot snapshot) {
        return new CaseScores(snapshot);
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
        private @Nullable Scorable scorer;

        @Override
        protected void doSetNextReader(LeafReaderContext leaf) {
            base = leaf.docBase;
        }

        @Override
        public void setScorer(Scorable given) {
            scorer = given;
        }

        @Override
        public void collect(int doc) throws IOException {
            if (scorer != null) {
                scores[base + doc] = scorer.score();
            }
        }

        @Override
        public ScoreMode scoreMode() {
            return ScoreMode.COMPLETE;
        }
    }

    /** The concluded ones among those that fit best. */
    List<Relevance.Precedent> precedents(int most) throws IOException {
        Shortlist best = new Shortlist(most);
        List<LeafReaderContext> leaves = snapshot.reader().leaves();
        for (LeafReaderContext leaf : leaves) {
            best.enter(snapshot.columns(leaf));
            int end = leaf.docBase + leaf.reader().maxDoc();
            for (int doc = leaf.docBase; doc < end; doc++) {
                if (scores[doc] > 0) {
                    best.offer(doc - leaf.docBase, scores[doc]);
                }
            }
            best.leave(leaf);
        }
        List<Relevance.Precedent> precedents = new ArrayList<>();
        for (Found found : best.best()) {
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
                    }
                }
            }
        }
    }

    /** Catches those that score, as far as the query lets them through. */
    void matching(SearchQuery query, Catch caught) throws IOException {
        look(query, false, caught);
    }

    /** Catches all that the query lets through. */
    void all(SearchQuery query, Catch caught) throws IOException {
        look(query, true, caught);
    }

    private void look(SearchQuery query, boolean all, Catch caught) throws IOException {
        Shortlist best = new Shortlist(query.offset() + query.limit());
        long counted = 0;
        for (LeafReaderContext leaf : snapshot.reader().leaves()) {
            best.enter(snapshot.columns(leaf));
            counted += new Look(leaf, query).take(all, best, caught);
            best.leave(leaf);
        }
        caught.cases(best.best(), counted);
    }

    /** One segment, each value of its columns looked at once. */
    private final class Look {
        private final LeafReaderContext leaf;
        private final CaseColumns columns;
        private final float[] near; // by rank of the scope
        private final boolean[] wanted; // by rank of the outcome
        private final boolean anyOutcome;

        Look(LeafReaderContext leaf, SearchQuery query) throws IOException {
            this.leaf = leaf;
            columns = snapshot.columns(leaf);
            near = new float[columns.scopes.size()];
            for (int i = 0; i < near.length; i++) {
                DeviceScope other = columns.scopes.get(i);
                near[i] = other.relatedTo(query.scope()) ? (float) Queries.nearness(query.scope(), other) : UNRELATED;
            }
            wanted = new boolean[columns.outcomes.size()];
            for (int i = 0; i < wanted.length; i++) {
                wanted[i] = query.outcomes().contains(columns.outcomes.get(i));
            }
            anyOutcome = query.outcomes().isEmpty();
        }

        long take(boolean all, Shortlist best, Catch caught) throws IOException {
            Bits live = leaf.reader().getLiveDocs();
            int[] byScope = new int[near.length];
            int[] byOutcome = new int[wanted.length];
            long counted = 0;
            for (int doc = 0; doc < columns.scope.length; doc++) {
                float score = scores[leaf.docBase + doc];
                int scope = columns.scope[doc];
                int outcome = columns.outcome[doc];
                boolean passes = (score > 0 || all)
                        && scope != CaseColumns.NONE
                        && near[scope] != UNRELATED
                        && (anyOutcome || (outcome != CaseColumns.NONE && wanted[outcome]))
                        && (live == null || live.get(doc));
                if (passes) {
                    counted++;
                    byScope[scope]++;
                    if (outcome != CaseColumns.NONE) {
                        byOutcome[outcome]++;
                    }
                    best.offer(doc, score + near[scope]);
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
