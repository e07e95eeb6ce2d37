package org.benchlore.kb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.cases.StoreException;
import org.benchlore.kb.knowledge.BadPackException;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.ranking.Influence;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.report.Sheets;
import org.benchlore.kb.search.SearchQuery;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KnowledgeBaseTest {
    private static KnowledgeBase bench() {
        return KnowledgeBase.builder().packs(List.of(MemoryTest.PACK)).open();
    }

    private static List<CaseEvent> fixed(String id, String state, String causeId) {
        Instant at = Instant.parse("2026-01-05T10:00:00Z");
        return List.of(
                new CaseEvent.Opened(
                        new CaseEvent.Head(id + "-0", id, at), DeviceScope.ANY, "", "", CaseHistory.OWN, false),
                new CaseEvent.Noted(
                        new CaseEvent.Head(id + "-1", id, at.plusSeconds(60)),
                        "",
                        Reading.Source.SEEN,
                        List.of(Finding.of("lamp", state))),
                new CaseEvent.Concluded(
                        new CaseEvent.Head(id + "-2", id, at.plusSeconds(120)), causeId, Certainty.PROVEN, ""),
                new CaseEvent.Ended(new CaseEvent.Head(id + "-3", id, at.plusSeconds(180)), Outcome.FIXED, null, ""));
    }

    @Test
    void a_listener_hears_of_what_is_imported_as_of_what_is_recorded_and_of_nothing_twice() throws IOException {
        StringBuilder exported = new StringBuilder();
        try (KnowledgeBase other = bench()) {
            other.record(fixed("theirs", "dark", "lead-broken"));
            other.exportCases(exported, false);
        }
        try (KnowledgeBase kb = bench()) {
            List<String> heard = new ArrayList<>();
            kb.onRecorded(event -> heard.add(event.head().eventId()));
            kb.record(fixed("ours", "lit", "core-loose"));
            kb.importCases(new StringReader(exported.toString()), "theirs.jsonl", "elsewhere");
            kb.importCases(new StringReader(exported.toString()), "theirs.jsonl", "elsewhere");
            assertThat(heard)
                    .containsExactly(
                            "ours-0", "ours-1", "ours-2", "ours-3", "theirs-0", "theirs-1", "theirs-2", "theirs-3");
        }
    }

    @Test
    void the_cases_behind_a_rare_cause_are_found_among_many_of_another_and_by_words_alone() {
        try (KnowledgeBase kb = bench()) {
            List<CaseEvent> common = new ArrayList<>();
            for (int i = 0; i < 300; i++) {
                common.addAll(fixed("common-" + i, "dark", "lead-broken"));
            }
            kb.record(common);
            kb.record(fixed("rare", "lit", "core-loose"));

            assertThat(kb.casesBehind(RankingQuery.of(List.of(Finding.of("lamp", "dark"))), "core-loose", 5))
                    .extracting(Influence::caseId)
                    .containsExactly("rare");
            RankingQuery words = RankingQuery.of(List.of()).inWords("clamp");
            assertThat(kb.casesBehind(words, "core-loose", 5))
                    .extracting(Influence::caseId)
                    .containsExactly("rare");
        }
    }

    @Test
    void every_pack_file_that_cannot_be_read_is_told_at_once(@TempDir Path dir) {
        KnowledgeBaseBuilder builder =
                KnowledgeBase.builder().pack(dir.resolve("a.yaml")).pack(dir.resolve("b.yaml"));
        assertThatThrownBy(builder::open)
                .isInstanceOf(BadPackException.class)
                .hasMessageContainingAll("a.yaml:1:1: there is no such file", "b.yaml:1:1");
    }

    @Test
    void no_case_is_behind_a_cause_that_such_a_unit_cannot_have() {
        String yaml =
                MemoryTest.PACK.yaml().replace("    name: Core loose\n", "    name: Core loose\n    scope: radio\n");
        try (KnowledgeBase kb = KnowledgeBase.builder()
                .packs(List.of(new PackSource("scoped.yaml", yaml)))
                .open()) {
            kb.record(fixed("radio", "dark", "core-loose"));
            RankingQuery lamp =
                    new RankingQuery(List.of(Finding.of("lamp", "dark")), DeviceScope.parse("torch"), false);
            assertThat(kb.casesBehind(lamp, "core-loose", 5)).isEmpty();
        }
    }

    @Test
    void a_search_that_comes_too_late_opens_no_index_again(@TempDir Path home) {
        try (CaseStore store = CaseStore.open(home)) {
            IndexFollower index = new IndexFollower(MemoryTest.KNOWLEDGE, store, home);
            index.close();
            assertThatThrownBy(() -> index.search(SearchQuery.of("lamp")))
                    .isInstanceOf(ClosedKnowledgeBaseException.class);
            assertThat(Files.exists(home.resolve("index"))).isFalse();
        }
    }

    @Test
    void who_rebuilds_when_it_closes_is_told_that_it_is_closed() throws InterruptedException {
        KnowledgeBase kb = bench();
        for (int i = 0; i < 50; i++) {
            kb.record(fixed("case-" + i, "dark", "lead-broken"));
        }
        List<Throwable> told = new CopyOnWriteArrayList<>();
        CountDownLatch begun = new CountDownLatch(1);
        Thread other = new Thread(() -> {
            while (true) {
                kb.rebuild();
                begun.countDown();
            }
        });
        other.setUncaughtExceptionHandler((thread, thrown) -> told.add(thrown));
        other.start();
        begun.await();
        kb.close();
        other.join();
        assertThat(told).singleElement().isInstanceOf(ClosedKnowledgeBaseException.class);
    }

    @Test
    void who_is_under_way_when_it_closes_is_told_that_it_is_closed() throws IOException {
        StringBuilder exported = new StringBuilder();
        KnowledgeBase kb = bench();
        kb.record(fixed("a", "dark", "lead-broken"));
        kb.exportCases(exported, false);
        Reader closing = new StringReader(exported.toString()) {
            @Override
            public int read(char[] to, int from, int length) throws IOException {
                kb.close();
                return super.read(to, from, length);
            }
        };
        assertThatThrownBy(() -> kb.importCases(closing, "a.jsonl", CaseHistory.OWN))
                .isInstanceOf(ClosedKnowledgeBaseException.class);
    }

    private static List<CaseEvent> cured(String id, Outcome outcome) {
        List<CaseEvent> all = fixed(id, "dark", "lead-broken");
        return List.of(
                all.get(0),
                all.get(1),
                new CaseEvent.FixApplied(all.get(2).head(), "new-lead", CaseEvent.FixApplied.UNKNOWN_CAUSE, null, ""),
                new CaseEvent.Ended(all.get(3).head(), outcome, null, ""));
    }

    private static Ranking.RankedCause cause(Ranking ranking, String id) {
        return ranking.causes().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void only_cases_that_ended_with_a_cause_are_counted_as_its_cases() {
        try (KnowledgeBase kb = bench()) {
            RankingQuery dark = RankingQuery.of(List.of(Finding.of("lamp", "dark")));
            double packs = cause(kb.rank(dark), "lead-broken").probability();
            kb.record(cured("cured", Outcome.FIXED));
            assertThat(cause(kb.rank(dark), "lead-broken").probability())
                    .as("it taught something")
                    .isGreaterThan(packs);
            assertThat(cause(kb.rank(dark), "lead-broken").cases()).isZero();
            kb.record(fixed("ended", "dark", "lead-broken"));
            assertThat(cause(kb.rank(dark), "lead-broken").cases()).isEqualTo(1);
            kb.record(new CaseEvent.Ended(
                    new CaseEvent.Head("ended-4", "ended", Instant.parse("2026-01-06T10:00:00Z")),
                    Outcome.NOT_FIXED,
                    null,
                    ""));
            assertThat(cause(kb.rank(dark), "lead-broken").cases())
                    .as("the cause was held to be it, and was not")
                    .isZero();
        }
    }

    @Test
    void a_case_does_not_speak_for_itself() {
        try (KnowledgeBase kb = bench()) {
            List<CaseEvent> told = fixed("a", "lit", "core-loose");
            CaseHistory open = CaseHistory.fold(told.subList(0, 2)).orElseThrow();
            Ranking before = kb.rank(kb.query(open));
            kb.record(told);
            RankingQuery itself = kb.query(kb.history("a").orElseThrow());
            assertThat(kb.rank(itself)).isEqualTo(before);
            assertThat(kb.casesBehind(itself, "core-loose", 5)).isEmpty();
            assertThat(kb.casesBehind(itself.about(""), "core-loose", 5)).hasSize(1);
            assertThat(cause(kb.rank(itself.about("")), "core-loose").probability())
                    .isGreaterThan(cause(before, "core-loose").probability());
            Ranking.RankedCause leader = before.causes().get(0);
            assertThat(kb.sheet("a", Sheets.Kind.CASE, Sheets.Format.MARKDOWN))
                    .hasValueSatisfying(sheet -> assertThat(sheet)
                            .contains(String.format(Locale.ROOT, "%.0f %%", 100 * leader.probability())));
        }
    }

    @Test
    void who_only_reads_does_not_rebuild(@TempDir Path home) {
        KnowledgeBase.builder()
                .packs(List.of(MemoryTest.PACK))
                .home(home)
                .open()
                .close();
        try (KnowledgeBase kb = KnowledgeBase.builder()
                .packs(List.of(MemoryTest.PACK))
                .home(home)
                .readOnly()
                .open()) {
            assertThatThrownBy(kb::rebuild)
                    .isInstanceOfSatisfying(
                            StoreException.class,
                            e -> assertThat(e.trouble()).isEqualTo(StoreException.Trouble.READ_ONLY))
                    .hasMessageContaining("opened for reading only; open it for writing");
        }
    }

    @Test
    void a_home_that_is_a_file_is_told_before_any_pack_is_read(@TempDir Path dir) throws IOException {
        Path file = Files.writeString(dir.resolve("bench"), "not a directory");
        PackSource bad = new PackSource("bad.yaml", "pack: [");
        assertThatThrownBy(() ->
                        KnowledgeBase.builder().packs(List.of(bad)).home(file).open())
                .isInstanceOf(StoreException.class)
                .hasMessageContainingAll(file + ": is a file and no directory", "choose another home");
    }

    @Test
    void a_builder_opens_once_but_may_try_again_after_it_failed(@TempDir Path dir) throws IOException {
        Path home = Files.createFile(dir.resolve("bench"));
        KnowledgeBaseBuilder builder =
                KnowledgeBase.builder().packs(List.of(MemoryTest.PACK)).home(home);
        assertThatThrownBy(builder::open).isInstanceOf(StoreException.class);
        Files.delete(home);
        builder.open().close();
        assertThatThrownBy(builder::open)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("make another");
    }
}
