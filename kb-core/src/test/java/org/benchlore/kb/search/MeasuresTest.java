package org.benchlore.kb.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.StringField;
import org.apache.lucene.document.TextField;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.junit.jupiter.api.Test;

/** Check values for the measures and for the scoring under them. */
final class MeasuresTest {
    @Test
    void dcg_of_2002() {
        // Jarvelin & Kekalainen, ACM TOIS 20:422-446, 2002, sec. 2: gains and their DCG; the ideal vector is remembered
        List<Double> gains = list(3, 2, 3, 0, 0, 1, 2, 2, 3, 0);
        List<Double> ideal = list(3, 3, 3, 2, 2, 2, 1, 1, 1, 1);
        double[] printed = {3, 5, 6.89, 6.89, 6.89, 7.28, 7.99, 8.66, 9.61, 9.61};
        double[] printedIdeal = {3, 6, 7.89, 8.89, 9.75, 10.53, 10.88, 11.22, 11.53, 11.83};
        for (int depth = 1; depth <= 10; depth++) {
            assertThat(Measures.dcg2002(gains, depth)).isCloseTo(printed[depth - 1], within(0.01));
            assertThat(Measures.dcg2002(ideal, depth)).isCloseTo(printedIdeal[depth - 1], within(0.01));
        }
    }

    @Test
    void dcg_with_log_of_rank_plus_one() {
        // Example of an encyclopedia article, numbers remembered and recomputed
        List<Double> gains = list(3, 2, 3, 0, 1, 2);
        assertThat(Measures.dcg(gains, 6)).isCloseTo(6.861127, within(1e-6));
        assertThat(Measures.ndcg(gains, gains, 6)).isCloseTo(0.960808, within(1e-6));
        assertThat(Measures.ndcg(gains, list(3, 2, 3, 0, 1, 2, 3, 2), 6)).isCloseTo(0.785002, within(1e-6));
    }

    @Test
    void reciprocal_rank() {
        // Voorhees, TREC-8, 1999 (definition): first hits at 1, 3, 2, and one query without
        double three = Measures.reciprocalRank(list(1))
                + Measures.reciprocalRank(list(0, 0, 2))
                + Measures.reciprocalRank(list(0, 1));
        assertThat(three / 3).isCloseTo(0.611111, within(1e-6));
        assertThat((three + Measures.reciprocalRank(list(0, 0))) / 4).isCloseTo(0.458333, within(1e-6));
    }

    @Test
    void bm25_as_published() throws Exception {
        // Robertson & Zaragoza 2009 in Lucene's form (no k1 + 1, idf = ln(1 + (N - n + .5)/(n + .5))), query "cap
        // rail";
        // the analyser takes "cap" for "capacitor"
        String[] texts = {
            "no standby rail cap bulged",
            "standby rail low cap esr high cap replaced",
            "fan noise replaced fan",
            "rail ripple high"
        };
        try (ByteBuffersDirectory directory = new ByteBuffersDirectory()) {
            IndexWriterConfig config = new IndexWriterConfig(new SearchAnalyzer()).setSimilarity(Snapshot.SIMILARITY);
            try (IndexWriter writer = new IndexWriter(directory, config)) {
                for (int i = 0; i < texts.length; i++) {
                    Document document = new Document();
                    document.add(new StringField(Fields.ID, "d" + i, Field.Store.YES));
                    document.add(new TextField(Fields.NOTES, texts[i], Field.Store.NO));
                    writer.addDocument(document);
                }
            }
            try (DirectoryReader reader = DirectoryReader.open(directory)) {
                IndexSearcher searcher = new IndexSearcher(reader);
                searcher.setSimilarity(Snapshot.SIMILARITY);
                BooleanQuery query = new BooleanQuery.Builder()
                        .add(new TermQuery(new Term(Fields.NOTES, "capacitor")), Occur.SHOULD)
                        .add(new TermQuery(new Term(Fields.NOTES, "rail")), Occur.SHOULD)
                        .build();
                List<String> ids = new ArrayList<>();
                List<Float> scores = new ArrayList<>();
                for (ScoreDoc doc : searcher.search(query, 10).scoreDocs) {
                    ids.add(reader.storedFields().document(doc.doc).get(Fields.ID));
                    scores.add(doc.score);
                }
                assertThat(ids).containsExactly("d1", "d0", "d3");
                assertThat(scores.get(0)).isCloseTo(0.5008402f, within(1e-6f));
                assertThat(scores.get(1)).isCloseTo(0.4771918f, within(1e-6f));
                assertThat(scores.get(2)).isCloseTo(0.1938451f, within(1e-6f));
            }
        }
    }

    private static List<Double> list(double... values) {
        return DoubleStream.of(values).boxed().toList();
    }
}
