package org.benchlore.kb;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.Influence;
import org.benchlore.kb.ranking.Lesson;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;

/** Finds the past cases behind a cause's place in a ranking, by ranking again without each. */
final class PastCases {
    /** Cases concluded on the cause that are looked at: those most like the query. */
    private static final int LOOKED_AT = 200;

    private final Knowledge knowledge;
    private final Memory memory;
    private final IndexFollower index;

    PastCases(Knowledge knowledge, Memory memory, IndexFollower index) {
        this.knowledge = knowledge;
        this.memory = memory;
        this.index = index;
    }

    /** @throws IllegalArgumentException if the packs have no such cause */
    List<Influence> behind(RankingQuery query, String causeId, int limit) {
        if (knowledge.cause(causeId).isEmpty() && !causeId.equals(RankingModel.UNLISTED)) {
            throw knowledge.unknown(EntryKind.CAUSE, causeId);
        }
        Lore now = memory.about(query);
        double with = decibans(now.model(), query, causeId);
        if (Double.isInfinite(with)) {
            return List.of(); // such a unit cannot have it
        }
        List<Influence> found = new ArrayList<>();
        index.concludedOn(causeId, query, LOOKED_AT).stream()
                .filter(hit -> !hit.id().equals(query.about()))
                .forEach(hit -> memory.lesson(hit.id(), now)
                        .ifPresent(lesson -> found.add(
                                new Influence(hit.id(), with - without(lesson, now.model(), query, causeId)))));
        found.sort(Comparator.comparingDouble((Influence i) -> -Math.abs(i.decibans()))
                .thenComparing(Influence::caseId));
        return List.copyOf(found.subList(0, Math.min(limit, found.size())));
    }

    private static double without(Lesson lesson, RankingModel model, RankingQuery query, String causeId) {
        return decibans(model.unlearn(List.of(lesson)), query, causeId);
    }

    private static double decibans(RankingModel model, RankingQuery query, String causeId) {
        double p = model.probability(query, causeId);
        return 10 * Math.log10(p / (1 - p));
    }
}
