package org.benchlore.cli;

import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.QualityReport;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How good the packs are. */
@Command(
        name = "quality",
        description = {
            "Say how good the packs are: coverage, ambiguity groups and fault isolation per device scope, what each"
                    + " symptom tells, numbers by origin, entries that say the same, readability, one-way links.",
            "It looks at the packs that ship, those in HOME/packs and those given with --pack."
        },
        mixinStandardHelpOptions = true)
final class QualityCommand extends BenchCommand {
    @Option(
            names = "--top",
            paramLabel = "N",
            defaultValue = "10",
            description = "Longest list to print (default: ${DEFAULT-VALUE}); JSON has all.")
    int top;

    QualityCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        if (top < 1) {
            throw new UsageException("--top is " + top + "; give a number from 1");
        }
        try (KnowledgeBase kb = open()) {
            QualityReport report = kb.quality();
            if (json) {
                bench.out().println(Json.quality(report));
            } else {
                new QualityPage(kb.knowledge(), bench.page(), top).print(report);
            }
            return ExitCode.DONE;
        }
    }
}
