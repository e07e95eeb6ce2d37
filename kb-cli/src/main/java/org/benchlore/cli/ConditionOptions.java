package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Nearest;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.planning.BenchConditions;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What the bench has and accepts: tools, risk and prices. */
final class ConditionOptions {
    @Option(
            names = "--tool",
            paramLabel = "NAME",
            description = "A tool at hand, any part of its name; then no other is.")
    List<String> tools = new ArrayList<>();

    @Option(names = "--without", paramLabel = "NAME", description = "A tool not at hand; may be repeated.")
    List<String> missing = new ArrayList<>();

    @Option(
            names = "--risk",
            paramLabel = "RISK",
            defaultValue = "medium",
            description = "Highest risk to the unit: none, low, medium, high (default ${DEFAULT-VALUE}).")
    Risk risk = Risk.MEDIUM;

    @Option(
            names = "--per-minute",
            paramLabel = "COST",
            defaultValue = "1",
            description = "What a minute at the bench costs (default ${DEFAULT-VALUE}).")
    double perMinute = 1;

    @Option(
            names = "--unsolved",
            paramLabel = "COST",
            description = "What it costs to end without a repair (default: 240 minutes).")
    @Nullable
    Double unsolved;

    @Option(
            names = "--opened",
            description = "The unit lies open already; a case knows it from the tests and fixes done in it.")
    boolean opened;

    /**
     * What the bench has and accepts.
     *
     * @param kb whose tools may be named
     * @param unit whose fixes are not to be tried again, and which its case may have opened or made safe
     */
    BenchConditions conditions(KnowledgeBase kb, UnitOptions.Unit unit) {
        try {
            BenchConditions conditions = BenchConditions.DEFAULT
                    .accepting(risk)
                    .with(tools, missing)
                    .costing(
                            perMinute, unsolved == null ? BenchConditions.DEFAULT.unsolvedCost() * perMinute : unsolved)
                    .afterFailing(unit.done())
                    .opened(opened || unit.opened(kb))
                    .madeSafe(unit.madeSafe(kb));
            unheardOf(conditions, kb.knowledge());
            return conditions;
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }

    private static void unheardOf(BenchConditions conditions, Knowledge knowledge) {
        Set<String> known = new TreeSet<>(knowledge.tools());
        knowledge.tools().forEach(tool -> known.addAll(List.of(tool.split(" ", -1))));
        List<String> wrong = conditions.unheardOf(knowledge).stream()
                .map(tool -> "no test and no fix asks for a tool '" + tool + "'; "
                        + Nearest.remedy(
                                tool, known, "leave it out, or give part of the name of one that is asked for"))
                .toList();
        if (!wrong.isEmpty()) {
            throw new UsageException(String.join("\n", wrong));
        }
    }
}
