package org.benchlore.kb;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.importing.ImportKind;
import org.benchlore.kb.importing.ImportReview;
import org.benchlore.kb.importing.ImportSettings;
import org.benchlore.kb.knowledge.PackSource;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Notes per second through an import: a diary of one note a line, seeded, some 28 words each, on the packs that ship. A
 * review reads, understands and compares; an import stores too, each time into a fresh home on disk:
 * {@code kb-core/measure speed ImportBenchmark}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 20, time = 2)
@Measurement(iterations = 4, time = 2)
public class ImportBenchmark {
    private static final int NOTES = 2000;

    private static final List<String> SEEN = List.of(
            "dead, only the ring is lit",
            "no picture, sound ok",
            "hum on both channels, worse when warm",
            "disc not read, spins up and stops",
            "3.3 V low, 2.9 V under load, resets after 20 minutes",
            "no 12 V, 5 V standby 4.98 V, controller silent",
            "tape eaten, belt slack",
            "does not charge, port full of lint",
            "fan full speed, shuts down after 20 minutes, very dusty",
            "fuse blown after a storm",
            "no sound on the left, crackles");
    private static final List<String> CONCLUDED = List.of(
            "found start resistor open",
            "found the reset supervisor stuck",
            "turned out to be the bridge rectifier, shorted",
            "lens dirty",
            "C%d leaky",
            "measured ESR of C%d, 9 ohm");
    private static final List<String> DONE = List.of(
            "replaced it",
            "replaced the reset supervisor",
            "replaced C%d and C%d",
            "cleaned lens",
            "resoldered the joints of IC%d",
            "cleaned fan and vents");
    private static final List<String> ENDED =
            List.of("ran two days, ok", "works again", "no change, given up", "came back after %d weeks", "soak 24 h, no fault");

    private byte[] diary;
    private Path home;
    private KnowledgeBase kb;

    @Setup(Level.Trial)
    public void write() {
        Random random = new Random(1);
        StringBuilder text = new StringBuilder();
        LocalDate day = LocalDate.of(2009, 1, 3);
        for (int i = 0; i < NOTES; i++) {
            day = day.plusDays(random.nextInt(3));
            text.append(day).append(" sn A").append(1000 + random.nextInt(90_000)).append(": ");
            for (List<String> part : List.of(SEEN, SEEN, CONCLUDED, DONE)) {
                text.append(pick(part, random)).append(part == DONE ? ", " : ". ");
            }
            text.append(pick(ENDED, random)).append(".\n");
        }
        diary = text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String pick(List<String> from, Random random) {
        String text = from.get(random.nextInt(from.size()));
        while (text.contains("%d")) {
            text = text.replaceFirst("%d", String.valueOf(1 + random.nextInt(600)));
        }
        return text;
    }

    @Setup(Level.Invocation)
    public void open() throws IOException {
        home = Files.createTempDirectory("benchlore-import");
        kb = KnowledgeBase.builder()
                .packs(PackSource.readFolder(Path.of("../kb-data/src/main/resources/org/benchlore/kb/data/packs")))
                .home(home)
                .open();
        kb.read("no 12 V");
        kb.reviewImport(
                new ByteArrayInputStream(new byte[0]), "empty.txt", ImportSettings.of(ImportKind.DIARY));
    }

    @TearDown(Level.Invocation)
    public void clean() throws IOException {
        kb.close();
        try (Stream<Path> files = Files.walk(home)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    @Benchmark
    @OperationsPerInvocation(NOTES)
    public ImportReview review() throws IOException {
        return kb.reviewImport(new ByteArrayInputStream(diary), "diary.txt", ImportSettings.of(ImportKind.DIARY));
    }

    @Benchmark
    @OperationsPerInvocation(NOTES)
    public ImportResult reviewAndStore() throws IOException {
        return kb.importReviewed(review(), CaseHistory.OWN, true);
    }
}
