package org.benchlore.kb.cases;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import org.benchlore.kb.reading.Finding;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * Strict access to one JSON object: a missing key, a wrong type or a key nobody asked for is a
 * {@link BadLineException}. Call {@link #done} after the last key. JSON null counts as left out.
 */
final class JsonFields {
    private final JsonNode object;
    private final String name;
    private final Set<String> asked = new LinkedHashSet<>();

    /** @param name how messages call the object: "event", "note 2" */
    JsonFields(JsonNode object, String name) {
        if (!object.isObject()) {
            throw new BadLineException(name + " is not a JSON object", "write {\"key\":value,…}", null);
        }
        this.object = object;
        this.name = name;
    }

    private @Nullable JsonNode find(String key) {
        asked.add(key);
        JsonNode value = object.get(key);
        return value == null || value.isNull() ? null : value;
    }

    private BadLineException wrongType(String key, String wanted) {
        return new BadLineException(name + " has a '" + key + "' of the wrong type", "write " + wanted, null);
    }

    private <T> T required(@Nullable T value, String key) {
        if (value == null) {
            throw new BadLineException(name + " has no '" + key + "'", "add it", null);
        }
        return value;
    }

    boolean has(String key) {
        return find(key) != null;
    }

    private @Nullable String textOrNull(String key) {
        JsonNode value = find(key);
        if (value == null) {
            return null;
        }
        if (!value.isString()) {
            throw wrongType(key, "a text in double quotes");
        }
        return value.stringValue();
    }

    String text(String key) {
        return required(textOrNull(key), key);
    }

    String text(String key, String otherwise) {
        String value = textOrNull(key);
        return value == null ? otherwise : value;
    }

    @Nullable
    String optionalText(String key) {
        return textOrNull(key);
    }

    boolean flag(String key) {
        JsonNode value = find(key);
        if (value != null && !value.isBoolean()) {
            throw wrongType(key, "true or false");
        }
        return value != null && value.booleanValue();
    }

    @Nullable
    Double number(String key) {
        JsonNode value = find(key);
        if (value == null) {
            return null;
        }
        if (!value.isNumber()) {
            throw wrongType(key, "a number");
        }
        return value.doubleValue();
    }

    double requiredNumber(String key) {
        return required(number(key), key);
    }

    @Nullable
    Integer whole(String key) {
        JsonNode value = find(key);
        if (value == null) {
            return null;
        }
        if (!value.isIntegralNumber() || !value.canConvertToInt()) {
            throw wrongType(key, "a whole number");
        }
        return value.intValue();
    }

    /** An instant such as 2026-11-25T10:15:00Z. */
    Instant instant(String key) {
        String text = text(key);
        try {
            return Instant.parse(text);
        } catch (DateTimeException e) {
            throw notATime(key, text, "2026-11-25T10:15:00Z", e);
        }
    }

    /** An instant, or a date that stands for its first moment in UTC; null when left out. */
    @Nullable
    Instant instantOrDate(String key) {
        String text = textOrNull(key);
        if (text == null) {
            return null;
        }
        try {
            return text.indexOf('T') < 0
                    ? LocalDate.parse(text).atStartOfDay(ZoneOffset.UTC).toInstant()
                    : Instant.parse(text);
        } catch (DateTimeException e) {
            throw notATime(key, text, "2026-11-25 or 2026-11-25T10:15:00Z", e);
        }
    }

    private BadLineException notATime(String key, String text, String like, DateTimeException e) {
        return new BadLineException(name + " has '" + key + "' \"" + shown(text) + "\"", "write it like " + like, e);
    }

    /** One of an enum's constants, in kebab-case. */
    <E extends Enum<E>> E choice(String key, E[] choices) {
        return choice(key, choices, text(key));
    }

    <E extends Enum<E>> E choice(String key, E[] choices, String otherwise) {
        return choiceOf(key, choices, text(key, otherwise));
    }

    /** A list of an enum's constants; empty when left out. */
    <E extends Enum<E>> List<E> choices(String key, E[] choices) {
        JsonNode array = find(key);
        if (array == null) {
            return List.of();
        }
        if (!array.isArray()) {
            throw wrongType(key, "a list in square brackets");
        }
        List<E> all = new ArrayList<>(array.size());
        for (JsonNode value : array) {
            if (!value.isString()) {
                throw wrongType(key, "texts in double quotes");
            }
            all.add(choiceOf(key, choices, value.stringValue()));
        }
        return all;
    }

    private <E extends Enum<E>> E choiceOf(String key, E[] choices, String text) {
        List<String> known = new ArrayList<>();
        for (E choice : choices) {
            if (kebab(choice).equals(text)) {
                return choice;
            }
            known.add(kebab(choice));
        }
        throw new BadLineException(
                name + " has '" + key + "' \"" + shown(text) + "\"", "use one of: " + String.join(", ", known), null);
    }

    static String kebab(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @Nullable
    JsonFields object(String key) {
        JsonNode value = find(key);
        return value == null ? null : new JsonFields(value, key);
    }

    /** The objects of an array, each read and checked to the last key; empty when left out. */
    <T> List<T> each(String key, String one, Function<JsonFields, T> read) {
        JsonNode array = find(key);
        if (array == null) {
            return List.of();
        }
        if (!array.isArray()) {
            throw wrongType(key, "a list in square brackets");
        }
        List<T> all = new ArrayList<>(array.size());
        for (int i = 0; i < array.size(); i++) {
            JsonFields fields = new JsonFields(array.get(i), one + " " + (i + 1));
            all.add(fields.checked(() -> read.apply(fields)));
            fields.done();
        }
        return all;
    }

    List<Finding> findings() {
        return each("findings", name + ", finding", JsonFields::finding);
    }

    private static Finding finding(JsonFields fields) {
        String symptom = fields.text("symptom");
        String state = fields.textOrNull("state");
        JsonNode likelihoods = fields.find("likelihoods");
        if ((state == null) == (likelihoods == null)) {
            throw new BadLineException(
                    fields.name + " needs either a 'state' or 'likelihoods'", "give exactly one of the two", null);
        }
        if (state != null) {
            return Finding.of(symptom, state);
        }
        TreeMap<String, Double> byState = new TreeMap<>();
        JsonNode given = fields.required(likelihoods, "likelihoods");
        if (!given.isObject()) {
            throw fields.wrongType("likelihoods", "an object of numbers such as {\"low\":1,\"in-tolerance\":0.3}");
        }
        given.properties().forEach(e -> {
            if (!e.getValue().isNumber()) {
                throw fields.wrongType("likelihoods", "numbers above 0");
            }
            byState.put(e.getKey(), e.getValue().doubleValue());
        });
        return Finding.soft(symptom, byState);
    }

    /** Runs {@code make}; what our records refuse becomes a problem of this object. */
    <T> T checked(Supplier<T> make) {
        try {
            return make.get();
        } catch (IllegalArgumentException e) {
            BadLineException bad = BadLineException.of(e);
            throw new BadLineException(name + ": " + bad.what(), bad.remedy(), e);
        }
    }

    /** Refuses keys nobody asked for. */
    void done() {
        for (String key : object.propertyNames()) {
            if (!asked.contains(key)) {
                throw new BadLineException(
                        name + " has an unknown key '" + shown(key) + "'",
                        "use only: " + String.join(", ", asked),
                        null);
            }
        }
    }

    /** Bounded, so that a message stays one sentence. */
    static String shown(String text) {
        return text.length() <= 60 ? text : text.substring(0, 60) + "…";
    }
}
