package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Likely causes for words and findings. */
@Command(
        name = "rank",
        description = "Rank likely causes for what was seen and measured, say why, and name the first test.",
        mixinStandardHelpOptions = true)
final class RankCommand extends BenchCommand {
    @Parameters(arity = "0..*", paramLabel = "WORDS", description = "What you see and measure; - reads standard input.")
    List<String> words = new ArrayList<>();

    @Option(names = "--device", paramLabel = "SCOPE", description = "class/family/model/revision, as far as known.")
    @Nullable
    String device;

    @Option(names = "--finding", paramLabel = "SYMPTOM=STATE", description = "A finding by id; may be repeated.")
    List<String> findings = new ArrayList<>();

    @Option(
            names = "--top",
            paramLabel = "N",
            defaultValue = "5",
            description = "Causes shown (default ${DEFAULT-VALUE}).")
    int top;

    @Option(
            names = "--worked-on",
            description = "Somebody has been inside before, so that two faults at once are likelier.")
    boolean workedOn;

    RankCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        String text = words(words);
        if (text.isBlank() && findings.isEmpty()) {
            throw new UsageException("rank what? Give words or --finding SYMPTOM=STATE");
        }
        if (top < 1) {
            throw new UsageException("--top " + top + " shows nothing; give 1 or more");
        }
        DeviceScope scope = scope(device);
        try (KnowledgeBase kb = open()) {
            Reading reading = kb.read(text, scope);
            RankingQuery read = query(reading, findings(kb, findings), scope);
            RankingQuery query = new RankingQuery(read.findings(), scope, read.fromNote(), workedOn);
            if (query.findings().isEmpty()) {
                return nothing(reading);
            }
            Ranking ranking = kb.rank(query);
            List<TestProposal> next = kb.next(query);
            if (json) {
                bench.out().println(Json.ranking(reading, ranking, next.subList(0, Math.min(3, next.size()))));
            } else {
                new RankingPage(kb.knowledge(), bench.page()).print(reading, ranking, next, top);
            }
            return ExitCode.DONE;
        }
    }

    /** Findings given outright replace what the words say of the same symptom. */
    static RankingQuery query(Reading reading, List<Finding> given, DeviceScope scope) {
        TreeMap<String, Finding> all = new TreeMap<>();
        reading.findings().forEach(f -> all.put(f.symptomId(), f));
        given.forEach(f -> all.put(f.symptomId(), f));
        return new RankingQuery(
                List.copyOf(all.values()), scope, !reading.text().isBlank());
    }

    private int nothing(Reading reading) {
        if (json) {
            bench.out().println(Json.nothingUnderstood(reading));
        }
        bench.err()
                .println("benchlore: nothing in these words is known here: "
                        + Page.clean(reading.text().strip()));
        bench.err()
                .println("Say what you see or measure, such as \"no 12 V\" or \"fan stopped\","
                        + " or look for a name with 'benchlore search'.");
        return ExitCode.NOTHING_FOUND;
    }
}
