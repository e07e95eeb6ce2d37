package org.benchlore.kb.cases;

import java.util.List;

/**
 * What an import did.
 *
 * @param cases openings among the events read
 * @param events events read from good lines
 * @param added events that were new
 * @param known events that were recorded already, or stood twice in the source
 * @param leftOut cases not wanted, such as near-duplicates
 * @param problems lines that were not imported, in order; at most {@link #MOST_PROBLEMS}
 * @param moreProblems how many more there were
 */
public record ImportResult(
        long cases,
        long events,
        long added,
        long known,
        long leftOut,
        List<ImportProblem> problems,
        long moreProblems) {
    /** Most problems kept, so that importing the wrong file does not fill the memory. */
    public static final int MOST_PROBLEMS = 1000;

    public ImportResult {
        problems = List.copyOf(problems);
    }

    /** Whether every line was good. */
    public boolean clean() {
        return problems.isEmpty() && moreProblems == 0;
    }
}
