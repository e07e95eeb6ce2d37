package org.benchlore.cli;

import java.io.PrintWriter;
import java.io.Writer;
import java.util.List;
import java.util.Map;

/** Goes through the usual commands, so that the launcher can archive the classes they need; in a home of its own. */
final class WarmUp {
    private static final String WORDS = "green light, no 12 V, controler silent, 5V standby reads 4.98 V";

    private WarmUp() {}

    /** Runs them; the only argument is the home. */
    public static void main(String[] args) {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        for (String command : List.of("rank", "next", "search", "rank")) {
            Benchlore.run(
                    new String[] {command, "--home", args[0], WORDS},
                    nowhere,
                    nowhere,
                    false,
                    Map.copyOf(System.getenv()));
        }
    }
}
