package org.benchlore.cli;

import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.planning.Plan;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** The whole repair as a decision tree. */
@Command(
        name = "plan",
        description = "Plan the whole repair as a decision tree, with its expected minutes beside simpler ways.",
        mixinStandardHelpOptions = true)
final class PlanCommand extends BenchCommand {
    @Mixin
    UnitOptions unit = new UnitOptions();

    PlanCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            Plan plan = kb.plan(unit.known(kb, this), unit.conditions(kb));
            if (json) {
                bench.out().println(Json.plan(plan));
            } else {
                new DecisionPage(kb.knowledge(), bench.page()).plan(plan);
            }
            return ExitCode.DONE;
        }
    }
}
