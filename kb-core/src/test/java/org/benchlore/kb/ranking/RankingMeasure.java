package org.benchlore.kb.ranking;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Ten-fold figures of the ranking on open datasets with given folds, plain classifiers beside it: {@code kb-core/measure
 * ranking}. With {@code --data DIR --folds DIR} it runs on every {@code NAME.csv} with {@code NAME.seedN.txt}; {@code
 * --delete PERCENT} removes that share of the findings from all cases first; {@code --json} prints one line per set, the
 * ranking's alone. {@code --sequential} asks one symptom at a time (seed 1); {@code --curve SEEDS} and {@code --intervals
 * SEEDS} run on simulated benches instead.
 */
final class RankingMeasure {
    private static final int FOLDS = 10;

    private RankingMeasure() {}

    public static void main(String[] args) throws IOException {
        Path data = Path.of("src/test/resources/open-data");
        Path folds = data.resolve("folds");
        boolean json = false;
        double delete = 0;
        boolean sequential = false;
        for (int i = 0; i < args.length; i++) {
            switch (args[i]) {
                case "--json" -> json = true;
                case "--data" -> data = Path.of(args[++i]);
                case "--folds" -> folds = Path.of(args[++i]);
                case "--delete" -> delete = Double.parseDouble(args[++i]) / 100;
                case "--sequential" -> sequential = true;
                case "--curve" -> {
                    LearningCurve.print(Integer.parseInt(args[++i]), 10_000, System.out);
                    return;
                }
                case "--intervals" -> {
                    IntervalCoverage.print(Integer.parseInt(args[++i]), System.out);
                    return;
                }
                default -> throw new IllegalArgumentException("unknown option " + args[i]);
            }
        }
        List<Path> sets;
        try (Stream<Path> files = Files.list(data)) {
            sets = files.filter(f -> f.toString().endsWith(".csv")).sorted().toList();
        }
        if (!json && !sequential) {
            System.out.printf("%-14s %7s %7s %8s %7s %7s%n", "set", "top-1", "top-3", "log-loss", "Brier", "ECE");
        }
        for (Path set : sets) {
            if (sequential) {
                sequential(set, folds, System.out);
                continue;
            }
            measure(set, folds, delete, json, System.out);
        }
    }

    private static void measure(Path csv, Path folds, double delete, boolean json, PrintStream out) throws IOException {
        String file = csv.getFileName().toString();
        String name = file.substring(0, file.length() - ".csv".length());
        OpenData all = OpenData.read(csv);
        Scores scores = new Scores();
        int seeds = 0;
        for (int seed = 1; Files.exists(folds.resolve(name + ".seed" + seed + ".txt")); seed++) {
            int[] fold = OpenData.folds(folds.resolve(name + ".seed" + seed + ".txt"));
            scores.endRun(crossValidate(delete > 0 ? all.thinned(delete, seed) : all, fold));
            seeds++;
        }
        line(name, scores.runMeans(), seeds, json, out);
        for (Peers.Peer peer : json ? List.<Peers.Peer>of() : Peers.ALL) {
            Scores theirs = new Scores();
            for (int seed = 1; seed <= seeds; seed++) {
                int[] fold = OpenData.folds(folds.resolve(name + ".seed" + seed + ".txt"));
                theirs.endRun(crossValidate(peer, delete > 0 ? all.thinned(delete, seed) : all, fold));
            }
            line("  " + peer.name(), theirs.runMeans(), seeds, false, out);
        }
    }

    private static void sequential(Path csv, Path folds, PrintStream out) throws IOException {
        String file = csv.getFileName().toString();
        String name = file.substring(0, file.length() - ".csv".length());
        double[] m = SequentialMeasure.measure(OpenData.read(csv), OpenData.folds(folds.resolve(name + ".seed1.txt")));
        out.printf(Locale.ROOT, "%-14s asked %.2f, right %.3f%n", name, m[0], m[1]);
    }

    private static void line(String name, double[] m, int seeds, boolean json, PrintStream out) {
        String format = json
                ? "{\"set\":\"%s\",\"top1\":%.4f,\"top3\":%.4f,\"logLoss\":%.4f,\"brier\":%.4f,\"ece\":%.4f,\"seeds\":%d}%n"
                : "%-14s %7.4f %7.4f %8.4f %7.4f %7.4f%n";
        out.printf(Locale.ROOT, format, name, m[0], m[1], m[2], m[3], m[4], seeds);
    }

    private static double[] crossValidate(Peers.Peer peer, OpenData data, int[] fold) {
        Scores scores = new Scores();
        for (int f = 0; f < FOLDS; f++) {
            List<int[]> rows = new ArrayList<>();
            List<Integer> truths = new ArrayList<>();
            for (int r = 0; r < fold.length; r++) {
                if (fold[r] != f) {
                    rows.add(Peers.row(data.knowledge, data.lessons.get(r)));
                    truths.add(data.truth(data.lessons.get(r)));
                }
            }
            int causes = data.knowledge.causes().size();
            Function<int[], double[]> learnt =
                    peer.learner().apply(new Peers.Table(Peers.widths(data.knowledge), causes, rows, truths));
            for (int r = 0; r < fold.length; r++) {
                if (fold[r] == f) {
                    Lesson lesson = data.lessons.get(r);
                    scores.add(learnt.apply(Peers.row(data.knowledge, lesson)), data.truth(lesson));
                }
            }
        }
        return scores.means();
    }

    static double[] crossValidate(OpenData data, int[] fold) {
        Scores scores = new Scores();
        for (int f = 0; f < FOLDS; f++) {
            RankingModel model = data.trained(fold, f);
            for (int r = 0; r < fold.length; r++) {
                if (fold[r] == f) {
                    Lesson lesson = data.lessons.get(r);
                    scores.add(model.probabilities(RankingQuery.of(lesson.findings())), data.truth(lesson));
                }
            }
        }
        return scores.means();
    }
}
