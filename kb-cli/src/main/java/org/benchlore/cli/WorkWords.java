package org.benchlore.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The words that the guided run obeys, at its main prompt and wherever else they are typed in haste. */
final class WorkWords {
    static final List<String> HELP = List.of(
            "anything else: what you see, hear or measure, in your own words",
            "test: take the test that tells most per minute",
            "log: paste the lines of a log, then a lone full stop",
            "plan: the whole repair as a tree, with its expected minutes",
            "worth: weigh whether to do the advised fix at all",
            "doubt: take a second look at the leading cause",
            "why: all findings, the causes, and what speaks for them",
            "cause: say which cause it was",
            "fix: note a fix that you do now",
            "proof: go through what proves the fix, and see for how long to run",
            "run: note hours of run, and how often the fault showed in them",
            "undo: take back the last step",
            "end: finish with an outcome",
            "stop, quit: leave; the case stays open, and 'benchlore work CASE' goes on with it",
            "?: this list");

    private static final Set<String> COMMANDS =
            Set.of("test", "log", "plan", "worth", "doubt", "why", "cause", "fix", "proof", "run", "undo", "end");

    /** Nobody means these as a note. */
    private static final Set<String> LEAVE = Set.of("stop", "quit", "exit", "q", "bye");

    /** Commands of the command line that have another name here. */
    private static final Map<String, String> NAMED_HERE = Map.of("rank", "why", "next", "test", "outcome", "end");

    /** Commands of the command line that have no use here. */
    private static final Set<String> OUTSIDE = Set.of(
            "show", "search", "sheet", "case", "work", "fixes", "import", "export", "evaluate", "quality", "rebuild");

    private WorkWords() {}

    /** What to say of a line that is a command of the command line and nothing else; it is no note. */
    static Optional<String> elsewhere(String line) {
        String word = line.strip().toLowerCase(Locale.ROOT);
        if (NAMED_HERE.containsKey(word)) {
            return Optional.of("'" + word + "' is not stored: here it is '" + NAMED_HERE.get(word) + "'.");
        }
        return OUTSIDE.contains(word)
                ? Optional.of("'" + word + "' is not stored: leave with 'stop', then 'benchlore " + word + " ...'.")
                : Optional.empty();
    }

    static boolean leaves(String line) {
        return LEAVE.contains(line.toLowerCase(Locale.ROOT));
    }

    /** Whether a line is a command, help and leaving among them. */
    static boolean obeyed(String line) {
        return leaves(line) || COMMANDS.contains(line.toLowerCase(Locale.ROOT)) || line.equals(Lines.HELP);
    }
}
