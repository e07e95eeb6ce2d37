package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;
import org.apache.lucene.util.Bits;
import org.apache.lucene.util.BytesRef;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.jspecify.annotations.Nullable;

/**
 * How well every case fits the words and findings of one query. Lucene scores them once; what they gain by their cause and
 * by a near scope is added, and all of them are counted, in one run over columns, where a second query would have to score
 * them again.
 */
final class CaseScores {
    private static final float UNSEEN = Float.NaN;
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
            best.enter(leaf);
            for (int doc = 0; doc < leaf.reader().maxDoc(); doc++) {
                float score = scores[leaf.docBase + doc];
                if (score > 0) {
                    best.offer(doc, score);
                }
            }
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

    /** Catches those that fit or gain by their cause, as far as the query lets them through. */
    void matching(SearchQuery query, Map<String, Double> gains, Catch caught) throws IOException {
        look(query, gains, false, caught);
    }

    /** Catches all that the query lets through. */
    void all(SearchQuery query, Catch caught) throws IOException {
        look(query, Map.of(), true, caught);
    }

    private void look(SearchQuery query, Map<String, Double> gains, boolean all, Catch caught) throws IOException {
        Shortlist best = new Shortlist(query.offset() + query.limit());
        long counted = 0;
        for (LeafReaderContext leaf : snapshot.reader().leaves()) {
            best.enter(leaf);
            counted += new Columns(leaf, query, gains).look(all, best, caught);
        }
        caught.cases(best.best(), counted);
    }

    /** The columns of one segment, each value of them looked at once. */
    private final class Columns {
        private final LeafReaderContext leaf;
        private final DeviceScope scope;
        private final SortedDocValues kinds;
        private final SortedDocValues causes;
        private final SortedDocValues scopes;
        private final SortedDocValues outcomes;
        private final int caseKind;
        private final float[] gain;
        private final float[] near;
        private final boolean[] wanted;
        private final boolean anyOutcome;
        private final int[] byScope;
        private final int[] byOutcome;

        Columns(LeafReaderContext leaf, SearchQuery query, Map<String, Double> gains) throws IOException {
            this.leaf = leaf;
            scope = query.scope();
            kinds = DocValues.getSorted(leaf.reader(), Fields.KIND);
            causes = DocValues.getSorted(leaf.reader(), Fields.CAUSE);
            scopes = DocValues.getSorted(leaf.reader(), Fields.SCOPE);
            outcomes = DocValues.getSorted(leaf.reader(), Fields.OUTCOME);
            caseKind = kinds.lookupTerm(new BytesRef(HitKind.CASE.id()));
            gain = new float[causes.getValueCount()];
            for (Map.Entry<String, Double> e : gains.entrySet()) {
                int at = causes.lookupTerm(new BytesRef(e.getKey()));
                if (at >= 0) {
                    gain[at] = e.getValue().floatValue();
                }
            }
            byScope = new int[scopes.getValueCount()];
            near = new float[byScope.length];
            Arrays.fill(near, UNSEEN);
            byOutcome = new int[outcomes.getValueCount()];
            wanted = new boolean[byOutcome.length];
            anyOutcome = query.outcomes().isEmpty();
            for (Outcome outcome : query.outcomes()) {
                int at = outcomes.lookupTerm(new BytesRef(outcome.id()));
                if (at >= 0) {
                    wanted[at] = true;
                }
            }
        }

        long look(boolean all, Shortlist best, Catch caught) throws IOException {
            Bits live = leaf.reader().getLiveDocs();
            long counted = 0;
            for (int doc = 0; doc < leaf.reader().maxDoc(); doc++) {
                float score = scores[leaf.docBase + doc];
                boolean fits = score > 0;
                if (gain.length > 0 && causes.advanceExact(doc)) {
                    score += gain[causes.ordValue()];
                }
                if ((fits || score > 0 || (all && isCase(doc))) && (live == null || live.get(doc))) {
                    int outcome = outcomes.advanceExact(doc) ? outcomes.ordValue() : -1;
                    float nearness = nearness(doc);
                    if (nearness != UNRELATED && (anyOutcome || (outcome >= 0 && wanted[outcome]))) {
                        counted++;
                        byScope[scopes.ordValue()]++;
                        if (outcome >= 0) {
                            byOutcome[outcome]++;
                        }
                        best.offer(doc, score + nearness);
                    }
                }
            }
            for (int at = 0; at < byScope.length; at++) {
                if (byScope[at] > 0) {
                    caught.countScope(scopes.lookupOrd(at).utf8ToString(), byScope[at]);
                }
            }
            for (int at = 0; at < byOutcome.length; at++) {
                if (byOutcome[at] > 0) {
                    caught.countOutcome(outcomes.lookupOrd(at).utf8ToString(), byOutcome[at]);
                }
            }
            return counted;
        }

        private boolean isCase(int doc) throws IOException {
            return kinds.advanceExact(doc) && kinds.ordValue() == caseKind;
        }

        /** What a case gains by its scope, or that it belongs to other devices. */
        private float nearness(int doc) throws IOException {
            if (!scopes.advanceExact(doc)) {
                return UNRELATED;
            }
            int at = scopes.ordValue();
            if (Float.isNaN(near[at])) {
                DeviceScope other = DeviceScope.parse(scopes.lookupOrd(at).utf8ToString());
                near[at] = other.relatedTo(scope) ? (float) Queries.nearness(scope, other) : UNRELATED;
            }
            return near[at];
        }
    }
}
