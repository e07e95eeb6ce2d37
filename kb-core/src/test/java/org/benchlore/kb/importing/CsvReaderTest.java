package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.benchlore.kb.cases.ImportProblem;
import org.junit.jupiter.api.Test;

/** Rows after RFC 4180, section 2, by the number of its rules, and what to do where a file breaks them. */
class CsvReaderTest {
    private final List<ImportProblem> problems = new ArrayList<>();

    private List<CsvReader.Row> rows(String text, char separator) {
        CsvReader reader = new CsvReader(text, separator, "jobs.csv", problems::add);
        List<CsvReader.Row> rows = new ArrayList<>();
        for (Optional<CsvReader.Row> row = reader.next(); row.isPresent(); row = reader.next()) {
            rows.add(row.get());
        }
        return rows;
    }

    private List<List<String>> fields(String text) {
        return rows(text, ',').stream().map(CsvReader.Row::fields).toList();
    }

    @Test
    void rule_1_and_2_rows_end_at_line_breaks_and_the_last_need_not() {
        assertThat(fields("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"))
                .isEqualTo(fields("aaa,bbb,ccc\r\nzzz,yyy,xxx"))
                .containsExactly(List.of("aaa", "bbb", "ccc"), List.of("zzz", "yyy", "xxx"));
        assertThat(fields("a,b\nc,d\re,f")).containsExactly(List.of("a", "b"), List.of("c", "d"), List.of("e", "f"));
    }

    @Test
    void rule_4_spaces_belong_to_a_field_and_empty_fields_count() {
        assertThat(fields(" a , b,,\n")).containsExactly(List.of(" a ", " b", "", ""));
    }

    @Test
    void rule_5_6_and_7_quotes_hold_separators_line_breaks_and_doubled_quotes() {
        assertThat(fields("\"aaa\",\"b \r\nbb\",\"c,c\"\r\nzzz,\"y\"\"y\"\"\",xxx"))
                .containsExactly(List.of("aaa", "b \nbb", "c,c"), List.of("zzz", "y\"y\"", "xxx"));
        assertThat(fields("\"\",\"\"\"\"")).containsExactly(List.of("", "\""));
        assertThat(problems).isEmpty();
    }

    @Test
    void other_separators_a_quote_inside_a_field_and_blank_lines_are_no_trouble() {
        assertThat(rows("a;b,c\n\n  \n1\t2;3\n", ';').stream().map(CsvReader.Row::fields))
                .containsExactly(List.of("a", "b,c"), List.of("1\t2", "3"));
        assertThat(fields("19\" display,6\"3\n")).containsExactly(List.of("19\" display", "6\"3"));
        assertThat(problems).isEmpty();
    }

    @Test
    void rows_know_the_line_they_begin_on() {
        assertThat(rows("h1,h2\n\"one\ntwo\nthree\",x\n\nlast,y", ',').stream().map(CsvReader.Row::line))
                .containsExactly(1L, 2L, 6L);
    }

    @Test
    void a_row_that_breaks_the_rules_is_reported_and_reading_goes_on_with_the_next_line() {
        assertThat(fields("a,b\n\"c\"d,e\nf,g\n\"h,i\nj,k\n"))
                .containsExactly(List.of("a", "b"), List.of("f", "g"), List.of("j", "k"));
        assertThat(problems)
                .extracting(ImportProblem::toString)
                .satisfiesExactly(
                        p -> assertThat(p)
                                .startsWith("jobs.csv:2: something follows the closing quote")
                                .contains("double"),
                        p -> assertThat(p).startsWith("jobs.csv:4: a quote that opens a field is never closed"));
    }

    @Test
    void fields_and_rows_are_bounded() {
        String row = "a,".repeat(300) + "\n" + "x".repeat(CsvReader.LONGEST_FIELD + 1) + ",y\nok,ok\n";
        assertThat(fields(row)).containsExactly(List.of("ok", "ok"));
        assertThat(problems).extracting(ImportProblem::line).containsExactly(1L, 2L);
    }

    /** A million quotes that nothing closes cost no more than a look ahead each, and of those only so many. */
    @Test
    void quotes_that_are_never_closed_end_the_reading_in_bounded_time() {
        String text = "\"a,b\nc,d\n".repeat(20_000);
        rows(text + "\"", ',');
        assertThat(problems).hasSizeLessThan(25_000);
    }

    /** Apache Commons CSV 1.14.1, format RFC4180, as the outside opinion, on rows of every trap at random. */
    @Test
    void rows_are_those_of_commons_csv() throws IOException {
        Random random = new Random(4180);
        for (int n = 0; n < 2000; n++) {
            StringBuilder text = new StringBuilder();
            int width = 2 + random.nextInt(4);
            int height = 1 + random.nextInt(5);
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    text.append(x == 0 ? "" : ",").append(field(random));
                }
                text.append(random.nextBoolean() ? "\r\n" : "\n");
            }
            List<List<String>> theirs;
            try (CSVParser parser = CSVFormat.RFC4180.parse(new StringReader(text.toString()))) {
                theirs = parser.stream()
                        .map(r -> Stream.of(r.values())
                                .map(v -> v.replace("\r\n", "\n").replace('\r', '\n'))
                                .toList())
                        .toList();
            }
            assertThat(fields(text.toString())).as(text.toString()).isEqualTo(theirs);
        }
        assertThat(problems).isEmpty();
    }

    private static String field(Random random) {
        List<String> pieces = List.of("a", " ", "12.5 V", ",", "\r\n", "\n", "\"\"", ";", "é", "=1+1", "'", "\t", "#");
        boolean quoted = random.nextBoolean();
        StringBuilder field = new StringBuilder();
        int length = random.nextInt(5);
        for (int i = 0; i < length; i++) {
            String piece = pieces.get(random.nextInt(pieces.size()));
            boolean needsQuotes = ",\"\n\r".indexOf(piece.charAt(0)) >= 0;
            field.append(!quoted && needsQuotes ? "b" : piece);
        }
        return quoted ? '"' + field.toString() + '"' : field + "x";
    }

    @Test
    void bad_rows_over_several_lines_are_not_read_again_for_ever() {
        assertThat(fields("1,\"a\n\"b\n".repeat(1200))).isEmpty();
        assertThat(problems).last().satisfies(p -> assertThat(p.what()).contains("over several lines"));
    }
}
