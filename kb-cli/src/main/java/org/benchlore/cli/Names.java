package org.benchlore.cli;

import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.RankingModel;

/** What entries are called in the text; an id that the packs no longer have stands for itself. */
record Names(Knowledge knowledge) {
    static final String UNLISTED = "none of the causes known here";

    String cause(String id) {
        return id.equals(RankingModel.UNLISTED)
                ? "\"" + UNLISTED + "\"" // within a sentence, "none falls" would say that no cause does
                : knowledge.cause(id).map(Cause::name).orElse(id);
    }

    /** With its id, to go on with. */
    String fix(String id) {
        return id.equals(CaseEvent.FixApplied.UNLISTED)
                ? "work that no pack knows"
                : knowledge.fix(id).map(Fix::name).orElse(id) + " [" + id + "]";
    }
}
