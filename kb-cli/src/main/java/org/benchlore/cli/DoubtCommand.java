package org.benchlore.cli;

import java.util.List;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.ranking.Influence;
import org.benchlore.kb.ranking.PairRanking;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.Turn;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A second look at the leading cause. */
@Command(
        name = "doubt",
        description =
                "Take a second look: what speaks against the leading cause, what would overturn it, which past cases"
                        + " put it there, two faults at once.",
        mixinStandardHelpOptions = true)
final class DoubtCommand extends BenchCommand {
    @Mixin
    UnitOptions unit = new UnitOptions();

    @Option(
            names = "--cause",
            paramLabel = "CAUSE",
            description = "The cause whose past cases are shown (default: the leading one).")
    @Nullable
    String cause;

    @Option(
            names = "--top",
            paramLabel = "N",
            defaultValue = "5",
            description = "Most of each kind to show (default ${DEFAULT-VALUE}).")
    int top;

    DoubtCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        if (top < 1) {
            throw new UsageException("--top " + top + " shows nothing; give 1 or more");
        }
        try (KnowledgeBase kb = open()) {
            RankingQuery query = unit.known(kb, this).query();
            Ranking ranking = kb.rank(query);
            String about = cause == null ? ranking.causes().get(0).id() : UnitOptions.causeId(kb, cause);
            List<Turn> turns = kb.turns(query, top);
            List<Influence> behind = kb.casesBehind(query, about, top);
            PairRanking pairs = kb.pairs(query, top);
            if (json) {
                bench.out().println(Json.reasons(turns, about, behind, pairs));
            } else {
                new ReasonsPage(kb.knowledge(), bench.page()).print(ranking, turns, about, behind, pairs);
            }
            return ExitCode.DONE;
        }
    }
}
