package org.benchlore.kb.search;

import java.io.IOException;
import java.util.Collection;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.FieldExistsQuery;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;
import org.apache.lucene.search.TermQuery;
import org.benchlore.kb.knowledge.DeviceScope;

/** Counts the concluded cases of a scope by their cause. */
final class CaseCauses {
    private final Snapshot snapshot;
    private final DeviceScope scope;
    private final String except;

    CaseCauses(Snapshot snapshot, DeviceScope scope, String except) {
        this.snapshot = snapshot;
        this.scope = scope;
        this.except = except;
    }

    /** By cause, the cases in which all the words stand; all of them for no words. */
    SortedMap<String, Long> count(List<Word> words) throws IOException {
        BooleanQuery.Builder all = new BooleanQuery.Builder().add(new FieldExistsQuery(Fields.CAUSE), Occur.FILTER);
        for (Word word : words) {
            all.add(new TermQuery(new Term(Fields.STORY, word.term())), Occur.FILTER);
        }
        if (!except.isEmpty()) {
            all.add(new TermQuery(Documents.key(HitKind.CASE, except)), Occur.MUST_NOT);
        }
        SortedMap<String, Long> counts = new TreeMap<>();
        return snapshot.searcher().search(Queries.within(all.build(), scope), new Counting(counts));
    }

    private record Counting(SortedMap<String, Long> counts)
            implements CollectorManager<SimpleCollector, SortedMap<String, Long>> {
        @Override
        public SimpleCollector newCollector() {
            return new SimpleCollector() {
                private SortedDocValues causes = DocValues.emptySorted();

                @Override
                protected void doSetNextReader(LeafReaderContext leaf) throws IOException {
                    causes = DocValues.getSorted(leaf.reader(), Fields.CAUSE);
                }

                @Override
                public void collect(int doc) throws IOException {
                    if (causes.advanceExact(doc)) {
                        String cause = causes.lookupOrd(causes.ordValue()).utf8ToString();
                        counts.merge(cause, 1L, Long::sum);
                    }
                }

                @Override
                public ScoreMode scoreMode() {
                    return ScoreMode.COMPLETE_NO_SCORES;
                }
            };
        }

        @Override
        public SortedMap<String, Long> reduce(Collection<SimpleCollector> collectors) {
            return counts;
        }
    }
}
