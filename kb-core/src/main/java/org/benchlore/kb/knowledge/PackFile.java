package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One file: head, sources, and its entries still as written.
 *
 * @param from where the pack's numbers come from unless an entry says otherwise; absent means memory
 * @param needs what a unit must hold to have the pack's causes, unless a cause says otherwise
 * @param entries the entries of each section
 */
record PackFile(
        Place place,
        Pack head,
        DeviceScope scope,
        Optional<YamlNode> from,
        Map<String, Source> sources,
        List<String> needs,
        Map<EntryKind, List<YamlNode.Table>> entries) {
    /** Whether anybody has seen a source. */
    enum Seen {
        PRIMARY,
        SECONDARY,
        NO
    }

    /** A text that numbers may be taken from. */
    record Source(String cite, Seen seen, Place place) {}

    static Optional<PackFile> bind(YamlNode root, Values values, Problems problems) {
        Optional<Fields> fields = Fields.of(root, "the pack", values, problems);
        return fields.map(head -> bind(head, values, problems));
    }

    private static PackFile bind(Fields head, Values values, Problems problems) {
        Pack pack = new Pack(
                head.id("pack"),
                head.name("version"),
                head.name("licence"),
                head.name("title"),
                head.text("about"),
                head.flag("invented"));
        DeviceScope scope = head.scope(DeviceScope.ANY);
        Optional<YamlNode> from = head.find("from");
        Map<String, Source> sources = sources(head, problems);
        List<String> needs = head.ids("needs");
        Map<EntryKind, List<YamlNode.Table>> entries = new EnumMap<>(EntryKind.class);
        for (EntryKind kind : EntryKind.values()) {
            List<YamlNode.Table> tables = new ArrayList<>();
            head.find(kind.section).ifPresent(section -> {
                for (YamlNode item : values.items(section, "'" + kind.section + "'")) {
                    if (item instanceof YamlNode.Table table) {
                        tables.add(table);
                    } else if (!(item instanceof YamlNode.Refused)) {
                        problems.error(
                                item.place(),
                                "a " + kind.word + " should be keys with values, found " + item.kind(),
                                "start it with '- " + kind.idKey + ": …'");
                    }
                }
            });
            entries.put(kind, tables);
        }
        head.finish();
        return new PackFile(head.place(), pack, scope, from, sources, needs, entries);
    }

    private static Map<String, Source> sources(Fields head, Problems problems) {
        Map<String, Source> sources = new LinkedHashMap<>();
        for (Fields source : head.tables("sources", "a source")) {
            String id = source.id("id");
            Place place = source.place("id");
            Source bound = new Source(source.text("cite"), source.choice("seen", Seen.values()), place);
            source.finish();
            Source first = sources.putIfAbsent(id, bound);
            if (first != null) {
                problems.error(
                        place,
                        "source " + Problems.quote(id) + " stands twice, first at " + first.place(),
                        "keep one of them, or give it another id");
            }
        }
        return sources;
    }
}
