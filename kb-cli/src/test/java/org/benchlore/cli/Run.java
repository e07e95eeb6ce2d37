package org.benchlore.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;

/** One call of the command line, as a test sees it. */
record Run(int code, String out, String err) {
    /** With a home of the test's own. */
    static Run at(Path home, String... args) {
        return of(Stream.concat(Arrays.stream(args), Stream.of("--home", home.toString()))
                .toArray(String[]::new));
    }

    static Run of(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Benchlore.run(args, new PrintWriter(out), new PrintWriter(err), false, Map.of());
        return new Run(code, out.toString(), err.toString());
    }
}
