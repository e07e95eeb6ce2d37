package org.benchlore.cli;

import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.planning.SecondLook;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** A second look at the leading cause. */
@Command(
        name = "doubt",
        description =
                "Take a second look: what speaks against the leading cause, what would overturn it, two faults at once.",
        mixinStandardHelpOptions = true)
final class DoubtCommand extends BenchCommand {
    @Mixin
    UnitOptions unit = new UnitOptions();

    DoubtCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            SecondLook look = kb.secondLook(unit.known(kb, this));
            if (json) {
                bench.out().println(Json.doubt(look));
            } else {
                new DecisionPage(kb.knowledge(), bench.page()).doubt(look);
            }
            return ExitCode.DONE;
        }
    }
}
