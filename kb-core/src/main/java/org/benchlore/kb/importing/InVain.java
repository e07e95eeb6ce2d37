package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.cases.Outcome;

/** Whether a note made after some work says in plain words that the work did not help: "still the same", "no change". */
public final class InVain {
    private InVain() {}

    /**
     * The last word on it counts: "no change at first, works now" is no complaint.
     *
     * @param text as it was written, after work on the unit
     */
    public static boolean told(String text) {
        Endings endings = new Endings(true);
        List<Act> acts = new ArrayList<>();
        for (Clause clause : Clause.of(text)) {
            if (!clause.asked()) {
                acts.addAll(endings.hear(clause, false));
            }
        }
        endings.finish(acts);
        return acts.stream()
                .reduce((first, second) -> second)
                .filter(last -> last.outcome() == Outcome.NOT_FIXED || last.outcome() == Outcome.MADE_WORSE)
                .isPresent();
    }
}
