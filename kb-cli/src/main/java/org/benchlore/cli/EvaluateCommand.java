package org.benchlore.cli;

import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.ranking.Evaluation;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How far the ranking can be trusted here. */
@Command(
        name = "evaluate",
        description =
                "Replay the bench's own ended cases, each ranked before it was learnt, and say how well that went.",
        mixinStandardHelpOptions = true)
final class EvaluateCommand extends BenchCommand {
    @Option(names = "--imported", description = "Score imported cases too, not only those of this bench.")
    boolean imported;

    EvaluateCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            Evaluation evaluation = kb.evaluate(imported);
            if (json) {
                bench.out().println(Json.evaluation(evaluation));
            } else if (evaluation.scored() == 0) {
                bench.tell("no ended case of this bench to replay yet;"
                        + " 'benchlore outcome' records one. Imported cases are scored with --imported.");
            } else {
                new EvaluationPage(kb.knowledge(), bench.page()).print(evaluation);
            }
            return evaluation.scored() == 0 ? ExitCode.NOTHING_FOUND : ExitCode.DONE;
        }
    }
}
