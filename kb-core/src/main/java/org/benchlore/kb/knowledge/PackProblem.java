package org.benchlore.kb.knowledge;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

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
    /** Nobody mends more in one go. */
    public static final int MOST_SHOWN = 50;

    /** How bad it is. */
    public enum Severity {
        ERROR,
        WARNING
    }

    /**
     * Those to show of many: at most {@link #MOST_SHOWN}, in the order given. Warnings give way to errors, so that what stops a
     * pack from loading is among them.
     */
    public static List<PackProblem> foremost(List<PackProblem> all) {
        return Stream.of(Severity.ERROR, Severity.WARNING)
                .flatMapToInt(severity ->
                        IntStream.range(0, all.size()).filter(i -> all.get(i).severity() == severity))
                .limit(MOST_SHOWN)
                .sorted()
                .mapToObj(all::get)
                .toList();
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
