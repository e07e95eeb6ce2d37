package org.benchlore.cli;

import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Stakes;
import org.benchlore.kb.planning.Worth;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Whether to touch a unit. */
@Command(
        name = "worth",
        description = {
            "Weigh a repair against leaving the unit alone and against taking it for parts.",
            "Without words or findings the unit works, and the fix's record alone counts.",
            "With --case and --decide what was weighed and decided is kept in the case."
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
            description = "Value if left alone (default 0); give it for a unit that works as it is.")
    @Nullable
    Double alone;

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

    @Option(
            names = "--decide",
            paramLabel = "WHAT",
            description = "With --case: keep in the case that it was weighed so, and decided: work, leave or parts.")
    @Nullable
    Decision decided;

    @Option(names = "--note", paramLabel = "WORDS", defaultValue = "", description = "With --decide: why.")
    String note = "";

    WorthCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        if (decided != null && unit.caseId == null) {
            throw new UsageException("--decide keeps a decision in a case; name it with --case");
        }
        try (KnowledgeBase kb = open()) {
            Stakes stakes = new Stakes(repaired, alone == null ? 0 : alone, worse, parts, cost);
            Worth worth = kb.worth(unit.unit(kb, this).query(), UnitOptions.fixId(kb, fix), stakes);
            if (decided != null && unit.caseId != null) {
                CaseCommand.standing(kb, unit.caseId);
                kb.record(new CaseEvent.Weighed(
                        kb.head(unit.caseId), fix, stakes, worth.success(), worth.worse(), decided, note));
            }
            if (json) {
                bench.out().println(Json.worth(worth));
            } else {
                new DecisionPage(kb.knowledge(), bench.page()).worth(worth, alone != null);
                if (decided != null) {
                    bench.page().text(2, "Stored: decided to " + DecisionPage.words(decided) + ".");
                }
            }
            return ExitCode.DONE;
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }
}
