package org.benchlore.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
            List<ImportResult> results =
                    DemoScenario.cases().stream().map(c -> read(kb, c)).toList();
            ImportResult all = together(results);
            if (json) {
                bench.out().println(Json.imported("demo", all));
            } else {
                bench.page()
                        .text(
                                0,
                                "The invented workshop is set up: "
                                        + DemoScenario.packs().size() + " device packs in " + folder + ", "
                                        + all.cases() + " cases, "
                                        + (all.cases() - results.get(0).cases())
                                        + " of them from another bench. None of it is real.");
            }
            new ImportPage(bench, kb.knowledge()).problems(all.problems(), all.moreProblems(), "demo");
            return all.clean() ? ExitCode.DONE : ExitCode.BAD_INPUT;
        }
    }

    private static ImportResult read(KnowledgeBase kb, DemoScenario.Cases cases) {
        byte[] lines = cases.lines().getBytes(StandardCharsets.UTF_8);
        return ImportCommand.read(kb, new ByteArrayInputStream(lines), cases.origin() + " cases", cases.origin());
    }

    private static ImportResult together(List<ImportResult> results) {
        return new ImportResult(
                results.stream().mapToLong(ImportResult::cases).sum(),
                results.stream().mapToLong(ImportResult::events).sum(),
                results.stream().mapToLong(ImportResult::added).sum(),
                results.stream().mapToLong(ImportResult::known).sum(),
                0,
                results.stream().flatMap(r -> r.problems().stream()).toList(),
                results.stream().mapToLong(ImportResult::moreProblems).sum());
    }
}
