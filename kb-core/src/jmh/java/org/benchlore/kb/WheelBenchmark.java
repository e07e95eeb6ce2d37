package org.benchlore.kb;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.search.SearchQuery;
import org.benchlore.kb.search.SearchResult;
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
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Read, rank, search, record and open on the packs that ship, over cases drawn from the packs' own model, seeded:
 * {@code kb-core/measure speed WheelBenchmark}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 8, time = 2)
@Measurement(iterations = 4, time = 2)
public class WheelBenchmark {
    private static final String NOTE = "Unit came in dead after a storm, owner says it clicked for a week. Green light, no "
            + "12 V, 5 V standby 4.98 V, controller silent, fan stopped, slight burnt smell near the supply.";

    @Param({"100", "10000"})
    int cases;

    private Path home;
    private KnowledgeBase kb;
    private Reading reading;
    private int turn;

    @Setup
    public void fill() throws IOException {
        home = Files.createTempDirectory("benchlore-benchmark");
        kb = open();
        Random random = new Random(1);
        List<Cause> causes = List.copyOf(kb.knowledge().causes());
        List<CaseEvent> events = new ArrayList<>();
        for (int i = 0; i < cases; i++) {
            Cause cause = causes.get(random.nextInt(causes.size()));
            String id = "bench-" + i;
            List<Finding> findings = cause.shows().stream()
                    .filter(l -> random.nextInt(3) > 0)
                    .map(l -> Finding.of(l.symptomId(), draw(l.states().entrySet().stream().toList(), random)))
                    .toList();
            events.add(new CaseEvent.Opened(kb.head(id), DeviceScope.ANY, cause.about(), "", CaseHistory.OWN, false));
            events.add(new CaseEvent.Noted(kb.head(id), "", Reading.Source.SEEN, findings));
            events.add(new CaseEvent.Concluded(kb.head(id), cause.id(), Certainty.LIKELY, ""));
            events.add(new CaseEvent.Ended(kb.head(id), Outcome.FIXED, null, ""));
        }
        kb.record(events);
        reading = kb.read(NOTE);
        kb.rank(reading);
        kb.search(SearchQuery.of("scrambled display"));
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

    private KnowledgeBase open() {
        return KnowledgeBase.builder()
                .packs(PackSource.readFolder(Path.of("../kb-data/src/main/resources/org/benchlore/kb/data/packs")))
                .home(home)
                .open();
    }

    @TearDown(Level.Trial)
    public void clean() throws IOException {
        kb.close();
        try (Stream<Path> files = Files.walk(home)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    @Benchmark
    public Reading read() {
        return kb.read(NOTE);
    }

    @Benchmark
    public Ranking rank() {
        return kb.rank(reading);
    }

    @Benchmark
    public SearchResult search() {
        return kb.search(SearchQuery.of("no 12 V, controller silent").with(reading.findings()));
    }

    /** Durable: one event, synced. */
    @Benchmark
    public List<CaseEvent> record() {
        String id = "bench-" + turn++ % cases;
        return kb.record(new CaseEvent.Noted(kb.head(id), "still running", Reading.Source.SEEN, List.of()));
    }

    /** Packs read, store opened, every event replayed, one ranking. */
    @Benchmark
    public Ranking openAndRank() {
        try (KnowledgeBase another = open()) {
            return another.rank(reading);
        }
    }
}
