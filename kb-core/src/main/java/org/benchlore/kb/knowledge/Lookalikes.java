package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.QualityReport.Lookalike;
import org.benchlore.kb.knowledge.QualityReport.Neighbour;

/**
 * Causes that have rows of their own in the D-matrix and still look alike, because the rows differ only in what is not
 * sure. If a is true, all tests together are expected to speak for it against b with
 * W(a:b) = Σ_s Σ_y P(y|a) · 10·log10 (P(y|a) / P(y|b)) decibans (I. J. Good, Probability and the Weighing of Evidence, 1950),
 * s over the symptoms that tests read, each read once by the test that errs least of those
 * that apply wherever the symptom does, y over what it can read, the findings
 * taken as independent given the cause. Two causes are alike when the lesser of W(a:b) and W(b:a) is under
 * {@link #TOLD_APART}. Unlike the groups of the D-matrix, being alike need not carry on from a to b to c.
 */
final class Lookalikes {
    /** A factor of ten. */
    static final double TOLD_APART = 10;

    private static final double[] NOTHING = {};

    private final Knowledge knowledge;
    /** The test that errs least, for each symptom that is read wherever it applies. */
    private final Map<String, BenchTest> readers = new HashMap<>();
    /** What it reads in a unit at large. */
    private final Map<String, double[]> usual = new HashMap<>();

    Lookalikes(Knowledge knowledge) {
        this.knowledge = knowledge;
        for (Symptom symptom : knowledge.symptoms()) {
            knowledge.testsRevealing(symptom.id()).stream()
                    .filter(test -> test.scope().contains(symptom.scope()))
                    .min(Comparator.comparingDouble((BenchTest test) -> test.misses() + test.falseAlarms())
                            .thenComparing(BenchTest::id))
                    .ifPresent(test -> {
                        readers.put(symptom.id(), test);
                        usual.put(symptom.id(), read(symptom, Map.of(), test));
                    });
        }
    }

    List<Lookalike> find() {
        List<Cause> causes = List.copyOf(knowledge.causes());
        List<Map<String, double[]>> readings =
                causes.stream().map(this::readings).toList();
        Map<String, List<Neighbour>> alike = new TreeMap<>();
        for (int a = 0; a < causes.size(); a++) {
            for (int b = a + 1; b < causes.size(); b++) {
                Cause first = causes.get(a);
                Cause second = causes.get(b);
                if (first.scope().contains(second.scope()) || second.scope().contains(first.scope())) {
                    double weight = weight(readings.get(a), readings.get(b));
                    if (weight < TOLD_APART) {
                        alike.computeIfAbsent(first.id(), id -> new ArrayList<>())
                                .add(new Neighbour(second.id(), weight));
                        alike.computeIfAbsent(second.id(), id -> new ArrayList<>())
                                .add(new Neighbour(first.id(), weight));
                    }
                }
            }
        }
        return alike.entrySet().stream()
                .map(entry -> new Lookalike(
                        entry.getKey(),
                        entry.getValue().stream()
                                .sorted(Comparator.comparingDouble(Neighbour::decibans)
                                        .thenComparing(Neighbour::cause))
                                .toList(),
                        knowledge.cause(entry.getKey()).map(Cause::alike).orElse("")))
                .sorted(Comparator.comparingInt((Lookalike l) -> -l.others().size())
                        .thenComparing(Lookalike::cause))
                .toList();
    }

    /** What the tests read under a cause, by symptom; only of symptoms that it speaks of. */
    private Map<String, double[]> readings(Cause cause) {
        Map<String, double[]> readings = new TreeMap<>();
        for (Link link : cause.shows()) {
            BenchTest test = readers.get(link.symptomId());
            if (test != null) {
                knowledge
                        .symptom(link.symptomId())
                        .ifPresent(symptom -> readings.put(symptom.id(), read(symptom, link.states(), test)));
            }
        }
        return readings;
    }

    /** An abnormal state reads normal with the chance of a miss, the normal one as each other state with an equal part. */
    private static double[] read(Symptom symptom, Map<String, Double> shares, BenchTest test) {
        int normal = symptom.normalIndex();
        double[] is = new double[symptom.states().size()];
        for (int i = 0; i < is.length; i++) {
            State state = symptom.states().get(i);
            is[i] = shares.getOrDefault(state.id(), state.usual());
        }
        double[] reads = new double[is.length];
        for (int i = 0; i < is.length; i++) {
            reads[i] = i == normal
                    ? is[i] * (1 - test.falseAlarms()) + (1 - is[i]) * test.misses()
                    : is[i] * (1 - test.misses()) + is[normal] * test.falseAlarms() / (is.length - 1);
        }
        return reads;
    }

    /** The lesser of both ways; no term is negative, so once both are enough the rest is not summed. */
    private double weight(Map<String, double[]> a, Map<String, double[]> b) {
        Set<String> symptoms = new LinkedHashSet<>(a.keySet());
        symptoms.addAll(b.keySet());
        double forA = 0;
        double forB = 0;
        for (String id : symptoms) {
            double[] atLarge = usual.getOrDefault(id, NOTHING);
            double[] underA = a.getOrDefault(id, atLarge);
            double[] underB = b.getOrDefault(id, atLarge);
            forA += decibans(underA, underB);
            forB += decibans(underB, underA);
            if (forA >= TOLD_APART && forB >= TOLD_APART) {
                break;
            }
        }
        return Math.min(forA, forB);
    }

    private static double decibans(double[] p, double[] q) {
        double sum = 0;
        for (int i = 0; i < p.length; i++) {
            sum += p[i] * 10 * Math.log10(p[i] / q[i]);
        }
        return sum;
    }
}
