package org.benchlore.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Map;

/** One call of the command line, as a test sees it. */
record Run(int code, String out, String err) {
    static Run of(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Benchlore.run(args, new PrintWriter(out), new PrintWriter(err), false, Map.of());
        return new Run(code, out.toString(), err.toString());
    }
}
