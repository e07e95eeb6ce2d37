package org.benchlore.kb;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.ranking.Influence;
import org.benchlore.kb.ranking.Lesson;
import org.benchlore.kb.ranking.Lessons;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;

/** Finds the past cases behind a cause's place in a ranking, by ranking again without each. */
final class PastCases {
    /** Cases concluded on the cause that are looked at: those most like the query. */
    private static final int LOOKED_AT = 200;

    private final CaseStore store;
    private final IndexFollower index;
    private final Lessons lessons;
    private final RankingModel model;

    PastCases(CaseStore store, IndexFollower index, Lessons lessons, RankingModel model) {
        this.store = store;
        this.index = index;
        this.lessons = lessons;
        this.model = model;
    }

    List<Influence> behind(RankingQuery query, String causeId, int limit) {
        double with = decibans(model, query, causeId);
        List<Influence> found = new ArrayList<>();
        index.similar(query.findings(), query.scope(), LOOKED_AT).stream()
                .flatMap(hit -> store.history(hit.id()).stream())
                .filter(h -> causeId.equals(h.causeId()))
                .forEach(h -> lessons.of(h).ifPresent(lesson -> found.add(without(h, lesson, query, causeId, with))));
        found.sort(Comparator.comparingDouble((Influence i) -> -Math.abs(i.decibans()))
                .thenComparing(Influence::caseId));
        return List.copyOf(found.subList(0, Math.min(limit, found.size())));
    }

    private Influence without(CaseHistory history, Lesson lesson, RankingQuery query, String causeId, double with) {
        double without = decibans(model.unlearn(List.of(lesson)), query, causeId);
        return new Influence(history.id(), with - without);
    }

    private static double decibans(RankingModel model, RankingQuery query, String causeId) {
        double p = model.probability(query, causeId);
        return 10 * Math.log10(p / (1 - p));
    }
}
