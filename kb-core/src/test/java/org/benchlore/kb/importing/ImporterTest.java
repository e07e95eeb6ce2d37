package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseExport;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.importing.ImportDraft.Likeness;
import org.junit.jupiter.api.Test;

/** Storing what was reviewed: nothing twice, nothing unasked. */
class ImporterTest {
    private static final String DIARY = """
            12.3.2024 corvane 300 sn C3-0417. ring lit, no 12V. found start resistor open, replaced, ran two days, ok
            13.3.2024 corvane 310 sn C3-0981 disc not read, lens dirty. cleaned lens, plays again
            15.3.2024 big amp, no sound at all on both channels. replaced C412, ran two days, ok
            """;

    private final CaseStore store = CaseStore.inMemory();
    private final Importer importer = Workshop.importer(store);

    private ImportReview review(String text, String source) {
        return Workshop.review(importer, text, source, ImportSettings.of(ImportKind.DIARY));
    }

    private ImportResult store(String text, String source) {
        return importer.store(review(text, source), CaseHistory.OWN, false);
    }

    private List<CaseHistory> cases() {
        return store.caseIds(100).stream()
                .flatMap(id -> store.history(id).stream())
                .toList();
    }

    @Test
    void a_review_stores_nothing() {
        review(DIARY, "diary.txt");
        assertThat(store.caseCount()).isZero();
    }

    @Test
    void the_same_diary_twice_changes_nothing_wherever_it_lies() {
        ImportResult first = store(DIARY, "diary.txt");
        assertThat(first.cases()).isEqualTo(3);
        assertThat(first.added()).isEqualTo(first.events()).isPositive();
        long position = store.position();

        ImportReview again = review(DIARY, "/elsewhere/diary.txt");
        assertThat(again.known()).isEqualTo(3);
        ImportResult second = importer.store(again, CaseHistory.OWN, true);

        assertThat(second.added()).isZero();
        assertThat(second.known()).isEqualTo(first.events());
        assertThat(store.position()).isEqualTo(position);
    }

    @Test
    void of_reviewed_lines_of_json_so_many_cases_are_read_as_of_any_source() {
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i <= Importer.MOST_CASES; i++) {
            lines.append("{\"schema\":\"benchlore/event/1\",\"id\":\"e")
                    .append(i)
                    .append("\",\"case\":\"c")
                    .append(i)
                    .append("\",\"at\":\"2024-03-12T10:00:00Z\",\"kind\":\"opened\"}\n");
        }
        ImportReview review =
                Workshop.review(importer, lines.toString(), "many.jsonl", ImportSettings.of(ImportKind.JSON));
        assertThat(review.drafts()).hasSize(Importer.MOST_CASES);
        assertThat(review.problems()).singleElement().satisfies(problem -> {
            assertThat(problem.line()).isEqualTo(Importer.MOST_CASES + 1);
            assertThat(problem.what()).contains("more than 100000 cases");
        });
    }

    @Test
    void a_diary_that_grew_brings_the_new_cases_only() {
        store(DIARY, "diary.txt");
        ImportResult grown = store(DIARY + "16.3.2024 dulmar 5 belt slack. new belts, ok\n", "diary.txt");
        assertThat(grown.added()).isEqualTo(5); // opened, noted, fix, ended, and the cause by the cure
        assertThat(store.caseCount()).isEqualTo(4);
    }

    @Test
    void near_duplicates_of_stored_cases_are_shown_and_left_out_unless_wanted() {
        store(DIARY, "diary.txt");
        String copy = "12.3.2024 corvane 300, sn C3-0417. Ring lit, no 12V. Found start resistor open, replaced it,"
                + " ran two days, ok\n20.3.2024 corvane 300 sn C3-0417: no sound\n";
        ImportReview review = review(copy, "copy of diary.txt");

        Likeness twin = review.drafts().get(0).likenesses().get(0);
        assertThat(twin.duplicate()).isTrue();
        assertThat(twin.share()).isBetween(0.7, 0.999);
        assertThat(store.history(twin.caseId()).orElseThrow().unit()).isEqualTo("C3-0417");
        Likeness visit = review.drafts().get(1).likenesses().get(0);
        assertThat(visit.sameUnit()).isTrue();
        assertThat(visit.duplicate()).isFalse();

        ImportResult skipped = importer.store(review, CaseHistory.OWN, false);
        assertThat(skipped.leftOut()).isEqualTo(1);
        assertThat(store.caseCount()).isEqualTo(4);
        ImportResult kept = importer.store(review, CaseHistory.OWN, true);
        assertThat(kept.leftOut()).isZero();
        assertThat(store.caseCount()).isEqualTo(5);
    }

    @Test
    void near_duplicates_within_a_source_are_found_and_other_units_are_not_duplicates() {
        ImportReview review = review("""
                15.3.2024 big amp, no sound at all on both channels. replaced C412, ran two days, ok
                15.3.2024 big amp, no sound at all on both channels. replaced C412, ran two days, ok
                15.6.2024 big amp, no sound at all on both channels. replaced C412, ran two days, ok
                15.3.2024 sn A1 small tuner, lamp dark and no 12 V since the move. new mains fuse, works again
                15.3.2024 sn A2 small tuner, lamp dark and no 12 V since the move. new mains fuse, works again
                """, "d.txt");
        assertThat(review.drafts())
                .extracting(ImportDraft::duplicate)
                .containsExactly(false, true, false, false, false);
        assertThat(review.drafts().get(1).likenesses().get(0).line()).isEqualTo(1);
        assertThat(review.drafts()).extracting(ImportDraft::caseId).doesNotHaveDuplicates();
    }

    @Test
    void among_many_alike_the_one_of_the_same_date_is_found() {
        StringBuilder diary = new StringBuilder();
        for (LocalDate day = LocalDate.of(2016, 1, 4); day.getYear() < 2024; day = day.plusMonths(1)) {
            diary.append(day)
                    .append(" deck, tape eaten and the belt slack. cleaned, new belts fitted, played an hour, ok\n");
        }
        store(diary.toString(), "diary.txt");
        Likeness twin = review(
                        "2018-05-05 deck, tape eaten and the belt slack. new belts fitted, played an hour, ok\n",
                        "copy.txt")
                .drafts()
                .get(0)
                .likenesses()
                .get(0);
        assertThat(twin.duplicate()).isTrue();
        assertThat(store.history(twin.caseId()).orElseThrow().openedAt())
                .isBetween(Instant.parse("2018-05-03T00:00:00Z"), Instant.parse("2018-05-05T00:00:00Z"));
    }

    @Test
    void a_withdrawn_case_has_no_duplicates() {
        store(DIARY, "diary.txt");
        for (String id : store.caseIds(10)) {
            store.append(List.of(
                    new CaseEvent.Withdrawn(new CaseEvent.Head(id + ":w", id, Instant.EPOCH), null, "read wrongly")));
        }
        assertThat(review(DIARY, "again.txt").duplicates()).isZero();
    }

    @Test
    void others_cases_bear_their_name() {
        importer.store(review(DIARY, "diary.txt"), "next door", false);
        assertThat(cases()).extracting(CaseHistory::origin).containsOnly("next door");
    }

    @Test
    void lines_of_json_go_through_the_same_door() throws IOException {
        store(DIARY, "diary.txt");
        StringBuilder lines = new StringBuilder();
        CaseExport.write(store, lines, false);
        lines.append("{\"schema\":\"benchlore/event/9\"}\n");
        try (CaseStore other = CaseStore.inMemory()) {
            Importer door = Workshop.importer(other);
            ImportReview review =
                    Workshop.review(door, lines.toString(), "cases.jsonl", ImportSettings.of(ImportKind.JSON));
            assertThat(review.drafts()).hasSize(3);
            assertThat(Workshop.acts(review.drafts().get(0)))
                    .contains("cause start-resistor-open", "outcome fixed-and-proven");
            assertThat(review.problems()).hasSize(1);
            ImportResult result = door.store(review, CaseHistory.OWN, true);
            assertThat(result.added()).isEqualTo(store.position());
            assertThat(result.problems()).hasSize(1);
            assertThat(other.caseIds(10)).isEqualTo(store.caseIds(10));
            ImportReview again =
                    Workshop.review(door, lines.toString(), "cases.jsonl", ImportSettings.of(ImportKind.JSON));
            assertThat(again.known()).isEqualTo(3);
            assertThat(door.store(again, CaseHistory.OWN, true).added()).isZero();
        }
    }

    @Test
    void objects_with_keys_of_their_own_are_refused() {
        String lines = IntStream.range(0, 300)
                .mapToObj(n -> "{\"note\":\"no 12 V\",\"own" + n + "\":1}\n")
                .collect(Collectors.joining());
        assertThatThrownBy(() -> Workshop.review(
                        Workshop.importer(store), lines, "other.jsonl", ImportSettings.of(ImportKind.OBJECTS)))
                .isInstanceOf(BadImportException.class)
                .hasMessageContaining("256 different keys");
    }

    @Test
    void old_and_foreign_encodings_are_read_and_what_is_no_text_is_refused() throws IOException {
        String text = "1.3.2024 Gerät kaputt, no 12 V. replaced C5, ok\n";
        for (Charset charset :
                List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16, Charset.forName("windows-1252"))) {
            ImportReview review = importer.review(
                    new ByteArrayInputStream(text.getBytes(charset)), "d.txt", ImportSettings.of(ImportKind.DIARY));
            assertThat(review.drafts().get(0).events().stream()
                            .map(Object::toString)
                            .collect(Collectors.joining()))
                    .as(charset.name())
                    .contains("Gerät");
        }
        assertThatThrownBy(() -> importer.review(
                        new ByteArrayInputStream(new byte[] {1, 0, 2}), "d.txt", ImportSettings.of(ImportKind.DIARY)))
                .isInstanceOf(BadImportException.class)
                .hasMessageContaining("not text");
    }

    @Test
    void the_kind_is_told_by_name_and_beginning() {
        assertThat(ImportKind.of("a/b/Diary.TXT", "12.3.2024")).contains(ImportKind.DIARY);
        assertThat(ImportKind.of("jobs.csv", "{")).contains(ImportKind.CSV);
        assertThat(ImportKind.of("cases.jsonl", "\n{\"schema\": \"benchlore/event/1\""))
                .contains(ImportKind.JSON);
        assertThat(ImportKind.of("other.jsonl", "{\"note\":\"x\"}")).contains(ImportKind.OBJECTS);
        assertThat(ImportKind.of("standard input", "{\"schema\":\"x\"}")).contains(ImportKind.JSON);
        assertThat(ImportKind.of("noise.bin", "hm")).isEmpty();
    }

    @Test
    void a_case_stored_before_is_told_that_it_came_back() {
        String diary = "12.3.2024 Ostrel KR-20 radio, no sound. Replaced the mains fuse, ok. Collected.\n"
                + "13.3.2024 Brask radio, no sound. Gave up.\n";
        store(diary, "diary.txt");
        String grown = diary + "20.3.2024 Ostrel KR-20 radio is back again, no sound. Gave up.\n";

        ImportResult second = store(grown, "diary.txt");
        ImportResult third = store(grown, "diary.txt");

        assertThat(second.added()).isPositive();
        assertThat(third.added()).isZero();
        String first = review(grown, "diary.txt").drafts().get(0).caseId();
        assertThat(CaseHistory.fold(store.eventsOf(first)).orElseThrow().outcome())
                .isEqualTo(Outcome.CAME_BACK);
    }
}
