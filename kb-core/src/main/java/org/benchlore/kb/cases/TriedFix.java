package org.benchlore.kb.cases;

import java.util.ArrayList;
import java.util.List;

/**
 * A fix that was applied, and whether it helped, as far as the case tells.
 *
 * @param fix the fix
 * @param result what the case says of it
 */
public record TriedFix(CaseEvent.FixApplied fix, Result result) {
    /** What a case says of a fix. */
    public enum Result {
        /** The last word on it is an ending as fixed. */
        HELPED,
        /** It did not cure. */
        FAILED,
        /** It did not hold. */
        CAME_BACK,
        /** It did harm. */
        MADE_WORSE,
        /** Nothing yet, or nothing that tells of the fix: the unit recovered by itself, or showed no fault. */
        UNTOLD;

        /** Whether the fault was still there after it, or again, or worse. */
        public boolean inVain() {
            return this == FAILED || this == CAME_BACK || this == MADE_WORSE;
        }
    }

    /**
     * Judges each fix by what was recorded between it and the next.
     *
     * <p>The latest ending counts. A failed check says that the fix failed, unless a later ending says it was fixed. A fix
     * of which nothing was said when the next one followed did not end the repair, so it failed. A unit that recovered by
     * itself or showed no fault ends the repair too, but credits no fix, and holds none as failed that was not held so
     * before.
     *
     * @param events those that count, in order
     */
    static List<TriedFix> of(List<CaseEvent> events) {
        List<TriedFix> tried = new ArrayList<>();
        CaseEvent.FixApplied last = null;
        Result result = Result.UNTOLD;
        boolean ended = false;
        for (CaseEvent event : events) {
            if (event instanceof CaseEvent.FixApplied fix) {
                if (last != null) {
                    tried.add(new TriedFix(last, ended ? result : failed(result)));
                }
                last = fix;
                result = Result.UNTOLD;
                ended = false;
            } else if (event instanceof CaseEvent.Ended ending) {
                result = after(result, ending.outcome());
                ended = true;
            } else if (event instanceof CaseEvent.Checked checked
                    && checked.result() == CaseEvent.Checked.Result.FAILED) {
                result = failed(result);
            }
        }
        if (last != null) {
            tried.add(new TriedFix(last, result));
        }
        return List.copyOf(tried);
    }

    private static Result failed(Result before) {
        return before.inVain() ? before : Result.FAILED;
    }

    private static Result after(Result before, Outcome ending) {
        return switch (ending) {
            case FIXED, FIXED_AND_PROVEN -> Result.HELPED;
            case CAME_BACK -> Result.CAME_BACK;
            case MADE_WORSE -> Result.MADE_WORSE;
            case NOT_FIXED, NOT_WORTH_IT, GIVEN_UP -> Result.FAILED;
            case RECOVERED_BY_ITSELF, NO_FAULT_FOUND -> before.inVain() ? before : Result.UNTOLD;
        };
    }
}
