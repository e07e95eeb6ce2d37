package org.benchlore.kb.knowledge;

/**
 * One thing wrong with a pack.
 *
 * @param file as named by its {@link PackSource}
 * @param line from 1
 * @param column from 1
 * @param severity an error stops the pack from loading; a warning does not
 * @param what what is wrong
 * @param remedy how to mend it
 */
public record PackProblem(String file, int line, int column, Severity severity, String what, String remedy)
        implements Comparable<PackProblem> {
    /** How bad it is. */
    public enum Severity {
        ERROR,
        WARNING
    }

    @Override
    public int compareTo(PackProblem other) {
        int byFile = file.compareTo(other.file);
        if (byFile != 0) {
            return byFile;
        }
        int byLine = Integer.compare(line, other.line);
        if (byLine != 0) {
            return byLine;
        }
        int byColumn = Integer.compare(column, other.column);
        return byColumn != 0 ? byColumn : what.compareTo(other.what);
    }

    @Override
    public String toString() {
        return file + ":" + line + ":" + column + ": " + what + "; " + remedy;
    }
}
