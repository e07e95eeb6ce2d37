package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;

/** One call of the command line, as a test sees it: the lines of a message joined again. */
record Run(int code, String out, String err) {
    /** With a home of the test's own. */
    static Run at(Path home, String... args) {
        return of(Stream.concat(Arrays.stream(args), Stream.of("--home", home.toString()))
                .toArray(String[]::new));
    }

    /** What a call that ends well prints, its lines joined. */
    static String text(Path home, String... args) {
        Run run = at(home, args);
        assertThat(run.code()).as(run.err()).isZero();
        return run.out().replaceAll("\\s+", " ");
    }

    static Run of(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Benchlore.run(args, new PrintWriter(out), new PrintWriter(err), false, Map.of());
        return new Run(code, out.toString(), err.toString().replaceAll("\\R {2}(?=\\S)", " "));
    }
}
