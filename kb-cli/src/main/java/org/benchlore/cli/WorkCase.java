package org.benchlore.cli;

import java.util.List;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;

/** The case on the bench. Nothing of it is kept here: each answer is folded anew from what is stored. */
record WorkCase(KnowledgeBase kb, String id) {
    CaseHistory history() {
        return kb.history(id).orElseThrow(() -> new BadInputException("case " + id + " is gone from the store"));
    }

    /** Findings of the fault that the packs still know. */
    RankingQuery query() {
        CaseHistory history = history();
        List<Finding> known =
                history.findingsOfFault().stream().filter(this::known).toList();
        return new RankingQuery(known, history.scope(), true);
    }

    private boolean known(Finding finding) {
        return kb.knowledge()
                .symptom(finding.symptomId())
                .filter(s -> finding.likelihoods().keySet().stream().allMatch(state -> s.indexOf(state) >= 0))
                .isPresent();
    }

    Ranking ranking() {
        return kb.rank(query());
    }

    CaseEvent.Head head() {
        return kb.head(id);
    }

    /** Durable when it returns. */
    void record(CaseEvent event) {
        kb.record(event);
    }
}
