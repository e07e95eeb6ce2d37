package org.benchlore.kb.ranking;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Learning on simulated benches: packs off by log-normal factors (sigma 0.7), findings that travel together (correlation
 * 0.5), log-loss on fresh cases after n, for the packs alone, the cases alone and both.
 */
final class LearningCurve {
    private static final int[] SIZES = {0, 1, 2, 5, 10, 20, 31, 32, 50, 100, 200, 500, 1000, 2000, 5000, 10_000};
    private static final int FRESH = 1000;

    private LearningCurve() {}

    /** Mean log-loss per size: packs, cases, both. */
    static double[][] measure(int seeds, int most) {
        double[][] loss = new double[sizes(most)][3];
        for (int seed = 1; seed <= seeds; seed++) {
            SimulatedBench bench = new SimulatedBench(seed, 20, 24, 0.7, 0.5);
            Random random = new Random(1000 + seed);
            List<Lesson> fresh = bench.draw(random, FRESH);
            List<Lesson> all = bench.draw(random, most);
            RankingModel packs = RankingModel.of(bench.knowledge, RankingSettings.DEFAULT);
            RankingModel blank = RankingModel.withoutOpinions(bench.knowledge, RankingSettings.DEFAULT);
            double byPacks = loss(bench, packs, fresh);
            for (int k = 0; k < loss.length; k++) {
                List<Lesson> seen = all.subList(0, SIZES[k]);
                loss[k][0] += byPacks / seeds;
                loss[k][1] += loss(bench, learnt(blank, seen), fresh) / seeds;
                loss[k][2] += loss(bench, learnt(packs, seen), fresh) / seeds;
            }
        }
        return loss;
    }

    static void print(int seeds, int most, PrintStream out) {
        double[][] loss = measure(seeds, most);
        out.printf(
                Locale.ROOT,
                "%nLearning on %d simulated benches, log-loss%n%6s %8s %8s %8s  %s%n",
                seeds,
                "cases",
                "packs",
                "cases",
                "both",
                "both beside the better");
        for (int k = 0; k < loss.length; k++) {
            out.printf(
                    Locale.ROOT,
                    "%6d %8.4f %8.4f %8.4f  %+.1f %%%n",
                    SIZES[k],
                    loss[k][0],
                    loss[k][1],
                    loss[k][2],
                    100 * (loss[k][2] / Math.min(loss[k][0], loss[k][1]) - 1));
        }
    }

    private static int sizes(int most) {
        int n = 0;
        while (n < SIZES.length && SIZES[n] <= most) {
            n++;
        }
        return n;
    }

    private static RankingModel learnt(RankingModel model, List<Lesson> lessons) {
        return model.learn(lessons).fit(SimulatedBench.toFit(lessons));
    }

    private static double loss(SimulatedBench bench, RankingModel model, List<Lesson> fresh) {
        Scores scores = new Scores();
        for (Lesson lesson : fresh) {
            scores.add(model.probabilities(RankingQuery.of(lesson.findings())), bench.truth(lesson));
        }
        return scores.means()[2];
    }
}
