package org.benchlore.kb.knowledge;

import java.nio.file.Path;
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
        return read(packs, new ParsedPacks());
    }

    /**
     * As {@link #read(List)}, in about half the time when the same texts were read with the same file before.
     *
     * @param parsed what texts were parsed to; the file is derived and only spares work, whatever it holds
     * @param keep whether to write the file, and its folder, when a text is new; trouble in writing is passed over
     * @throws BadPackException as {@link #read(List)}; nothing is written then
     */
    public static Knowledge read(List<PackSource> packs, Path parsed, boolean keep) {
        ParsedPacks before = ParsedPacks.read(parsed);
        Knowledge knowledge = read(packs, before);
        if (keep) {
            before.keep(parsed);
        }
        return knowledge;
    }

    private static Knowledge read(List<PackSource> packs, ParsedPacks parsed) {
        Problems problems = new Problems();
        Binding binding = Binding.of(packs, parsed, problems);
        if (problems.errors() > 0) {
            binding.check(problems);
            throw new BadPackException(problems.sorted());
        }
        return binding.knowledge();
    }

    /** Every error and warning in the packs taken together, sorted by file, line and column; empty if all is well. */
    public static List<PackProblem> check(List<PackSource> packs) {
        Problems problems = new Problems();
        Binding.of(packs, new ParsedPacks(), problems).check(problems);
        return problems.sorted();
    }
}
