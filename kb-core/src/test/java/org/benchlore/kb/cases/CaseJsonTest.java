package org.benchlore.kb.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CaseJsonTest {
    private static final String EVENT_ID = "urn:benchlore:schema:event:1";
    private static final String CASE_ID = "urn:benchlore:schema:case:1";

    /** One sound event of each kind, for changing. */
    private static final String HEAD =
            "{\"schema\":\"benchlore/event/1\",\"id\":\"e1\",\"case\":\"k1\",\"at\":\"2026-01-05T10:00:00Z\",";

    static Schema schema(String id) {
        Map<String, String> texts =
                Map.of(EVENT_ID, resource("event-1.schema.json"), CASE_ID, resource("case-1.schema.json"));
        return SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12, registry -> registry.schemas(texts))
                .getSchema(SchemaLocation.of(id));
    }

    private static String resource(String name) {
        try (InputStream stream = CaseJson.class.getResourceAsStream("/org/benchlore/kb/schema/" + name)) {
            return new String(Objects.requireNonNull(stream, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void every_line_written_reads_back_the_same_and_fits_the_schema() {
        Schema schema = schema(EVENT_ID);
        for (int seed = 0; seed < 60; seed++) {
            for (CaseEvent event : new ArbitraryEvents(seed).ofCase("k" + seed, 15)) {
                String line = CaseJson.write(event);
                assertThat(line).doesNotContain("\n", "\r");
                assertThat(new String(line.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8))
                        .isEqualTo(line);
                assertThat(CaseJson.read(line)).isEqualTo(event);
                assertThat(schema.validate(line, InputFormat.JSON)).as(line).isEmpty();
            }
        }
    }

    @Test
    void a_line_looks_as_documented() {
        CaseEvent event = CaseJson.read(HEAD
                + "\"kind\":\"noted\",\"text\":\"12 V low\",\"source\":\"measured\",\"findings\":[{\"symptom\":\"rail-12v\","
                + "\"likelihoods\":{\"low\":1,\"in-tolerance\":0.3}}]}");
        assertThat(CaseJson.write(event))
                .isEqualTo(HEAD + "\"kind\":\"noted\",\"text\":\"12 V low\",\"source\":\"measured\",\"findings\":"
                        + "[{\"symptom\":\"rail-12v\",\"likelihoods\":{\"in-tolerance\":0.3,\"low\":1.0}}]}");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"kind\":\"noted\",\"source\":\"owner\",\"txt\":\"\"}            | unknown key 'txt' | use only: schema",
                "\"kind\":\"noted\",\"source\":\"owner\",\"source\":\"seen\"}     | Duplicate         | no key comes twice",
                "\"kind\":\"noted\",\"source\":\"hearsay\"}                       | \"hearsay\"       | owner, seen, measured",
                "\"kind\":\"noted\"}                                              | no 'source'       | add it",
                "\"kind\":\"noted\",\"source\":\"owner\",\"text\":12}             | 'text' of the wrong type | double quotes",
                "\"kind\":\"noted\",\"source\":\"owner\",\"findings\":{}}         | 'findings' of the wrong type | square brackets",
                "\"kind\":\"noted\",\"source\":\"owner\",\"findings\":[7]}        | finding 1 is not a JSON object | write {",
                "\"kind\":\"noted\",\"source\":\"owner\",\"findings\":[{\"symptom\":\"s\"}]} | either a 'state' or | exactly one",
                "\"kind\":\"noted\",\"source\":\"owner\",\"findings\":[{\"symptom\":\"s\",\"likelihoods\":{\"low\":0}}]} | likelihood | above 0",
                "\"kind\":\"noted\",\"source\":\"owner\",\"findings\":[{\"symptom\":\"s\",\"state\":\"a b\"}]} | 'a b' cannot be used | letters",
                "\"kind\":\"tested\",\"test\":\"t\",\"minutes\":\"5\"}            | 'minutes' of the wrong type | a number",
                "\"kind\":\"tested\",\"test\":\"t\",\"minutes\":-1}               | -1.0 minutes      | from 0 up",
                "\"kind\":\"ended\",\"outcome\":\"fixed\",\"afterDays\":3}        | fixed after 3 days | came-back only",
                "\"kind\":\"ended\",\"outcome\":\"came-back\",\"afterDays\":3.5}  | 'afterDays' of the wrong type | whole number",
                "\"kind\":\"ended\",\"outcome\":\"exploded\"}                     | \"exploded\"      | given-up",
                "\"kind\":\"opened\",\"scope\":\"TV\"}                            | 'TV' is not kebab-case | lower-case",
                "\"kind\":\"opened\",\"workedOnBefore\":\"no\"}                   | wrong type        | true or false",
                "\"kind\":\"corrected\",\"target\":\"x\"}                         | without a 'replacement' | should have been",
                "\"kind\":\"corrected\",\"target\":\"x\",\"replacement\":{\"id\":\"y\",\"at\":\"2026-01-05T10:00:00Z\",\"kind\":\"withdrawn\"}} | with a correction | should have been",
                "\"kind\":\"checked\"}                                            | no 'result'       | add it",
                "\"kind\":\"checked\",\"result\":\"fine\"}                       | \"fine\"          | passed, failed, not-done",
                "\"kind\":\"checked\",\"result\":\"passed\",\"seen\":2}           | seen 2 times      | with 'failed' only",
                "\"kind\":\"checked\",\"result\":\"failed\",\"seen\":0}           | seen 0 times      | give 1 to",
                "\"kind\":\"checked\",\"result\":\"not-done\",\"hours\":2}        | not done          | leave them out",
                "\"kind\":\"checked\",\"result\":\"passed\",\"hours\":-1}         | -1.0 hours        | from 0 up",
                "\"kind\":\"checked\",\"result\":\"passed\",\"conditions\":\"warm\"} | 'conditions' of the wrong type | square brackets",
                "\"kind\":\"checked\",\"result\":\"passed\",\"conditions\":[1]}   | 'conditions' of the wrong type | double quotes",
                "\"kind\":\"checked\",\"result\":\"passed\",\"conditions\":[\"hot\"]} | \"hot\"       | cold, warm",
                "\"kind\":\"checked\",\"result\":\"passed\",\"conditions\":[\"intermittent\"]} | 'intermittent' | leave it out",
                "\"kind\":\"weighed\",\"fix\":\"f\",\"worse\":0,\"decided\":\"work\"} | no 'success'       | add it",
                "\"kind\":\"weighed\",\"fix\":\"f\",\"success\":0.9,\"worse\":0.2,\"decided\":\"work\"} | success 0.9 and harm 0.2 | sum to 1",
                "\"kind\":\"weighed\",\"fix\":\"f\",\"success\":1,\"worse\":0,\"decided\":\"burn\"} | \"burn\" | work, leave, parts",
                "\"kind\":\"weighed\",\"fix\":\"f\",\"success\":1,\"worse\":0,\"decided\":\"work\",\"stakes\":{\"repaired\":1}} | stakes has no 'leftAlone' | add it",
                "\"kind\":\"blessed\"}                                            | unknown kind 'blessed' | if a newer version wrote it, update",
                "\"kind\":\"noted\",\"source\":\"owner\"} {}                      | not valid JSON    | one JSON object",
                "\"kind\":\"noted\",\"source\":\"own                              | not valid JSON at column | correct the line",
            })
    void what_is_wrong_is_one_sentence_with_a_remedy(String rest, String what, String remedy) {
        String line = HEAD + rest.trim();
        assertThatThrownBy(() -> CaseJson.read(line))
                .isInstanceOf(BadLineException.class)
                .hasMessageContainingAll(what.trim(), remedy.trim())
                .message()
                .doesNotContain("\n")
                .hasSizeLessThan(400);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"kind\":\"noted\",\"source\":\"owner\",\"txt\":\"\"}",
                "\"kind\":\"noted\",\"source\":\"hearsay\"}",
                "\"kind\":\"noted\"}",
                "\"kind\":\"noted\",\"source\":\"owner\",\"text\":12}",
                "\"kind\":\"noted\",\"source\":\"owner\",\"findings\":[{\"symptom\":\"s\"}]}",
                "\"kind\":\"noted\",\"source\":\"owner\",\"findings\":[{\"symptom\":\"s\",\"likelihoods\":{\"low\":0}}]}",
                "\"kind\":\"noted\",\"source\":\"owner\",\"target\":\"x\"}",
                "\"kind\":\"tested\",\"test\":\"t\",\"minutes\":-1}",
                "\"kind\":\"ended\",\"outcome\":\"fixed\",\"afterDays\":3}",
                "\"kind\":\"ended\",\"outcome\":\"exploded\"}",
                "\"kind\":\"opened\",\"scope\":\"TV\"}",
                "\"kind\":\"corrected\",\"target\":\"x\"}",
                "\"kind\":\"corrected\",\"target\":\"x\",\"replacement\":{\"id\":\"y\",\"at\":\"2026-01-05T10:00:00Z\",\"kind\":\"withdrawn\"}}",
                "\"kind\":\"checked\"}",
                "\"kind\":\"checked\",\"result\":\"passed\",\"seen\":2}",
                "\"kind\":\"checked\",\"result\":\"failed\",\"seen\":0}",
                "\"kind\":\"checked\",\"result\":\"not-done\",\"hours\":2}",
                "\"kind\":\"checked\",\"result\":\"passed\",\"conditions\":[\"intermittent\"]}",
                "\"kind\":\"weighed\",\"fix\":\"f\",\"worse\":0,\"decided\":\"work\"}",
                "\"kind\":\"weighed\",\"fix\":\"f\",\"success\":1.5,\"worse\":0,\"decided\":\"work\"}",
                "\"kind\":\"weighed\",\"fix\":\"f\",\"success\":1,\"worse\":0,\"decided\":\"work\",\"stakes\":{\"repaired\":1}}",
                "\"kind\":\"blessed\"}",
            })
    void the_schema_refuses_what_the_reader_refuses(String rest) {
        assertThatThrownBy(() -> CaseJson.read(HEAD + rest)).isInstanceOf(BadLineException.class);
        assertThat(schema(EVENT_ID).validate(HEAD + rest, InputFormat.JSON)).isNotEmpty();
    }

    @Test
    void sizes_are_bounded() {
        assertThatThrownBy(() -> CaseJson.read(" ".repeat(CaseJson.MAX_LINE + 1)))
                .isInstanceOf(BadLineException.class)
                .hasMessageContaining("longer than 1048576");
        assertThatThrownBy(() -> CaseJson.read("[".repeat(100_000)))
                .isInstanceOf(BadLineException.class)
                .hasMessageContaining("nested deeper")
                .hasMessageNotContaining("schema");
        assertThatThrownBy(() -> CaseJson.read("{\"" + "k".repeat(5_000) + "\":1}"))
                .isInstanceOf(BadLineException.class)
                .message()
                .hasSizeLessThan(400);
        assertThatThrownBy(() -> CaseJson.read("7")).isInstanceOf(BadLineException.class);
        assertThatThrownBy(() -> CaseJson.read("")).isInstanceOf(BadLineException.class);
    }

    @Test
    void the_case_schema_takes_whole_cases_and_refuses_what_the_import_refuses() {
        Schema schema = schema(CASE_ID);
        assertThat(schema.validate(CaseImportTest.WHOLE_CASE, InputFormat.JSON)).isEmpty();
        for (String change : List.of(
                "\"opened\"->\"opend\"",
                "\"source\":\"seen\"->\"source\":\"felt\"",
                "\"test\":\"measure-12v\"->\"tst\":\"measure-12v\"",
                "\"certainty\":\"proven\"->\"certainty\":\"sure\"",
                "\"outcome\":\"fixed-and-proven\"->\"outcome\":\"fine\"",
                "\"afterDays\":null->\"afterDays\":4",
                "2022-03-04\"->04.03.2022\"")) {
            String[] fromTo = change.split("->", -1);
            String line = CaseImportTest.WHOLE_CASE.replace(fromTo[0], fromTo[1]);
            assertThat(line).isNotEqualTo(CaseImportTest.WHOLE_CASE);
            assertThat(schema.validate(line, InputFormat.JSON)).as(change).isNotEmpty();
            CaseLineReader reader = new CaseLineReader((text, scope) -> List.of());
            assertThatThrownBy(() -> reader.read(schemaRead(line))).as(change).isInstanceOf(BadLineException.class);
        }
    }

    private static JsonFields schemaRead(String line) {
        JsonFields fields = CaseJson.parse(line, "case");
        assertThat(fields.text("schema")).isEqualTo(CaseJson.CASE);
        return fields;
    }
}
