package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;

/** Plain textbook classifiers on the same folds, for comparison. What was not looked at is left out. */
final class Peers {
    /** A way to learn: counts in, forecaster out. */
    record Peer(String name, Function<Table, Function<int[], double[]>> learner) {}

    static final List<Peer> ALL = List.of(
            new Peer("NB Laplace", t -> row -> naive(t, row, true)),
            new Peer("NB m=1", t -> row -> naive(t, row, false)),
            new Peer("AODE m=1", t -> row -> oneDependence(t, row)));

    private Peers() {}

    /** Counts of one training set. */
    static final class Table {
        final int[] width;
        final double[] causes;
        final double total;
        /** [symptom][state][cause]. */
        final double[][][] one;
        /** [symptom][state][other symptom][other state][cause]. */
        final double[][][][][] two;

        Table(int[] width, int causes, List<int[]> rows, List<Integer> truths) {
            this.width = width;
            this.causes = new double[causes];
            this.total = rows.size();
            int n = width.length;
            one = new double[n][][];
            two = new double[n][][][][];
            for (int s = 0; s < n; s++) {
                one[s] = new double[width[s]][causes];
                two[s] = new double[width[s]][n][][];
                for (int x = 0; x < width[s]; x++) {
                    for (int t = 0; t < n; t++) {
                        two[s][x][t] = new double[width[t]][causes];
                    }
                }
            }
            for (int r = 0; r < rows.size(); r++) {
                add(rows.get(r), truths.get(r));
            }
        }

        private void add(int[] row, int cause) {
            causes[cause]++;
            for (int s = 0; s < row.length; s++) {
                if (row[s] < 0) {
                    continue;
                }
                one[s][row[s]][cause]++;
                for (int t = 0; t < row.length; t++) {
                    if (t != s && row[t] >= 0) {
                        two[s][row[s]][t][row[t]][cause]++;
                    }
                }
            }
        }

        double looked(int s, int cause) {
            double n = 0;
            for (double[] state : one[s]) {
                n += state[cause];
            }
            return n;
        }

        double share(int s, int x) {
            double n = 0;
            double all = 0;
            for (int c = 0; c < causes.length; c++) {
                n += one[s][x][c];
                all += looked(s, c);
            }
            return (n + 1) / (all + width[s]);
        }
    }

    private static double[] naive(Table t, int[] row, boolean laplace) {
        double[] score = new double[t.causes.length];
        for (int c = 0; c < score.length; c++) {
            score[c] = Math.log((t.causes[c] + 1) / (t.total + score.length));
            for (int s = 0; s < row.length; s++) {
                if (row[s] >= 0) {
                    double n = t.one[s][row[s]][c];
                    score[c] += Math.log(
                            laplace
                                    ? (n + 1) / (t.looked(s, c) + t.width[s])
                                    : (n + t.share(s, row[s])) / (t.looked(s, c) + 1));
                }
            }
        }
        return Scores.normalise(score);
    }

    /** Webb, Boughton and Wang, Machine Learning 58, 2005, every seen attribute a parent, m-estimates with m = 1. */
    private static double[] oneDependence(Table t, int[] row) {
        double[] sum = new double[t.causes.length];
        double largest = Double.NEGATIVE_INFINITY;
        List<double[]> parents = new ArrayList<>();
        for (int i = 0; i < row.length; i++) {
            if (row[i] < 0) {
                continue;
            }
            double[] score = new double[sum.length];
            for (int c = 0; c < sum.length; c++) {
                double n = t.one[i][row[i]][c];
                score[c] =
                        Math.log((n + t.share(i, row[i]) * (t.causes[c] + 1) / (t.total + sum.length)) / (t.total + 1));
                for (int j = 0; j < row.length; j++) {
                    if (j != i && row[j] >= 0) {
                        double both = t.two[i][row[i]][j][row[j]][c];
                        double with = 0;
                        for (double[] state : t.two[i][row[i]][j]) {
                            with += state[c];
                        }
                        score[c] += Math.log((both + t.share(j, row[j])) / (with + 1));
                    }
                }
                largest = Math.max(largest, score[c]);
            }
            parents.add(score);
        }
        if (parents.isEmpty()) {
            return naive(t, row, false);
        }
        double total = 0;
        for (double[] score : parents) {
            for (int c = 0; c < sum.length; c++) {
                sum[c] += Math.exp(score[c] - largest);
                total += Math.exp(score[c] - largest);
            }
        }
        for (int c = 0; c < sum.length; c++) {
            sum[c] /= total;
        }
        return sum;
    }

    /** A lesson's findings as state numbers, -1 for not looked at. */
    static int[] row(Knowledge knowledge, Lesson lesson) {
        int[] row = new int[knowledge.symptoms().size()];
        java.util.Arrays.fill(row, -1);
        for (Finding f : lesson.findings()) {
            row[Integer.parseInt(f.symptomId().substring(1))] =
                    Integer.parseInt(f.state().substring(1));
        }
        return row;
    }

    static int[] widths(Knowledge knowledge) {
        int[] widths = new int[knowledge.symptoms().size()];
        knowledge
                .symptoms()
                .forEach(s -> widths[Integer.parseInt(s.id().substring(1))] =
                        s.states().size());
        return widths;
    }
}
