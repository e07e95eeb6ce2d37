package org.benchlore.cli;

import java.util.Optional;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How long to run a repaired unit. */
@Command(
        name = "proof",
        description = "Plan a proof run: hours without fault, what is believed after the hours run, what to check.",
        mixinStandardHelpOptions = true)
final class ProofCommand extends BenchCommand {
    @Option(names = "--fix", paramLabel = "FIX", description = "The fix that was done.")
    @Nullable
    String fix;

    @Option(names = "--seen", paramLabel = "N", required = true, description = "Times the fault was seen before.")
    int seen;

    @Option(names = "--in", paramLabel = "HOURS", required = true, description = "In so many hours of run.")
    double seenHours;

    @Option(
            names = "--confidence",
            paramLabel = "C",
            defaultValue = "0.9",
            description = "Confidence asked for (default ${DEFAULT-VALUE}).")
    double confidence;

    @Option(
            names = "--not-cured",
            paramLabel = "P",
            description = "Probability that the fix did not cure (default: its record, else 0.5).")
    @Nullable
    Double notCured;

    @Option(names = "--ran", paramLabel = "HOURS", defaultValue = "0", description = "Run so far without fault.")
    double ran;

    ProofCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            Optional<String> id = Optional.ofNullable(fix).map(f -> UnitOptions.fixId(kb, f));
            ProofPlan proof = kb.proof(id, seen, seenHours, confidence, Optional.ofNullable(notCured), ran);
            if (json) {
                bench.out().println(Json.proof(proof));
            } else {
                new DecisionPage(kb.knowledge(), bench.page()).proof(proof);
            }
            return ExitCode.DONE;
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }
}
