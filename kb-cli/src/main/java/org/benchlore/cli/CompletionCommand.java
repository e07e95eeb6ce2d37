package org.benchlore.cli;

import org.jspecify.annotations.Nullable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints the completion script. */
@Command(
        name = "completion",
        description = {"Print a completion script for bash and zsh.", "Use it with:  source <(benchlore completion)"},
        mixinStandardHelpOptions = true)
final class CompletionCommand extends BenchCommand implements BenchCommand.WithoutJson {
    @Spec
    @Nullable
    CommandSpec spec;

    CompletionCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        noJson("'completion' prints a script for a shell; leave out --json");
        CommandSpec own = spec;
        if (own != null) {
            bench.out().println(AutoComplete.bash("benchlore", own.root().commandLine()));
        }
        return ExitCode.DONE;
    }
}
