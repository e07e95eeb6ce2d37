package org.benchlore.kb.importing;

import java.util.List;
import java.util.Optional;
import org.benchlore.kb.cases.ImportProblem;

/**
 * What a source would bring, for people to look at; nothing is stored.
 *
 * @param source its name, usually the file's
 * @param kind how it was read
 * @param mapping how columns were read, given or guessed; empty for diaries and lines of JSON events
 * @param guessed whether the mapping is a guess
 * @param drafts the cases, in order of line
 * @param problems records left out, in order; at most {@link org.benchlore.kb.cases.ImportResult#MOST_PROBLEMS}
 * @param moreProblems how many more there were
 */
public record ImportReview(
        String source,
        ImportKind kind,
        Optional<ColumnMapping> mapping,
        boolean guessed,
        List<ImportDraft> drafts,
        List<ImportProblem> problems,
        long moreProblems) {
    public ImportReview {
        drafts = List.copyOf(drafts);
        problems = List.copyOf(problems);
    }

    /** How many of the cases are stored already. */
    public long known() {
        return drafts.stream().filter(ImportDraft::stored).count();
    }

    /** How many of the others are another case told again. */
    public long duplicates() {
        return drafts.stream().filter(d -> !d.stored() && d.duplicate()).count();
    }
}
