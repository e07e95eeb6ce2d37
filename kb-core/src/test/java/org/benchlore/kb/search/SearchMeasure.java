package org.benchlore.kb.search;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
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
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.reading.Reader;

/**
 * Measures retrieval on graded queries: nDCG at 10 and mean reciprocal rank of a just-right (grade 3) hit, beside plain
 * BM25 over one field with everything in it; and how well an entry is found by its own name. The query file is described in its own head.
 *
 * <p>Shipped packs of 25 Nov 2026, 1374 entries, 48 queries, nDCG at 10 (MRR): plain BM25 0.51 (0.76), words only 0.66
 * (0.80), words and what the reader makes of them 0.71 (0.81); on the even lines alone, which set no weight, 0.56, 0.76
 * and 0.80. An entry's own name: MRR 0.95.
 *
 * <pre>
 * mvn -q -o -pl kb-core test-compile exec:java -Dexec.classpathScope=test \
 *   -Dexec.mainClass=org.benchlore.kb.search.SearchMeasure -Dexec.args="FOLDER-OF-PACKS [-v]"
 * </pre>
 */
final class SearchMeasure {
    private static final int DEPTH = 10;
    private static final int JUST_RIGHT = 3;

    record Graded(String words, DeviceScope scope, Map<String, Integer> grades) {}

    private SearchMeasure() {}

    public static void main(String[] args) throws IOException {
        PrintStream out = System.out;
        Knowledge knowledge = packs(Path.of(args[0]));
        List<Graded> queries = queries();
        Reader reader = Reader.of(knowledge);
        boolean verbose = args.length > 1;
        try (SearchIndex index = SearchIndex.inMemory(knowledge);
                ByteBuffersDirectory directory = plain(knowledge);
                DirectoryReader plain = DirectoryReader.open(directory)) {
            report(out, "plain BM25", queries, q -> plain(plain, q), false);
            report(out, "words only", queries, q -> ours(index, SearchQuery.of(q.words()), q), false);
            report(
                    out,
                    "words and findings",
                    queries,
                    q -> ours(
                            index,
                            SearchQuery.of(q.words())
                                    .with(reader.read(q.words(), q.scope()).findings()),
                            q),
                    verbose);
            double sum = 0;
            List<Draft> entries = EntryDrafts.of(knowledge);
            for (Draft entry : entries) {
                List<String> found = index.search(SearchQuery.of(entry.title())).hits().stream()
                        .map(hit -> Draft.key(hit.kind(), hit.id()))
                        .toList();
                sum += Measures.reciprocalRank(found.stream()
                        .map(key -> key.equals(entry.key()) ? 1.0 : 0)
                        .toList());
            }
            out.printf(
                    Locale.ROOT,
                    "its own name finds an entry: MRR %.3f over %d%n",
                    sum / entries.size(),
                    entries.size());
        }
    }

    private static void report(
            PrintStream out, String name, List<Graded> queries, Function<Graded, List<String>> search, boolean each) {
        double[] ndcg = new double[2];
        double[] rank = new double[2];
        int[] n = new int[2];
        for (int i = 0; i < queries.size(); i++) {
            Graded query = queries.get(i);
            List<String> found = search.apply(query);
            List<Double> gains = found.stream()
                    .map(key -> (double) query.grades().getOrDefault(key, 0))
                    .toList();
            List<Double> right =
                    gains.stream().map(g -> g >= JUST_RIGHT ? g : 0).toList();
            List<Double> judged =
                    query.grades().values().stream().map(Integer::doubleValue).toList();
            double score = Measures.ndcg(gains, judged, DEPTH);
            ndcg[i % 2] += score;
            rank[i % 2] += Measures.reciprocalRank(right);
            n[i % 2]++;
            if (each) {
                out.printf(Locale.ROOT, "  %.3f %s%n        %s%n", score, query.words(), found);
            }
        }
        out.printf(
                Locale.ROOT,
                "%-20s odd lines: nDCG@10 %.3f MRR %.3f; even lines: nDCG@10 %.3f MRR %.3f; all: %.3f %.3f%n",
                name,
                ndcg[0] / n[0],
                rank[0] / n[0],
                ndcg[1] / n[1],
                rank[1] / n[1],
                (ndcg[0] + ndcg[1]) / queries.size(),
                (rank[0] + rank[1]) / queries.size());
    }

    private static List<String> ours(SearchIndex index, SearchQuery query, Graded graded) {
        return index.search(query.in(graded.scope())).hits().stream()
                .map(hit -> Draft.key(hit.kind(), hit.id()))
                .toList();
    }

    private static List<String> plain(DirectoryReader reader, Graded query) {
        try {
            IndexSearcher searcher = new IndexSearcher(reader);
            BooleanQuery.Builder any = new BooleanQuery.Builder();
            for (Word word : Word.of(new SearchAnalyzer(), query.words())) {
                any.add(new TermQuery(new Term(Fields.ABOUT, word.term())), Occur.SHOULD);
            }
            List<String> keys = new ArrayList<>();
            for (ScoreDoc doc : searcher.search(any.build(), DEPTH).scoreDocs) {
                keys.add(reader.storedFields().document(doc.doc).get(Fields.KEY));
            }
            return keys;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static ByteBuffersDirectory plain(Knowledge knowledge) throws IOException {
        ByteBuffersDirectory directory = new ByteBuffersDirectory();
        try (IndexWriter writer = new IndexWriter(directory, new IndexWriterConfig(new SearchAnalyzer()))) {
            for (Draft draft : EntryDrafts.of(knowledge)) {
                Document document = new Document();
                document.add(new StringField(Fields.KEY, draft.key(), Field.Store.YES));
                draft.texts().forEach((field, passages) -> {
                    if (!field.equals(Fields.LINKED)) {
                        passages.forEach(text -> document.add(new TextField(Fields.ABOUT, text, Field.Store.NO)));
                    }
                });
                writer.addDocument(document);
            }
        }
        return directory;
    }

    static Knowledge packs(Path folder) throws IOException {
        List<PackSource> sources = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
                sources.add(new PackSource(file.toString(), Files.readString(file)));
            }
        }
        return PackReader.read(sources);
    }

    private static List<Graded> queries() throws IOException {
        List<Graded> queries = new ArrayList<>();
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(SearchMeasure.class.getResourceAsStream("graded-queries.tsv")),
                StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (!line.startsWith("#")) {
                    String[] parts = line.split("\t", -1);
                    Map<String, Integer> grades = new LinkedHashMap<>();
                    for (String grade : parts[2].trim().split(" +", -1)) {
                        int equals = grade.indexOf('=');
                        grades.put(grade.substring(0, equals), Integer.valueOf(grade.substring(equals + 1)));
                    }
                    queries.add(new Graded(parts[0], DeviceScope.parse(parts[1]), grades));
                }
            }
        }
        return queries;
    }
}
