package org.benchlore.kb.knowledge;

import java.util.List;
import java.util.stream.Collectors;

/** Packs that cannot be loaded; mend the pack. Carries every problem found, errors and warnings. */
public final class BadPackException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    private final transient List<PackProblem> problems;

    BadPackException(List<PackProblem> problems) {
        super(
                problems.stream()
                        .filter(p -> p.severity() == PackProblem.Severity.ERROR)
                        .map(PackProblem::toString)
                        .collect(Collectors.joining("\n")),
                null);
        this.problems = List.copyOf(problems);
    }

    /** Every problem, in file order. */
    public List<PackProblem> problems() {
        return problems;
    }
}
