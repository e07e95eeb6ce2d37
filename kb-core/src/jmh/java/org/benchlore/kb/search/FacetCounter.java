package org.benchlore.kb.search;

import java.io.IOException;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.search.Collector;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.LeafCollector;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreMode;

/** Counts what is found by the values of some labels, in one pass over their columns. */
final class FacetCounter implements CollectorManager<FacetCounter.Counts, Map<String, Map<String, Long>>> {
    private final List<String> labels;

    FacetCounter(String... labels) {
        this.labels = List.of(labels);
    }

    @Override
    public Counts newCollector() {
        return new Counts(labels);
    }

    /** By label, then by value. */
    @Override
    public Map<String, Map<String, Long>> reduce(Collection<Counts> collectors) {
        Map<String, Map<String, Long>> sum = new HashMap<>();
        for (String label : labels) {
            Map<String, Long> counts = new HashMap<>();
            for (Counts part : collectors) {
                part.byLabel.getOrDefault(label, Map.of()).forEach((value, n) -> counts.merge(value, n, Long::sum));
            }
            sum.put(label, counts);
        }
        return sum;
    }

    static final class Counts implements Collector {
        private final List<String> labels;
        private final Map<String, Map<String, Long>> byLabel = new HashMap<>();

        private Counts(List<String> labels) {
            this.labels = labels;
        }

        @Override
        public LeafCollector getLeafCollector(LeafReaderContext leaf) throws IOException {
            SortedDocValues[] columns = new SortedDocValues[labels.size()];
            long[][] counts = new long[labels.size()][];
            for (int i = 0; i < columns.length; i++) {
                columns[i] = DocValues.getSorted(leaf.reader(), labels.get(i));
                counts[i] = new long[columns[i].getValueCount()];
            }
            return new LeafCollector() {
                @Override
                public void setScorer(Scorable scorer) {}

                @Override
                public void collect(int doc) throws IOException {
                    for (int i = 0; i < columns.length; i++) {
                        if (columns[i].advanceExact(doc)) {
                            counts[i][columns[i].ordValue()]++;
                        }
                    }
                }

                @Override
                public void finish() throws IOException {
                    for (int i = 0; i < columns.length; i++) {
                        Map<String, Long> sum = byLabel.computeIfAbsent(labels.get(i), l -> new HashMap<>());
                        for (int ord = 0; ord < counts[i].length; ord++) {
                            if (counts[i][ord] > 0) {
                                sum.merge(columns[i].lookupOrd(ord).utf8ToString(), counts[i][ord], Long::sum);
                            }
                        }
                    }
                }
            };
        }

        @Override
        public ScoreMode scoreMode() {
            return ScoreMode.COMPLETE_NO_SCORES;
        }
    }
}
