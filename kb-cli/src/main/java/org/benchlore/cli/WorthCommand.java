package org.benchlore.cli;

import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.planning.Worth;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Whether to touch a unit. */
@Command(
        name = "worth",
        description = {
            "Weigh a repair against leaving the unit alone and against taking it for parts.",
            "Without words or findings the unit works, and the fix's record alone counts."
        },
        mixinStandardHelpOptions = true)
final class WorthCommand extends BenchCommand {
    @Mixin
    UnitOptions unit = new UnitOptions();

    @Option(names = "--fix", paramLabel = "FIX", required = true, description = "The work thought of.")
    String fix = "";

    @Option(names = "--repaired", paramLabel = "VALUE", required = true, description = "Value if the work succeeds.")
    double repaired;

    @Option(
            names = "--alone",
            paramLabel = "VALUE",
            defaultValue = "0",
            description = "Value if left alone (default 0).")
    double alone;

    @Option(
            names = "--worse",
            paramLabel = "VALUE",
            defaultValue = "0",
            description = "Value if made worse (default 0).")
    double worse;

    @Option(names = "--parts", paramLabel = "VALUE", defaultValue = "0", description = "Value for parts (default 0).")
    double parts;

    @Option(
            names = "--cost",
            paramLabel = "COST",
            defaultValue = "0",
            description = "Cost of time and parts (default 0).")
    double cost;

    WorthCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            Worth.Stakes stakes = new Worth.Stakes(repaired, alone, worse, parts, cost);
            Worth worth = kb.worth(unit.unit(kb, this).query(), UnitOptions.fixId(kb, fix), stakes);
            if (json) {
                bench.out().println(Json.worth(worth));
            } else {
                new DecisionPage(kb.knowledge(), bench.page()).worth(worth);
            }
            return ExitCode.DONE;
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }
}
