package org.benchlore.kb.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.store.MMapDirectory;
import org.benchlore.kb.cases.CaseHistory;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The index on disk: kept, damaged, shared, interrupted. */
final class SearchIndexFilesTest {
    private static final Reached ONE = new Reached(1, "e1");
    private static final Reached TWO = new Reached(2, "e2");
    private static final Reached THREE = new Reached(3, "e3");

    @TempDir
    Path home;

    @Test
    void what_was_taken_in_is_there_again() {
        fill();
        try (SearchIndex again = open()) {
            assertThat(again.reached()).isEqualTo(ONE);
            assertThat(again.writable()).isTrue();
            assertThat(again.trouble()).isEmpty();
            assertThat(cases(again, "ticking")).containsExactly("c1");
        }
    }

    @Test
    void other_packs_make_it_anew() {
        fill();
        String edited = Bench.PACK.replace("The start resistor drifts", "The start resistor burns");
        try (SearchIndex other = SearchIndex.open(index(), Bench.knowledge(edited))) {
            assertThat(other.reached()).isEqualTo(Reached.NOTHING);
            assertThat(other.search(SearchQuery.of("burns")).hits().get(0).id()).isEqualTo("standby-converter-dead");
            assertThat(cases(other, "ticking")).isEmpty();
        }
    }

    @Test
    void every_truncated_file_is_noticed_and_mended() throws IOException {
        fill();
        List<String> names = files();
        assertThat(names).hasSizeGreaterThan(2).anyMatch(n -> n.startsWith("segments_"));
        for (String name : names) {
            deleteAll();
            fill();
            Path file = index().resolve(name);
            assertThat(file).exists();
            try (RandomAccessFile cut = new RandomAccessFile(file.toFile(), "rw")) {
                cut.setLength(cut.length() / 2);
            }
            expectMended(name);
        }
    }

    @Test
    void every_flipped_byte_is_noticed_and_mended() throws IOException {
        fill();
        for (String name : files()) {
            for (double place : new double[] {0, 0.3, 0.6, 0.99}) {
                deleteAll();
                fill();
                try (RandomAccessFile file =
                        new RandomAccessFile(index().resolve(name).toFile(), "rw")) {
                    long at = (long) (place * (file.length() - 1));
                    file.seek(at);
                    int before = file.read();
                    file.seek(at);
                    file.write(before ^ 0x55);
                }
                expectMended(name + " at " + place);
            }
        }
    }

    @Test
    void every_missing_file_is_noticed_and_mended() throws IOException {
        fill();
        for (String name : files()) {
            deleteAll();
            fill();
            Files.delete(index().resolve(name));
            expectMended(name);
        }
    }

    @Test
    void strange_files_are_left_alone_and_do_no_harm() throws IOException {
        Files.createDirectories(index());
        Files.writeString(index().resolve("notes.txt"), "mine", StandardCharsets.UTF_8);
        Files.writeString(index().resolve("segments_3"), "rubbish", StandardCharsets.UTF_8);
        fill();
        try (SearchIndex again = open()) {
            assertThat(again.reached()).isEqualTo(ONE);
        }
        assertThat(index().resolve("notes.txt")).hasContent("mine");
    }

    @Test
    void an_index_of_somebody_else_is_not_touched() throws IOException {
        try (IndexWriter writer = new IndexWriter(new MMapDirectory(index()), new IndexWriterConfig())) {
            writer.addDocument(new Document());
        }
        List<String> before = files();
        try (SearchIndex ours = open()) {
            assertThat(ours.writable()).isFalse();
            assertThat(ours.trouble().orElseThrow())
                    .startsWith(index().toString())
                    .contains("holds an index that is not ours; choose another place");
            ours.update(List.of(Bench.open("c1", "any", "ticking")), ONE);
            assertThat(cases(ours, "ticking")).containsExactly("c1");
        }
        assertThat(files()).isEqualTo(before);
    }

    @Test
    void where_no_directory_can_be_it_lives_in_memory() throws IOException {
        Path file = Files.writeString(home.resolve("file"), "x", StandardCharsets.UTF_8);
        try (SearchIndex index = SearchIndex.open(file.resolve("index"), Bench.knowledge())) {
            assertThat(index.writable()).isFalse();
            assertThat(index.trouble().orElseThrow())
                    .startsWith(file.resolve("index").toString())
                    .contains("no directory can be made here")
                    .contains("; choose a place that can be written. Until it is opened again");
            index.rebuild(List.of(Bench.open("c1", "any", "ticking")).iterator(), ONE);
            assertThat(cases(index, "ticking")).containsExactly("c1");
            assertThat(index.search(SearchQuery.of("standby")).total()).isPositive();
        }
    }

    @Test
    void the_second_reads_learns_and_takes_over() {
        hold();
        try (SearchIndex second = open()) {
            assertThat(second.writable()).isFalse();
            assertThat(second.trouble().orElseThrow())
                    .startsWith(index().toString())
                    .contains("another program keeps this index open for writing");
            assertThat(cases(second, "ticking")).containsExactly("c1");
            assertThat(second.reached()).isEqualTo(ONE);

            second.update(List.of(Bench.open("c1", "any", "whining"), Bench.open("c2", "any", "ticking")), TWO);
            assertThat(second.reached()).isEqualTo(TWO);
            assertThat(cases(second, "ticking")).containsExactly("c2");
            assertThat(cases(second, "whining")).containsExactly("c1");
            assertThat(second.search(SearchQuery.of("standby")).total()).isPositive();
            assertThat(cases(first(), "whining")).isEmpty();

            first().close();
            second.update(List.of(Bench.withdrawn("c2")), THREE);
            assertThat(second.writable()).isTrue();
            assertThat(second.trouble()).isEmpty();
            assertThat(cases(second, "ticking")).isEmpty();
            assertThat(cases(second, "whining")).containsExactly("c1");
        } finally {
            first().close();
        }
        try (SearchIndex third = open()) {
            assertThat(third.reached()).isEqualTo(THREE);
            assertThat(cases(third, "whining")).containsExactly("c1");
            assertThat(cases(third, "ticking")).isEmpty();
        }
    }

    @Test
    void the_second_follows_what_the_first_commits() {
        hold();
        try (SearchIndex second = open()) {
            second.update(List.of(Bench.open("c2", "any", "whining")), TWO);
            first().update(List.of(Bench.open("c2", "any", "whining"), Bench.open("c3", "any", "whining")), THREE);
            second.update(List.of(), TWO);
            assertThat(second.reached()).isEqualTo(THREE);
            assertThat(cases(second, "whining")).containsExactly("c2", "c3");
        } finally {
            first().close();
        }
    }

    @Test
    void the_second_rebuilds_beside_the_first_and_hands_it_down() {
        hold();
        try (SearchIndex second = open()) {
            Reached restored = new Reached(1, "other-store");
            second.rebuild(List.of(Bench.open("c9", "any", "ticking")).iterator(), restored);
            assertThat(cases(second, "ticking")).containsExactly("c9");
            first().close();
            second.update(List.of(Bench.open("c8", "any", "ticking")), TWO);
            assertThat(second.writable()).isTrue();
            assertThat(cases(second, "ticking")).containsExactly("c8", "c9");
        } finally {
            first().close();
        }
        try (SearchIndex third = open()) {
            assertThat(third.reached()).isEqualTo(TWO);
            assertThat(cases(third, "ticking")).containsExactly("c8", "c9");
        }
    }

    @Test
    void other_packs_beside_it_stay_in_memory() {
        hold();
        String edited = Bench.PACK.replace("The start resistor drifts", "The start resistor burns");
        try (SearchIndex other = SearchIndex.open(index(), Bench.knowledge(edited))) {
            assertThat(other.writable()).isFalse();
            assertThat(other.trouble().orElseThrow())
                    .contains("another program keeps this index open")
                    .endsWith("the whole index is in memory");
            assertThat(other.search(SearchQuery.of("burns")).total()).isPositive();
            other.update(List.of(Bench.open("c2", "any", "ticking")), TWO);
            assertThat(cases(other, "ticking")).containsExactly("c2");
        }
        assertThat(cases(first(), "ticking")).containsExactly("c1");
        first().close();
    }

    @Test
    void an_index_remade_for_other_packs_is_left_to_them() {
        hold();
        try (SearchIndex second = open()) {
            first().close();
            String edited = Bench.PACK.replace("The start resistor drifts", "The start resistor burns");
            try (SearchIndex third = SearchIndex.open(index(), Bench.knowledge(edited))) {
                assertThat(third.writable()).isTrue();
                second.update(List.of(Bench.open("c2", "any", "ticking")), TWO);
            }
            second.update(List.of(Bench.open("c3", "any", "ticking")), THREE);
            assertThat(cases(second, "ticking")).containsExactly("c1", "c2", "c3");
            assertThat(second.writable()).isFalse();
            assertThat(second.trouble().orElseThrow()).contains("another program remade this index for other packs");
            try (SearchIndex third = SearchIndex.open(index(), Bench.knowledge(edited))) {
                assertThat(third.writable()).isTrue();
                assertThat(third.reached()).isEqualTo(Reached.NOTHING);
            }
        }
    }

    @Test
    void another_process_holds_the_lock_and_dies() throws Exception {
        fill();
        Process other = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        classPath(),
                        LockHolder.class.getName(),
                        index().toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (InputStream said = other.getInputStream()) {
            assertThat(said.read()).as("the other process took the lock").isEqualTo('L');
            try (SearchIndex here = open()) {
                assertThat(here.writable()).isFalse();
                assertThat(cases(here, "ticking")).containsExactly("c1");
                here.update(List.of(Bench.open("c2", "any", "ticking")), TWO);
                assertThat(cases(here, "ticking")).containsExactly("c1", "c2");
                assertThat(index().resolve("write.lock")).exists();

                other.destroyForcibly();
                assertThat(other.waitFor(20, TimeUnit.SECONDS)).isTrue();
                here.update(List.of(), TWO);
                assertThat(here.writable()).isTrue();
                assertThat(cases(here, "ticking")).containsExactly("c1", "c2");
            }
            try (SearchIndex again = open()) {
                assertThat(again.reached()).isEqualTo(TWO);
            }
        } finally {
            other.destroyForcibly();
        }
    }

    @Test
    void an_interrupt_does_not_close_the_index() throws Exception {
        hold();
        AtomicInteger answers = new AtomicInteger();
        AtomicBoolean kept = new AtomicBoolean(true);
        Thread searcher = new Thread(() -> {
            for (int i = 0; i < 200; i++) {
                Thread.currentThread().interrupt();
                answers.addAndGet(cases(first(), "ticking").size());
                first().suggest("sta", 3);
                kept.compareAndSet(true, Thread.currentThread().isInterrupted());
            }
            first().update(List.of(Bench.open("c2", "any", "ticking")), TWO);
            kept.compareAndSet(true, Thread.currentThread().isInterrupted());
        });
        searcher.start();
        searcher.join();
        assertThat(answers).hasValue(200);
        assertThat(kept).isTrue();
        assertThat(first().writable()).isTrue();
        assertThat(cases(first(), "ticking")).containsExactly("c1", "c2");
        first().close();
    }

    @Test
    void interrupts_at_any_moment_lose_nothing() throws Exception {
        hold();
        int rounds = 60;
        Thread writer = new Thread(() -> {
            for (int i = 2; i <= rounds; i++) {
                first().update(List.of(Bench.open("c" + i, "any", "ticking")), new Reached(i, "e" + i));
            }
        });
        writer.start();
        while (writer.isAlive()) {
            writer.interrupt();
            assertThat(cases(first(), "ticking")).isNotEmpty();
        }
        first().update(List.of(), new Reached(rounds, "e" + rounds));
        assertThat(first().search(SearchQuery.of("ticking").only(HitKind.CASE)).total())
                .isEqualTo(rounds);
        first().close();
        try (SearchIndex again = open()) {
            assertThat(again.reached().position()).isEqualTo(rounds);
        }
    }

    @Test
    void a_rebuild_that_fails_half_way_leaves_the_old_cases() {
        hold();
        Iterator<CaseHistory> broken = Stream.of("c5", "c6")
                .map(id -> {
                    if (id.equals("c6")) {
                        throw new IllegalStateException("the store went away");
                    }
                    return Bench.open(id, "any", "ticking");
                })
                .iterator();
        assertThatThrownBy(() -> first().rebuild(broken, TWO)).hasMessage("the store went away");
        assertThat(cases(first(), "ticking")).containsExactly("c1");
        first().update(List.of(Bench.open("c2", "any", "ticking")), TWO);
        assertThat(cases(first(), "ticking")).containsExactly("c1", "c2");
        assertThat(first().writable()).isTrue();
        first().close();
    }

    @Test
    void searches_go_on_while_the_index_is_changed_and_closed() throws Exception {
        hold();
        AtomicInteger wrong = new AtomicInteger();
        AtomicInteger right = new AtomicInteger();
        List<Thread> searchers = new ArrayList<>();
        for (int t = 0; t < 2; t++) {
            Thread searcher = new Thread(() -> {
                try {
                    while (true) {
                        SearchResult result = first().search(SearchQuery.of("ticking")
                                .only(HitKind.CASE)
                                .page(1000, 0));
                        boolean whole = result.total() == result.reached().position();
                        (whole ? right : wrong).incrementAndGet();
                    }
                } catch (ClosedIndexException e) {
                    right.incrementAndGet();
                } catch (RuntimeException e) {
                    wrong.incrementAndGet();
                }
            });
            searcher.start();
            searchers.add(searcher);
        }
        for (int i = 2; i <= 25; i++) {
            first().update(List.of(Bench.open("c" + i, "any", "ticking")), new Reached(i, "e" + i));
        }
        first().close();
        for (Thread searcher : searchers) {
            searcher.join();
        }
        assertThat(wrong).hasValue(0);
        assertThat(right.get()).isGreaterThan(2);
        deleteAll(); // nothing holds the files any more
    }

    /** Everything this test runs with, be it on the class path or the module path. */
    private static String classPath() {
        return String.join(
                File.pathSeparator,
                Path.of("target", "classes").toString(),
                Path.of("target", "test-classes").toString(),
                System.getProperty("jdk.module.path", ""),
                System.getProperty("java.class.path"));
    }

    /** Takes the lock and waits to be killed. */
    static final class LockHolder {
        public static void main(String[] args) throws Exception {
            try (SearchIndex index = SearchIndex.open(Path.of(args[0]), Bench.knowledge())) {
                System.out.write(index.writable() ? 'L' : '-');
                System.out.flush();
                Thread.sleep(60_000);
            }
        }
    }

    private @Nullable SearchIndex held;

    /** The one that has the lock. */
    private SearchIndex first() {
        return Objects.requireNonNull(held);
    }

    private void hold() {
        fill();
        held = open();
    }

    private void fill() {
        try (SearchIndex index = open()) {
            assertThat(index.writable()).isTrue();
            index.rebuild(List.of(Bench.open("c1", "any", "ticking")).iterator(), ONE);
        }
    }

    private SearchIndex open() {
        return SearchIndex.open(index(), Bench.knowledge());
    }

    private Path index() {
        return home.resolve("index");
    }

    /** The damage is seen at opening, entries are there at once, and the cases come back with the next rebuild. */
    private void expectMended(String damage) {
        try (SearchIndex index = open()) {
            assertThat(index.reached()).as(damage).isEqualTo(Reached.NOTHING);
            assertThat(index.writable()).as(damage).isTrue();
            assertThat(index.search(SearchQuery.of("standby")).total())
                    .as(damage)
                    .isPositive();
            assertThat(cases(index, "ticking")).as(damage).isEmpty();
            index.rebuild(List.of(Bench.open("c1", "any", "ticking")).iterator(), ONE);
        }
        try (SearchIndex again = open()) {
            assertThat(again.reached()).as(damage).isEqualTo(ONE);
            assertThat(cases(again, "ticking")).as(damage).containsExactly("c1");
        }
    }

    private static List<String> cases(SearchIndex index, String word) {
        return index.search(SearchQuery.of(word).only(HitKind.CASE).page(100, 0)).hits().stream()
                .map(SearchHit::id)
                .toList();
    }

    /** Files of the index, the lock left out. */
    private List<String> files() throws IOException {
        try (Stream<Path> all = Files.list(index())) {
            return all.map(p -> p.getFileName().toString())
                    .filter(n -> !n.equals("write.lock"))
                    .sorted()
                    .toList();
        }
    }

    private void deleteAll() throws IOException {
        try (Stream<Path> all = Files.walk(index())) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
