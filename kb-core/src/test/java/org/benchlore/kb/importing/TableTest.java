package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.benchlore.kb.importing.Workshop.acts;
import static org.benchlore.kb.importing.Workshop.ids;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.importing.ImportDraft.Item;
import org.benchlore.kb.knowledge.DeviceScope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables with a mapping, given or guessed. */
class TableTest {
    private static final String JOBS = """
            Date in;Serial;Model;Reported fault;Notes;Work done;Status;Price
            12/3/2024;C3-0417;Corvane 300;dead, dark;"no 12 V.
            found start resistor open";replaced start resistor;OK;45,00
            13/3/2024;C3-0981;Corvane 310;discs not found;lens dirty;cleaned lens;not ok;10,00
            """;

    @Test
    void a_table_is_read_by_the_names_of_its_columns() {
        ImportReview review = Workshop.table(JOBS);

        assertThat(review.problems()).isEmpty();
        assertThat(review.guessed()).isTrue();
        ColumnMapping guess = review.mapping().orElseThrow();
        assertThat(guess.separator()).isEqualTo(';');
        assertThat(guess.columns())
                .isEqualTo(new TreeMap<>(Map.of(
                        ImportField.DATE, List.of("Date in"),
                        ImportField.UNIT, List.of("Serial"),
                        ImportField.DEVICE, List.of("Model"),
                        ImportField.COMPLAINT, List.of("Reported fault"),
                        ImportField.NOTES, List.of("Notes"),
                        ImportField.WORK, List.of("Work done"),
                        ImportField.OUTCOME, List.of("Status"))));
        ImportDraft first = review.drafts().get(0);
        assertThat(first.line()).isEqualTo(2);
        assertThat(first.date()).contains(LocalDate.of(2024, 3, 12));
        assertThat(ids(first, Item.FINDING)).contains("rail-12v=absent", "start-resistor=open");
        assertThat(acts(first))
                .containsExactly(
                        "device disc-recorder/corvane/corvane-300",
                        "unit C3-0417",
                        "cause start-resistor-open",
                        "fix replace-start-resistor",
                        "outcome fixed");
        assertThat(((CaseEvent.Opened) first.events().get(0)).complaint()).isEqualTo("dead, dark");
        assertThat(review.drafts().get(1).line()).isEqualTo(4);
        assertThat(acts(review.drafts().get(1))).contains("fix clean-lens", "outcome not-fixed");
    }

    @Test
    void a_table_without_names_is_read_by_what_its_columns_hold() {
        ImportReview review = Workshop.table("""
                2024-03-12,C3-0417,Corvane 300,"no 12 V, replaced start resistor, ok"
                2024-03-13,C3-0981,Corvane 310,"disc not read, cleaned lens, ok"
                """);
        ColumnMapping guess = review.mapping().orElseThrow();
        assertThat(guess.header()).isFalse();
        assertThat(guess.columns())
                .isEqualTo(new TreeMap<>(Map.of(
                        ImportField.DATE, List.of("#1"),
                        ImportField.UNIT, List.of("#2"),
                        ImportField.DEVICE, List.of("#3"),
                        ImportField.NOTES, List.of("#4"))));
        assertThat(review.drafts()).hasSize(2);
    }

    @Test
    void a_mapping_can_be_written_corrected_and_given_back() {
        String text = Workshop.table(JOBS).mapping().orElseThrow().text();
        assertThat(ColumnMapping.parse(text, "m"))
                .isEqualTo(Workshop.table(JOBS).mapping().orElseThrow());

        ColumnMapping own = ColumnMapping.parse(
                text.replace("dates = dmy", "dates = mdy").replace("outcome = Status", "cause = Status")
                        + "outcome = Price\noutcome:45,00 = fixed-and-proven\n"
                        + "device:corvane 310 = disc-recorder/corvane\n",
                "m");
        assertThat(own.outcomes()).containsEntry("45,00", Outcome.FIXED_AND_PROVEN);
        assertThat(own.devices()).containsEntry("corvane 310", DeviceScope.parse("disc-recorder/corvane"));
        ImportReview review =
                Workshop.review(JOBS, ImportSettings.of(ImportKind.CSV).with(own));
        assertThat(review.guessed()).isFalse();
        assertThat(review.drafts().get(0).date()).contains(LocalDate.of(2024, 12, 3));
        assertThat(acts(review.drafts().get(0))).contains("outcome fixed-and-proven");
        // 13/3 is no day of a month-first table
        assertThat(review.problems()).extracting(p -> p.line()).containsExactly(4L);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "notes Remarks | m:2: 'notes Remarks' is not 'key = value'",
                "colour = Remarks | m:2: unknown key 'colour'",
                "separator = x | m:2: separator is 'x'",
                "header = maybe | m:2: 'maybe' cannot be used here",
                "outcome:RDY = great | m:2: 'great' is no outcome",
                "device:X = A B | m:2: 'A B' is no device scope",
                "notes = | m:2: 'notes' has no value",
                "'notes = \u2016' | m:2: 'notes' has no value",
                "'notes = a\nnotes = b' | m:3: 'notes' stands here twice",
                "'header = yes\nheader = no' | m:3: 'header' stands here twice",
                "'outcome:RDY = fixed\noutcome: rdy = fixed' | m:3: 'outcome: rdy' stands here twice",
            })
    void a_wrong_mapping_is_told_with_its_line(String line, String message) {
        assertThatThrownBy(() -> ColumnMapping.parse("# mine\n" + line.replace('\u2016', '|') + "\n", "m"))
                .isInstanceOf(BadImportException.class)
                .hasMessageStartingWith(message);
    }

    @Test
    void a_column_that_is_not_there_and_a_table_without_text_are_told() {
        ColumnMapping mapping = ColumnMapping.parse("notes = Remarks\n", "m");
        assertThatThrownBy(() -> Workshop.review(
                        "a,b\n1,2\n", ImportSettings.of(ImportKind.CSV).with(mapping)))
                .isInstanceOf(BadImportException.class)
                .hasMessageContaining("no column 'Remarks'")
                .hasMessageContaining("a, b");
        assertThatThrownBy(() -> Workshop.table("1,2\n3,4\n"))
                .isInstanceOf(BadImportException.class)
                .hasMessageContaining("mapping");
    }

    @Test
    void bad_rows_are_reported_with_their_line_and_stop_nothing() {
        ImportReview review = Workshop.table("""
                date,notes,outcome
                31.2.2024,no 12 V,ok
                yesterday,no 12 V,ok
                1.3.2024,no 12 V, and no sound,ok
                broken
                2.3.2024,"no "12" V",ok
                3.3.2024,"disc not read, cleaned lens",ok
                """);
        assertThat(review.drafts()).extracting(ImportDraft::line).containsExactly(7L);
        assertThat(review.problems()).extracting(p -> p.line()).containsExactly(2L, 3L, 4L, 5L, 6L);
    }

    @Test
    void a_separator_at_the_end_is_harmless_where_every_row_has_one() {
        String shifted = """
                job;date;complaint;remarks;status;price
                1;2024-01-02;no sound;cap dry; no 12 V;RDY;
                """;
        ImportReview one = Workshop.table(shifted);
        assertThat(one.drafts()).isEmpty();
        assertThat(one.problems()).extracting(p -> p.line()).containsExactly(2L);
        assertThat(one.problems().get(0).what()).contains("7 fields, the header 6");

        ImportReview some = Workshop.table(shifted + "2;2024-01-03;no sound;no 12 V;RDY;5\n");
        assertThat(some.problems()).extracting(p -> p.line()).containsExactly(2L);
        assertThat(some.drafts()).extracting(ImportDraft::line).containsExactly(3L);

        ImportReview all = Workshop.table("""
                job;date;complaint;remarks;status;price
                1;2024-01-02;no sound;no 12 V;RDY;5;
                2;2024-01-03;no sound;no 12 V; no disc;RDY;5;
                3;2024-01-04;no sound;no 12 V; no disc;RDY;;
                4;2024-01-05;no sound;no 12 V;RDY;;
                """);
        assertThat(all.drafts()).extracting(ImportDraft::line).containsExactly(2L, 5L);
        assertThat(all.problems()).extracting(p -> p.line()).containsExactly(3L, 4L);
    }

    @Test
    void readings_in_a_column_of_their_own_are_read_whatever_the_notes_tell() {
        ImportReview review =
                Workshop.table("date;notes;measured\n1.3.2024;replaced start resistor, works again;12 V missing\n");
        assertThat(ids(review.drafts().get(0), Item.FINDING)).containsExactly("rail-12v=absent");
    }

    @Test
    void make_and_model_that_no_pack_knows_stay_in_a_note() {
        ImportReview review = Workshop.table("""
                Job;Make;Model;Serial;Complaint;Work done
                17;Bellwick;BM2;AB-771;no sound;replaced C5
                18;Dulmar;Dulmar 5;AB-772;no sound;replaced C5
                19;Dulmar;Dulmar 5 school edition;AB-773;no sound;replaced C5
                """);
        ColumnMapping guess = review.mapping().orElseThrow();
        assertThat(guess.columns().get(ImportField.UNIT)).containsExactly("Serial");
        assertThat(guess.columns().get(ImportField.DEVICE)).containsExactly("Make", "Model");
        assertThat(review.drafts())
                .extracting(d -> d.unit().orElseThrow())
                .containsExactly("AB-771", "AB-772", "AB-773");
        assertThat(notes(review.drafts().get(0))).contains("Bellwick BM2");
        assertThat(notes(review.drafts().get(1))).isEmpty();
        assertThat(review.drafts().get(1).device()).isPresent();
        assertThat(notes(review.drafts().get(2))).contains("Dulmar Dulmar 5 school edition");
        assertThat(((CaseEvent.Opened) review.drafts().get(0).events().get(0)).complaint())
                .isEqualTo("no sound");
    }

    private static List<String> notes(ImportDraft draft) {
        return draft.events().stream()
                .filter(e -> e instanceof CaseEvent.Noted n && !n.text().isEmpty())
                .map(e -> ((CaseEvent.Noted) e).text())
                .filter(text -> !text.equals("replaced C5"))
                .toList();
    }

    @Test
    void a_serial_number_is_a_better_guess_than_any_other_number() {
        for (String names : List.of("Job;Serial;Notes", "Ref;S/N;Notes", "Unit;Serial no;Notes", "Serial;Job;Notes")) {
            String unit = Workshop.table(names + "\n1;2;no 12 V\n")
                    .mapping()
                    .orElseThrow()
                    .columns()
                    .getOrDefault(ImportField.UNIT, List.of())
                    .get(0);
            assertThat(unit.toLowerCase(Locale.ROOT)).as(names).startsWith("s");
        }
        assertThat(Workshop.table("Job;Notes\n1;no 12 V\n")
                        .mapping()
                        .orElseThrow()
                        .columns())
                .containsEntry(ImportField.UNIT, List.of("Job"));
    }

    @Test
    void the_end_of_a_long_complaint_stands_in_its_note() {
        ImportReview review = Workshop.table("date,unit,notes,Reported fault\n1.3.2024,set,cleaned lens,\""
                + "hums ".repeat(80) + "and then the needle dropped\"\n");
        List<CaseEvent> events = review.drafts().get(0).events();
        assertThat(((CaseEvent.Opened) events.get(0)).complaint()).endsWith("…");
        assertThat(events.toString()).contains("needle dropped");
    }

    @Test
    void formulas_are_plain_text() {
        ImportReview review = Workshop.table("""
                date,unit,notes
                1.3.2024,=1+1,"=HYPERLINK(""http://x"",""no 12 V"")"
                """);
        CaseEvent.Opened opened =
                (CaseEvent.Opened) review.drafts().get(0).events().get(0);
        assertThat(opened.unit()).isEqualTo("=1+1");
        assertThat(opened.complaint()).startsWith("=HYPERLINK");
    }

    @Test
    void what_spreadsheets_put_in_front_is_no_trouble() {
        for (String front : List.of("\uFEFF", "sep=,\n", "sep=,\r\n", "sep=,\r")) {
            String end = front.endsWith("\r") ? "\r" : "\n";
            ImportReview review = Workshop.table(front + "date,notes" + end + "1.3.2024,no 12 V" + end);
            assertThat(review.drafts()).hasSize(1);
            assertThat(review.drafts().get(0).date()).contains(LocalDate.of(2024, 3, 1));
        }
    }

    @Test
    void objects_of_other_programs_are_read_by_their_keys() {
        ImportReview review = Workshop.review("""
                {"received":"2024-03-12","unit":{"serial":"C3-0417","model":"Corvane 300"},"notes":["no 12 V",{"seen":"ring dark","by":["bench",{"also":"smells burnt"}]}]}
                {"received":"2024-03-13","notes":"disc not read","work done":"cleaned lens","result":"ok"}
                {"received":
                """, ImportSettings.of(ImportKind.OBJECTS));
        assertThat(review.drafts()).hasSize(2);
        assertThat(review.drafts().get(0).unit()).contains("C3-0417");
        assertThat(ids(review.drafts().get(0), Item.FINDING)).containsExactly("rail-12v=absent", "power-lamp=off");
        assertThat(review.drafts().get(0).events().toString()).contains("smells burnt");
        assertThat(acts(review.drafts().get(1))).contains("fix clean-lens", "outcome fixed");
        assertThat(review.problems()).extracting(p -> p.line()).containsExactly(3L);
    }

    @Test
    void words_past_the_end_of_a_complaint_from_two_columns_stand_in_a_note() {
        ImportReview review = Workshop.review(
                "Fault,More,Notes\n" + "hums ".repeat(40) + "," + "buzzes ".repeat(30)
                        + "and then the needle dropped,no 12 V\n",
                ImportSettings.of(ImportKind.CSV)
                        .with(ColumnMapping.parse("complaint = Fault | More\nnotes = Notes\n", "m")));
        assertThat(review.drafts().get(0).events().toString()).contains("needle dropped");
    }

    @Test
    void a_place_beyond_the_table_is_no_column() {
        for (String header : List.of("yes", "no")) {
            ColumnMapping mapping = ColumnMapping.parse("header = " + header + "\nnotes = #2 | #9\n", "m");
            assertThatThrownBy(() -> Workshop.review(
                            "date,notes,end\n1.3.2024,no 12 V,ok\n",
                            ImportSettings.of(ImportKind.CSV).with(mapping)))
                    .isInstanceOf(BadImportException.class)
                    .hasMessageContaining("there is no column '#9'; ")
                    .hasMessageContaining("3");
        }
        ColumnMapping last = ColumnMapping.parse("header = no\nnotes = #4\n", "m");
        assertThat(Workshop.review(
                                "1.3.2024,x,ok\n2.3.2024,x,ok,no 12 V\n",
                                ImportSettings.of(ImportKind.CSV).with(last))
                        .drafts())
                .hasSize(1);
    }

    @Test
    void a_table_whose_header_is_bad_is_refused_with_its_line() {
        ColumnMapping mapping = ColumnMapping.parse("notes = notes\n", "m");
        assertThatThrownBy(() -> Workshop.review(
                        "\n\"date\"s,notes\n1.3.2024,no 12 V\n2.3.2024,no sound\n",
                        ImportSettings.of(ImportKind.CSV).with(mapping)))
                .isInstanceOf(BadImportException.class)
                .hasMessage("source: line 2 names the columns, and something follows the closing quote of a field;"
                        + " put the field in quotes and double the quotes inside it");
    }

    @Test
    void a_field_of_an_object_is_bounded_as_one_of_a_table() {
        ImportReview review = Workshop.review(
                "{\"notes\":\"no 12 V " + "x".repeat(CsvReader.LONGEST_FIELD) + "\"}\n{\"notes\":\"no 12 V\"}\n",
                ImportSettings.of(ImportKind.OBJECTS));
        assertThat(review.drafts()).hasSize(1);
        assertThat(review.problems())
                .singleElement()
                .satisfies(p ->
                        assertThat(p.toString()).startsWith("source:1: a field is longer than 65536 characters; "));
    }

    @Test
    void columns_are_guessed_by_what_they_hold_where_names_mislead() {
        ImportReview review = Workshop.table("""
                Rcvd;Thing;Mk;Mdl;Says;Found and done;Out
                01/10/25;radio;Ostrel;KR-20;no sound;fuse blown, replaced the mains fuse;picked up
                02/10/25;amp;Pulmar;40;hums;belts slack, new belts;paid
                """);

        assertThat(review.mapping().orElseThrow().text())
                .contains("date = Rcvd", "device = Thing | Mk | Mdl", "complaint = Says", "notes = Found and done")
                .contains("outcome = Out");
        assertThat(review.drafts())
                .extracting(ImportDraft::kinds)
                .containsExactly(List.of("radio"), List.of("amplifier"));
        assertThat(acts(review.drafts().get(0))).contains("fix replace-mains-fuse", "outcome fixed");
    }
}
