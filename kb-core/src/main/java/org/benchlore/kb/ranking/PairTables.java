package org.benchlore.kb.ranking;

import java.util.Arrays;

/**
 * Contingency tables of two symptoms, one per cause that has a case with both looked at. Each table carries its margins,
 * so n(c,x,y), n(c,x,.), n(c,.,y) and n(c,.,.) are four reads. Counts are millionths of a case: whole numbers, hence
 * exact under withdrawal and free of order.
 */
final class PairTables {

    private final int rows;
    private final int columns;
    private int size;
    private int[] causes = new int[4];
    private long[][] tables = new long[4][];

    PairTables(int rows, int columns) {
        this.rows = rows;
        this.columns = columns;
    }

    void add(int cause, int x, int y, long weightMicro) {
        long[] table = tableFor(cause);
        int width = columns + 1;
        table[x * width + y] += weightMicro;
        table[x * width + columns] += weightMicro;
        table[rows * width + y] += weightMicro;
        table[rows * width + columns] += weightMicro;
    }

    int size() {
        return size;
    }

    int cause(int index) {
        return causes[index];
    }

    double both(int index, int x, int y) {
        return tables[index][x * (columns + 1) + y] * FindingCounts.MICRO;
    }

    double row(int index, int x) {
        return tables[index][x * (columns + 1) + columns] * FindingCounts.MICRO;
    }

    double column(int index, int y) {
        return tables[index][rows * (columns + 1) + y] * FindingCounts.MICRO;
    }

    double total(int index) {
        return tables[index][rows * (columns + 1) + columns] * FindingCounts.MICRO;
    }

    private long[] tableFor(int cause) {
        int at = Arrays.binarySearch(causes, 0, size, cause);
        if (at >= 0) {
            return tables[at];
        }
        at = -at - 1;
        if (size == causes.length) {
            causes = Arrays.copyOf(causes, 2 * size);
            tables = Arrays.copyOf(tables, 2 * size);
        }
        System.arraycopy(causes, at, causes, at + 1, size - at);
        System.arraycopy(tables, at, tables, at + 1, size - at);
        causes[at] = cause;
        tables[at] = new long[(rows + 1) * (columns + 1)];
        size++;
        return tables[at];
    }
}
