package org.benchlore.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Imports cases. */
@Command(
        name = "import",
        description = "Import cases: lines of JSON, events or whole cases. Bad lines are reported and stop nothing.",
        mixinStandardHelpOptions = true)
final class ImportCommand extends BenchCommand {
    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Files; - reads standard input.")
    List<String> files = new ArrayList<>();

    @Option(
            names = "--origin",
            paramLabel = "NAME",
            defaultValue = CaseHistory.OWN,
            description =
                    "Whose cases they are; those of others weigh a little less (default: ${DEFAULT-VALUE}, one's own).")
    String origin = CaseHistory.OWN;

    ImportCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        try (KnowledgeBase kb = open()) {
            boolean clean = true;
            for (String file : files) {
                ImportResult result = file.equals("-")
                        ? read(kb, System.in, "standard input", origin)
                        : read(kb, Path.of(file), origin);
                clean &= result.clean();
                print(file, result);
            }
            return clean ? ExitCode.DONE : ExitCode.BAD_INPUT;
        }
    }

    private static ImportResult read(KnowledgeBase kb, Path file, String origin) {
        try (InputStream in = Files.newInputStream(file)) {
            return read(kb, in, file.toString(), origin);
        } catch (NoSuchFileException e) {
            throw new BadInputException(file + ": there is no such file; check the path");
        } catch (IOException e) {
            throw new BadInputException(file + ": cannot be read (" + e.getMessage() + "); check that it is a file");
        }
    }

    static ImportResult read(KnowledgeBase kb, InputStream in, String source, String origin) {
        try {
            return kb.importCases(new InputStreamReader(in, StandardCharsets.UTF_8), source, origin);
        } catch (IOException e) {
            throw new BadInputException(source + ": cannot be read (" + e.getMessage() + "); what was stored stays");
        }
    }

    void print(String source, ImportResult result) {
        if (json) {
            bench.out().println(Json.imported(source, result));
        } else {
            bench.page()
                    .line(source + ": " + result.cases() + " cases, " + result.added() + " new events, "
                            + result.known() + " known already.");
        }
        result.problems().forEach(p -> bench.err().println("benchlore: " + Page.clean(p.toString())));
        if (result.moreProblems() > 0) {
            bench.err().println("benchlore: " + source + ": " + result.moreProblems() + " more bad lines");
        }
    }
}
