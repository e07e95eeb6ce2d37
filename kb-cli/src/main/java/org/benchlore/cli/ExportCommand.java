package org.benchlore.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.benchlore.kb.KnowledgeBase;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Exports cases. */
@Command(
        name = "export",
        description =
                "Export all cases as lines of JSON; reading them back, in any order and any number of times, gives the"
                        + " same cases.",
        mixinStandardHelpOptions = true)
final class ExportCommand extends BenchCommand {
    @Parameters(arity = "0..1", paramLabel = "FILE", description = "Where to; standard output without.")
    @Nullable
    Path file;

    @Option(
            names = "--anonymous",
            description = "Leave out free text, serial numbers, prices and the names of other shops.")
    boolean anonymous;

    ExportCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            Path to = file;
            try {
                if (to == null) {
                    kb.exportCases(bench.out(), anonymous);
                } else {
                    long events = write(kb, to);
                    bench.err().println("benchlore: wrote " + events + " events to " + to);
                }
            } catch (IOException e) {
                throw new BadInputException((to == null ? "standard output" : to.toString()) + ": cannot be written ("
                        + e.getMessage() + "); choose another place");
            }
            return ExitCode.DONE;
        }
    }

    /** Beside the target first, so that an export that fails leaves the last good one alone. */
    private long write(KnowledgeBase kb, Path to) throws IOException {
        Path folder = to.toAbsolutePath().getParent();
        Path part = Files.createTempFile(folder, ".benchlore", ".part");
        try {
            long events;
            try (BufferedWriter writer = Files.newBufferedWriter(part, StandardCharsets.UTF_8)) {
                events = kb.exportCases(writer, anonymous);
            }
            Files.move(part, to, StandardCopyOption.REPLACE_EXISTING);
            return events;
        } finally {
            Files.deleteIfExists(part);
        }
    }
}
