package org.benchlore.kb.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.type;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent.Head;
import org.benchlore.kb.cases.CaseStore.Recorded;
import org.benchlore.kb.cases.StoreException.Trouble;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CaseStoreTest {
    @TempDir
    Path home;

    static CaseEvent noted(String id, String caseId, int day, String text) {
        return new CaseEvent.Noted(
                new Head(id, caseId, Instant.parse("2026-03-01T09:00:00Z").plus(Duration.ofDays(day))),
                text,
                Reading.Source.SEEN,
                List.of());
    }

    private static CaseEvent opened(String caseId, int day, String origin) {
        return new CaseEvent.Opened(
                new Head(
                        caseId + ":o",
                        caseId,
                        Instant.parse("2026-03-01T09:00:00Z").plus(Duration.ofDays(day))),
                DeviceScope.ANY,
                "",
                "",
                origin,
                false);
    }

    private static List<CaseEvent> events(List<Recorded> recorded) {
        return recorded.stream().map(Recorded::event).toList();
    }

    private static void tamper(Path file, String sql) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static void assertTrouble(Runnable action, Trouble trouble, String... parts) {
        assertThatThrownBy(action::run)
                .asInstanceOf(type(StoreException.class))
                .satisfies(e -> assertThat(e.trouble()).isEqualTo(trouble))
                .extracting(Throwable::getMessage)
                .asString()
                .contains(parts);
    }

    @Test
    void what_was_appended_comes_back_after_reopening_with_gapless_positions() {
        List<CaseEvent> all = new ArrayList<>();
        try (CaseStore store = CaseStore.open(home)) {
            for (int i = 0; i < 30; i++) {
                List<CaseEvent> events = new ArbitraryEvents(i).ofCase("k" + i, 1 + i % 7);
                assertThat(events(store.append(events))).isEqualTo(events);
                all.addAll(events);
            }
        }
        try (CaseStore store = CaseStore.open(home)) {
            List<Recorded> read = store.eventsAfter(0, 1000);
            assertThat(events(read)).isEqualTo(all);
            assertThat(read)
                    .extracting(Recorded::position)
                    .startsWith(1L, 2L, 3L)
                    .endsWith((long) all.size());
            assertThat(store.position()).isEqualTo(all.size());
            assertThat(store.eventIdAt(2)).hasValue(all.get(1).head().eventId());
            assertThat(store.eventIdAt(all.size() + 1)).isEmpty();
            assertThat(store.caseCount()).isEqualTo(30);
            for (int i = 0; i < 30; i++) {
                List<CaseEvent> events = new ArbitraryEvents(i).ofCase("k" + i, 1 + i % 7);
                assertThat(store.history("k" + i)).isEqualTo(CaseHistory.fold(events));
            }
        }
    }

    @Test
    void a_follower_reads_on_from_its_position() {
        try (CaseStore store = CaseStore.inMemory()) {
            store.append(List.of(noted("a", "k", 1, ""), noted("b", "k", 2, ""), noted("c", "k", 3, "")));
            assertThat(store.eventsAfter(0, 2))
                    .extracting(r -> r.event().head().eventId())
                    .containsExactly("a", "b");
            assertThat(store.eventsAfter(2, 2))
                    .extracting(r -> r.event().head().eventId())
                    .containsExactly("c");
            assertThat(store.eventsAfter(3, 2)).isEmpty();
            assertThatThrownBy(() -> store.eventsAfter(0, 0)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void the_same_event_again_changes_nothing() {
        try (CaseStore store = CaseStore.open(home)) {
            CaseEvent a = noted("a", "k", 1, "x");
            CaseEvent b = noted("b", "k", 2, "y");
            assertThat(events(store.append(List.of(a, a)))).containsExactly(a);
            assertThat(events(store.append(List.of(a, b)))).containsExactly(b);
            assertThat(store.append(List.of(b, a))).isEmpty();
            assertThat(store.append(List.of())).isEmpty();
            assertThat(store.position()).isEqualTo(2);
        }
    }

    @Test
    void where_it_came_from_does_not_make_it_another_event() {
        try (CaseStore store = CaseStore.inMemory()) {
            store.append(List.of(opened("k", 1, CaseHistory.OWN)));
            assertThat(store.append(List.of(opened("k", 1, "friend")))).isEmpty();
            assertThat(store.history("k").orElseThrow().origin()).isEqualTo(CaseHistory.OWN);
        }
    }

    @Test
    void another_body_under_a_known_id_is_refused_and_nothing_of_the_batch_is_stored() {
        try (CaseStore store = CaseStore.open(home)) {
            store.append(List.of(noted("a", "k", 1, "x")));
            assertThatThrownBy(() -> store.append(List.of(noted("b", "k", 2, ""), noted("a", "k2", 1, "z"))))
                    .isInstanceOf(EventConflictException.class)
                    .hasMessageContainingAll(
                            "cases.db", "'a'", "'k2'", "in case 'k'", "own id", "nothing of the batch");
            assertThatThrownBy(() -> store.append(List.of(noted("c", "k", 2, "1"), noted("c", "k", 2, "2"))))
                    .isInstanceOf(EventConflictException.class);
            assertThat(store.position()).isEqualTo(1);
            assertThat(store.append(List.of(noted("b", "k", 2, "")))).hasSize(1);
        }
    }

    @Test
    void cases_are_listed_newest_first_page_by_page_in_whatever_order_they_came() {
        try (CaseStore store = CaseStore.open(home)) {
            store.append(List.of(
                    noted("n1", "k2", 9, ""),
                    opened("k1", 5, CaseHistory.OWN),
                    opened("k2", 2, CaseHistory.OWN),
                    opened("k4", 7, CaseHistory.OWN),
                    opened("k3", 5, CaseHistory.OWN)));
            assertThat(store.caseIds(10)).containsExactly("k4", "k3", "k1", "k2");
            assertThat(store.caseIds(2)).containsExactly("k4", "k3");
            assertThat(store.caseIds(2, "k3")).containsExactly("k1", "k2");
            assertThat(store.caseIds(2, "k2")).isEmpty();
            assertThat(store.caseIds(2, "unheard-of")).isEmpty();
            assertThat(store.hasCase("k4")).isTrue();
            assertThat(store.hasCase("k5")).isFalse();
            assertThat(store.eventsOf("k2")).extracting(e -> e.head().eventId()).containsExactly("k2:o", "n1");
        }
    }

    @Test
    void two_stores_on_one_home_see_each_other_and_a_reader_sees_both() {
        try (CaseStore one = CaseStore.open(home);
                CaseStore two = CaseStore.open(home);
                CaseStore reader = CaseStore.openReadOnly(home)) {
            one.append(List.of(noted("a", "k", 1, "")));
            two.append(List.of(noted("b", "k", 2, "")));
            for (CaseStore store : List.of(one, two, reader)) {
                assertThat(store.eventsOf("k")).hasSize(2);
            }
            assertTrouble(
                    () -> reader.append(List.of(noted("c", "k", 3, ""))), Trouble.READ_ONLY, "cases.db", "for writing");
        }
    }

    @Test
    void a_home_may_have_an_odd_name_and_be_deleted_after_close() throws Exception {
        Path odd = home.resolve("bench ?mode=memory #1 100% ü");
        try (CaseStore store = CaseStore.open(odd)) {
            store.append(List.of(noted("a", "k", 1, "")));
        }
        try (Stream<Path> files = Files.list(odd)) {
            assertThat(files).containsExactly(odd.resolve(CaseStore.FILE));
        }
        try (CaseStore store = CaseStore.openReadOnly(odd)) {
            assertThat(store.position()).isEqualTo(1);
        }
        Files.deleteIfExists(odd.resolve(CaseStore.FILE));
    }

    @Test
    void a_closed_store_says_so_and_closing_again_does_nothing() {
        CaseStore store = CaseStore.open(home);
        store.close();
        store.close();
        assertThatThrownBy(store::position)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("open it again");
        assertThatThrownBy(() -> store.append(List.of(noted("a", "k", 1, ""))))
                .isInstanceOf(IllegalStateException.class);
    }

    @Test
    void a_newer_schema_is_left_alone() throws Exception {
        CaseStore.open(home).close();
        tamper(home.resolve(CaseStore.FILE), "update benchlore_store set schema_version = 7");
        String message = "cases.db: written by a newer version (schema 7, this one knows 2); update, or open a copy";
        assertTrouble(() -> CaseStore.open(home).close(), Trouble.NEWER, message);
        assertTrouble(() -> CaseStore.openReadOnly(home).close(), Trouble.NEWER, message);
    }

    @Test
    void a_store_of_the_first_schema_is_read_and_once_written_to_kept_from_older_versions() throws Exception {
        try (CaseStore store = CaseStore.open(home)) {
            store.append(List.of(noted("a", "k", 1, "")));
        }
        tamper(home.resolve(CaseStore.FILE), "update benchlore_store set schema_version = 1");
        try (CaseStore store = CaseStore.openReadOnly(home)) {
            assertThat(store.position()).isEqualTo(1);
        }
        try (CaseStore store = CaseStore.open(home)) {
            assertThat(store.position()).isEqualTo(1);
        }
        try (Connection file = DriverManager.getConnection("jdbc:sqlite:" + home.resolve(CaseStore.FILE));
                Statement statement = file.createStatement();
                var row = statement.executeQuery("select schema_version from benchlore_store")) {
            assertThat(row.getInt(1)).isEqualTo(2);
        }
    }

    @Test
    void what_is_not_a_store_is_left_alone() throws Exception {
        Path file = home.resolve(CaseStore.FILE);
        Files.writeString(file, "these are the cases, on paper".repeat(99));
        String before = Files.readString(file);
        assertTrouble(
                () -> CaseStore.open(home).close(), Trouble.NOT_A_STORE, "cases.db", "not a case store", "restore");
        assertTrouble(() -> CaseStore.openReadOnly(home).close(), Trouble.NOT_A_STORE, "cases.db", "restore");
        assertThat(Files.readString(file)).isEqualTo(before);
        Files.delete(file);
        tamper(file, "create table spare_parts (name text)");
        assertTrouble(() -> CaseStore.open(home).close(), Trouble.NOT_A_STORE, "something else", "another home");
        assertTrouble(() -> CaseStore.openReadOnly(home).close(), Trouble.NOT_A_STORE, "something else");
    }

    @Test
    void a_home_that_cannot_be_made_and_a_missing_store_say_what_to_do() throws Exception {
        Path blocked = Files.writeString(home.resolve("file"), "x").resolve("bench");
        assertTrouble(
                () -> CaseStore.open(blocked).close(),
                Trouble.NO_ACCESS,
                blocked.toString(),
                "cannot make",
                "permissions");
        assertTrouble(() -> CaseStore.openReadOnly(home).close(), Trouble.MISSING, "cases.db", "no case store");
        Files.createDirectory(home.resolve(CaseStore.FILE)); // a directory where the file should be
        assertTrouble(() -> CaseStore.open(home).close(), Trouble.NO_ACCESS, "cases.db", "permissions");
    }

    @Test
    void a_home_that_may_only_be_read_is_refused_at_opening_and_read_all_the_same() throws Exception {
        try (CaseStore store = CaseStore.open(home)) {
            store.append(List.of(noted("a", "k", 1, "")));
        }
        Path file = home.resolve(CaseStore.FILE);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
        Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("r-xr-xr-x"));
        try {
            assumeFalse(Files.isWritable(file), "root may write anything");
            assertTrouble(
                    () -> CaseStore.open(home).close(), Trouble.NO_ACCESS, "cases.db", "permissions", "another home");
            try (CaseStore store = CaseStore.openReadOnly(home)) {
                assertThat(store.eventsOf("k")).hasSize(1);
            }
        } finally {
            Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    @Test
    void damage_inside_the_file_is_told_and_not_read_past() throws Exception {
        Path file = home.resolve(CaseStore.FILE);
        try (CaseStore store = CaseStore.open(home)) {
            for (int i = 0; i < 50; i++) {
                store.append(List.of(noted("a" + i, "k", i % 9, "x".repeat(1000))));
            }
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.write(ByteBuffer.wrap(new byte[20_000]), channel.size() - 20_000);
        }
        assertTrouble(
                () -> {
                    try (CaseStore store = CaseStore.openReadOnly(home)) {
                        store.eventsAfter(0, 100);
                    }
                },
                Trouble.NOT_A_STORE,
                "cases.db",
                "damaged",
                "restore a copy");
    }

    @Test
    void an_event_that_cannot_be_read_is_told() throws Exception {
        try (CaseStore store = CaseStore.open(home)) {
            store.append(List.of(noted("a", "k", 1, "")));
            tamper(home.resolve(CaseStore.FILE), "update event set body = replace(body, 'seen', 'felt')");
            assertTrouble(() -> store.eventsOf("k"), Trouble.NOT_A_STORE, "cases.db", "\"felt\"", "restore a copy");
        }
    }

    @Test
    void an_error_in_mid_writing_leaves_the_store_to_be_written() {
        try (CaseStore store = CaseStore.open(home)) {
            store.append(List.of(noted("a", "k", 1, "")));
            List<CaseEvent> again = List.of(noted("b", "k", 1, ""), noted("a", "k", 1, ""));
            CaseStore.Group group = new CaseStore.Group(again, (recorded, given) -> {
                throw new OutOfMemoryError("made up");
            });
            assertThatThrownBy(() -> store.appendGroups(List.of(group), failed -> {}))
                    .isInstanceOf(OutOfMemoryError.class);
            assertThat(store.append(List.of(noted("b", "k", 1, "")))).hasSize(1);
        }
    }

    @Test
    void a_store_locked_beyond_the_patience_says_so_and_recovers() throws Exception {
        try (CaseStore store = CaseStore.open(home, Duration.ofMillis(50));
                Connection other = DriverManager.getConnection("jdbc:sqlite:" + home.resolve(CaseStore.FILE));
                Statement statement = other.createStatement()) {
            store.append(List.of(noted("a", "k", 1, "")));
            statement.execute("begin immediate");
            assertTrouble(
                    () -> store.append(List.of(noted("b", "k", 1, ""))),
                    Trouble.BUSY,
                    "cases.db",
                    "another program",
                    "try");
            assertThat(store.eventsAfter(0, 10)).hasSize(1); // reading goes on
            statement.execute("rollback");
            assertThat(store.append(List.of(noted("b", "k", 1, "")))).hasSize(1);
        }
    }

    @Test
    void a_full_disk_loses_nothing_acknowledged_and_recovers() throws Exception {
        Path file = home.resolve(CaseStore.FILE);
        Connection writing = SqliteEngine.openWriter(file, Duration.ofSeconds(1));
        List<CaseEvent> acknowledged = new ArrayList<>();
        try (CaseStore store =
                StoreOpening.over(writing, SqliteEngine.openReader(file, Duration.ofSeconds(1)), file.toString())) {
            pragma(writing, "pragma max_page_count=60");
            assertTrouble(
                    () -> {
                        for (int i = 0; i < 10_000; i++) {
                            List<CaseEvent> pair =
                                    List.of(noted("a" + i, "k", i % 9, "x".repeat(300)), noted("b" + i, "k", 1, ""));
                            store.append(pair);
                            acknowledged.addAll(pair);
                        }
                    },
                    Trouble.FULL,
                    "cases.db",
                    "no room",
                    "free some space");
            assertThat(acknowledged).hasSizeGreaterThan(50);
            assertThat(events(store.eventsAfter(0, 100_000))).isEqualTo(acknowledged);
            pragma(writing, "pragma max_page_count=100000");
            store.append(List.of(noted("late", "k", 1, "")));
        }
        try (CaseStore store = CaseStore.open(home)) {
            assertThat(store.position()).isEqualTo(acknowledged.size() + 1);
        }
    }

    private static void pragma(Connection connection, String sql) throws Exception {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void an_event_that_is_too_long_is_refused_before_anything_is_stored() {
        try (CaseStore store = CaseStore.inMemory()) {
            assertThatThrownBy(() ->
                            store.append(List.of(noted("a", "k", 1, ""), noted("b", "k", 1, "x".repeat(1 << 20)))))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContainingAll("'b'", "shorten");
            assertThat(store.position()).isZero();
        }
    }

    @Test
    void an_interrupted_thread_does_not_close_the_store_for_others() {
        try (CaseStore store = CaseStore.open(home)) {
            Thread.currentThread().interrupt();
            store.append(List.of(noted("a", "k", 1, "")));
            assertThat(Thread.interrupted()).isTrue();
            assertThat(store.eventsOf("k")).hasSize(1);
        }
    }
}
