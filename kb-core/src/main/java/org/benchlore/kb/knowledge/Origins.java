package org.benchlore.kb.knowledge;

import java.util.IdentityHashMap;
import java.util.Optional;

/** Where a number comes from: the nearest {@code from}, of the link, the entry, or the pack that wrote it. */
final class Origins {
    private final Catalogue catalogue;
    private final Values values;
    private final Problems problems;
    /** By identity of the node, so that a pack's own {@code from} is judged once and not once per link. */
    private final IdentityHashMap<YamlNode, Provenance> judged = new IdentityHashMap<>();

    Origins(Catalogue catalogue, Values values, Problems problems) {
        this.catalogue = catalogue;
        this.values = values;
        this.problems = problems;
    }

    /** Origin of a number at {@code place} in {@code entry}. */
    Provenance of(Entry entry, Place place) {
        YamlNode.Table layer = entry.layers().getOrDefault(place.file(), entry.table());
        YamlNode.Field own = layer.fields().get("from");
        if (own != null) {
            return judge(own.value(), entry.subject());
        }
        return ofPack(catalogue.packAt(place));
    }

    /** Origin of a link or remedy, which may name its own. */
    Provenance of(Entry entry, Fields part) {
        Optional<YamlNode> own = part.find("from");
        return own.isPresent() ? judge(own.get(), part.subject()) : of(entry, part.place());
    }

    /** Origin of a pack's numbers where nothing nearer says otherwise. */
    Provenance ofPack(PackFile pack) {
        return pack.from().map(node -> judge(node, "the pack")).orElse(Provenance.MEMORY);
    }

    private Provenance judge(YamlNode node, Object subject) {
        Provenance known = judged.get(node);
        if (known == null) {
            known = read(node, Subject.of(subject, ": 'from'"));
            judged.put(node, known);
        }
        return known;
    }

    private Provenance read(YamlNode node, Object what) {
        if (node instanceof YamlNode.Table table) {
            return published(new Fields(table, what, values, problems), node);
        }
        String written = values.text(node, what, Values.MAX_NAME);
        switch (written) {
            case "", "memory" -> {
                return Provenance.MEMORY;
            }
            case "common-practice" -> {
                return new Provenance(Provenance.Kind.COMMON_PRACTICE, "", "");
            }
            default -> {
                problems.error(
                        node.place(),
                        what + " is " + Problems.quote(written),
                        "write memory, common-practice, or {published: SOURCE-ID, clause: \"…\"}");
                return Provenance.MEMORY;
            }
        }
    }

    private Provenance published(Fields fields, YamlNode node) {
        Optional<YamlNode> id = fields.require("published");
        String clause = fields.name("clause", "");
        fields.finish();
        if (id.isEmpty()) {
            return Provenance.MEMORY;
        }
        String written = values.text(id.get(), fields.what("published"), Values.MAX_NAME);
        Optional<PackFile.Source> source = source(catalogue.packAt(node.place()), written);
        if (source.isEmpty()) {
            if (!written.isEmpty() && catalogue.complete()) {
                problems.error(
                        id.get().place(),
                        fields.what("published") + ": there is no source " + Problems.quote(written),
                        Nearest.remedy(
                                written,
                                catalogue.packs().stream()
                                        .flatMap(pack -> pack.sources().keySet().stream())
                                        .toList(),
                                "add it under 'sources' of the pack"));
            }
            return Provenance.MEMORY;
        }
        if (source.get().seen() == PackFile.Seen.NO) {
            problems.warn(
                    id.get().place(),
                    "source " + Problems.quote(written) + " has not been seen, so the number counts as memory",
                    "read the source and say 'seen: primary', or write 'from: memory'");
            return Provenance.MEMORY;
        }
        return source.get().cite().isBlank()
                ? Provenance.MEMORY
                : new Provenance(Provenance.Kind.PUBLISHED, source.get().cite(), clause);
    }

    /** The pack's own source of that id, else the first pack's that has one. */
    private Optional<PackFile.Source> source(PackFile pack, String id) {
        PackFile.Source own = pack.sources().get(id);
        if (own != null) {
            return Optional.of(own);
        }
        return catalogue.packs().stream()
                .flatMap(other -> Optional.ofNullable(other.sources().get(id)).stream())
                .findFirst();
    }
}
