package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.report.Json;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What other tools read: every answer in JSON fits its schema file. */
class JsonContractTest {
    private static final String WORDS = "green light, no 12 V, 3.26 V on the 3.3 V rail, controller silent";

    private static final String HELD = "juice spilled into it, dead";

    @TempDir
    Path home;

    private String json(String schema, String... args) throws IOException {
        List<String> all = new ArrayList<>(List.of(args));
        all.addAll(List.of("--json", "--home", home.toString()));
        Run run = Run.of(all.toArray(String[]::new));
        assertThat(run.out().lines()).hasSize(1);
        String id = "urn:benchlore:schema:" + schema + ":1";
        String text = resource("/org/benchlore/kb/schema/" + schema + "-1.schema.json");
        SchemaRegistry registry = SchemaRegistry.withDefaultDialect(
                SpecificationVersion.DRAFT_2020_12, builder -> builder.schemas(Map.of(id, text)));
        assertThat(registry.getSchema(SchemaLocation.of(id)).validate(run.out(), InputFormat.JSON))
                .isEmpty();
        assertThat(run.out()).as("what is absent is left out").doesNotContain(":null");
        return run.out();
    }

    private static String resource(String path) throws IOException {
        try (InputStream in = Json.class.getResourceAsStream(path)) {
            assertThat(in).as(path).isNotNull();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private String recorded() {
        Run run = Run.of(
                "outcome",
                WORDS,
                "--case",
                "job-1",
                "--cause",
                "reset-supervisor-failed",
                "--fix",
                "replace-reset-supervisor",
                "--ended",
                "fixed",
                "--home",
                home.toString());
        assertThat(run.code()).as(run.err()).isZero();
        return "job-1";
    }

    @Test
    void every_answer_fits_its_schema() throws IOException {
        json("ranking", "rank", WORDS);
        json("ranking", "rank", "blorf wibble");
        assertThat(json("ranking", "rank", HELD, "--top", "2"))
                .contains("\"total\":", "\"hold\":{\"reasons\":[{\"ruleId\":\"wet-inside\"")
                .hasSizeLessThan(20_000);
        json("next", "next", WORDS);
        assertThat(json("plan", "plan", WORDS)).doesNotContain("\":\"\"");
        assertThat(json("next", "next", WORDS)).doesNotContain("\":\"\"");
        assertThat(json("next", "next", HELD)).contains("\"hold\":", "\"until\":[{\"symptomId\"");
        json("plan", "plan", HELD);
        json("worth", "worth", WORDS, "--fix", "replace-reset-supervisor", "--repaired", "80");
        json("proof", "proof", "--fix", "replace-reset-supervisor", "--seen", "2", "--in", "20");
        json("proof", "proof", "--case", recorded(), "--failed", "1", "--condition", "warm");
        json("fixes", "fixes", "replace-reset-supervisor");
        json("search", "search", "scrambled display");
        json("search", "search", "scrambled display", "--outcome", "fixed");
        json("search", "search", "--similar", "job-1");
        json("suggestions", "search", "--suggest", "stand");
        assertThat(json("entry", "show", "rail-12v"))
                .contains("\"reported\":\"if-tested\"", "\"scope\":\"any\"", "\"kind\":\"published\"")
                .doesNotContain("Infinity");
        json("entry", "show", "reset-supervisor-failed");
        json("entry", "show", "benchlore:caution/mains");
        assertThat(json("entry", "show", "wet-inside")).contains("\"kind\":\"power-off-rule\"");
        assertThat(json("entry", "show", "printer")).contains("\"uri\":\"benchlore:device/printer\"");
        json("case-state", "case", "open", "no 12 V", "--unit", "shelf 2");
        json("outcome", "outcome", WORDS, "--cause", "reset-supervisor-failed", "--ended", "fixed");
        assertThat(json("case-state", "show", "job-1")).contains("\"kind\":\"fix-applied\"");
        json("case-list", "case", "list");
        json("evaluation", "evaluate");
        json("reasons", "doubt", WORDS);
        json("rebuild", "rebuild");
        json("quality", "quality");
        Path bad = home.resolve("bad.yaml");
        Files.writeString(bad, "pack: [");
        json("check", "check", bad.toString());
        Path lines = home.resolve("lines.jsonl");
        Files.writeString(lines, "{\"schema\":\"benchlore/event/1\"}\n");
        json("import", "import", lines.toString());
        Path diary = home.resolve("diary.txt");
        Files.writeString(diary, "12.3.2024 no 12 V. replaced reset supervisor, ran two days, ok\n31.2.2024 dead\n");
        json("import-review", "import", "--dry-run", diary.toString());
        json("import", "import", diary.toString());
        Path table = home.resolve("jobs.csv");
        Files.writeString(table, "date,unit,notes\n1.3.2024,A1,no 12 V\n1.3.2024,A1,\"no 12 V, replaced C5\"\n");
        json("import-review", "import", "--dry-run", table.toString());
        json("words", "words", "--at-least", "1");
    }
}
