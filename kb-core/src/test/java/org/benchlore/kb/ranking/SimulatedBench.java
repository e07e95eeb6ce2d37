package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;

/**
 * A bench that never was: a pack with opinions, a truth that differs from them by log-normal factors, and cases drawn from
 * that truth. Findings of one cause travel together in groups of three (a Gaussian copula).
 */
final class SimulatedBench {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double LOOKED_AT = 0.6;
    private static final int GROUP = 3;
    private static final int LINKS = 5;

    final Knowledge knowledge;
    /** True shares of the causes, the unlisted one last. */
    final double[] shares;
    /** True [cause][symptom][state], the unlisted cause last. */
    final double[][][] states;

    private final double correlation;

    /**
     * A bench.
     *
     * @param sigma standard deviation of the natural log of the factor by which each opinion is off
     * @param correlation of two findings in one group, 0 to 1
     */
    SimulatedBench(long seed, int causes, int symptoms, double sigma, double correlation) {
        Random random = new Random(seed);
        this.correlation = correlation;
        double[][] backgrounds = new double[symptoms][];
        for (int s = 0; s < symptoms; s++) {
            backgrounds[s] = abnormal(random, 2 + random.nextInt(2), 0.03 + 0.17 * random.nextDouble());
        }
        double[] frequencies = new double[causes];
        double sum = 0;
        for (int c = 0; c < causes; c++) {
            frequencies[c] = Math.exp(random.nextGaussian());
            sum += frequencies[c];
        }
        double[][][] links = new double[causes][symptoms][];
        for (int c = 0; c < causes; c++) {
            frequencies[c] *= 900 / sum;
            for (int k = 0; k < LINKS; k++) {
                int s = random.nextInt(symptoms);
                links[c][s] = abnormal(random, backgrounds[s].length, 0.3 + 0.65 * random.nextDouble());
            }
        }
        knowledge = Worlds.knowledge(backgrounds, frequencies, links, "if-tested");
        shares = new double[causes + 1];
        states = new double[causes + 1][symptoms][];
        double[][] trueBackgrounds = new double[symptoms][];
        for (int s = 0; s < symptoms; s++) {
            trueBackgrounds[s] = off(random, backgrounds[s], sigma);
        }
        double[] listed = off(random, frequencies, sigma);
        double unlisted = RankingSettings.DEFAULT.unlistedShare();
        for (int c = 0; c <= causes; c++) {
            shares[c] = c == causes ? unlisted : (1 - unlisted) * listed[c];
            for (int s = 0; s < symptoms; s++) {
                double[] link = c == causes ? null : links[c][s];
                states[c][s] = c == causes
                        ? Catalogue.spread(trueBackgrounds[s], RankingSettings.DEFAULT.unlistedSpreadKnown())
                        : link == null ? trueBackgrounds[s] : off(random, link, sigma);
            }
        }
    }

    private static double[] abnormal(Random random, int states, double share) {
        double[] p = Worlds.shares(random, states);
        double rest = 1 - p[0];
        for (int x = 1; x < states; x++) {
            p[x] *= share / rest;
        }
        p[0] = 1 - share;
        return p;
    }

    /** Each share off by a log-normal factor, then scaled to sum to 1. */
    private static double[] off(Random random, double[] p, double sigma) {
        double[] q = new double[p.length];
        double sum = 0;
        for (int x = 0; x < p.length; x++) {
            q[x] = p[x] * Math.exp(sigma * random.nextGaussian());
            sum += q[x];
        }
        for (int x = 0; x < p.length; x++) {
            q[x] /= sum;
        }
        return q;
    }

    /** The cause of one more unit; its number, the unlisted one last. */
    int drawCause(Random random) {
        double u = random.nextDouble();
        int c = 0;
        while (c < shares.length - 1 && u >= shares[c]) {
            u -= shares[c++];
        }
        return c;
    }

    List<Finding> drawFindings(Random random, int cause) {
        List<Finding> findings = new ArrayList<>();
        double shared = 0;
        for (int s = 0; s < states[cause].length; s++) {
            if (s % GROUP == 0) {
                shared = random.nextGaussian();
            }
            double z = Math.sqrt(correlation) * shared + Math.sqrt(1 - correlation) * random.nextGaussian();
            if (random.nextDouble() < LOOKED_AT) {
                double u = NORMAL.cumulativeProbability(z);
                int x = 0;
                while (x < states[cause][s].length - 1 && u >= states[cause][s][x]) {
                    u -= states[cause][s][x++];
                }
                findings.add(Finding.of("f" + s, "s" + x));
            }
        }
        return findings;
    }

    /** The posterior by the true numbers, were the findings independent given the cause; in order of cause id. */
    double[] posterior(List<Finding> findings) {
        double[] score = new double[shares.length];
        List<String> ids = knowledge.causes().stream().map(c -> c.id()).toList();
        for (int k = 0; k < score.length; k++) {
            int c = k == ids.size() ? k : Integer.parseInt(ids.get(k).substring(1));
            score[k] = Math.log(shares[c]);
            for (Finding f : findings) {
                score[k] += Math.log(states[c][Integer.parseInt(f.symptomId().substring(1))][
                        Integer.parseInt(f.state().substring(1))]);
            }
        }
        return Scores.normalise(score);
    }

    Lesson draw(Random random) {
        int c = drawCause(random);
        return Lesson.of(DeviceScope.ANY, id(c), drawFindings(random, c));
    }

    List<Lesson> draw(Random random, int n) {
        List<Lesson> lessons = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            lessons.add(draw(random));
        }
        return lessons;
    }

    private String id(int c) {
        return c == shares.length - 1 ? RankingModel.UNLISTED : "c" + c;
    }

    /** Number of a lesson's cause in the order of {@link RankingModel#probabilities}: by id, the unlisted one last. */
    int truth(Lesson lesson) {
        String id = lesson.weights().firstKey();
        if (id.equals(RankingModel.UNLISTED)) {
            return shares.length - 1;
        }
        return knowledge.causes().stream().map(c -> c.id()).toList().indexOf(id);
    }

    /** The lessons that the product would fit dependence on. */
    static List<Lesson> toFit(List<Lesson> lessons) {
        return lessons.size() < 32
                ? List.of()
                : lessons.subList(0, Integer.highestOneBit(Math.min(2048, lessons.size())));
    }
}
