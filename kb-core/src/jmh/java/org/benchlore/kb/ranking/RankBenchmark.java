package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Ranking beside a plain loop over arrays with the same numbers and beside a junction tree: {@code kb-core/measure speed RankBenchmark}. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 8, time = 2)
@Measurement(iterations = 4, time = 2)
public class RankBenchmark {
    @Param("500")
    int causes;

    @Param("12")
    int findings;

    private RankingModel model;
    private RankingQuery query;
    private Knowledge knowledge;
    private JunctionTree tree;
    private Lesson lesson;
    private double[] logPrior;
    /** [cause][finding], as a plain loop would keep them. */
    private double[][] logGiven;

    @Setup
    public void makeWorld() {
        Random random = new Random(1);
        knowledge = Worlds.random(1, causes, findings);
        model = RankingModel.of(knowledge, RankingSettings.DEFAULT).learn(Worlds.lessons(random, knowledge, 1000));
        List<Finding> seen = new ArrayList<>();
        knowledge.symptoms().forEach(s -> seen.add(Finding.of(s.id(), "s" + random.nextInt(2))));
        query = RankingQuery.of(seen);
        tree = new JunctionTree(model, knowledge, query.findings());
        lesson = Lesson.of(DeviceScope.ANY, "c7", seen);
        logPrior = new double[causes + 1];
        logGiven = new double[causes + 1][findings];
        for (int c = 0; c <= causes; c++) {
            logPrior[c] = Math.log(random.nextDouble());
            for (int f = 0; f < findings; f++) {
                logGiven[c][f] = Math.log(random.nextDouble());
            }
        }
    }

    @Benchmark
    public double[] probabilities() {
        return model.probabilities(query);
    }

    @Benchmark
    public Ranking ranked() {
        return model.rank(query);
    }

    @Benchmark
    public RankingModel learnOne() {
        return model.learn(List.of(lesson));
    }

    /** Weka's junction tree, made before; each call enters the same evidence again. */
    @Benchmark
    public double[] peerJunctionTree() {
        return tree.posterior();
    }

    /** The same, made anew for each query. */
    @Benchmark
    public double[] peerJunctionTreeMade() {
        return new JunctionTree(model, knowledge, query.findings()).posterior();
    }

    @Benchmark
    public double[] peerPlainLoop() {
        double[] p = new double[logPrior.length];
        double largest = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < p.length; c++) {
            double sum = logPrior[c];
            for (int f = 0; f < findings; f++) {
                sum += logGiven[c][f];
            }
            p[c] = sum;
            largest = Math.max(largest, sum);
        }
        double total = 0;
        for (int c = 0; c < p.length; c++) {
            p[c] = Math.exp(p[c] - largest);
            total += p[c];
        }
        for (int c = 0; c < p.length; c++) {
            p[c] /= total;
        }
        return p;
    }
}
