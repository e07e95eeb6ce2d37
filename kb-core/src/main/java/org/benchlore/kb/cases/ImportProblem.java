package org.benchlore.kb.cases;

/**
 * One line that was not imported.
 *
 * @param source as named by the caller, usually a file
 * @param line from 1
 * @param what what is wrong
 * @param remedy how to mend it
 */
public record ImportProblem(String source, long line, String what, String remedy) {
    @Override
    public String toString() {
        return source + ":" + line + ": " + what + "; " + remedy;
    }
}
