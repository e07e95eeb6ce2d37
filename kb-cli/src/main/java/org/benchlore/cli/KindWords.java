package org.benchlore.cli;

import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.Ranking;

/** What kind of unit was ranked for, and what such a unit lacks. */
record KindWords(Knowledge knowledge) {
    /** "Kind of unit: printer" and how that is known; empty where no pack tells of the kind. */
    Optional<String> line(Ranking ranking) {
        List<String> names = names(ranking.kinds());
        return names.isEmpty()
                ? Optional.empty()
                : Optional.of("Kind of unit: " + String.join(" or ", names)
                        + (ranking.scope().depth() > 0 ? "" : " (taken from your words; --device settles it)"));
    }

    /** "A printer has no tape". */
    String lacking(List<String> kinds, List<String> parts) {
        List<String> names = names(kinds);
        String first = names.get(0);
        String article = "AEIOUaeiou".indexOf(first.charAt(0)) >= 0 ? "an " : "a ";
        return article + String.join(" or ", names) + " has no "
                + String.join(" and no ", parts).replace('-', ' ');
    }

    static String parts(List<String> ids) {
        return String.join(", ", ids).replace('-', ' ');
    }

    private List<String> names(List<String> kinds) {
        return kinds.stream()
                .flatMap(id -> knowledge.deviceClass(id).stream())
                .map(Device::name)
                .toList();
    }
}
