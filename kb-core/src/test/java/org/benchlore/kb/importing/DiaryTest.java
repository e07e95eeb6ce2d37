package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.benchlore.kb.importing.Workshop.acts;
import static org.benchlore.kb.importing.Workshop.ids;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.importing.ImportDraft.Item;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Diaries in three hands, and how they fall into cases. */
class DiaryTest {
    @Test
    void a_terse_hand_is_read() {
        ImportReview review = Workshop.diary(Workshop.resource("terse.txt"));

        assertThat(review.problems()).isEmpty();
        assertThat(review.drafts()).hasSize(7);
        ImportDraft first = review.drafts().get(0);
        assertThat(first.line()).isEqualTo(1);
        assertThat(first.date()).contains(LocalDate.of(2024, 3, 12));
        assertThat(ids(first, Item.FINDING))
                .containsExactly("power-lamp=green", "rail-12v=absent", "start-resistor=open");
        assertThat(acts(first))
                .containsExactly(
                        "device disc-recorder/corvane/corvane-300",
                        "unit C3-0417",
                        "cause start-resistor-open",
                        "fix replace-start-resistor",
                        "outcome fixed-and-proven");
        assertThat(first.unknown()).isEmpty();

        assertThat(acts(review.drafts().get(1)))
                .containsExactly(
                        "device disc-recorder/corvane/corvane-310",
                        "fix clean-lens",
                        "outcome fixed",
                        "cause lens-dirty");
        assertThat(acts(review.drafts().get(2))).containsExactly("fix ?", "outcome fixed-and-proven");
        assertThat(review.drafts().get(2).unknown())
                .containsExactlyInAnyOrder(Item.DEVICE, Item.UNIT, Item.FINDING, Item.CAUSE, Item.FIX);
        assertThat(acts(review.drafts().get(3)))
                .containsExactly("cause bridge-rectifier-shorted", "fix replace-bridge-rectifier", "outcome given-up");
        assertThat(acts(review.drafts().get(4)))
                .containsExactly(
                        "device cassette-deck/dulmar/dulmar-5",
                        "fix replace-belts",
                        "outcome fixed",
                        "outcome came-back");
        assertThat(acts(review.drafts().get(5))).containsExactly("outcome no-fault-found");
        assertThat(acts(review.drafts().get(6))).containsExactly("outcome not-worth-it");
    }

    @Test
    void a_fault_that_stayed_away_for_long_says_that_the_fix_held() {
        for (String told :
                List.of("new belts, no chewing in 48 hours", "replaced the belts. Ran it two evenings, no chewing.")) {
            assertThat(acts(Workshop.diary("## deck chews the tape\n" + told + "\n")
                            .drafts()
                            .get(0)))
                    .as(told)
                    .contains("outcome fixed-and-proven");
        }
        assertThat(acts(Workshop.diary("## deck chews the tape\nnew belts, no sound in 48 hours or so\nno help\n")
                        .drafts()
                        .get(0)))
                .doesNotContain("outcome fixed");
    }

    @Test
    void a_markdown_hand_is_read() {
        ImportReview review = Workshop.diary(Workshop.resource("markdown.md"));

        assertThat(review.problems()).isEmpty();
        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(5L, 26L, 27L, 29L);
        ImportDraft first = review.drafts().get(0);
        assertThat(first.date()).contains(LocalDate.of(2024, 4, 2));
        assertThat(ids(first, Item.FINDING)).containsExactly("power-lamp=off", "mains-fuse=blown");
        assertThat(acts(first))
                .containsExactly(
                        "device disc-recorder/corvane/corvane-300/rev-c",
                        "unit C3-0555",
                        "cause bridge-rectifier-shorted",
                        "fix replace-bridge-rectifier",
                        "fix clean-cooling-path",
                        "outcome fixed-and-proven");
        CaseHistory history = CaseHistory.fold(first.events()).orElseThrow();
        assertThat(history.complaint()).isEqualTo("it died in the storm of Sunday");
        assertThat(history.certainty()).isEqualTo(Certainty.PROVEN);

        // two bullets under one day are two cases
        assertThat(review.drafts().get(1).date()).contains(LocalDate.of(2024, 4, 5));
        assertThat(acts(review.drafts().get(1)))
                .containsExactly(
                        "device cassette-deck/dulmar/dulmar-5",
                        "cause belt-stretched",
                        "fix replace-belts",
                        "outcome fixed");
        assertThat(acts(review.drafts().get(2)))
                .containsExactly("device disc-recorder/corvane/corvane-310", "unit 88-1", "outcome not-worth-it");

        // dated lines under a title are steps of one case, and say when it came back
        ImportDraft last = review.drafts().get(3);
        assertThat(last.date()).contains(LocalDate.of(2024, 4, 6));
        assertThat(acts(last))
                .contains(
                        "unit 4471", "test measure-start-resistor", "fix replace-start-resistor", "outcome came-back");
        CaseEvent.Ended back = (CaseEvent.Ended) last.events().stream()
                .filter(e -> e instanceof CaseEvent.Ended ended && ended.outcome() == Outcome.CAME_BACK)
                .findFirst()
                .orElseThrow();
        assertThat(back.afterDays()).isEqualTo(39);
        assertThat(back.head().at()).isEqualTo(Instant.parse("2024-05-20T00:01:00Z"));
        CaseEvent.Tested tested = (CaseEvent.Tested) last.events().stream()
                .filter(CaseEvent.Tested.class::isInstance)
                .findFirst()
                .orElseThrow();
        assertThat(tested.findings())
                .extracting(f -> f.symptomId() + "=" + f.state())
                .containsExactly("start-resistor=open");
    }

    @Test
    void a_hand_that_writes_in_a_foreign_language_is_read() {
        ImportReview review = Workshop.diary(Workshop.resource("foreign.txt"));

        assertThat(review.problems()).isEmpty();
        assertThat(review.drafts()).hasSize(3);
        assertThat(review.drafts().get(0).date()).contains(LocalDate.of(2024, 5, 3));
        assertThat(acts(review.drafts().get(0)))
                .containsExactly(
                        "device disc-recorder/corvane/corvane-300",
                        "unit C3-0417",
                        "fix replace-mains-fuse",
                        "outcome fixed",
                        "outcome fixed-and-proven");
        assertThat(acts(review.drafts().get(1)))
                .containsExactly(
                        "device ?", "cause output-relay-oxidised", "fix clean-output-relay", "outcome not-fixed");
        assertThat(acts(review.drafts().get(2)))
                .containsExactly(
                        "device cassette-deck/dulmar/dulmar-5",
                        "cause ?",
                        "fix replace-belts",
                        "outcome fixed",
                        "cause belt-stretched");
    }

    @Test
    void every_word_is_kept_in_some_event_and_the_course_is_in_order() {
        ImportDraft draft = Workshop.diary(
                        "12.3.2024 no 12 V. found start resistor open. replaced it, no change. ring dark. gave up")
                .drafts()
                .get(0);

        List<String> texts = draft.events().stream()
                .map(e -> e instanceof CaseEvent.Noted n
                        ? n.text()
                        : e instanceof CaseEvent.FixApplied f
                                ? f.note()
                                : e instanceof CaseEvent.Ended d ? d.note() : "")
                .filter(t -> !t.isEmpty())
                .toList();
        assertThat(texts)
                .containsExactly(
                        "no 12 V. found start resistor open.", "replaced it", "no change", "ring dark.", "gave up");
        assertThat(draft.events()).isSortedAccordingTo(CaseEvent.ORDER);
        CaseHistory history = CaseHistory.fold(draft.events()).orElseThrow();
        assertThat(history.outcome()).isEqualTo(Outcome.GIVEN_UP);
        assertThat(history.findings()).extracting(f -> f.symptomId()).contains("rail-12v", "power-lamp");
    }

    @Test
    void what_is_seen_after_work_that_no_fix_stands_for_is_not_taken_for_the_fault() {
        ImportDraft draft = Workshop.diary("1.2.2024 no 12 V. replaced C412. 12 V fine, sound ok. works again")
                .drafts()
                .get(0);
        assertThat(ids(draft, Item.FINDING)).containsExactly("rail-12v=absent");
        ImportDraft failed = Workshop.diary("1.2.2024 no 12 V. replaced C412. ring dark, no improvement")
                .drafts()
                .get(0);
        assertThat(ids(failed, Item.FINDING)).containsExactly("rail-12v=absent", "power-lamp=off");
    }

    @Test
    void what_is_seen_after_the_work_is_not_taken_for_the_fault_either() {
        for (String told : List.of(
                "no 12 V. replaced start resistor. 12 V present",
                "no 12 V. replaced start resistor, 12 V present, works again",
                "no 12 V. swapped the start resistor with mine to test, 12 V present")) {
            assertThat(ids(Workshop.diary("1.2.2024 " + told).drafts().get(0), Item.FINDING))
                    .as(told)
                    .containsExactly("rail-12v=absent");
        }
        assertThat(ids(
                        Workshop.diary("1.2.2024 no sound. new belt set fitted")
                                .drafts()
                                .get(0),
                        Item.FINDING))
                .containsExactly("sound=none");
        // the search went on, or it failed: what is seen then is of the fault
        assertThat(ids(
                        Workshop.diary("1.2.2024 replaced the mains fuse. ring dark. replaced the start resistor, ok")
                                .drafts()
                                .get(0),
                        Item.FINDING))
                .containsExactly("power-lamp=off");
        assertThat(ids(
                        Workshop.diary("1.2.2024 replaced the mains fuse. ok. came back after 3 weeks, ring dark")
                                .drafts()
                                .get(0),
                        Item.FINDING))
                .containsExactly("power-lamp=off");
    }

    @Test
    void a_fix_whose_cause_nobody_names_is_kept_without_one() {
        CaseEvent.FixApplied fix = (CaseEvent.FixApplied)
                Workshop.diary("1.2.2024 lamp dark. replaced the mains fuse, ok").drafts().get(0).events().stream()
                        .filter(CaseEvent.FixApplied.class::isInstance)
                        .findFirst()
                        .orElseThrow();
        assertThat(fix.causeId()).isEqualTo(CaseEvent.FixApplied.UNKNOWN_CAUSE);
    }

    @Test
    void a_cure_names_no_cause_that_the_findings_speak_against() {
        // the packs replace belts for stretched ones only, but here they were tight
        ImportDraft tight = Workshop.diary("1.2.2024 dulmar 5, belts tight. new belts, ok")
                .drafts()
                .get(0);
        assertThat(tight.unknown()).contains(Item.CAUSE);
        // and one finding against it is enough, whatever the others say
        ImportDraft mixed = Workshop.diary("1.2.2024 dulmar 5, no sound, belts tight. new belts, ok")
                .drafts()
                .get(0);
        assertThat(mixed.unknown()).contains(Item.CAUSE);
        ImportDraft slack = Workshop.diary("1.2.2024 dulmar 5, belts slipping. new belts, ok")
                .drafts()
                .get(0);
        assertThat(slack.unknown()).doesNotContain(Item.CAUSE);
    }

    @Test
    void a_cure_of_two_things_names_no_cause() {
        ImportDraft one = Workshop.diary("1.2.2024 dulmar 5, no sound. replaced the belts, ok")
                .drafts()
                .get(0);
        assertThat(one.unknown()).doesNotContain(Item.CAUSE);
        ImportDraft two = Workshop.diary("1.2.2024 dulmar 5, no sound. replaced the belts and fuse, ok")
                .drafts()
                .get(0);
        assertThat(two.unknown()).contains(Item.CAUSE);
        assertThat(ids(two, Item.FIX)).containsExactly("replace-belts");
    }

    @Test
    void a_day_below_a_heading_begins_a_case_only_with_another_unit() {
        List<ImportDraft> drafts = Workshop.diary("""
                        ## 2024-03-14 cassette deck

                        eats tapes, belts slipping
                        2024-03-16 new belts, ok
                        2024-03-20 - amplifier no sound - replaced the mains fuse, ok
                        2024-04-02 corvane 300: ring dark
                        """).drafts();
        assertThat(drafts).extracting(ImportDraft::line).containsExactly(1L, 5L, 6L);
    }

    @Test
    void who_says_it_and_who_had_been_inside_is_kept() {
        ImportDraft draft = Workshop.diary("Date: 1.2.2024\nComplaint: no sound at all\nMeasured: 12 V missing\n"
                        + "Notes: somebody had been inside before")
                .drafts()
                .get(0);
        List<Reading.Source> sources = draft.events().stream()
                .filter(e -> e instanceof CaseEvent.Noted n && !n.findings().isEmpty())
                .map(e -> ((CaseEvent.Noted) e).source())
                .toList();
        assertThat(sources).containsExactly(Reading.Source.OWNER, Reading.Source.MEASURED);
        assertThat(((CaseEvent.Opened) draft.events().get(0)).workedOnBefore()).isTrue();
    }

    @Test
    void lines_that_go_on_with_the_work_belong_to_the_case_before() {
        ImportReview review = Workshop.diary("""
                2024-03-12 Corvane 300 S/N C3-1: no 12 V
                2024-03-14 replaced start resistor
                2024-03-16 ran two days, ok
                2024-03-17 Corvane 310 S/N C3-2: disc not read
                2024-03-18 cleaned the lens, no improvement
                """);
        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(1L, 4L);
        assertThat(acts(review.drafts().get(0))).contains("fix replace-start-resistor", "outcome fixed-and-proven");
        assertThat(acts(review.drafts().get(1))).contains("fix clean-lens", "outcome not-fixed");
    }

    @Test
    void a_dated_line_about_another_unit_is_a_case_of_its_own() {
        for (String second : List.of(
                "same Oriva K5 back again: no sound. replaced C5, works",
                "Oriva K5 came back, no sound. replaced C5, works",
                "same deck back again, no sound. replaced C5, works",
                "replaced C5 in Oriva K5, no sound before, works",
                "replaced C5 in Valmora Konzert 54, works")) {
            ImportReview review =
                    Workshop.diary("6.2.2023 coffee maker leaks, replaced C4, works again\n7.2.2023 " + second + "\n");
            assertThat(review.drafts()).as(second).extracting(ImportDraft::line).containsExactly(1L, 2L);
            assertThat(acts(review.drafts().get(0))).as(second).containsExactly("fix ?", "outcome fixed");
            assertThat(review.drafts().get(1).date()).contains(LocalDate.of(2023, 2, 7));
        }
        // and where the case above still waits for its part
        assertThat(Workshop.diary("6.2.2023 Oriva K5 no sound, cap ordered\n7.2.2023 replaced C5 in Corvo B2, works\n")
                        .drafts())
                .extracting(ImportDraft::line)
                .containsExactly(1L, 2L);
    }

    @Test
    void a_unit_that_is_back_goes_on_with_the_line_about_it() {
        for (String second : List.of(
                "same Oriva K5 back again: no sound",
                "the K5 is back, no sound",
                "deck back again, no sound",
                "hum is back",
                "it came back, no sound",
                "came back",
                "Mrs Hollin came back with it")) {
            ImportReview review = Workshop.diary(
                    "6.2.2023 Oriva K5 deck hums, no sound, replaced C4, works again\n27.2.2023 " + second + "\n");
            assertThat(review.drafts()).as(second).hasSize(1);
            assertThat(acts(review.drafts().get(0))).as(second).endsWith("outcome came-back");
        }
    }

    @Test
    void days_without_a_year_begin_cases_too() {
        String days = "3.11. no 12 V, replaced start resistor, ok\n4.11. disc not read, cleaned lens, works again\n"
                + "5.1. no sound, replaced C5, ok\n";
        ImportReview unknown = Workshop.diary(days);
        assertThat(unknown.drafts()).extracting(ImportDraft::line).containsExactly(1L, 2L, 3L);
        assertThat(unknown.drafts()).allSatisfy(d -> {
            assertThat(d.unknown()).contains(Item.DATE);
            assertThat(d.events().get(0).head().at()).isEqualTo(Instant.EPOCH);
        });
        // the day is kept as it stands
        assertThat(unknown.drafts().get(0).events().toString()).contains("3.11.");
        assertThat(((CaseEvent.Opened) unknown.drafts().get(0).events().get(0)).complaint())
                .isEqualTo("no 12 V");

        List<LocalDate> turning =
                List.of(LocalDate.of(2022, 11, 3), LocalDate.of(2022, 11, 4), LocalDate.of(2023, 1, 5));
        // the year of a title, of a line of its own, of the next full date, of the day for undated cases
        for (String text : List.of(
                "Repair diary 2022\n" + days,
                "Repair diary 2022\n" + days + "9.2.2023 no sound, replaced C6, ok\n",
                "# Repair diary\n\n## 2022\n" + days,
                "2022\n\n" + days,
                days + "9.1.2023 no sound, replaced C6, ok\n")) {
            assertThat(Workshop.diary(text).drafts().stream()
                            .limit(3)
                            .map(d -> d.date().orElseThrow()))
                    .as(text)
                    .isEqualTo(turning);
        }
        ImportSettings settings = new ImportSettings(
                ImportKind.DIARY,
                Optional.empty(),
                DateOrder.DMY,
                Optional.of(LocalDate.of(2022, 6, 1)),
                DeviceScope.ANY);
        assertThat(Workshop.review(days, settings).drafts().stream()
                        .map(d -> d.date().orElseThrow()))
                .isEqualTo(turning);
    }

    @Test
    void steps_dated_without_a_year_stay_with_their_case() {
        ImportReview review = Workshop.diary("3.11. Corvane 300 no 12 V\n5.11. replaced start resistor\n"
                + "\n7.11.\nno sound on this one\nreplaced C5, ok\n");
        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(1L, 5L);
        assertThat(acts(review.drafts().get(0))).contains("fix replace-start-resistor");
        assertThat(review.drafts().get(0).events().toString()).contains("3.11.").contains("5.11.");
        assertThat(review.drafts().get(1).events().toString()).contains("7.11.");
    }

    @Test
    void a_labelled_day_without_a_year_is_kept_as_it_stands() {
        ImportDraft draft = Workshop.diary("Date: 3.11.\nComplaint: no sound\nWork: replaced C5\n")
                .drafts()
                .get(0);
        assertThat(draft.unknown()).contains(Item.DATE);
        assertThat(draft.events().toString()).contains("3.11.");
    }

    @Test
    void the_title_of_a_diary_is_no_record() {
        for (String title : List.of(
                "Repair diary old bench\n",
                "Repair diary\n\nTimes are local.\n\n",
                "# Repair diary\n",
                "# Repair diary\nof an old bench\n\n")) {
            ImportReview review = Workshop.diary(
                    title
                            + "1.2.2023 replaced start resistor, no 12 V before, ok\n4.2.2023 disc not read, cleaned lens, ok\n");
            assertThat(review.problems()).as(title).isEmpty();
            assertThat(review.drafts())
                    .as(title)
                    .extracting(d -> d.date().orElseThrow())
                    .containsExactly(LocalDate.of(2023, 2, 1), LocalDate.of(2023, 2, 4));
        }
        // without a date below it, and behind one, it is told that nothing was understood
        assertThat(Workshop.diary("hello there\n").problems()).hasSize(1);
        // a case noted above the first date stays one, with its dated steps
        assertThat(Workshop.diary("Corvane 300, no 12 V\n1.2.2023 replaced start resistor\n3.2.2023 ok\n")
                        .drafts())
                .extracting(ImportDraft::line)
                .containsExactly(1L);
    }

    @Test
    void separators_paragraphs_and_titles_tell_cases_apart() {
        String ruled = "no 12 V, replaced start resistor, ok\n-----\ndisc not read. cleaned lens, ok\n-----\n";
        assertThat(Workshop.diary(ruled).drafts()).extracting(ImportDraft::line).containsExactly(1L, 3L);
        String paragraphs = "no 12 V, replaced start resistor, ok\n\ndisc not read.\ncleaned lens, ok\n";
        assertThat(Workshop.diary(paragraphs).drafts())
                .extracting(ImportDraft::line)
                .containsExactly(1L, 3L);
        String underlined = "Corvane 300, 1.2.2024\n=====\nno 12 V\n\nCorvane 310, 3.2.2024\n=====\ndisc not read\n";
        assertThat(Workshop.diary(underlined).drafts())
                .extracting(ImportDraft::line)
                .containsExactly(1L, 5L);
        String nested = "# Corvane 300\n\n## 1.2.2024, S/N 17\nno 12 V\n\n## 3.2.2024, S/N 18\nno sound\n";
        ImportReview inherited = Workshop.diary(nested);
        assertThat(inherited.drafts())
                .hasSize(2)
                .allSatisfy(d ->
                        assertThat(d.device().map(Object::toString)).contains("disc-recorder/corvane/corvane-300"));
    }

    @Test
    void what_is_not_told_is_unknown() {
        ImportDraft draft = Workshop.diary("no 12 V on this one").drafts().get(0);
        assertThat(draft.unknown())
                .containsExactlyInAnyOrder(Item.DATE, Item.DEVICE, Item.UNIT, Item.CAUSE, Item.FIX, Item.OUTCOME);
        assertThat(draft.events().get(0).head().at()).isEqualTo(Instant.EPOCH);
        assertThat(draft.caseId()).startsWith("undated-");
    }

    @Test
    void a_bad_record_is_reported_with_its_line_and_stops_nothing() {
        ImportReview review = Workshop.diary("""
                31.2.2024 no 12 V, replaced start resistor, ok
                1.3.2024 bought solder and coffee
                2.3.2024 disc not read. cleaned lens, works again
                """);
        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(3L);
        assertThat(review.problems())
                .extracting(p -> p.source() + ":" + p.line())
                .containsExactly("source:1", "source:2");
        assertThat(review.problems().get(0).what()).contains("no such day");
    }

    @Test
    void an_endless_record_is_reported_and_stops_nothing() {
        String text =
                "1.3.2024 no 12 V\n" + "and on and on\n".repeat(10_000) + "2.3.2024 disc not read. cleaned lens, ok\n"
                        + "x".repeat(100_000) + "\n3.3.2024 no sound. replaced C5, ok\n";
        ImportReview review = Workshop.diary(text);
        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(10_002L, 10_004L);
        assertThat(review.problems()).extracting(p -> p.line()).containsExactly(1L, 10_003L);
    }

    @Test
    void the_kind_make_and_model_of_a_unit_are_told() {
        ImportReview review = Workshop.diary("""
                12.3.2024 Ostrel KR-20 radio of Mr Kovel, no sound
                13.3.2024 coffee machine Ferrano, 12 V missing
                """);

        assertThat(review.drafts())
                .extracting(d -> d.told().stream()
                        .filter(t -> t.item() == Item.DEVICE)
                        .map(ImportDraft.Told::words)
                        .toList())
                .containsExactly(List.of("Ostrel KR-20"), List.of("Ferrano"));
        assertThat(review.drafts())
                .extracting(ImportDraft::kinds)
                .containsExactly(List.of("radio"), List.of("coffee-machine"));
        assertThat(review.drafts()).extracting(ImportDraft::device).containsOnly(Optional.empty());
    }

    @Test
    void a_paragraph_that_begins_with_another_unit_is_a_case_of_its_own() {
        ImportReview review = Workshop.diary("""
                12 March 2024

                The Brask radio was silent. Replaced the mains fuse, works again.

                Then the little Velmo radio. No 12 V, I replaced C5.
                It came back dead.
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(3L, 5L);
        assertThat(review.drafts().get(1).date()).contains(LocalDate.of(2024, 3, 12));
    }

    @Test
    void numbered_items_that_name_units_are_cases() {
        for (String text : List.of(
                "Repair diary\n\n1) Ostrel KR-20 radio, no sound.\n2) Brask radio, no 12 V\n3) Velmo radio, no sound\n",
                "#1 Ostrel KR-20 radio, no sound.\n\n#2 Brask radio, no 12 V\n\n#3 Velmo radio, no sound\n",
                "Job 114: Ostrel KR-20 radio, no sound\nJob 115: radio, no 12 V\nJob 116: Velmo radio, no sound\n")) {
            ImportReview review = Workshop.diary(text);

            assertThat(review.problems()).as(text).isEmpty();
            assertThat(review.drafts())
                    .as(text)
                    .extracting(d -> ids(d, Item.FINDING))
                    .containsExactly(List.of("sound=none"), List.of("rail-12v=absent"), List.of("sound=none"));
            assertThat(review.drafts())
                    .as(text)
                    .extracting(ImportDraft::unit)
                    .isEqualTo(
                            text.startsWith("Job")
                                    ? List.of(Optional.of("114"), Optional.of("115"), Optional.of("116"))
                                    : List.of(Optional.empty(), Optional.empty(), Optional.empty()));
        }
        // steps of one case are none
        assertThat(Workshop.diary("1) no sound\n2) measured 12 V, absent\n3) Fuse blown\n")
                        .drafts())
                .hasSize(1);
    }

    @Test
    void a_day_in_the_head_of_a_case_is_its_own() {
        ImportReview review = Workshop.diary("""
                1) Ostrel KR-20 radio, Mr Kovel, in on 3 March 2025. No sound.
                2) Brask radio, bought 4.5.2019, no sound
                """);

        assertThat(review.drafts())
                .extracting(ImportDraft::date)
                .containsExactly(Optional.of(LocalDate.of(2025, 3, 3)), Optional.empty());
    }

    @Test
    void what_is_dictated_without_signs_is_told_apart() {
        ImportReview review = Workshop.diary("11 august 2025 job 71 quill dp7 radio has no sound and the belt was slack"
                + " fitted a new belt now works picked up by the wife paid\n"
                + "12 august 2025 job 72 radio no sound at all the customer replaced the belts himself"
                + " he took it home not repaired\n");

        assertThat(acts(review.drafts().get(0)))
                .containsExactly("device ?", "unit 71", "fix replace-belts", "outcome fixed", "cause belt-stretched");
        assertThat(acts(review.drafts().get(1))).containsExactly("unit 72", "outcome given-up");
    }

    @Test
    void a_table_in_a_diary_is_read_row_by_row() {
        ImportReview review = Workshop.diary("""
                # Jobs, June 2025

                | No | In | What | Fault | Found and done | Out |
                |---|:--|---|---|---|---|
                | 211 | 02.06.2025 | Ostrel KR-20 radio | no sound | mains fuse blown, swapped the **mains fuse** | played an hour, paid |
                | 212 | 03.06.2025 | TV Hestrel H32 | no 12 V | start resistor open | beyond repair, sent to recycling |
                | 213 | 31.06.2025 | radio | no 12 V | | |

                4 June 2025: Brask radio, no sound. Replaced the mains fuse, ok.
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(5L, 6L, 9L);
        ImportDraft first = review.drafts().get(0);
        assertThat(first.date()).contains(LocalDate.of(2025, 6, 2));
        assertThat(first.kinds()).containsExactly("radio");
        assertThat(ids(first, Item.FINDING)).containsExactly("sound=none", "mains-fuse=blown");
        assertThat(acts(first))
                .containsExactly("device ?", "unit 211", "fix replace-mains-fuse", "outcome fixed-and-proven");
        assertThat(acts(review.drafts().get(1))).contains("outcome not-worth-it");
        assertThat(review.problems()).singleElement().satisfies(problem -> {
            assertThat(problem.line()).isEqualTo(7);
            assertThat(problem.toString()).contains("'31.06.2025' is no date");
        });
    }

    @Test
    void a_unit_that_is_back_ends_its_first_case_as_come_back() {
        ImportReview review = Workshop.diary("""
                12.3.2024 Ostrel KR-20 radio of Mr Kovel, no sound. Replaced the mains fuse, ok. Collected.
                13.3.2024 Brask radio, no sound. Replaced the mains fuse, ok.
                20.3.2024 Ostrel KR-20 radio of Mr Kovel is back again, no sound. Gave up.
                21.3.2024 Brask radio is back again, no 12 V, replaced C5, ok.
                22.3.2024 Ostrel KR-20 radio of Mrs Bode is back again, no sound. Replaced C7, ok.
                """);

        assertThat(review.drafts()).hasSize(5);
        ImportDraft first = review.drafts().get(0);
        assertThat(ids(first, Item.OUTCOME)).containsExactly("fixed", "came-back");
        CaseHistory history = CaseHistory.fold(first.events()).orElseThrow();
        assertThat(history.outcome()).isEqualTo(Outcome.CAME_BACK);
        assertThat(first.events().get(first.events().size() - 1))
                .isInstanceOfSatisfying(
                        CaseEvent.Ended.class, e -> assertThat(e.afterDays()).isEqualTo(8));
        assertThat(ids(review.drafts().get(2), Item.OUTCOME)).containsExactly("given-up");
        assertThat(review.drafts().get(2).likenesses().get(0).sameUnit()).isTrue();
        // another fault of the same unit is another case, and another owner's another unit
        assertThat(ids(review.drafts().get(1), Item.OUTCOME)).containsExactly("fixed");
        assertThat(review.drafts().get(3).likenesses().get(0).line()).isEqualTo(2);
        assertThat(review.drafts().get(4).likenesses()).noneMatch(l -> l.sameUnit());
    }

    @Test
    void labels_of_a_job_sheet_are_read() {
        ImportReview review = Workshop.diary("""
                Ticket: 5521
                In: 3 Nov 2025
                Unit: Hestrel H32 television, owner Mr Dorn
                Complaint: no sound
                Bench: fuse blown. Replaced the mains fuse.
                Out: 5 Nov 2025, paid, happy.

                Ticket: 5522
                In: 4 Nov 2025
                Unit: 4471-B
                Complaint: no 12 V
                Bench: Gave up.
                Out: 6 Nov 2025
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(1L, 8L);
        ImportDraft first = review.drafts().get(0);
        assertThat(first.date()).contains(LocalDate.of(2025, 11, 3));
        assertThat(first.unit()).contains("5521");
        assertThat(first.kinds()).containsExactly("tv");
        assertThat(acts(first)).contains("device ?", "fix replace-mains-fuse", "outcome fixed");
        assertThat(review.drafts().get(1).date()).contains(LocalDate.of(2025, 11, 4));
        assertThat(acts(review.drafts().get(1))).contains("outcome given-up");
    }

    @Test
    void bullets_that_begin_with_names_are_cases_of_their_own() {
        ImportReview review = Workshop.diary("""
                4 October 2025
                * Vacuum radio "Narvo NS500" has no sound.
                * Zanto G7 here again, no 12 V. Replaced C5, ok.
                * tried another lead
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(2L, 3L);
    }

    @Test
    void work_that_names_no_unit_goes_on_with_the_one_that_came_in() {
        ImportReview review = Workshop.diary("""
                24.11.2025 09:10 - Ostrel KR-20 radio, no sound
                24.11.2025 15:30 - socket loose, resoldered it. Paid.
                24.11.2025 16:00 - Brask radio, no sound
                25.11.2025 16:00 - socket loose, resoldered it
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(1L, 3L);
        assertThat(acts(review.drafts().get(0))).containsExactly("device ?", "fix ?", "outcome fixed");
        assertThat(acts(review.drafts().get(1))).containsExactly("device ?", "fix ?");
    }

    /** The same three radios, as different people set them apart. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Kovel - Ostrel KR-20 radio - no sound/Bode - radio, Brask 5 - no 12 V/Haig - Velmo 7 radio - no sound"
                        + " | 1 2 3",
                "Book 7//  Ostrel KR-20, radio: no sound/    replaced C5/  Brask 5, radio: no 12 V/    ok/  Velmo 7,"
                        + " radio: dead | 3 5 7",
                "[10/05/2025, 09:12] Ana: the Ostrel KR-20 radio is here/[10/05/2025, 09:20] Ana: no"
                        + " sound/[11/05/2025, 08:00] Ana: a Brask radio, no 12 V/[11/05/2025, 09:00] Rui: replaced C5,"
                        + " ok/[12/05/2025, 09:00] Ana: next is a Velmo radio | 1 3 5",
                "Kovel/Ostrel KR-20 radio/no sound/====/Bode/Brask 5 radio/no 12 V/====/Haig/Velmo 7 radio/no sound |"
                        + " 1 5 9",
                "Seen by Jo on Monday/Ostrel KR-20 radio/no sound/Seen by Jo today/Brask 5 radio/no 12 V/Seen by"
                        + " Ed/Velmo 7 radio | 1 4 7",
                "It was an Ostrel KR-20 radio. No sound./Replaced C5.//There came a Brask 5 radio./No 12 V.//I had a"
                        + " Velmo 7 radio. | 1 4 7",
                "## June/* Ostrel KR-20 radio, no sound/* Brask 5 radio, no 12 V/## July/* Velmo 7 radio, no sound | 2"
                        + " 3 5"
            })
    void cases_are_told_apart_by_what_the_page_offers(String page, String lines) {
        assertThat(Workshop.diary(page.replace('/', '\n').replaceAll("(\\d\\d)\n(\\d\\d)\n(\\d)", "$1/$2/$3"))
                        .drafts())
                .extracting(draft -> String.valueOf(draft.line()))
                .containsExactly(lines.split(" "));
    }

    @Test
    void a_line_about_a_unit_further_up_goes_on_with_its_case() {
        ImportReview review = Workshop.diary("""
                Ostrel KR-20 radio: no sound. C5 ordered.
                Brask radio: no 12 V
                Ostrel KR-20 radio: replaced C5. Works again.
                Brask radio: waiting for the start resistor
                Velmo radio: no sound
                Brask radio: replaced the start resistor, ok
                Ostrel KR-20 radio: no 12 V. Replaced the start resistor, ok.
                Mr Bode, Velmo radio: gave up
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(1L, 2L, 5L, 7L);
        assertThat(acts(review.drafts().get(0))).containsExactly("device ?", "fix ?", "outcome fixed");
        assertThat(acts(review.drafts().get(1))).contains("fix replace-start-resistor", "outcome fixed");
        assertThat(acts(review.drafts().get(2))).contains("outcome given-up");
    }

    @Test
    void a_case_waits_for_what_stands_below_the_name_of_its_unit_and_not_for_ever() {
        ImportReview review = Workshop.diary("""
                1.2.2025 Ostrel KR-20 radio
                  no sound. C5 ordered.
                2.2.2025 Brask 5 radio
                  no 12 V. C6 ordered.
                9.2.2025 Ostrel KR-20 radio
                  replaced C5. Works again.
                9.7.2025 Brask 5 radio
                  replaced C6. Works again.
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(1L, 3L, 7L);
        assertThat(acts(review.drafts().get(0))).contains("outcome fixed");
    }

    @Test
    void dated_lines_about_units_of_one_kind_are_cases_of_their_own() {
        ImportReview review = Workshop.diary("""
                1.2.2025 radio: no sound. Replaced C5, paid.
                2.2.2025 radio: no 12 V. Replaced C7.
                3.2.2025 amplifier: no 12 V.
                4.2.2025 radio: no sound
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(1L, 2L, 3L, 4L);
    }

    @Test
    void the_same_model_of_another_owner_is_another_unit() {
        ImportReview review = Workshop.diary("""
                Ostrel KR-20 radio of Mr Kovel: no sound
                Brask radio: no 12 V
                Ostrel KR-20 radio of Mrs Bode: replaced C5. Works again.
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(1L, 2L, 3L);
    }

    @Test
    void where_cases_stand_apart_below_a_day_days_within_them_go_on() {
        ImportReview review = Workshop.diary("""
                Fri 7 Nov 2025 / coffee machine from the office
                No heat. Waiting for the element.
                12 Nov element in, heats again.

                same day / kitchen radio
                No sound. Replaced the mains fuse.

                Mon 10 Nov / Dorn again with the turntable
                Hums. Wire resoldered, silent.
                """);

        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(1L, 5L, 8L);
        assertThat(review.drafts())
                .extracting(draft -> draft.date().orElseThrow().getDayOfMonth())
                .containsExactly(7, 12, 10);
    }

    @ParameterizedTest
    @CsvSource({
        "'charges at 2.1 A again. Returned Wednesday',outcome fixed",
        "'Returned to the owner',outcome fixed",
        "'Office collected it, paid',outcome fixed",
        "'hums again. Collected',",
    })
    void a_unit_that_left_after_work_and_does_its_own_again_is_fixed(String ending, String outcome) {
        ImportReview review = Workshop.diary("5 Nov 2025. No sound. Swapped C12, " + ending + ".");
        List<String> acts = acts(review.drafts().get(0));
        assertThat(acts.stream()
                        .filter(act -> act.startsWith("outcome"))
                        .findFirst()
                        .orElse(null))
                .isEqualTo(outcome);
    }
}
