package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.StateTable;

/**
 * Orders bench tests by expected information per minute. Immutable and thread-safe.
 *
 * <p>The information of a test is the mutual information, in bits, between the cause and what the test will read (Shannon
 * 1948; Lindley, Annals of Mathematical Statistics 27, 1956), with the test's own errors in it: a miss reads normal, a false
 * alarm reads one of the abnormal states. A test that reads several symptoms is worth what they tell together, each
 * independent of the others given the cause.
 */
public final class TestPlanner {
    /** Joint readings beyond this are not enumerated: the symptoms that tell least are left out. */
    private static final int MAX_READINGS = 256;

    private final Knowledge knowledge;
    private final RankingModel model;

    /** Plans over one snapshot. */
    public TestPlanner(Knowledge knowledge, RankingModel model) {
        this.knowledge = knowledge;
        this.model = model;
    }

    /**
     * Tests that can still tell something, best first, ties by id.
     *
     * @param query what is known so far
     * @param accepted highest risk to the unit that is acceptable
     * @return empty if no test in scope and risk tells anything
     */
    public List<TestProposal> propose(RankingQuery query, Risk accepted) {
        double[] posterior = model.probabilities(query);
        Set<String> known = new HashSet<>();
        query.findings().forEach(f -> known.add(f.symptomId()));
        List<TestProposal> proposals = new ArrayList<>();
        for (BenchTest test : knowledge.tests()) {
            if (test.risk().compareTo(accepted) > 0 || !test.scope().contains(query.scope())) {
                continue;
            }
            double bits = bits(test, query, known, posterior);
            if (bits > 0) {
                proposals.add(new TestProposal(test, bits, bits / test.minutes()));
            }
        }
        proposals.sort(Comparator.comparingDouble(TestProposal::bitsPerMinute)
                .reversed()
                .thenComparing(p -> p.test().id()));
        return List.copyOf(proposals);
    }

    private double bits(BenchTest test, RankingQuery query, Set<String> known, double[] posterior) {
        List<double[][]> readings = new ArrayList<>();
        for (String symptomId : test.reveals()) {
            Symptom symptom = knowledge.symptom(symptomId).orElseThrow();
            if (!known.contains(symptomId)) {
                readings.add(readings(test, symptom, model.states(symptomId, query.scope())));
            }
        }
        readings.sort(Comparator.comparingDouble((double[][] r) -> information(r, posterior))
                .reversed());
        double[][] joint = {ones(posterior.length)};
        for (double[][] reading : readings) {
            if (joint.length * reading.length <= MAX_READINGS) {
                joint = product(joint, reading);
            }
        }
        return Math.max(0, information(joint, posterior));
    }

    private static double[] ones(int n) {
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        return ones;
    }

    /** P(reading | cause) as [reading][cause], the test's errors in it. */
    private static double[][] readings(BenchTest test, Symptom symptom, StateTable table) {
        int states = table.states();
        double[][] reads = new double[states][table.causes()];
        int normal = symptom.indexOf(symptom.normal().id());
        List<State> all = symptom.states();
        for (int c = 0; c < table.causes(); c++) {
            double alarm = table.given(normal, c) * test.falseAlarms() / (states - 1);
            reads[normal][c] = table.given(normal, c) * (1 - test.falseAlarms());
            for (int x = 0; x < all.size(); x++) {
                if (x != normal) {
                    reads[x][c] = table.given(x, c) * (1 - test.misses()) + alarm;
                    reads[normal][c] += table.given(x, c) * test.misses();
                }
            }
        }
        return reads;
    }

    private static double[][] product(double[][] a, double[][] b) {
        double[][] product = new double[a.length * b.length][a[0].length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b.length; j++) {
                for (int c = 0; c < a[i].length; c++) {
                    product[i * b.length + j][c] = a[i][c] * b[j][c];
                }
            }
        }
        return product;
    }

    /** Mutual information in bits. */
    private static double information(double[][] reads, double[] posterior) {
        double nats = 0;
        for (double[] read : reads) {
            double total = 0;
            for (int c = 0; c < posterior.length; c++) {
                total += posterior[c] * read[c];
            }
            for (int c = 0; c < posterior.length; c++) {
                if (posterior[c] > 0 && read[c] > 0) {
                    nats += posterior[c] * read[c] * Math.log(read[c] / total);
                }
            }
        }
        return nats / Math.log(2);
    }
}
