package org.benchlore.cli;

/** Exit codes, stable for scripts. */
final class ExitCode {
    static final int DONE = 0;
    static final int NOTHING_FOUND = 1;
    static final int USAGE = 2;
    static final int BAD_INPUT = 3;
    static final int STORE = 4;
    static final int INTERNAL = 5;

    private ExitCode() {}
}
