package org.benchlore.kb.search;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TopDocs;
import org.apache.lucene.store.MMapDirectory;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reader;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The ten best of the packs that ship and of cases drawn from their own model, seeded; our search beside Lucene alone with
 * the same words, names and findings on the same files: {@code kb-core/measure speed SearchBenchmark}. {@code raw} finds
 * the ten best and reads their titles; {@code rawCounted} also counts all that is found by kind, scope and outcome, as ours
 * does.
 */
@org.openjdk.jmh.annotations.State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 8, time = 2)
@Measurement(iterations = 4, time = 2)
public class SearchBenchmark {
    private static final List<String> ASKED = List.of(
            "no 12 V, controller silent, lamp green",
            "starts only after the third try, cold",
            "hum in both channels",
            "boot loop after update",
            "fuse blown black");
    private static final int DEPTH = 10;

    @Param("100000")
    int cases;

    private Path home;
    private SearchIndex index;
    private MMapDirectory directory;
    private DirectoryReader reader;
    private IndexSearcher searcher;
    private final List<SearchQuery> queries = new ArrayList<>();
    private final List<Query> raws = new ArrayList<>();
    private int next;

    @Setup
    public void fill() throws IOException {
        Knowledge knowledge = PackReader.read(
                PackSource.readFolder(Path.of("../kb-data/src/main/resources/org/benchlore/kb/data/packs")));
        home = Files.createTempDirectory("benchlore-benchmark");
        index = SearchIndex.open(home, knowledge);
        Random random = new Random(1);
        List<Cause> causes = List.copyOf(knowledge.causes());
        index.rebuild(
                IntStream.range(0, cases)
                        .mapToObj(i -> history(i, knowledge, causes.get(random.nextInt(causes.size())), random))
                        .iterator(),
                new Reached(cases, "all"));
        directory = new MMapDirectory(home);
        reader = DirectoryReader.open(directory);
        searcher = new IndexSearcher(reader);
        searcher.setSimilarity(Snapshot.SIMILARITY);
        searcher.setQueryCache(null);
        Reader words = Reader.of(knowledge);
        Wordbook wordbook = new Wordbook(knowledge, EntryDrafts.of(knowledge));
        for (String asked : ASKED) {
            SearchQuery query =
                    SearchQuery.of(asked).with(words.read(asked, SearchQuery.of("").scope()).findings());
            queries.add(query);
            List<Word> terms = wordbook.words(asked);
            Collection<String> concepts = wordbook.concepts().in(terms, query.scope()).keySet();
            raws.add(new BooleanQuery.Builder()
                    .add(Queries.entries(terms), Occur.SHOULD)
                    .add(Queries.cases(terms, concepts, query.findings()).build(), Occur.SHOULD)
                    .build());
        }
    }

    /** A case with two thirds of what its cause shows, told in the packs' own words. */
    private static CaseHistory history(int number, Knowledge knowledge, Cause cause, Random random) {
        List<Finding> findings = new ArrayList<>();
        StringBuilder told = new StringBuilder();
        for (Link link : cause.shows()) {
            if (random.nextInt(3) > 0) {
                String state = draw(link.states().entrySet().stream().sorted(Map.Entry.comparingByKey()).toList(), random);
                findings.add(Finding.of(link.symptomId(), state));
                knowledge.symptom(link.symptomId()).ifPresent(symptom -> {
                    State seen = symptom.states().get(symptom.indexOf(state));
                    List<String> phrases = seen.phrases();
                    told.append(
                                    phrases.isEmpty()
                                            ? symptom.name() + " " + seen.name()
                                            : phrases.get(random.nextInt(phrases.size())))
                            .append(", ");
                });
            }
        }
        Outcome[] ends = Outcome.values();
        return Bench.ended(
                "bench-" + number,
                "class-" + random.nextInt(5) + "/family-" + random.nextInt(20),
                told.toString(),
                cause.id(),
                ends[random.nextInt(ends.length)],
                findings.toArray(Finding[]::new));
    }

    private static String draw(List<Map.Entry<String, Double>> states, Random random) {
        double at = random.nextDouble();
        for (Map.Entry<String, Double> e : states) {
            at -= e.getValue();
            if (at <= 0) {
                return e.getKey();
            }
        }
        return states.get(0).getKey();
    }

    @TearDown(Level.Trial)
    public void clean() throws IOException {
        index.close();
        reader.close();
        directory.close();
        try (Stream<Path> files = Files.walk(home)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    private int turn() {
        next = (next + 1) % ASKED.size();
        return next;
    }

    @Benchmark
    public SearchResult ours() {
        return index.search(queries.get(turn()));
    }

    @Benchmark
    public List<String> raw() throws IOException {
        TopDocs found = searcher.search(raws.get(turn()), DEPTH);
        List<String> titles = new ArrayList<>();
        for (ScoreDoc doc : found.scoreDocs) {
            titles.add(searcher.storedFields().document(doc.doc).get(Fields.TITLE));
        }
        return titles;
    }

    @Benchmark
    public Object[] rawCounted() throws IOException {
        Object[] both = searcher.search(
                raws.get(turn()),
                new org.apache.lucene.search.MultiCollectorManager(
                        new org.apache.lucene.search.TopScoreDocCollectorManager(DEPTH, Integer.MAX_VALUE),
                        new FacetCounter(Fields.KIND, Fields.SCOPE, Fields.OUTCOME)));
        for (ScoreDoc doc : ((TopDocs) both[0]).scoreDocs) {
            both[1] = searcher.storedFields().document(doc.doc).get(Fields.TITLE);
        }
        return both;
    }
}
