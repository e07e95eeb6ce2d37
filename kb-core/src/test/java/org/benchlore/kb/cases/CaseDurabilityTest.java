package org.benchlore.kb.cases;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseStore.Recorded;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.JsonNode;

/**
 * Other processes on the same home, some of them killed. Killing shows that nothing acknowledged waits in a buffer of
 * the process; that the disk keeps it through a power cut rests on SQLite's synchronous FULL.
 */
class CaseDurabilityTest {
    private static final int ROUNDS = 6;
    private static final long SEED = 20261125;

    @TempDir
    Path home;

    private Process writer(String name, int batches, long seed) throws IOException {
        String classPath = Stream.of(
                        CaseStore.class,
                        StoreWriter.class,
                        org.sqlite.JDBC.class,
                        JsonGenerator.class,
                        JsonNode.class,
                        JsonProperty.class)
                .map(CaseDurabilityTest::location)
                .distinct()
                .collect(Collectors.joining(File.pathSeparator));
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        classPath,
                        StoreWriter.class.getName(),
                        home.toString(),
                        name,
                        Integer.toString(batches),
                        Long.toString(seed))
                .redirectError(home.resolve(name + ".err").toFile())
                .start();
    }

    private static String location(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Reads one acknowledgement, "batch size", and gives the events it stands for; empty at the end. */
    private static List<CaseEvent> acknowledged(BufferedReader out, String name) throws IOException {
        String line = out.readLine();
        if (line == null) {
            return List.of();
        }
        String[] parts = line.split(" ", -1);
        return StoreWriter.batch(name, Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
    }

    @Test
    void killing_the_writer_in_mid_writing_loses_nothing_acknowledged_and_tears_no_batch() throws Exception {
        Random random = new Random(SEED);
        List<CaseEvent> acknowledged = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
            String name = "w" + round;
            Process process = writer(name, Integer.MAX_VALUE, SEED + round);
            try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
                int until = 20 + random.nextInt(200);
                for (int i = 0; i < until; i++) {
                    List<CaseEvent> batch = acknowledged(out, name);
                    assertThat(batch).as("writer lives, see %s.err", name).isNotEmpty();
                    acknowledged.addAll(batch);
                }
                TimeUnit.MICROSECONDS.sleep(random.nextInt(3000));
                process.toHandle().destroyForcibly(); // by its handle: that leaves the pipe to be read out
                process.waitFor();
                for (List<CaseEvent> batch = acknowledged(out, name);
                        !batch.isEmpty();
                        batch = acknowledged(out, name)) {
                    acknowledged.addAll(batch); // said before it died
                }
            }
            assertThat(process.exitValue()).isNotZero();
            assertIntact();
            try (CaseStore store = CaseStore.open(home)) {
                List<Recorded> all = store.eventsAfter(0, 1_000_000);
                Set<CaseEvent> found = all.stream().map(Recorded::event).collect(Collectors.toSet());
                assertThat(found).containsAll(acknowledged);
                assertThat(all)
                        .extracting(Recorded::position)
                        .containsExactlyElementsOf(
                                LongStream.rangeClosed(1, all.size()).boxed().toList());
                // at most one batch per killed writer was stored and not yet acknowledged
                assertThat(all.size() - acknowledged.size()).isBetween(0, 6 * (round + 1));
            }
        }
    }

    private void assertIntact() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + home.resolve(CaseStore.FILE));
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("pragma integrity_check")) {
            assertThat(row.next()).isTrue();
            assertThat(row.getString(1)).isEqualTo("ok");
        }
    }

    @Test
    void several_processes_open_a_new_home_at_once_and_all_their_events_are_there() throws Exception {
        int writers = 4;
        int batches = 60;
        List<Process> processes = new ArrayList<>();
        for (int i = 0; i < writers; i++) {
            processes.add(writer("p" + i, batches, SEED + i));
        }
        List<CaseEvent> acknowledged = new ArrayList<>();
        for (int i = 0; i < writers; i++) {
            try (BufferedReader out = processes.get(i).inputReader(StandardCharsets.UTF_8)) {
                for (int batch = 0; batch < batches; batch++) {
                    acknowledged.addAll(acknowledged(out, "p" + i));
                }
            }
            assertThat(processes.get(i).waitFor()).as("see p%d.err", i).isZero();
        }
        try (CaseStore store = CaseStore.openReadOnly(home)) {
            List<Recorded> all = store.eventsAfter(0, 100_000);
            assertThat(all.stream().map(Recorded::event)).containsExactlyInAnyOrderElementsOf(acknowledged);
            assertThat(all.get(all.size() - 1).position()).isEqualTo(acknowledged.size());
        }
    }

    @Test
    void a_new_home_may_be_opened_by_many_at_the_same_moment() {
        for (int round = 0; round < 15; round++) {
            Path fresh = home.resolve("fresh" + round);
            String name = "r" + round;
            IntStream.range(0, 6).parallel().forEach(i -> {
                try (CaseStore store = CaseStore.open(fresh)) {
                    store.append(StoreWriter.batch(name, i, 2));
                }
            });
            try (CaseStore store = CaseStore.openReadOnly(fresh)) {
                assertThat(store.position()).isEqualTo(12);
            }
        }
    }

    @Test
    void threads_share_one_store() throws Exception {
        try (CaseStore store = CaseStore.open(home)) {
            List<Integer> sizes = Stream.iterate(0, i -> i + 1)
                    .limit(200)
                    .parallel()
                    .map(i -> {
                        int added = store.append(StoreWriter.batch("t" + i % 40, i / 80, 3))
                                .size();
                        assertThat(store.eventsAfter(0, 1000)).isNotEmpty();
                        return added;
                    })
                    .toList();
            // 200 batches of 40 writers, in 3 numbers: 40 * 2 + 40 different ones, each stored once
            assertThat(sizes.stream().mapToInt(Integer::intValue).sum()).isEqualTo(3 * 120);
            assertThat(store.position()).isEqualTo(3 * 120);
        }
    }
}
