package org.benchlore.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.data.ShippedPacks;
import org.benchlore.kb.knowledge.BadPackException;
import org.benchlore.kb.knowledge.PackProblem;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Checks packs. */
@Command(
        name = "check",
        description = "Check packs and report their problems at once, with how to mend them; of many the first "
                + PackProblem.MOST_SHOWN + ".",
        mixinStandardHelpOptions = true)
final class CheckCommand extends BenchCommand {
    @Parameters(arity = "1..*", paramLabel = "PACK", description = "YAML files; they are read after those that ship.")
    List<Path> files = new ArrayList<>();

    @Option(names = "--alone", description = "Check the files by themselves, without the packs that ship.")
    boolean alone;

    CheckCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        List<PackProblem> problems = new ArrayList<>();
        List<PackSource> sources = new ArrayList<>();
        Set<String> given = new HashSet<>();
        for (Path file : files) {
            given.add(file.toString());
            try {
                sources.add(PackSource.read(file));
            } catch (BadPackException e) {
                problems.addAll(e.problems());
            }
        }
        List<PackSource> all = new ArrayList<>();
        if (!alone) {
            all.addAll(ShippedPacks.all());
        }
        all.addAll(sources);
        if (!sources.isEmpty()) {
            PackReader.check(all).stream().filter(p -> given.contains(p.file())).forEach(problems::add);
        }
        if (json) {
            bench.out().println(Json.check(problems));
        } else {
            List<PackProblem> shown = PackProblem.foremost(problems);
            shown.forEach(
                    p -> bench.page().line((p.severity() == PackProblem.Severity.WARNING ? "warning: " : "") + p));
            if (problems.size() > shown.size()) {
                bench.page().line("and " + (problems.size() - shown.size()) + " more");
            }
            if (problems.isEmpty()) {
                bench.page().line(files.size() == 1 ? "1 pack is sound." : files.size() + " packs are sound.");
            }
        }
        boolean broken = problems.stream().anyMatch(p -> p.severity() == PackProblem.Severity.ERROR);
        return broken ? ExitCode.BAD_INPUT : ExitCode.DONE;
    }
}
