package org.benchlore.kb.planning;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Bounded lookahead over tests and repairs. At the horizon the greedy repair order stands in for what follows, so the value
 * is never below the optimum, and with a horizon of as many steps as there are actions it is the optimum.
 *
 * <p>The general problem is NP-hard; a lookahead of one test is the usual cure (Heckerman, Breese and Rommelse, CACM 38(3),
 * 1995). Ours looks further, over the few actions that look best at one step.
 */
final class Lookahead {
    /** Improvements below this are rounding, and the simpler action stands. */
    private static final double NO_GAIN = 1e-9;
    /** A reading with less weight than this is not followed further. */
    private static final double RARE = 1e-4;

    private final Trouble trouble;
    private final int depth;
    private final int width;

    /** What to do. */
    enum Kind {
        /** Nothing that is worth its minutes is left. */
        STOP,
        REPAIR,
        TEST
    }

    /**
     * The choice at a state.
     *
     * @param number of the repair or probe
     * @param cost expected minutes from here times the weight
     */
    record Choice(Kind kind, int number, double cost) {}

    /**
     * A lookahead.
     *
     * @param depth steps before the greedy order takes over, from 1
     * @param width actions of each kind considered per step, the best at one step
     */
    Lookahead(Trouble trouble, int depth, int width) {
        this.trouble = trouble;
        this.depth = depth;
        this.width = width;
    }

    /** With a horizon beyond every action: the optimum, for a handful of actions. */
    static Lookahead exact(Trouble trouble) {
        return new Lookahead(trouble, trouble.probes.size() + trouble.repairs().size(), Integer.MAX_VALUE);
    }

    /** Cost of doing a probe and then repairing greedily. */
    double oneStep(int probe, double[] w, long repaired) {
        Trouble.Probe p = trouble.probes.get(probe);
        double cost = (p.minutes + trouble.openingOf(p, repaired)) * Trouble.sum(w);
        long done = Trouble.afterProbe(p, repaired);
        for (double[] reads : p.reads) {
            cost += trouble.greedyCost(Trouble.afterRead(reads, w), done);
        }
        return cost;
    }

    /** The best action at a state; bit masks say what was done. */
    Choice choose(double[] w, long repaired, long probed) {
        Trouble.Order now = trouble.greedyOrder(w, repaired);
        Choice best = now.repairs().isEmpty()
                ? new Choice(Kind.STOP, -1, now.cost())
                : new Choice(Kind.REPAIR, now.repairs().get(0), now.cost());
        int[] probes = promisingProbes(w, repaired, probed);
        int[] repairs = promisingRepairs(w, repaired);
        double margin = NO_GAIN * (1 + now.cost());
        for (int r : repairs) {
            double cost = repairCost(r, w, repaired, probed, depth, probes, best.cost() - margin);
            if (cost < best.cost() - margin) {
                best = new Choice(Kind.REPAIR, r, cost);
            }
        }
        for (int p : probes) {
            double cost = probeCost(p, w, repaired, probed, depth, probes, best.cost() - margin);
            if (cost < best.cost() - margin) {
                best = new Choice(Kind.TEST, p, cost);
            }
        }
        return best;
    }

    private int[] promisingProbes(double[] w, long repaired, long probed) {
        IntStream all = IntStream.range(0, trouble.probes.size()).filter(p -> (probed >> p & 1) == 0);
        if (width >= trouble.probes.size()) {
            return all.toArray();
        }
        record Scored(int probe, double cost) {}
        return all.mapToObj(p -> new Scored(p, oneStep(p, w, repaired)))
                .sorted(Comparator.comparingDouble(Scored::cost).thenComparing(Scored::probe))
                .limit(width)
                .mapToInt(Scored::probe)
                .toArray();
    }

    private int[] promisingRepairs(double[] w, long repaired) {
        record Scored(int repair, double ratio) {}
        List<Trouble.Repair> all = trouble.repairs();
        return IntStream.range(0, all.size())
                .filter(r -> (repaired >> r & 1) == 0)
                .mapToObj(r -> new Scored(r, trouble.cures(r, w) / all.get(r).minutes()))
                .filter(s -> s.ratio() > Trouble.NO_CHANCE)
                .sorted(Comparator.comparingDouble(Scored::ratio).reversed().thenComparing(Scored::repair))
                .limit(width)
                .mapToInt(Scored::repair)
                .toArray();
    }

    private double value(double[] w, long repaired, long probed, int steps, int[] probes) {
        double best = trouble.greedyCost(w, repaired);
        boolean rare = width < Integer.MAX_VALUE && Trouble.sum(w) < RARE * Trouble.sum(trouble.weights);
        if (steps == 0 || rare) {
            return best;
        }
        for (int r : promisingRepairs(w, repaired)) {
            best = Math.min(best, repairCost(r, w, repaired, probed, steps, probes, best));
        }
        for (int p : probes) {
            if ((probed >> p & 1) == 0) {
                best = Math.min(best, probeCost(p, w, repaired, probed, steps, probes, best));
            }
        }
        return best;
    }

    private double repairCost(int r, double[] w, long repaired, long probed, int steps, int[] probes, double enough) {
        Trouble.Repair repair = trouble.repairs().get(r);
        double cost = (repair.minutes() + trouble.openingOf(repair, repaired)) * Trouble.sum(w);
        return cost >= enough
                ? cost
                : cost + value(trouble.afterFailed(r, w), trouble.afterRepair(r, repaired), probed, steps - 1, probes);
    }

    private double probeCost(int p, double[] w, long repaired, long probed, int steps, int[] probes, double enough) {
        Trouble.Probe probe = trouble.probes.get(p);
        double cost = (probe.minutes + trouble.openingOf(probe, repaired)) * Trouble.sum(w);
        long done = Trouble.afterProbe(probe, repaired);
        for (double[] reads : probe.reads) {
            if (cost >= enough) {
                return cost;
            }
            cost += value(Trouble.afterRead(reads, w), done, probed | probe.settles, steps - 1, probes);
        }
        return cost;
    }
}
