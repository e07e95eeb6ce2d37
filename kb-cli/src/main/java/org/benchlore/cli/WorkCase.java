package org.benchlore.cli;

import java.util.List;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.planning.BenchConditions;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.Plan;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingQuery;

/** The case on the bench. Nothing of it is kept here: each answer is folded anew from what is stored. */
record WorkCase(KnowledgeBase kb, String id, Risk risk) {
    CaseHistory history() {
        return kb.history(id).orElseThrow(() -> new BadInputException("case " + id + " is gone from the store"));
    }

    /** Findings of the fault that the packs still know, and what was tried in vain. */
    RankingQuery query() {
        return kb.query(history());
    }

    /** Whether anything known of the unit tells causes apart. */
    boolean tells() {
        return kb.tells(query());
    }

    Ranking ranking() {
        return kb.rank(query());
    }

    /** Ids of the fixes done. */
    List<String> done() {
        return history().events().stream()
                .filter(CaseEvent.FixApplied.class::isInstance)
                .map(e -> ((CaseEvent.FixApplied) e).fixId())
                .toList();
    }

    /** What to do now, fixes done before left out. */
    NextStep next() {
        return kb.next(query(), conditions());
    }

    /** The whole plan, likewise. */
    Plan plan() {
        return kb.plan(query(), conditions());
    }

    private BenchConditions conditions() {
        return BenchConditions.DEFAULT
                .accepting(risk)
                .afterFailing(done())
                .opened(kb.opened(history()))
                .madeSafe(kb.madeSafe(history()));
    }

    CaseEvent.Head head() {
        return kb.head(id);
    }

    /** Durable when it returns. */
    void record(CaseEvent event) {
        kb.record(event);
    }
}
