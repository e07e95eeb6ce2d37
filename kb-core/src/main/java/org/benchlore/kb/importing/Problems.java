package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.benchlore.kb.cases.ImportProblem;
import org.benchlore.kb.cases.ImportResult;

/** Records left out, the first of them kept. */
final class Problems {
    private final List<ImportProblem> kept = new ArrayList<>();
    private long more;

    void add(ImportProblem problem) {
        if (kept.size() < ImportResult.MOST_PROBLEMS) {
            kept.add(problem);
        } else {
            more++;
        }
    }

    List<ImportProblem> sorted() {
        return kept.stream()
                .sorted(Comparator.comparingLong(ImportProblem::line))
                .toList();
    }

    long more() {
        return more;
    }
}
