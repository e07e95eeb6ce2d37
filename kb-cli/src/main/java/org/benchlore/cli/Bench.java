package org.benchlore.cli;

import java.io.PrintWriter;
import java.util.Map;
import picocli.CommandLine;

/** What the process gives every command: where output goes and the environment. */
record Bench(PrintWriter out, PrintWriter err, boolean colour, Map<String, String> environment) {
    Page page() {
        return new Page(out, colour);
    }

    /** Says something beside the answer: what to know, or what is wrong. */
    void tell(String message) {
        new Page(err, false).message(message);
    }

    /** Makes commands that take a bench. */
    record Factory(Bench bench) implements CommandLine.IFactory {
        @Override
        public <K> K create(Class<K> type) throws Exception {
            return BenchCommand.class.isAssignableFrom(type)
                    ? type.getDeclaredConstructor(Bench.class).newInstance(bench)
                    : CommandLine.defaultFactory().create(type);
        }
    }
}
