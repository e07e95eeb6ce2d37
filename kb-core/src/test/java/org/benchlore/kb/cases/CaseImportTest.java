package org.benchlore.kb.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.benchlore.kb.cases.CaseStore.Recorded;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

class CaseImportTest {
    static final String WHOLE_CASE = "{\"schema\":\"benchlore/case/1\",\"id\":\"k1\",\"opened\":\"2022-03-04\","
            + "\"scope\":\"bench-supply\",\"complaint\":\"dead\",\"unit\":\"S/N 7\",\"workedOnBefore\":true,"
            + "\"notes\":[{\"text\":\"no 12 V\",\"source\":\"seen\"},"
            + "{\"at\":\"2022-03-04T12:00:00Z\",\"text\":\"lamp dark\",\"findings\":[{\"symptom\":\"power-lamp\",\"state\":\"off\"}]}],"
            + "\"tests\":[{\"test\":\"measure-12v\",\"minutes\":5,\"findings\":[{\"symptom\":\"rail-12v\",\"state\":\"low\"}],\"note\":\"\"}],"
            + "\"conclusion\":{\"cause\":\"dry-bulk-capacitor\",\"certainty\":\"proven\",\"note\":\"\"},"
            + "\"fixes\":[{\"fix\":\"replace-bulk\",\"cause\":\"dry-bulk-capacitor\",\"minutes\":40}],"
            + "\"outcomes\":[{\"outcome\":\"fixed-and-proven\",\"at\":\"2022-03-09\",\"afterDays\":null,\"note\":\"\"}]}";

    private static final Finding READ = Finding.of("rail-12v", "absent");

    private static ImportResult read(CaseStore store, String lines) throws IOException {
        return CaseImport.read(store, new StringReader(lines), "shop.jsonl", "shop", (text, scope) -> List.of(READ));
    }

    private static ImportResult putBack(CaseStore store, String lines) throws IOException {
        return CaseImport.read(
                store, new StringReader(lines), "copy.jsonl", CaseHistory.OWN, (text, scope) -> List.of());
    }

    private static String export(CaseStore store, boolean anonymised) throws IOException {
        StringWriter lines = new StringWriter();
        CaseExport.write(store, lines, anonymised);
        return lines.toString();
    }

    private static CaseStore arbitrary(int seed, int cases) {
        CaseStore store = CaseStore.inMemory();
        Random random = new Random(seed);
        List<CaseEvent> all = new ArrayList<>();
        for (int i = 0; i < cases; i++) {
            all.addAll(new ArbitraryEvents(seed * 1000L + i).ofCase("k" + i, 1 + random.nextInt(20)));
        }
        store.append(new ArbitraryEvents(seed).disturbed(all));
        return store;
    }

    @Test
    void export_of_everything_into_an_empty_store_gives_equal_histories_in_any_order_and_repeated() throws IOException {
        for (int seed = 0; seed < 12; seed++) {
            try (CaseStore from = arbitrary(seed, 25);
                    CaseStore to = CaseStore.inMemory()) {
                List<String> lines =
                        new ArrayList<>(Arrays.asList(export(from, false).split("\n")));
                lines.addAll(lines.subList(0, lines.size() / 3));
                Collections.shuffle(lines, new Random(seed));
                ImportResult result = putBack(to, String.join("\n", lines));
                assertThat(result.problems()).isEmpty();
                assertThat(result.added()).isEqualTo(from.position());
                assertThat(result.known()).isEqualTo(lines.size() - from.position());
                assertThat(to.caseIds(100)).isEqualTo(from.caseIds(100));
                for (String caseId : from.caseIds(100)) {
                    assertThat(to.history(caseId)).isEqualTo(from.history(caseId));
                }
                assertThat(putBack(to, export(from, false)).added()).isZero();
            }
        }
    }

    @Test
    void an_anonymised_export_has_no_words_serial_numbers_or_shop_names_and_keeps_what_teaches() throws IOException {
        try (CaseStore from = arbitrary(3, 40);
                CaseStore to = CaseStore.inMemory()) {
            assertThat(export(from, false)).contains("S/N 0042", "120.5", "no 12 V", "other-shop", "quoted");
            String lines = export(from, true);
            assertThat(lines)
                    .doesNotContain("S/N", "120.5", "no 12 V", "other-shop", "quoted", "😀", "half", "Ω")
                    .doesNotContain("\"note\"", "\"text\"", "\"reason\"", "\"complaint\"", "\"unit\"")
                    .contains("\"origin\":\"elsewhere\"");
            assertThat(putBack(to, lines).clean()).isTrue();
            for (String caseId : from.caseIds(100)) {
                assertThat(to.history(caseId).map(CaseHistory::findings))
                        .isEqualTo(from.history(caseId).map(CaseHistory::findings));
                assertThat(to.history(caseId).map(CaseHistory::outcome))
                        .isEqualTo(from.history(caseId).map(CaseHistory::outcome));
                assertThat(runs(to, caseId)).isEqualTo(runs(from, caseId));
            }
        }
    }

    /** Of the checks in order, whether each is a run and no step. */
    private static List<Boolean> runs(CaseStore store, String caseId) {
        return store.eventsOf(caseId).stream()
                .filter(CaseEvent.Checked.class::isInstance)
                .map(event -> ((CaseEvent.Checked) event).isRun())
                .toList();
    }

    @Test
    void exchange_in_a_circle_with_and_without_words_brings_nothing_back_twice() throws IOException {
        try (CaseStore own = arbitrary(5, 20);
                CaseStore friend = CaseStore.inMemory()) {
            long before = own.position();
            assertThat(read(friend, export(own, true)).clean()).isTrue();
            assertThat(read(friend, export(own, false)).added()).isZero();
            ImportResult back = read(own, export(friend, false));
            assertThat(back.problems()).isEmpty();
            assertThat(back.added()).isZero();
            assertThat(own.position()).isEqualTo(before);
        }
    }

    @Test
    void foreign_cases_bear_the_name_of_the_import() throws IOException {
        try (CaseStore own = CaseStore.inMemory();
                CaseStore friend = CaseStore.inMemory()) {
            putBack(own, WHOLE_CASE);
            read(friend, export(own, false));
            assertThat(own.history("k1").orElseThrow().origin()).isEqualTo(CaseHistory.OWN);
            assertThat(friend.history("k1").orElseThrow().origin()).isEqualTo("shop");
        }
    }

    @Test
    void checks_of_a_whole_case_come_after_its_fixes_unless_they_say_when() throws IOException {
        String line = WHOLE_CASE.replace(
                "\"outcomes\"",
                "\"checks\":[{\"item\":\"Ten cold starts.\",\"result\":\"passed\"},{\"at\":\"2022-03-04T00:30:00Z\","
                        + "\"result\":\"failed\",\"seen\":2,\"hours\":6,\"conditions\":[\"warm\"]}],\"outcomes\"");
        assertThat(CaseJsonTest.schema("urn:benchlore:schema:case:1").validate(line, InputFormat.JSON))
                .isEmpty();
        try (CaseStore store = CaseStore.inMemory()) {
            assertThat(read(store, line).clean()).isTrue();
            assertThat(store.history("k1").orElseThrow().events())
                    .extracting(e -> e.head().eventId())
                    .containsExactly(
                            "k1:opened", "k1:n1", "k1:p2", "k1:n2", "k1:t1", "k1:c", "k1:f1", "k1:p1", "k1:o1");
        }
    }

    @Test
    void a_whole_case_becomes_events_with_ids_from_its_place_and_times_a_minute_apart() throws IOException {
        try (CaseStore store = CaseStore.inMemory()) {
            ImportResult result = read(store, WHOLE_CASE);
            assertThat(result).isEqualTo(new ImportResult(1, 7, 7, 0, 0, List.of(), 0));
            assertThat(store.eventsAfter(0, 10))
                    .extracting(Recorded::event)
                    .extracting(e -> e.head().eventId() + " " + e.head().at())
                    .containsExactly(
                            "k1:opened 2022-03-04T00:00:00Z",
                            "k1:n1 2022-03-04T00:01:00Z",
                            "k1:n2 2022-03-04T12:00:00Z",
                            "k1:t1 2022-03-04T12:01:00Z",
                            "k1:c 2022-03-04T12:02:00Z",
                            "k1:f1 2022-03-04T12:03:00Z",
                            "k1:o1 2022-03-09T00:00:00Z");
            CaseHistory history = store.history("k1").orElseThrow();
            assertThat(history.openedAt()).isEqualTo(Instant.parse("2022-03-04T00:00:00Z"));
            assertThat(history.complaint()).isEqualTo("dead");
            assertThat(history.unit()).isEqualTo("S/N 7");
            assertThat(history.workedOnBefore()).isTrue();
            assertThat(history.causeId()).isEqualTo("dry-bulk-capacitor");
            assertThat(history.certainty()).isEqualTo(Certainty.PROVEN);
            assertThat(history.outcome()).isEqualTo(Outcome.FIXED_AND_PROVEN);
            assertThat(history.findings())
                    .containsExactly(Finding.of("power-lamp", "off"), Finding.of("rail-12v", "low"));
        }
    }

    @Test
    void words_without_findings_are_read_and_reading_them_otherwise_later_is_no_conflict() throws IOException {
        try (CaseStore store = CaseStore.inMemory()) {
            String line =
                    "{\"schema\":\"benchlore/case/1\",\"id\":\"k\",\"opened\":\"2022-03-04\",\"scope\":\"bench-supply\","
                            + "\"notes\":[{\"text\":\"no 12 V\"},{\"text\":\"as told\",\"findings\":[]}]}";
            List<String> asked = new ArrayList<>();
            CaseImport.read(store, new StringReader(line), "f", "shop", (text, scope) -> {
                asked.add(scope + ": " + text);
                return List.of(READ);
            });
            assertThat(asked).containsExactly("bench-supply: no 12 V");
            assertThat(store.history("k").orElseThrow().findings()).containsExactly(READ);
            ImportResult again = putBack(store, line);
            assertThat(again.problems()).isEmpty();
            assertThat(again.known()).isEqualTo(3);
        }
    }

    @Test
    void a_case_that_grew_at_the_end_adds_only_the_new_and_a_changed_one_adds_nothing() throws IOException {
        try (CaseStore store = CaseStore.inMemory()) {
            read(store, WHOLE_CASE);
            String grown = WHOLE_CASE.substring(0, WHOLE_CASE.length() - 2)
                    + ",{\"outcome\":\"came-back\",\"afterDays\":30}]}";
            ImportResult more = read(store, grown);
            assertThat(more.problems()).isEmpty();
            assertThat(more.added()).isEqualTo(1);
            assertThat(store.history("k1").orElseThrow().outcome()).isEqualTo(Outcome.CAME_BACK);
            ImportResult changed = read(
                    store,
                    "\n"
                            + WHOLE_CASE
                                    .replace("no 12 V", "no 5 V")
                                    .replace("\"fixes\":[", "\"fixes\":[" + "{\"fix\":\"clean\",\"cause\":\"dust\"},"));
            assertThat(changed.added()).isZero();
            assertThat(changed.problems())
                    .singleElement()
                    .asString()
                    .startsWith(
                            "shop.jsonl:2: event id 'k1:n1' of case 'k1' is already recorded and says something else; ");
        }
    }

    @Test
    void a_bad_line_stops_nothing_and_is_reported_with_file_line_and_remedy() throws IOException {
        try (CaseStore store = CaseStore.inMemory()) {
            String good = CaseJson.write(CaseStoreTest.noted("a", "k", 1, "x"));
            String lines = "\ufeff" + good + "\r\n"
                    + "not json\n"
                    + "\n"
                    + "{\"schema\":\"benchlore/event/9\"}\n"
                    + "x".repeat(3 << 20) + "\n"
                    + CaseJson.write(CaseStoreTest.noted("a", "k", 1, "y")) + "\n"
                    + WHOLE_CASE.replace("\"low\"", "7") + "\n"
                    + CaseJson.write(CaseStoreTest.noted("b", "k", 1, "x")) + "\n"
                    + good.substring(0, good.length() - 9);
            ImportResult result = read(store, lines);
            assertThat(result.added()).isEqualTo(2);
            assertThat(result.clean()).isFalse();
            assertThat(result.problems().stream().map(ImportProblem::toString))
                    .satisfiesExactly(
                            p -> assertThat(p)
                                    .startsWith("shop.jsonl:2: not valid JSON at column")
                                    .contains("correct"),
                            p -> assertThat(p)
                                    .startsWith("shop.jsonl:4: unknown schema 'benchlore/event/9'")
                                    .contains("update"),
                            p -> assertThat(p)
                                    .startsWith("shop.jsonl:5: the line is longer than")
                                    .contains("shorten"),
                            p -> assertThat(p)
                                    .startsWith("shop.jsonl:6: event id 'a'")
                                    .contains("correction"),
                            p -> assertThat(p)
                                    .startsWith("shop.jsonl:7: test 1, finding 1 has a 'state'")
                                    .contains("quotes"),
                            p -> assertThat(p)
                                    .startsWith("shop.jsonl:9: the text ends in the middle")
                                    .contains("again"));
        }
    }

    @Test
    void every_truncation_of_an_export_gives_all_whole_lines_and_at_most_one_problem() throws IOException {
        try (CaseStore from = arbitrary(8, 3)) {
            String lines = export(from, false);
            for (int cut = 1; cut < lines.length(); cut += 7) {
                String part = lines.substring(0, cut);
                long whole = lines.substring(0, cut + 1)
                        .chars()
                        .filter(c -> c == '\n')
                        .count();
                try (CaseStore to = CaseStore.inMemory()) {
                    ImportResult result = putBack(to, part);
                    assertThat(result.added()).isEqualTo(whole);
                    boolean between = part.endsWith("\n") || lines.charAt(cut) == '\n';
                    assertThat(result.problems()).hasSize(between ? 0 : 1);
                }
            }
        }
    }

    @Test
    void the_list_of_problems_is_bounded_and_the_rest_is_counted() throws IOException {
        try (CaseStore store = CaseStore.inMemory()) {
            ImportResult result = read(store, "?\n".repeat(2500));
            assertThat(result.problems()).hasSize(ImportResult.MOST_PROBLEMS);
            assertThat(result.moreProblems()).isEqualTo(1500);
        }
    }

    @Test
    void a_failing_source_is_the_callers_and_what_was_stored_stays() {
        try (CaseStore store = CaseStore.inMemory()) {
            Reader broken = new Reader() {
                @Override
                public int read(char[] buffer, int offset, int length) throws IOException {
                    throw new IOException("stick pulled");
                }

                @Override
                public void close() {}
            };
            assertThatThrownBy(() -> CaseImport.read(store, broken, "f", "shop", (text, scope) -> List.of()))
                    .isInstanceOf(IOException.class);
            assertThatThrownBy(() -> CaseImport.read(store, broken, "f", " ", (text, scope) -> List.of()))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void an_event_that_outgrows_a_line_under_its_new_name_is_reported_and_stops_nothing() throws IOException {
        int spare = CaseJson.MAX_LINE - CaseJson.write(opened("x")).length();
        String fits = CaseJson.write(opened("x".repeat(1 + spare)));
        assertThat(fits).hasSize(CaseJson.MAX_LINE);
        try (CaseStore store = CaseStore.inMemory()) {
            ImportResult result = CaseImport.read(
                    store,
                    new StringReader(fits + "\n" + CaseJson.write(CaseStoreTest.noted("b", "k2", 1, "x"))),
                    "shop.jsonl",
                    "the shop next door",
                    (text, scope) -> List.of());
            assertThat(result.added()).isEqualTo(1);
            assertThat(result.events()).isEqualTo(1);
            assertThat(result.problems())
                    .singleElement()
                    .satisfies(p -> assertThat(p.toString())
                            .startsWith("shop.jsonl:1: event 'a' takes ")
                            .endsWith("shorten its text or split it"));
        }
        try (CaseStore store = CaseStore.inMemory()) {
            assertThat(putBack(store, fits).clean()).isTrue();
        }
    }

    private static CaseEvent opened(String complaint) {
        CaseEvent.Head head = new CaseEvent.Head("a", "k", Instant.parse("2022-03-04T00:00:00Z"));
        return new CaseEvent.Opened(head, DeviceScope.ANY, complaint, "", CaseHistory.OWN, false);
    }

    @Test
    void likelihoods_that_could_not_be_read_again_are_refused() throws IOException {
        try (CaseStore store = CaseStore.inMemory()) {
            ImportResult result = putBack(
                    store,
                    "{\"schema\":\"benchlore/event/1\",\"id\":\"a\",\"case\":\"k\",\"at\":\"2026-01-01T00:00:00Z\","
                            + "\"kind\":\"noted\",\"source\":\"seen\",\"findings\":[{\"symptom\":\"rail-12v\","
                            + "\"likelihoods\":{\"low\":1e-200,\"absent\":1e200}}]}");
            assertThat(result.problems())
                    .singleElement()
                    .satisfies(p ->
                            assertThat(p.toString()).contains("rail-12v=low", "next to impossible", "leave it out"));
            assertThat(store.eventsAfter(0, 10)).isEmpty();
        }
    }

    @Test
    void a_listener_that_throws_does_not_stop_an_import() {
        StringBuilder lines = new StringBuilder();
        int cases = 5000;
        for (int i = 0; i < cases; i++) {
            lines.append(CaseJson.write(CaseStoreTest.noted("e" + i, "k" + i, 1, "")))
                    .append('\n');
        }
        try (CaseStore store = CaseStore.inMemory()) {
            store.onAppended(event -> {
                throw new IllegalStateException("the lamp is out");
            });
            assertThatThrownBy(() -> putBack(store, lines.toString()))
                    .isInstanceOf(ListenerException.class)
                    .hasMessageContaining("all is recorded");
            assertThat(store.caseCount()).isEqualTo(cases);
        }
    }

    @Test
    void problems_told_elsewhere_are_problems_too() {
        try (CaseStore store = CaseStore.inMemory()) {
            CaseIntake intake = new CaseIntake(store, "shop.jsonl", "shop");
            intake.reportMore(1);
            assertThat(intake.finish().clean()).isFalse();
        }
    }

    @Test
    void a_unit_is_bounded_wherever_an_event_comes_in() throws IOException {
        String unit = "x".repeat(CaseEvent.Opened.MAX_UNIT);
        try (CaseStore store = CaseStore.inMemory()) {
            ImportResult result = putBack(
                    store,
                    WHOLE_CASE.replace("S/N 7", unit + "x") + "\n"
                            + WHOLE_CASE.replace("S/N 7", unit).replace("k1", "k2"));
            assertThat(result.cases()).isEqualTo(1);
            assertThat(result.problems())
                    .singleElement()
                    .satisfies(p -> assertThat(p.toString())
                            .startsWith("copy.jsonl:1: line: unit of case 'k1' is 201 characters long; ")
                            .contains("200"));
            CaseEvent.Head head = new CaseEvent.Head("a", "k3", Instant.parse("2022-03-04T00:00:00Z"));
            CaseEvent opened = new CaseEvent.Opened(head, DeviceScope.ANY, "", unit + "x", CaseHistory.OWN, false);
            assertThatThrownBy(() -> store.append(List.of(opened)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("unit of case 'k3'");
            CaseEvent odd = new CaseEvent.Opened(head, DeviceScope.parse(unit + "x"), "", "", CaseHistory.OWN, false);
            assertThatThrownBy(() -> store.append(List.of(odd)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("device scope of case 'k3' is 201 characters long; ");
            // stored before there was a bound
            assertThat(CaseJson.read(CaseJson.write(opened))).isEqualTo(opened);
        }
    }
}
