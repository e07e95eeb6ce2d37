package org.benchlore.kb.knowledge;

import java.util.List;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.Provenance.Kind;
import org.benchlore.kb.knowledge.QualityReport.Numbers;

/** Where the numbers of the packs come from. Tests and fixes do not keep an origin for theirs. */
final class Origin {
    private Origin() {}

    static Numbers numbers(Knowledge knowledge) {
        Stream<Provenance> limits = knowledge.symptoms().stream()
                .flatMap(symptom -> Stream.ofNullable(symptom.quantity()))
                .map(Quantity::from);
        List<Kind> kinds = Stream.concat(knowledge.causes().stream().flatMap(Origin::ofCause), limits)
                .map(Provenance::kind)
                .toList();
        return new Numbers(count(kinds, Kind.PUBLISHED), count(kinds, Kind.COMMON_PRACTICE), count(kinds, Kind.MEMORY));
    }

    private static int count(List<Kind> kinds, Kind kind) {
        return (int) kinds.stream().filter(kind::equals).count();
    }

    private static Stream<Provenance> ofCause(Cause cause) {
        return Stream.of(
                        Stream.of(cause.from()),
                        cause.shows().stream().map(Link::from),
                        cause.fixedBy().stream().map(Remedy::from))
                .flatMap(origins -> origins);
    }

    /** Causes and cautions without anything published, as {@code kind/id}. */
    static List<String> unpublished(Knowledge knowledge) {
        Stream<String> causes = knowledge.causes().stream()
                .filter(cause -> ofCause(cause).noneMatch(Origin::published))
                .map(cause -> EntryKind.CAUSE.id() + "/" + cause.id());
        Stream<String> cautions = knowledge.cautions().stream()
                .filter(caution -> !published(caution.from()))
                .map(caution -> EntryKind.CAUTION.id() + "/" + caution.id());
        return Stream.concat(causes, cautions).toList();
    }

    private static boolean published(Provenance from) {
        return from.kind() == Kind.PUBLISHED;
    }
}
