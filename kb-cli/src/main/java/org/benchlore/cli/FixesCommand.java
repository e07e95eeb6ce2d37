package org.benchlore.cli;

import java.util.List;
import java.util.Optional;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.planning.FixRecord;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** How fixes went. */
@Command(
        name = "fixes",
        description = "Show how fixes went: tried, worked, came back, made worse, minutes really needed.",
        mixinStandardHelpOptions = true)
final class FixesCommand extends BenchCommand {
    @Parameters(arity = "0..1", paramLabel = "FIX", description = "One fix; else every one that was tried.")
    @Nullable
    String fix;

    @Option(names = "--device", paramLabel = "SCOPE", description = "Only units within class/family/model/revision.")
    @Nullable
    String device;

    @Option(names = "--origin", paramLabel = "BENCH", description = "Only cases of one bench; 'bench' for your own.")
    @Nullable
    String origin;

    FixesCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            List<FixRecord> records = kb.fixes(scope(device), Optional.ofNullable(origin));
            if (fix != null) {
                String id = UnitOptions.fixId(kb, fix);
                records = device == null && origin == null
                        ? List.of(kb.fix(id))
                        : records.stream().filter(r -> r.fixId().equals(id)).toList();
            }
            if (json) {
                bench.out().println(Json.fixes(records));
            } else {
                DecisionPage page = new DecisionPage(kb.knowledge(), bench.page());
                records.forEach(page::fixRecord);
            }
            if (records.isEmpty()) {
                bench.tell("no fix was tried in such a case yet; 'benchlore outcome' records one");
                return ExitCode.NOTHING_FOUND;
            }
            return ExitCode.DONE;
        }
    }
}
