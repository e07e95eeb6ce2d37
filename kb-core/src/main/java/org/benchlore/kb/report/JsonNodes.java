package org.benchlore.kb.report;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.cfg.EnumFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.node.StringNode;
import tools.jackson.databind.ser.std.ToStringSerializer;

/** The frame that all JSON answers share, and the shapes that come in several of them. */
final class JsonNodes {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    /** For answers that are written as they are: every component by its name, what is absent as null. */
    private static final JsonMapper AS_IS = JsonMapper.builder()
            .enable(EnumFeature.WRITE_ENUMS_TO_LOWERCASE)
            .addModule(new SimpleModule().addSerializer(DeviceScope.class, ToStringSerializer.instance))
            .build();

    private JsonNodes() {}

    /** An answer that so far says only which it is. */
    static ObjectNode root(String name) {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("schema", "benchlore/" + name + "/1");
        return root;
    }

    /** An answer that is a record as it stands. */
    static ObjectNode decision(String name, Record answer) {
        ObjectNode root = root(name);
        asIs(answer).properties().forEach(p -> root.set(p.getKey(), p.getValue()));
        return root;
    }

    static JsonNode asIs(Object value) {
        return AS_IS.valueToTree(value);
    }

    /** A record as it stands, constants spelt as in the code. */
    static ObjectNode fields(Record entry) {
        return MAPPER.valueToTree(entry);
    }

    static void finding(ObjectNode node, Finding finding) {
        node.put("symptom", finding.symptomId());
        node.put("state", finding.state());
        if (!finding.certain()) {
            ObjectNode likelihoods = node.putObject("likelihoods");
            for (Map.Entry<String, Double> e : finding.likelihoods().entrySet()) {
                likelihoods.put(e.getKey(), e.getValue());
            }
        }
    }

    static void texts(ObjectNode node, String name, List<String> texts) {
        ArrayNode array = node.putArray(name);
        texts.forEach(array::add);
    }

    static void conditions(ObjectNode node, List<Reading.Condition> conditions) {
        texts(node, "conditions", conditions.stream().map(JsonNodes::lower).toList());
    }

    static String lower(Enum<?> value) {
        return lower(value.name());
    }

    static String lower(String name) {
        return name.toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** A text as YAML and JSON both quote it. */
    static String quoted(String text) {
        return write(StringNode.valueOf(text));
    }

    /** On one line. */
    static String write(JsonNode node) {
        return MAPPER.writeValueAsString(node);
    }
}
