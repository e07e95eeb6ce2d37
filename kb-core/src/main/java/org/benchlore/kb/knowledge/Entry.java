package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * One entry with all that later packs changed in it.
 *
 * @param base the pack that brought it in or replaced it last; its scope holds unless the entry names one
 * @param table the keys that are in force
 * @param layers the keys as each file wrote them, for provenance; by file name
 */
record Entry(EntryKind kind, String id, PackFile base, YamlNode.Table table, Map<String, YamlNode.Table> layers) {
    /** Keys that a refinement adds to, by kind. */
    private static final Map<EntryKind, Set<String>> ADDED = Map.of(
            EntryKind.SYMPTOM, Set.of("called", "phrases"), EntryKind.DEVICE, Set.of("called", "called-first", "has"));

    /** As first written. */
    static Entry first(EntryKind kind, String id, PackFile pack, YamlNode.Table table) {
        return new Entry(kind, id, pack, without(table), Map.of(table.place().file(), table));
    }

    /** Name in messages. */
    Subject subject() {
        return Subject.of(kind.word, " ", Subject.quoted(id));
    }

    /** Where its id stands. */
    Place place() {
        return place(kind.idKey);
    }

    /** Where the value of a key stands, else its id, else the entry. */
    Place place(String key) {
        YamlNode.Field field = table.fields().get(key);
        if (field == null) {
            field = table.fields().get(kind.idKey);
        }
        return field == null ? table.place() : field.value().place();
    }

    /** Where a text stands under a key, or under any key if it is empty. */
    Optional<Place> find(String key, String text) {
        YamlNode.Field field = table.fields().get(key);
        return find(field == null ? table : field.value(), text);
    }

    private static Optional<Place> find(YamlNode node, String text) {
        if (node instanceof YamlNode.Text scalar) {
            return Optional.of(scalar.place())
                    .filter(place -> scalar.value().strip().equals(text));
        }
        Stream<YamlNode> parts = Stream.of();
        if (node instanceof YamlNode.Items items) {
            parts = items.items().stream();
        } else if (node instanceof YamlNode.Table table) {
            parts = table.fields().values().stream().map(YamlNode.Field::value);
        }
        return parts.flatMap(part -> find(part, text).stream()).findFirst();
    }

    /** This entry with the keys of {@code change} put over its own. */
    Entry refinedBy(YamlNode.Table change) {
        Map<String, YamlNode.Field> merged = new LinkedHashMap<>(table.fields());
        without(change).fields().forEach((key, field) -> {
            YamlNode.Field own = merged.get(key);
            if (kind == EntryKind.CAUSE && key.equals("shows") && own != null) {
                merged.put(key, new YamlNode.Field(field.key(), links(own.value(), field.value())));
            } else if (own != null && ADDED.getOrDefault(kind, Set.of()).contains(key)) {
                merged.put(key, new YamlNode.Field(field.key(), added(own.value(), field.value())));
            } else if (!key.equals(kind.idKey)) {
                merged.put(key, field);
            }
        });
        Map<String, YamlNode.Table> both = new LinkedHashMap<>(layers);
        both.put(change.place().file(), change);
        return new Entry(kind, id, base, new YamlNode.Table(table.place(), merged), both);
    }

    /** Words of both; a list takes the other's items on, a table its keys. */
    private static YamlNode added(YamlNode own, YamlNode change) {
        if (own instanceof YamlNode.Items first && change instanceof YamlNode.Items second) {
            List<YamlNode> both = new ArrayList<>(first.items());
            both.addAll(second.items());
            return new YamlNode.Items(own.place(), both);
        }
        if (own instanceof YamlNode.Table first && change instanceof YamlNode.Table second) {
            Map<String, YamlNode.Field> both = new LinkedHashMap<>(first.fields());
            second.fields().forEach((key, field) -> {
                YamlNode.Field before = both.get(key);
                YamlNode value = before == null ? field.value() : added(before.value(), field.value());
                both.put(key, new YamlNode.Field(field.key(), value));
            });
            return new YamlNode.Table(own.place(), both);
        }
        return change;
    }

    /** Links by symptom, those of the change in place of those of the same symptom. */
    private static YamlNode links(YamlNode own, YamlNode change) {
        if (!(own instanceof YamlNode.Items ownLinks) || !(change instanceof YamlNode.Items changes)) {
            return change;
        }
        List<YamlNode> merged = new ArrayList<>(ownLinks.items());
        List<String> changed = changes.items().stream().map(Entry::symptom).toList();
        merged.removeIf(link -> !symptom(link).isEmpty() && changed.contains(symptom(link)));
        merged.addAll(changes.items());
        return new YamlNode.Items(change.place(), merged);
    }

    private static String symptom(YamlNode link) {
        YamlNode.Field field =
                link instanceof YamlNode.Table table ? table.fields().get("symptom") : null;
        return field != null && field.value() instanceof YamlNode.Text text ? text.value() : "";
    }

    private static YamlNode.Table without(YamlNode.Table table) {
        Map<String, YamlNode.Field> fields = new LinkedHashMap<>(table.fields());
        fields.remove("replaces");
        fields.remove("refines");
        return new YamlNode.Table(table.place(), fields);
    }
}
