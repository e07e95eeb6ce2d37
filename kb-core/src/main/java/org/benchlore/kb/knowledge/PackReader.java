package org.benchlore.kb.knowledge;

import java.util.List;

/**
 * Reads packs: YAML text in, checked {@link Knowledge} out. Packs are read together, in the order given; a later one may
 * replace or refine entries of an earlier one. Packs are not trusted: size, depth and length are bounded.
 */
public final class PackReader {
    private PackReader() {}

    /**
     * Everything the packs say.
     *
     * @throws BadPackException if any pack has an error; it carries every problem found, warnings included
     */
    public static Knowledge read(List<PackSource> packs) {
        Problems problems = new Problems();
        Binding binding = Binding.of(packs, problems);
        if (problems.errors() > 0) {
            binding.check(problems);
            throw new BadPackException(problems.sorted());
        }
        return binding.knowledge();
    }

    /** Every error and warning in the packs taken together, sorted by file, line and column; empty if all is well. */
    public static List<PackProblem> check(List<PackSource> packs) {
        Problems problems = new Problems();
        Binding.of(packs, problems).check(problems);
        return problems.sorted();
    }
}
