package org.benchlore.cli;

import java.util.Optional;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Likely causes for words and findings. */
@Command(
        name = "rank",
        description = "Rank likely causes for what was seen and measured, say why, and name the first test.",
        mixinStandardHelpOptions = true)
final class RankCommand extends BenchCommand {
    @Mixin
    UnitOptions unit = new UnitOptions();

    @Mixin
    ConditionOptions conditions = new ConditionOptions();

    @Option(
            names = "--top",
            paramLabel = "N",
            defaultValue = "5",
            description = "Causes shown (default ${DEFAULT-VALUE}).")
    int top;

    RankCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        unit.require("rank");
        if (top < 1) {
            throw new UsageException("--top " + top + " shows nothing; give 1 or more");
        }
        try (KnowledgeBase kb = open()) {
            UnitOptions.Unit known = unit.unit(kb, this);
            if (!kb.tells(known.query())) {
                return nothing(known);
            }
            Ranking ranking = kb.rank(known.query());
            NextStep next = kb.next(known.query(), conditions.conditions(kb, known));
            if (json) {
                bench.out().println(Json.ranking(known.reading(), ranking, top, next));
            } else {
                known.history().ifPresent(history -> new DecisionPage(kb.knowledge(), bench.page()).standing(history));
                new RankingPage(kb.knowledge(), bench.page())
                        .print(
                                known.reading(),
                                known.query(),
                                ranking,
                                known.done(),
                                Optional.of(next),
                                conditions.perMinute,
                                top);
            }
            return ExitCode.DONE;
        }
    }

    private int nothing(UnitOptions.Unit known) {
        if (json) {
            bench.out().println(Json.nothingUnderstood(known.reading()));
        }
        String words = known.reading().text().strip();
        bench.tell(
                words.isEmpty()
                        ? unit.caseId == null ? "no words came in" : "case " + unit.caseId + " has no finding yet"
                        : "nothing in these words is known here: " + words);
        bench.tell("say what you see or measure, such as \"no 12 V\" or \"fan stopped\", or look for a name with"
                + " 'benchlore search'");
        return ExitCode.NOTHING_FOUND;
    }
}
