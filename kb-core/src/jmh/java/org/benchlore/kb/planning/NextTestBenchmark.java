package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
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

/** The next test beside one ranking call: {@code kb-core/measure speed NextTestBenchmark}. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 8, time = 2)
@Measurement(iterations = 4, time = 2)
public class NextTestBenchmark {
    private static final int KNOWN = 6;

    @Param({"250", "500"})
    int causes;

    @Param({"150", "300"})
    int tests;

    private RankingModel model;
    private TestPlanner planner;
    private RankingQuery query;

    @Setup
    public void makeBench() {
        Knowledge knowledge = PackReader.read(List.of(new PackSource("bench.yaml", pack(new Random(1)))));
        model = RankingModel.of(knowledge, RankingSettings.DEFAULT);
        planner = new TestPlanner(knowledge, model);
        List<Finding> seen = new ArrayList<>();
        for (int s = 0; s < KNOWN; s++) {
            seen.add(Finding.of("f" + s, "s1"));
        }
        query = RankingQuery.of(seen);
    }

    /** One symptom of two to five states per test, one fix per cause, one opinion in eight stated; tables are dense all the same. */
    private String pack(Random random) {
        StringBuilder yaml = new StringBuilder("pack: bench\nversion: 1.0.0\nlicence: Apache-2.0\ntitle: Bench\n"
                + "about: An invented bench.\nscope: any\nfrom: memory\nsymptoms:\n");
        int[] states = new int[tests + KNOWN];
        for (int s = 0; s < states.length; s++) {
            states[s] = 2 + s % 4;
            yaml.append(String.format(
                    Locale.ROOT,
                    "  - id: f%d%n    name: f%d%n    about: Invented.%n    reported: if-tested%n    called: [thing %d]%n"
                            + "    states:%n",
                    s,
                    s,
                    s));
            for (int x = 0; x < states[s]; x++) {
                yaml.append(String.format(
                        Locale.ROOT,
                        "      - {id: s%d, name: s%d%s, usual: %.17f}%n",
                        x,
                        x,
                        x == 0 ? ", normal: true" : "",
                        1.0 / states[s]));
            }
        }
        yaml.append("causes:\n");
        for (int c = 0; c < causes; c++) {
            yaml.append(String.format(
                    Locale.ROOT,
                    "  - id: c%d%n    name: c%d%n    kind: fault%n    about: Invented.%n    per-thousand: %.6f%n"
                            + "    fixed-by: [{fix: x%d, works: 0.8}]%n    shows:%n",
                    c,
                    c,
                    0.1 + 900.0 / causes * random.nextDouble(),
                    c));
            for (int s = 0; s < states.length; s++) {
                if (random.nextInt(8) == 0) {
                    yaml.append("      - {symptom: f").append(s).append(", states: {");
                    double left = 0.95;
                    for (int x = 0; x < states[s] - 1; x++) {
                        double p = 0.02 + (left - 0.1) * random.nextDouble() / (x + 1);
                        left = Math.max(0.12, left - p);
                        yaml.append(String.format(Locale.ROOT, "%ss%d: %.6f", x == 0 ? "" : ", ", x, p / 2));
                    }
                    yaml.append("}}\n");
                }
            }
        }
        yaml.append("tests:\n");
        for (int t = 0; t < tests; t++) {
            yaml.append(String.format(
                    Locale.ROOT,
                    "  - {id: t%d, name: t%d, minutes: %d, tools: [], risk: none, misses: 0.05, false-alarms: 0.05,%n"
                            + "     setup: None., steps: [Look.], expect: s0, readings: [{symptom: f%d, state: s1, means: x}]}%n",
                    t,
                    t,
                    3 + random.nextInt(20),
                    t + KNOWN));
        }
        yaml.append("fixes:\n");
        for (int c = 0; c < causes; c++) {
            yaml.append(String.format(
                    Locale.ROOT,
                    "  - {id: x%d, name: x%d, minutes: %d, risk: none, difficulty: easy, makes-worse: 0.01, tools: [],%n"
                            + "     steps: [Do.], verify: [Look.]}%n",
                    c,
                    c,
                    5 + random.nextInt(60)));
        }
        return yaml.toString();
    }

    @Benchmark
    public NextStep next() {
        return planner.next(query, BenchConditions.DEFAULT);
    }

    @Benchmark
    public Ranking rank() {
        return model.rank(query);
    }
}
