package org.benchlore.kb.ranking;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Ten-fold figures of the ranking on open datasets with given folds: {@code kb-core/measure ranking}. With
 * {@code --data DIR --folds DIR} it runs on every {@code NAME.csv} with {@code NAME.seedN.txt}; {@code --delete SHARE}
 * removes that share of the findings from all cases first; {@code --json} prints one line per set.
 */
final class RankingMeasure {
    private static final int FOLDS = 10;

    private RankingMeasure() {}

    public static void main(String[] args) throws IOException {
        Path data = Path.of("src/test/resources/open-data");
        Path folds = data.resolve("folds");
        boolean json = false;
        double delete = 0;
        for (int i = 0; i < args.length; i++) {
            switch (args[i]) {
                case "--json" -> json = true;
                case "--data" -> data = Path.of(args[++i]);
                case "--folds" -> folds = Path.of(args[++i]);
                case "--delete" -> delete = Double.parseDouble(args[++i]);
                default -> throw new IllegalArgumentException("unknown option " + args[i]);
            }
        }
        List<Path> sets;
        try (Stream<Path> files = Files.list(data)) {
            sets = files.filter(f -> f.toString().endsWith(".csv")).sorted().toList();
        }
        if (!json) {
            System.out.printf("%-14s %7s %7s %8s %7s %7s%n", "set", "top-1", "top-3", "log-loss", "Brier", "ECE");
        }
        for (Path set : sets) {
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
        double[] m = scores.runMeans();
        String format = json
                ? "{\"set\":\"%s\",\"top1\":%.4f,\"top3\":%.4f,\"logLoss\":%.4f,\"brier\":%.4f,\"ece\":%.4f,\"seeds\":%d}%n"
                : "%-14s %7.4f %7.4f %8.4f %7.4f %7.4f%n";
        out.printf(Locale.ROOT, format, name, m[0], m[1], m[2], m[3], m[4], seeds);
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
