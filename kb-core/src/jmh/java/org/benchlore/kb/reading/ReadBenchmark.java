package org.benchlore.kb.reading;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.reading.analysis.BenchAnalyzer;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Reading a note of thirty words with the packs that ship, beside only analysing the same words with the analyzer of the
 * search index: {@code kb-core/measure speed ReadBenchmark}. The ratio of the two is what reading costs.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 8, time = 2)
@Measurement(iterations = 4, time = 2)
public class ReadBenchmark {
    private static final Path DATA = Path.of("../kb-data/src/main/resources/org/benchlore/kb/data");

    /** Thirty words each: terse readings, and an owner's story. */
    @Param({
        "12V missing on the board, 5V standby reads 4.98 V, green lamp, controller silent, fan stopped, no click from the "
                + "relay, slight burnt smell near the supply, ripple not checked yet, fuse ok",
        "Owner says it clicked for a week and then died in the night after the storm, the lamp stays green but nothing "
                + "happens when you press a key on the remote"
    })
    String note;

    private Reader reader;
    private BenchAnalyzer analyzer;

    @Setup
    public void open() {
        List<PackSource> packs = new ArrayList<>(PackSource.readFolder(DATA.resolve("packs")));
        packs.addAll(PackSource.readFolder(DATA.resolve("demo")));
        reader = Reader.of(PackReader.read(packs));
        analyzer = new BenchAnalyzer();
        reader.read(note, DeviceScope.ANY);
    }

    @Benchmark
    public Reading read() {
        return reader.read(note, DeviceScope.ANY);
    }

    @Benchmark
    public int analyseOnly() throws IOException {
        int length = 0;
        try (TokenStream tokens = analyzer.tokenStream("note", note)) {
            CharTermAttribute term = tokens.getAttribute(CharTermAttribute.class);
            tokens.reset();
            while (tokens.incrementToken()) {
                length += term.length();
            }
            tokens.end();
        }
        return length;
    }
}
