package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;

/**
 * A world whose true numbers are the packs', each off by a log-normal factor, and in which the findings of one unit are
 * correlated: one hidden severity per unit shifts all its symptoms towards normal or abnormal (a Gaussian copula), with every
 * P(state | cause) kept as it is.
 */
final class Simulation {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    final Knowledge knowledge;
    final RankingModel model;
    private final List<Cause> causes;
    private final List<Symptom> symptoms;
    private final double[] prior;
    /** [symptom][cause][state]. */
    private final double[][][] given;

    private final Map<String, Double> works = new HashMap<>();
    private final Map<String, Double> minutes = new HashMap<>();
    private final Map<String, TestErrors> errors = new HashMap<>();
    private final double correlation;
    private final double opening;

    Simulation(Knowledge knowledge, RankingModel model, Random random, double sigma, double correlation) {
        this.knowledge = knowledge;
        this.model = model;
        this.correlation = correlation;
        causes = List.copyOf(knowledge.causes());
        symptoms = List.copyOf(knowledge.symptoms());
        double[] p = model.probabilities(RankingQuery.of(List.of()));
        prior = new double[causes.size()];
        for (int c = 0; c < prior.length; c++) {
            prior[c] = p[c] * factor(random, sigma);
        }
        normalise(prior);
        given = new double[symptoms.size()][causes.size()][];
        for (int s = 0; s < symptoms.size(); s++) {
            var table = model.states(symptoms.get(s).id(), DeviceScope.ANY);
            for (int c = 0; c < causes.size(); c++) {
                double[] states = new double[table.states()];
                for (int x = 0; x < states.length; x++) {
                    states[x] = table.given(x, c) * factor(random, sigma);
                }
                given[s][c] = normalise(states);
            }
        }
        for (Cause cause : causes) {
            for (Remedy remedy : cause.fixedBy()) {
                double odds = remedy.works() / (1 - remedy.works()) * factor(random, sigma);
                works.put(cause.id() + " " + remedy.fixId(), odds / (1 + odds));
            }
        }
        opening = knowledge.openingMinutes(DeviceScope.ANY) * factor(random, sigma);
        for (Fix fix : knowledge.fixes()) {
            minutes.put(fix.id(), fix.minutes() * factor(random, sigma));
        }
        for (BenchTest test : knowledge.tests()) {
            minutes.put(test.id(), test.minutes() * factor(random, sigma));
            errors.put(
                    test.id(),
                    new TestErrors(
                            Math.min(0.9, test.misses() * factor(random, sigma)),
                            Math.min(0.9, test.falseAlarms() * factor(random, sigma))));
        }
    }

    private static double factor(Random random, double sigma) {
        return Math.exp(sigma * random.nextGaussian());
    }

    private static double[] normalise(double[] p) {
        double sum = Trouble.sum(p);
        for (int i = 0; i < p.length; i++) {
            p[i] /= sum;
        }
        return p;
    }

    double minutes(String id) {
        return minutes.getOrDefault(id, 0.0);
    }

    /** A unit with one fault that at least one of its fixes cures, and a complaint of at least one finding. */
    Unit unit(Random random) {
        while (true) {
            int cause = draw(random.nextDouble(), prior);
            double severity = random.nextGaussian();
            int[] states = new int[symptoms.size()];
            TreeMap<String, Finding> complaint = new TreeMap<>();
            for (int s = 0; s < states.length; s++) {
                double z = Math.sqrt(correlation) * severity + Math.sqrt(1 - correlation) * random.nextGaussian();
                states[s] = draw(NORMAL.cumulativeProbability(z), normalFirst(s, given[s][cause]));
                states[s] = fromNormalFirst(s, states[s]);
                Symptom symptom = symptoms.get(s);
                State state = symptom.states().get(states[s]);
                double mention = switch (symptom.reported()) {
                    case ALWAYS -> 0.6;
                    case USUALLY -> 0.2;
                    case IF_TESTED -> 0;
                };
                if (random.nextDouble() < mention * (state.normal() ? 0.2 : 1)) {
                    complaint.put(symptom.id(), Finding.of(symptom.id(), state.id()));
                }
            }
            Set<String> cures = new HashSet<>();
            for (Remedy remedy : causes.get(cause).fixedBy()) {
                if (random.nextDouble() < works.getOrDefault(causes.get(cause).id() + " " + remedy.fixId(), 0.0)) {
                    cures.add(remedy.fixId());
                }
            }
            if (!complaint.isEmpty() && !cures.isEmpty()) {
                return new Unit(causes.get(cause), states, complaint, cures, random.nextLong());
            }
        }
    }

    private int normal(int s) {
        return symptoms.get(s).normalIndex();
    }

    private double[] normalFirst(int s, double[] p) {
        double[] q = p.clone();
        int n = normal(s);
        System.arraycopy(p, 0, q, 1, n);
        q[0] = p[n];
        return q;
    }

    private int fromNormalFirst(int s, int x) {
        return x == 0 ? normal(s) : x <= normal(s) ? x - 1 : x;
    }

    private static int draw(double u, double[] p) {
        double left = u;
        for (int i = 0; i < p.length; i++) {
            left -= p[i];
            if (left < 0) {
                return i;
            }
        }
        return p.length - 1;
    }

    /** One unit on the bench; every policy meets the same one, its test errors included. */
    final class Unit {
        final Cause cause;
        final SortedMap<String, Finding> findings;
        final Set<String> cures;
        final List<String> failed = new ArrayList<>();
        private final int[] states;
        private final long seed;
        double minutes;
        boolean cured;
        boolean opened;

        Unit(Cause cause, int[] states, SortedMap<String, Finding> findings, Set<String> cures, long seed) {
            this.cause = cause;
            this.states = states;
            this.findings = findings;
            this.cures = cures;
            this.seed = seed;
        }

        Unit again() {
            return new Unit(cause, states, new TreeMap<>(findings), cures, seed);
        }

        RankingQuery query() {
            return new RankingQuery(List.copyOf(findings.values()), DeviceScope.ANY, true);
        }

        private void open(boolean needed) {
            if (needed && !opened) {
                minutes += opening;
                opened = true;
            }
        }

        void fix(String id) {
            open(knowledge.fix(id).orElseThrow().opens());
            minutes += minutes(id);
            cured = cures.contains(id);
            failed.add(id);
        }

        void test(BenchTest test) {
            open(test.opens());
            minutes += minutes(test.id());
            Random random = new Random(seed ^ test.id().hashCode());
            TestErrors real = errors.getOrDefault(test.id(), TestErrors.of(test));
            for (String id : test.reveals()) {
                Symptom symptom = knowledge.symptom(id).orElseThrow();
                int is = states[symptoms.indexOf(symptom)];
                double[] reads = new double[symptom.states().size()];
                for (int y = 0; y < reads.length; y++) {
                    reads[y] = real.reads(symptom, is, y);
                }
                String read =
                        symptom.states().get(draw(random.nextDouble(), reads)).id();
                findings.putIfAbsent(id, TestErrors.of(test).finding(symptom, read));
            }
        }
    }
}
