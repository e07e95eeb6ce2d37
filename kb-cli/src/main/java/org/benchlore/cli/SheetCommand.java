package org.benchlore.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.report.Sheets;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Sheets about a case. */
@Command(
        name = "sheet",
        description = {
            "Write a sheet about a case: for the bench, for the owner, or a question for others.",
            "The HTML page is one file that prints on A4 and needs nothing else."
        },
        mixinStandardHelpOptions = true)
final class SheetCommand extends BenchCommand implements BenchCommand.WithoutJson {
    @Parameters(paramLabel = "CASE", description = "Case id.")
    String id = "";

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            defaultValue = "case",
            description = "case, handover (for the owner) or question (names nobody); default ${DEFAULT-VALUE}.")
    Sheets.Kind kind = Sheets.Kind.CASE;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            description = "markdown or html (default: html for a FILE that ends so, else markdown).")
    Sheets.@Nullable Format format;

    @Option(names = "--out", paramLabel = "FILE", description = "Where to; standard output without.")
    @Nullable
    Path file;

    SheetCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        noJson("a sheet is for people; for JSON use 'benchlore show --json " + id + "'");
        try (KnowledgeBase kb = open()) {
            CaseCommand.known(kb, id);
            String sheet = kb.sheet(id, kind, format()).orElseThrow();
            Path to = file;
            if (to == null) {
                bench.out().print(sheet);
            } else {
                write(to, sheet);
                bench.tell("wrote " + to);
            }
            return ExitCode.DONE;
        }
    }

    private Sheets.Format format() {
        Sheets.Format given = format;
        if (given != null) {
            return given;
        }
        boolean page = file != null && file.toString().matches("(?i).*\\.html?");
        return page ? Sheets.Format.HTML : Sheets.Format.MARKDOWN;
    }

    private static void write(Path to, String sheet) {
        try {
            Files.writeString(to, sheet, StandardCharsets.UTF_8);
        } catch (NoSuchFileException e) {
            throw new BadInputException(to + ": there is no such folder; make it, or choose another place with --out");
        } catch (IOException e) {
            throw new BadInputException(to + ": cannot be written (" + why(e) + "); choose another place with --out");
        }
    }
}
