package org.benchlore.kb.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Range;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.node.StringNode;
import tools.jackson.databind.ser.std.StdSerializer;
import tools.jackson.databind.ser.std.ToStringSerializer;

/** The frame that all JSON answers share, and the shapes that come in several of them. */
final class JsonNodes {
    /** Records by their components: constants and scopes as they are written elsewhere, what is absent left out. */
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .changeDefaultPropertyInclusion(i -> i.withValueInclusion(JsonInclude.Include.NON_ABSENT))
            .addModule(new SimpleModule()
                    .addSerializer(new Constants())
                    .addSerializer(new Ends())
                    .addSerializer(DeviceScope.class, ToStringSerializer.instance))
            .build();

    /** Kebab-case for enum constants. */
    private static final class Constants extends StdSerializer<Enum<?>> {
        Constants() {
            super(Enum.class);
        }

        @Override
        public void serialize(Enum<?> constant, JsonGenerator to, SerializationContext context) {
            to.writeString(lower(constant));
        }
    }

    /** Ends that nothing bounds are left out: JSON has no infinity. */
    private static final class Ends extends StdSerializer<Range> {
        Ends() {
            super(Range.class);
        }

        @Override
        public void serialize(Range range, JsonGenerator to, SerializationContext context) {
            to.writeStartObject();
            if (Double.isFinite(range.low())) {
                to.writeNumberProperty("low", range.low());
            }
            if (Double.isFinite(range.high())) {
                to.writeNumberProperty("high", range.high());
            }
            to.writeEndObject();
        }
    }

    private JsonNodes() {}

    static ObjectNode object() {
        return MAPPER.createObjectNode();
    }

    /** An answer that so far says only which it is. */
    static ObjectNode root(String name) {
        ObjectNode root = object();
        root.put("schema", "benchlore/" + name + "/1");
        return root;
    }

    /** An answer that is a record as it stands. */
    static ObjectNode decision(String name, Record answer) {
        return root(name).setAll((ObjectNode) tree(answer));
    }

    /** Records as they stand; an empty text says nothing and is left out. */
    static JsonNode tree(Object value) {
        JsonNode tree = MAPPER.valueToTree(value);
        dropEmptyTexts(tree);
        return tree;
    }

    private static void dropEmptyTexts(JsonNode node) {
        if (node instanceof ObjectNode object) {
            object.removeIf(field -> field.isString() && field.asString().isEmpty());
        }
        node.forEach(JsonNodes::dropEmptyTexts);
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
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
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
