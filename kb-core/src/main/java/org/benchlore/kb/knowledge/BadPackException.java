package org.benchlore.kb.knowledge;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Packs that cannot be loaded; mend the pack. Carries every problem found, errors and warnings; the message tells the first
 * errors, at most {@link PackProblem#MOST_SHOWN}, and how many more there are.
 */
public final class BadPackException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    private final transient List<PackProblem> problems;

    BadPackException(List<PackProblem> problems) {
        super(message(problems), null);
        this.problems = List.copyOf(problems);
    }

    private static String message(List<PackProblem> problems) {
        List<PackProblem> errors = problems.stream()
                .filter(p -> p.severity() == PackProblem.Severity.ERROR)
                .toList();
        List<PackProblem> shown = PackProblem.foremost(errors);
        int more = errors.size() - shown.size();
        return shown.stream().map(PackProblem::toString).collect(Collectors.joining("\n"))
                + (more == 0 ? "" : "\nand " + more + " more");
    }

    /** Every problem, in file order. */
    public List<PackProblem> problems() {
        return problems;
    }
}
