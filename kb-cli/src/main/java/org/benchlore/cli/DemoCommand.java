package org.benchlore.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.KnowledgeBaseBuilder;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.data.DemoScenario;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;

/** Sets up the invented workshop. */
@Command(
        name = "demo",
        description =
                "Put an invented workshop into the home: its device packs and case histories. For trying things out.",
        mixinStandardHelpOptions = true)
final class DemoCommand extends BenchCommand {
    /** Whose cases the demo's are. */
    private static final String ORIGIN = "demo";

    DemoCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        Path folder = homeDir().resolve(KnowledgeBaseBuilder.HOME_PACKS);
        try {
            Files.createDirectories(folder);
            for (PackSource pack : DemoScenario.packs()) {
                Files.writeString(folder.resolve("demo-" + pack.name()), pack.yaml());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(folder + ": cannot be written; choose another --home", e);
        }
        try (KnowledgeBase kb = open()) {
            ImportResult result = ImportCommand.read(
                    kb,
                    new ByteArrayInputStream(DemoScenario.cases().getBytes(StandardCharsets.UTF_8)),
                    "demo cases",
                    ORIGIN);
            if (json) {
                bench.out().println(Json.imported(ORIGIN, result));
            } else {
                bench.page()
                        .text(
                                0,
                                "The invented workshop is set up: "
                                        + DemoScenario.packs().size() + " device packs in " + folder + ", "
                                        + result.cases() + " cases. None of it is real.");
            }
            return result.clean() ? ExitCode.DONE : ExitCode.INTERNAL;
        }
    }
}
