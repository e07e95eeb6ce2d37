package org.benchlore.cli;

import java.io.FileDescriptor;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchlore.kb.cases.StoreException;
import org.benchlore.kb.knowledge.KnowledgeBaseException;
import org.benchlore.kb.knowledge.Nearest;
import org.benchlore.kb.search.SearchIndexException;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The command line. */
@Command(
        name = "benchlore",
        mixinStandardHelpOptions = true,
        versionProvider = Benchlore.Version.class,
        header = "The memory of a repair bench.",
        description = "Ranks likely causes for what you see and measure, says why, and learns from every outcome.",
        synopsisSubcommandLabel = "COMMAND",
        commandListHeading = "%nCommands:%n",
        optionListHeading = "%nOptions:%n",
        footerHeading = "%n",
        footer = {
            "Try:  benchlore rank \"green light, no 12 V, controller silent\"",
            "",
            "Exit codes: 0 done, 1 nothing found, 2 wrong usage, 3 bad input, 4 store or",
            "index trouble, 5 internal fault."
        },
        subcommands = {
            RankCommand.class,
            NextCommand.class,
            PlanCommand.class,
            DoubtCommand.class,
            WorthCommand.class,
            ProofCommand.class,
            FixesCommand.class,
            SearchCommand.class,
            ShowCommand.class,
            CaseCommand.class,
            OutcomeCommand.class,
            WorkCommand.class,
            SheetCommand.class,
            EvaluateCommand.class,
            CheckCommand.class,
            QualityCommand.class,
            WordsCommand.class,
            ImportCommand.class,
            ExportCommand.class,
            RebuildCommand.class,
            DemoCommand.class,
            CompletionCommand.class,
            CommandLine.HelpCommand.class
        })
public final class Benchlore {
    /** Set by the launcher when standard output is a terminal. */
    private static final String TERMINAL = "benchlore.terminal";

    /** How the parser lists what an option may be, in capitals that the help does not have. */
    private static final Pattern CHOICES =
            Pattern.compile("expected one of \\[([^\\]]*)\\] \\(case-insensitive\\).*", Pattern.DOTALL);

    /** Held, since the platform forgets the level of a logger that nobody holds. */
    private static final Logger LUCENE = Logger.getLogger("org.apache.lucene");

    private Benchlore() {}

    /** Runs the command line and ends the process with its exit code. */
    public static void main(String[] args) {
        LUCENE.setLevel(Level.SEVERE); // newer JDKs make it remark on how it maps memory
        StandardStream output = new StandardStream(FileDescriptor.out);
        PrintWriter out = writer(output);
        PrintWriter err = writer(new StandardStream(FileDescriptor.err));
        boolean colour = Boolean.getBoolean(TERMINAL) && System.getenv("NO_COLOR") == null;
        int code = run(args, out, err, colour, System.getenv());
        out.flush();
        Optional<String> lost = output.trouble();
        lost.ifPresent(why -> err.println("benchlore: the answer could not be written out (" + why
                + "); make room or send it elsewhere, and ask again"));
        err.flush();
        System.exit(lost.isPresent() && code < ExitCode.USAGE ? ExitCode.BAD_INPUT : code);
    }

    private static PrintWriter writer(OutputStream stream) {
        return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), false);
    }

    static int run(String[] args, PrintWriter out, PrintWriter err, boolean colour, Map<String, String> environment) {
        CommandLine line =
                new CommandLine(new Benchlore(), new Bench.Factory(new Bench(out, err, colour, environment)));
        line.setOut(out);
        line.setErr(err);
        line.setColorScheme(
                CommandLine.Help.defaultColorScheme(colour ? CommandLine.Help.Ansi.ON : CommandLine.Help.Ansi.OFF));
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setExecutionExceptionHandler((thrown, command, parsed) -> failed(thrown, err));
        line.setParameterExceptionHandler((thrown, given) -> wrongUsage(thrown, err));
        hideJson(line);
        return line.execute(wordsLast(args, line));
    }

    /** Commands whose answer no line of JSON could hold refuse the option, so their help does not offer it. */
    private static void hideJson(CommandLine line) {
        for (CommandLine command : line.getSubcommands().values()) {
            CommandLine.Model.OptionSpec option = command.getCommandSpec().findOption("--json");
            if (option != null && command.getCommand() instanceof BenchCommand.WithoutJson) {
                command.getCommandSpec().remove(option);
                command.getCommandSpec()
                        .addOption(option.toBuilder().hidden(true).build());
            }
        }
    }

    /**
     * "-12V missing" is words, not an option: what starts with a minus and a digit, or holds blanks, goes last, or belongs to
     * the option before it.
     */
    private static String[] wordsLast(String[] args, CommandLine line) {
        List<String> options = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (int i = 0; i < args.length; i++) {
            if (args[i].equals("--")) {
                return args;
            }
            boolean minus = args[i].length() > 1 && args[i].charAt(0) == '-';
            if (minus && (Character.isDigit(args[i].charAt(1)) || args[i].matches("-[^=]*\\s.*"))) {
                if (i > 0 && takesValue(args[i - 1], line)) {
                    options.set(options.size() - 1, args[i - 1] + "=" + args[i]);
                } else {
                    words.add(args[i]);
                }
            } else {
                options.add(args[i]);
            }
        }
        if (!words.isEmpty()) {
            options.add("--");
            options.addAll(words);
        }
        return options.toArray(String[]::new);
    }

    /** Whether an option of that name takes a value in any command, so that a number below zero after it is that value. */
    private static boolean takesValue(String name, CommandLine line) {
        CommandLine.Model.OptionSpec option = line.getCommandSpec().findOption(name);
        return name.startsWith("--")
                && ((option != null && option.arity().max() > 0)
                        || line.getSubcommands().values().stream().anyMatch(sub -> takesValue(name, sub)));
    }

    private static int wrongUsage(CommandLine.ParameterException thrown, PrintWriter err) {
        new Page(err, false).message(message(thrown));
        err.println("Try 'benchlore " + path(thrown.getCommandLine()) + "--help'.");
        return ExitCode.USAGE;
    }

    /** What is wrong, and what was probably meant. */
    private static String message(CommandLine.ParameterException thrown) {
        CommandLine command = thrown.getCommandLine();
        String said = String.valueOf(thrown.getMessage())
                .replaceFirst("is not an? (?:double|float)$", "is not a number")
                .replaceFirst("is not an? (?:int|long)$", "is not a whole number");
        Matcher choices = CHOICES.matcher(said);
        if (choices.find()) {
            said = choices.replaceFirst(
                    "use one of " + choices.group(1).toLowerCase(Locale.ROOT).replace('_', '-'));
        }
        if (!(thrown instanceof CommandLine.UnmatchedArgumentException unmatched)
                || unmatched.getUnmatched().isEmpty()) {
            return said;
        }
        String first = unmatched.getUnmatched().get(0);
        if (first.startsWith("-")) {
            return said
                    + Nearest.to(first, command.getCommandSpec().optionsMap().keySet())
                            .map(near -> "; did you mean '" + near + "'?")
                            .orElse("");
        }
        List<String> names = List.copyOf(command.getSubcommands().keySet());
        if (names.isEmpty()) {
            return said;
        }
        CommandLine parent = command.getParent();
        String elsewhere = parent != null && parent.getSubcommands().containsKey(first)
                ? "'benchlore " + first + "' is a command by itself"
                : "use one of " + String.join(", ", names);
        return "'" + first + "' is no command of '" + ("benchlore " + path(command)).strip() + "'; "
                + Nearest.remedy(first, names, elsewhere);
    }

    private static String path(CommandLine command) {
        return command.getParent() == null ? "" : path(command.getParent()) + command.getCommandName() + " ";
    }

    private static int failed(Exception thrown, PrintWriter err) {
        int code = code(thrown);
        if (code == ExitCode.INTERNAL) {
            err.println("benchlore: internal fault, please report it with the lines below");
            thrown.printStackTrace(err);
        } else {
            new Page(err, false).message(String.valueOf(thrown.getMessage()));
        }
        return code;
    }

    private static int code(Exception thrown) {
        if (thrown instanceof UsageException) {
            return ExitCode.USAGE;
        }
        if (thrown instanceof StoreException
                || thrown instanceof SearchIndexException
                || thrown instanceof UncheckedIOException) {
            return ExitCode.STORE;
        }
        return thrown instanceof KnowledgeBaseException || thrown instanceof BadInputException
                ? ExitCode.BAD_INPUT
                : ExitCode.INTERNAL;
    }

    /** Version out of the jar's manifest. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Benchlore.class.getPackage().getImplementationVersion();
            return new String[] {"benchlore " + (version == null ? "(not packaged)" : version)};
        }
    }
}
