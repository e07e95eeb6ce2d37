package org.benchlore.kb.ranking;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.benchlore.kb.reading.Finding;

/** How often the 90 % interval holds the posterior that the true numbers give, on simulated benches. */
final class IntervalCoverage {
    private static final int QUERIES = 40;
    /** Causes below this are not looked at: an interval around next to nothing is easy. */
    private static final double LEAST = 0.02;

    private IntervalCoverage() {}

    /** Shares of intervals that hold the truth: of the first cause, and of every cause above {@value #LEAST}. */
    static double[] measure(int seeds, int cases, double correlation, boolean fit) {
        double[] held = new double[2];
        double[] all = new double[2];
        for (int seed = 1; seed <= seeds; seed++) {
            SimulatedBench bench = new SimulatedBench(seed, 20, 24, 0.7, correlation);
            Random random = new Random(500 + seed);
            List<Lesson> lessons = bench.draw(random, cases);
            RankingModel model =
                    RankingModel.of(bench.knowledge, RankingSettings.DEFAULT).learn(lessons);
            if (fit) {
                model = model.fit(SimulatedBench.toFit(lessons));
            }
            for (int q = 0; q < QUERIES; q++) {
                List<Finding> findings = bench.drawFindings(random, bench.drawCause(random));
                List<Finding> few = findings.subList(0, Math.min(findings.size(), 3 + random.nextInt(6)));
                double[] truth = bench.posterior(few);
                List<Ranking.RankedCause> ranked = new ArrayList<>();
                Ranking ranking = model.rank(RankingQuery.of(few));
                ranked.addAll(ranking.causes());
                ranked.add(ranking.unlisted());
                for (int k = 0; k < ranked.size(); k++) {
                    Ranking.RankedCause c = ranked.get(k);
                    if (c.probability() < LEAST) {
                        continue;
                    }
                    double p = truth[model.number(c.id())];
                    boolean in = p >= c.interval().low() && p <= c.interval().high();
                    all[1]++;
                    held[1] += in ? 1 : 0;
                    if (k == 0) {
                        all[0]++;
                        held[0] += in ? 1 : 0;
                    }
                }
            }
        }
        return new double[] {held[0] / all[0], held[1] / all[1]};
    }

    static void print(int seeds, PrintStream out) {
        out.printf(Locale.ROOT, "%n90 %% intervals on %d simulated benches: share that hold the truth%n", seeds);
        out.printf("%6s %12s %12s %18s%n", "cases", "first cause", "all >= 2 %", "first, once fitted");
        for (int cases : new int[] {0, 5, 50, 500}) {
            double[] plain = measure(seeds, cases, 0, false);
            double[] fitted = measure(seeds, cases, 0, true);
            out.printf(Locale.ROOT, "%6d %12.3f %12.3f %18.3f%n", cases, plain[0], plain[1], fitted[0]);
        }
    }
}
