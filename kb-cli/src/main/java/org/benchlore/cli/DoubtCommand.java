package org.benchlore.cli;

import java.util.List;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseHistory;
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
            names = "--worked-on",
            description = "Somebody has been inside before, so that two faults at once are likelier.")
    boolean workedOn;

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
            RankingQuery known = unit.known(kb, this);
            boolean touched = workedOn
                    || unit.history(kb).map(CaseHistory::workedOnBefore).orElse(false);
            RankingQuery query = new RankingQuery(known.findings(), known.scope(), known.fromNote(), touched);
            Ranking ranking = kb.rank(query);
            String about = cause == null ? ranking.causes().get(0).id() : cause;
            if (kb.knowledge().cause(about).isEmpty()) {
                throw new UsageException("no cause '" + about + "'; "
                        + nearest(
                                about,
                                kb.knowledge().causes().stream()
                                        .map(c -> c.id())
                                        .toList()));
            }
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
