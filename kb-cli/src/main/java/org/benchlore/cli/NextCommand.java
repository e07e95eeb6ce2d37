package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Bench tests by what they tell per minute. */
@Command(
        name = "next",
        description = "List the bench tests worth doing next, by information per minute.",
        mixinStandardHelpOptions = true)
final class NextCommand extends BenchCommand {
    @Parameters(arity = "0..*", paramLabel = "WORDS", description = "What you see and measure; - reads standard input.")
    List<String> words = new ArrayList<>();

    @Option(names = "--device", paramLabel = "SCOPE", description = "class/family/model/revision, as far as known.")
    @Nullable
    String device;

    @Option(names = "--finding", paramLabel = "SYMPTOM=STATE", description = "A finding by id; may be repeated.")
    List<String> findings = new ArrayList<>();

    @Option(
            names = "--risk",
            paramLabel = "RISK",
            defaultValue = "medium",
            description = "Highest risk to the unit: none, low, medium, high (default ${DEFAULT-VALUE}).")
    Risk risk = Risk.MEDIUM;

    @Option(
            names = "--top",
            paramLabel = "N",
            defaultValue = "5",
            description = "Tests shown (default ${DEFAULT-VALUE}).")
    int top;

    NextCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        DeviceScope scope = scope(device);
        String text = words(words);
        try (KnowledgeBase kb = open()) {
            Reading reading = kb.read(text, scope);
            RankingQuery query = RankCommand.query(reading, findings(kb, findings), scope);
            List<TestProposal> proposals = kb.next(query, risk);
            List<TestProposal> shown = proposals.subList(0, Math.min(Math.max(top, 0), proposals.size()));
            if (json) {
                bench.out().println(Json.ranking(reading, kb.rank(query), shown));
            } else {
                TestPage page = new TestPage(kb.knowledge(), bench.page());
                int place = 1;
                for (TestProposal proposal : shown) {
                    page.summary(place++, proposal);
                }
            }
            return shown.isEmpty() ? ExitCode.NOTHING_FOUND : ExitCode.DONE;
        }
    }
}
