package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The keys of one entry, read by name. What was asked for is what is known: {@link #finish} reports the rest as unknown
 * keys.
 */
final class Fields {
    private final YamlNode.Table table;
    private final Object subject;
    private final Values values;
    private final Problems problems;
    private final List<String> asked = new ArrayList<>();

    Fields(YamlNode.Table table, Object subject, Values values, Problems problems) {
        this.table = table;
        this.subject = subject;
        this.values = values;
        this.problems = problems;
    }

    /** The keys of {@code node}, or a reported problem. */
    static Optional<Fields> of(YamlNode node, Object subject, Values values, Problems problems) {
        if (node instanceof YamlNode.Table table) {
            return Optional.of(new Fields(table, subject, values, problems));
        }
        if (!(node instanceof YamlNode.Refused)) {
            problems.error(
                    node.place(), subject + " should be keys with values, found " + node.kind(), "write 'key: value'");
        }
        return Optional.empty();
    }

    Object subject() {
        return subject;
    }

    Place place() {
        return table.place();
    }

    /** Place of a key's value, else of the whole. */
    Place place(String key) {
        YamlNode.Field field = table.fields().get(key);
        return field == null ? table.place() : field.value().place();
    }

    boolean has(String key) {
        return table.fields().containsKey(key);
    }

    /** The value of an optional key. */
    Optional<YamlNode> find(String key) {
        asked.add(key);
        YamlNode.Field field = table.fields().get(key);
        return field == null ? Optional.empty() : Optional.of(field.value());
    }

    /** The value of a key that must be there, or a reported problem. */
    Optional<YamlNode> require(String key) {
        Optional<YamlNode> value = find(key);
        if (value.isEmpty()) {
            problems.error(table.place(), subject + " has no '" + key + "'", "add the key '" + key + "'");
        }
        return value;
    }

    String id(String key) {
        return require(key).map(node -> values.id(node, what(key))).orElse("");
    }

    String name(String key) {
        return require(key)
                .map(node -> values.text(node, what(key), Values.MAX_NAME))
                .orElse("");
    }

    String name(String key, String otherwise) {
        return find(key)
                .map(node -> values.text(node, what(key), Values.MAX_NAME))
                .orElse(otherwise);
    }

    String text(String key) {
        return require(key)
                .map(node -> values.text(node, what(key), Values.MAX_TEXT))
                .orElse("");
    }

    String text(String key, String otherwise) {
        return find(key)
                .map(node -> values.text(node, what(key), Values.MAX_TEXT))
                .orElse(otherwise);
    }

    /** Names, words or phrases; an absent key is an empty list. */
    List<String> names(String key) {
        return find(key)
                .map(node -> values.texts(node, what(key), Values.MAX_NAME))
                .orElse(List.of());
    }

    /** One id or a list of them; an absent key is an empty list. */
    List<String> ids(String key) {
        return find(key)
                .map(node -> node instanceof YamlNode.Items list ? list.items() : List.of(node))
                .orElse(List.of())
                .stream()
                .map(node -> values.id(node, what(key)))
                .filter(id -> !id.isEmpty())
                .distinct()
                .toList();
    }

    /** Sentences; an absent key is an empty list. */
    List<String> texts(String key) {
        return find(key)
                .map(node -> values.texts(node, what(key), Values.MAX_TEXT))
                .orElse(List.of());
    }

    /** A list that must be there and hold something. */
    List<YamlNode> requireItems(String key) {
        Optional<YamlNode> node = require(key);
        List<YamlNode> items = node.map(n -> values.items(n, what(key))).orElse(List.of());
        if (node.isPresent() && node.get() instanceof YamlNode.Items && items.isEmpty()) {
            problems.error(node.get().place(), what(key) + " is empty", "name at least one");
        }
        return items;
    }

    List<String> requireTexts(String key) {
        List<String> texts = new ArrayList<>();
        for (YamlNode item : requireItems(key)) {
            String text = values.text(item, Subject.of("an item of ", what(key)), Values.MAX_TEXT);
            if (!text.isEmpty()) {
                texts.add(text);
            }
        }
        return texts;
    }

    double number(String key, Values.Span span) {
        return require(key)
                .map(node -> values.number(node, what(key), span, span.low() + 1))
                .orElse(span.low() + 1);
    }

    double number(String key, Values.Span span, double otherwise) {
        return find(key)
                .map(node -> values.number(node, what(key), span, otherwise))
                .orElse(otherwise);
    }

    double probability(String key) {
        return require(key).map(node -> values.probability(node, what(key))).orElse(Values.STAND_IN);
    }

    <E extends Enum<E>> E choice(String key, E[] choices) {
        return require(key).map(node -> values.choice(node, what(key), choices)).orElse(choices[0]);
    }

    boolean flag(String key) {
        return find(key).map(node -> values.flag(node, what(key))).orElse(false);
    }

    DeviceScope scope(DeviceScope otherwise) {
        return find("scope").map(node -> values.scope(node, what("scope"))).orElse(otherwise);
    }

    /** An optional list of entries with keys. */
    List<Fields> tables(String key, String each) {
        return find(key).map(node -> values.items(node, what(key))).orElse(List.of()).stream()
                .flatMap(item -> of(item, Subject.of(each, " of ", subject), values, problems).stream())
                .toList();
    }

    /** The keys of an optional nested table with their values, in order; empty when absent. */
    Map<String, YamlNode.Field> nested(String key) {
        Optional<YamlNode> node = find(key);
        if (node.isEmpty()) {
            return Map.of();
        }
        return of(node.get(), what(key), values, problems)
                .map(fields -> (Map<String, YamlNode.Field>) new LinkedHashMap<>(fields.table.fields()))
                .orElse(Map.of());
    }

    /** Names a key in a message. */
    Subject what(String key) {
        return Subject.of(subject, ": '", key, "'");
    }

    /** Reports every key that nobody asked for. */
    void finish() {
        table.fields().forEach((key, field) -> {
            if (!asked.contains(key)) {
                problems.error(
                        field.key(),
                        subject + " has an unknown key " + Problems.quote(key),
                        isRestOfText(key, field)
                                ? "put the text before it in quotes: within braces a comma ends a value"
                                : Nearest.remedy(key, asked, "take it out; known here: " + known()));
            }
        });
    }

    private String known() {
        return String.join(", ", new LinkedHashSet<>(asked));
    }

    /** Whether a "key" without a value is what follows the comma of an unquoted text. */
    private static boolean isRestOfText(String key, YamlNode.Field field) {
        return !key.isEmpty() && field.value() instanceof YamlNode.Text text && text.missing();
    }
}
