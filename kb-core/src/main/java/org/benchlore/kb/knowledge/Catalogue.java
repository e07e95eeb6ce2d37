package org.benchlore.kb.knowledge;

import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Every entry of every pack by kind and id, later packs laid over earlier ones. */
final class Catalogue {
    private static final int MAX_ENTRIES = 50_000;
    private static final int MAX_COMPARED_IDS = 5_000;
    private static final int MAX_COMPARISONS = 200;

    private final Problems problems;
    private final Values values;
    private final boolean complete;
    private final Map<EntryKind, Map<String, Entry>> entries = new EnumMap<>(EntryKind.class);
    private final Map<String, PackFile> packs = new LinkedHashMap<>();
    private int count;
    private int compared;

    /**
     * @param complete false when some file could not be read; an unknown id may then stand in that file and is not
     *     reported
     */
    Catalogue(Values values, Problems problems, boolean complete) {
        this.values = values;
        this.problems = problems;
        this.complete = complete;
        for (EntryKind kind : EntryKind.values()) {
            entries.put(kind, new LinkedHashMap<>());
        }
    }

    void add(PackFile pack) {
        for (PackFile other : packs.values()) {
            if (other.head().id().equals(pack.head().id())) {
                problems.error(
                        pack.place(),
                        "pack " + Problems.quote(pack.head().id()) + " was read before, from "
                                + other.place().file(),
                        "give one of them another id");
            }
        }
        packs.put(pack.place().file(), pack);
        pack.entries().forEach((kind, tables) -> tables.forEach(table -> add(kind, pack, table)));
    }

    private void add(EntryKind kind, PackFile pack, YamlNode.Table table) {
        if (++count > MAX_ENTRIES) {
            if (count == MAX_ENTRIES + 1) {
                problems.error(table.place(), "more than " + MAX_ENTRIES + " entries in all", "read fewer packs");
            }
            return;
        }
        Fields fields = new Fields(table, "a " + kind.word, values, problems);
        String id = id(kind, fields);
        boolean replaces = fields.flag("replaces");
        boolean refines = fields.flag("refines");
        Map<String, Entry> known = entries(kind);
        Entry earlier = known.get(id);
        Entry entry = Entry.first(kind, id, pack, table);
        if (replaces && refines) {
            problems.error(fields.place("refines"), entry.subject() + " both replaces and refines", "keep one of them");
        } else if ((replaces || refines) && earlier == null && complete) {
            problems.error(
                    fields.place(replaces ? "replaces" : "refines"),
                    "there is no earlier " + entry.subject() + " to change",
                    Nearest.remedy(id, worthComparing(kind), "read the pack that has it first, or take this key out"));
        } else if (earlier != null && !(replaces || refines)) {
            problems.error(
                    entry.place(),
                    entry.subject() + " stands twice, first at " + earlier.place(),
                    "rename one; a later pack that means to change it says 'replaces: true' or 'refines: true'");
            return;
        } else if (earlier != null && earlier.layers().containsKey(pack.place().file())) {
            problems.error(
                    entry.place(),
                    entry.subject() + " changes an entry of its own pack, at " + earlier.place(),
                    "write it once");
            return;
        }
        known.put(id, refines && earlier != null ? earlier.refinedBy(table) : entry);
    }

    private String id(EntryKind kind, Fields fields) {
        Optional<YamlNode> node = fields.require(kind.idKey);
        String id = node.map(n -> kind == EntryKind.DEVICE
                        ? values.scope(n, fields.what(kind.idKey)).toString()
                        : values.id(n, fields.what(kind.idKey)))
                .orElse("");
        // An entry without an id is still checked, under a name that no reference can have.
        return id.isEmpty() ? "at " + fields.place() : id;
    }

    private Map<String, Entry> entries(EntryKind kind) {
        return entries.getOrDefault(kind, new HashMap<>());
    }

    Collection<Entry> all(EntryKind kind) {
        return entries(kind).values();
    }

    Optional<Entry> find(EntryKind kind, String id) {
        return Optional.ofNullable(entries(kind).get(id));
    }

    List<PackFile> packs() {
        return List.copyOf(packs.values());
    }

    PackFile packAt(Place place) {
        PackFile pack = packs.get(place.file());
        if (pack == null) {
            throw new IllegalStateException("no pack was read from " + place.file());
        }
        return pack;
    }

    /** False when a file could not be read, so that what is missing may stand there. */
    boolean complete() {
        return complete;
    }

    /** The id that {@code node} refers to, if there is such an entry; else a reported problem. */
    Optional<String> refer(EntryKind kind, YamlNode node, Object what) {
        String id = values.text(node, what, Values.MAX_NAME);
        if (id.isEmpty() || find(kind, id).isPresent()) {
            return Optional.of(id).filter(text -> !text.isEmpty());
        }
        if (complete) {
            problems.error(
                    node.place(),
                    what + ": there is no " + kind.word + " " + Problems.quote(id),
                    Nearest.remedy(id, worthComparing(kind), "correct the id, or add the " + kind.word + " to a pack"));
        }
        return Optional.empty();
    }

    /** Known ids of a kind while comparing is cheap; a hostile pack must not buy hours with wrong references. */
    private Collection<String> worthComparing(EntryKind kind) {
        Collection<String> ids = entries(kind).keySet();
        return ids.size() > MAX_COMPARED_IDS || ++compared > MAX_COMPARISONS ? List.of() : ids;
    }

    /** The ids of a list of references that exist, each once. */
    List<String> referAll(EntryKind kind, Fields fields, String key) {
        return fields.find(key).map(node -> values.items(node, fields.what(key))).orElse(List.of()).stream()
                .flatMap(item -> refer(kind, item, fields.what(key)).stream())
                .distinct()
                .toList();
    }
}
