package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.benchlore.kb.cases.Stakes;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.report.Json;
import org.junit.jupiter.api.Test;

/** Each decision as JSON fits the schema that ships, and the schema refuses a spoilt one. */
class DecisionsAsJsonTest {
    private static final TestPlanner PLANNER = new TestPlanner(BenchWorld.KNOWLEDGE, BenchWorld.MODEL);
    private static final RankingQuery DARK = BenchWorld.query("lamp=dark");

    private static void fits(String name, String json) {
        String id = "urn:benchlore:schema:" + name + ":1";
        var schema = SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12, b -> b.schemas(Map.of(id, resource(name))))
                .getSchema(SchemaLocation.of(id));
        assertThat(schema.validate(json, InputFormat.JSON)).as(json).isEmpty();
        String spoilt = json.replace("benchlore/" + name + "/1", "benchlore/other/1");
        assertThat(schema.validate(spoilt, InputFormat.JSON)).isNotEmpty();
    }

    private static String resource(String name) {
        String file = "/org/benchlore/kb/schema/" + name + "-1.schema.json";
        try (InputStream stream = Json.class.getResourceAsStream(file)) {
            return new String(Objects.requireNonNull(stream, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void next_with_and_without_a_fix() {
        fits("next", Json.next(PLANNER.next(DARK, BenchConditions.DEFAULT)));
        fits("next", Json.next(PLANNER.next(DARK, BenchConditions.DEFAULT.costing(1, 0))));
    }

    @Test
    void plan() {
        fits("plan", Json.plan(PLANNER.plan(DARK, BenchConditions.DEFAULT)));
    }

    @Test
    void fixes() {
        BenchRecord record = BenchRecord.none(BenchWorld.KNOWLEDGE)
                .learn(List.of(CaseWork.of(BenchWorld.history("a", "board-dead", "fix:replace-board", "fixed"))));
        fits("fixes", Json.fixes(record.fixes(DeviceScope.ANY, Optional.empty())));
        fits("fixes", Json.fixes(List.of(record.fix("no-such-fix"))));
    }

    @Test
    void worth() {
        fits("worth", Json.worth(PLANNER.worth(DARK, "replace-board", new Stakes(100, 0, 0, 10, 20))));
    }

    @Test
    void proof() {
        ProofRecord known = ProofRecord.of(Optional.of("replace-lead"), 3, 24, 5);
        fits("proof", Json.proof(ProofPlan.of(known, .9, .3, List.of("Run it."))));
        fits("proof", Json.proof(ProofPlan.of(ProofRecord.of(Optional.empty(), 0, 0, 0), .9, .3, List.of())));
    }
}
