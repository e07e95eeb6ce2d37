package org.benchlore.cli;

import org.benchlore.kb.KnowledgeBase;
import picocli.CommandLine.Command;

/** Rebuilds what is derived. */
@Command(
        name = "rebuild",
        description = "Throw away the search index and statistics and make them again from the recorded events.",
        mixinStandardHelpOptions = true)
final class RebuildCommand extends BenchCommand {
    RebuildCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            bench.tell("rebuilding from the recorded events ...");
            kb.rebuild();
            long cases = kb.caseCount();
            bench.out()
                    .println(
                            json
                                    ? "{\"schema\":\"benchlore/rebuild/1\",\"cases\":" + cases + "}"
                                    : "Rebuilt from " + cases + " cases.");
            return ExitCode.DONE;
        }
    }
}
