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

    @Mixin
    ConditionOptions conditions = new ConditionOptions();

    PlanCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            UnitOptions.Unit known = unit.known(kb, this);
            Plan plan = kb.plan(known.query(), conditions.conditions(kb, known));
            if (json) {
                bench.out().println(Json.plan(plan));
            } else {
                Page page = bench.page();
                known.history().ifPresent(new DecisionPage(kb.knowledge(), page)::standing);
                new PlanPage(kb.knowledge(), page).print(plan, known.query().findings());
            }
            return ExitCode.DONE;
        }
    }
}
