package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * One fault in numbers: how likely each cause is, the repairs that may cure it, the tests that may tell, and what it costs
 * to end without a cure. Immutable; weights are passed along as they shrink, so that a state is the weights and what was
 * done.
 *
 * <p>The expected cost of repair of an order is the sum of each repair's minutes times the chance that it is reached. With
 * one fault, fixed costs, cures seen at once, no shared opening, and each cause cured by one repair alone, it is least when
 * chance of cure over minutes falls along the order: swapping neighbours a, b changes it by p_b·c_a − p_a·c_b (the p/c
 * rule; Kadane and Simon, Annals of Statistics 5, 1977; Heckerman, Breese and Rommelse, CACM 38(3), 1995). Otherwise the
 * same greedy order, its chances brought up to date after each failed repair, is an upper bound.
 *
 * <p>Opening the unit is paid once, by the first test or repair that needs it. While it is closed, the repairs inside are
 * weighed as one block with the cover: the best chance over minutes of the cover and the first few of them together. For
 * repairs alone, one cause each, that is Horn's rule for jobs behind a common predecessor (W. A. Horn, SIAM Journal on
 * Applied Mathematics 23, 1972, from memory).
 */
final class Trouble {
    /** A chance of cure below this is none. */
    static final double NO_CHANCE = 1e-12;
    /** Among the bits of what was repaired: the unit has been opened. Repairs are fewer. */
    static final long OPEN = 1L << 62;

    /**
     * A repair.
     *
     * @param opens whether the unit has to be opened for it
     * @param causes the causes it can cure, by number
     * @param works beside them the chance that it does
     */
    record Repair(String id, double minutes, boolean opens, List<Integer> causes, List<Double> works) {}

    /** A test: {@code reads[reading][cause]} is the chance of the reading given the cause. */
    static final class Probe {
        final String id;
        final double minutes;
        final boolean opens;
        final double[][] reads;
        /** Bits of the probes that are not to follow it: itself, and those that look at a symptom it settles. */
        final long settles;

        Probe(String id, double minutes, boolean opens, double[][] reads, long settles) {
            this.id = id;
            this.minutes = minutes;
            this.opens = opens;
            this.reads = reads;
            this.settles = settles;
        }
    }

    private static final int[] NONE = {};

    final double[] weights;
    final List<Probe> probes;
    final double unsolved;
    private final double opening;
    private final List<Repair> repairs;
    private final double[] minutes;
    private final boolean[] opens;
    private final int[][] causes;
    private final double[][] works;
    private final int[][] repairsOf;

    /**
     * A problem.
     *
     * @param weights probability of each cause; causes that no repair cures count as the rest
     * @param unsolved minutes that ending without a cure is worth
     * @param opening minutes to open the unit, 0 if it lies open
     */
    Trouble(double[] weights, List<Repair> repairs, List<Probe> probes, double unsolved, double opening) {
        this.weights = weights;
        this.repairs = List.copyOf(repairs);
        this.probes = List.copyOf(probes);
        this.unsolved = unsolved;
        this.opening = opening;
        int n = repairs.size();
        minutes = repairs.stream().mapToDouble(Repair::minutes).toArray();
        opens = new boolean[n];
        causes = new int[n][];
        works = new double[n][];
        List<List<Integer>> of = new ArrayList<>();
        for (int c = 0; c < weights.length; c++) {
            of.add(new ArrayList<>());
        }
        for (int r = 0; r < n; r++) {
            opens[r] = repairs.get(r).opens();
            causes[r] = repairs.get(r).causes().stream().mapToInt(i -> i).toArray();
            works[r] = repairs.get(r).works().stream().mapToDouble(x -> x).toArray();
            for (int c : causes[r]) {
                of.get(c).add(r);
            }
        }
        repairsOf = of.stream().map(l -> l.stream().mapToInt(i -> i).toArray()).toArray(int[][]::new);
    }

    List<Repair> repairs() {
        return repairs;
    }

    static double sum(double[] weights) {
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        return sum;
    }

    /**
     * Whether p/c is the best order: each cause is cured by at most one repair, each repair cures one cause, and no two of
     * them share the opening.
     */
    boolean exclusive() {
        return Arrays.stream(repairsOf).allMatch(r -> r.length <= 1)
                && Arrays.stream(causes).allMatch(c -> c.length <= 1)
                && (opening == 0 || repairs.stream().filter(Repair::opens).count() <= 1);
    }

    /** Minutes that opening the unit adds to a repair. */
    double openingOf(Repair repair, long done) {
        return openingFor(repair.opens(), done);
    }

    /** Minutes that opening the unit adds to a test. */
    double openingOf(Probe probe, long done) {
        return openingFor(probe.opens, done);
    }

    private double openingFor(boolean opens, long done) {
        return opens && (done & OPEN) == 0 ? opening : 0;
    }

    /** What was done, after a repair more. */
    long afterRepair(int repair, long done) {
        return done | 1L << repair | (repairs.get(repair).opens() ? OPEN : 0);
    }

    /** What was done, after a test more. */
    static long afterProbe(Probe probe, long done) {
        return probe.opens ? done | OPEN : done;
    }

    /** Chance that a repair cures, times the weight in all. */
    double cures(int repair, double[] w) {
        double p = 0;
        for (int i = 0; i < causes[repair].length; i++) {
            p += w[causes[repair][i]] * works[repair][i];
        }
        return p;
    }

    /** Weights after a repair that did not cure. */
    double[] afterFailed(int repair, double[] w) {
        double[] left = w.clone();
        for (int i = 0; i < causes[repair].length; i++) {
            left[causes[repair][i]] *= 1 - works[repair][i];
        }
        return left;
    }

    /** Weights after a reading, scaled by its chance. */
    static double[] afterRead(double[] reads, double[] w) {
        double[] left = new double[w.length];
        for (int c = 0; c < w.length; c++) {
            left[c] = w[c] * reads[c];
        }
        return left;
    }

    /**
     * An order of repairs, cut where it is best to stop.
     *
     * @param cost what it costs times the weight in all
     */
    record Order(double cost, List<Integer> repairs) {}

    /** Cost of repairing by chance over minutes, stopping where going on costs more than an unsolved fault. */
    double greedyCost(double[] w, long done) {
        return greedy(w, done, null);
    }

    /** As {@link #greedyCost}, with the order. */
    Order greedyOrder(double[] w, long done) {
        List<Integer> order = new ArrayList<>();
        double cost = greedy(w, done, order);
        return new Order(cost, List.copyOf(order));
    }

    private double greedy(double[] w, long done, @Nullable List<Integer> order) {
        int n = minutes.length;
        double[] left = w.clone();
        double[] chance = new double[n];
        double remaining = sum(w);
        double open = 0;
        for (int r = 0; r < n; r++) {
            if ((done >> r & 1) == 0) {
                chance[r] = cures(r, left);
                open += chance[r];
            }
        }
        boolean closed = opening > 0 && (done & OPEN) == 0;
        int[] inside = closed ? inside(chance) : NONE;
        double spent = 0;
        double best = remaining * unsolved;
        int keep = 0;
        while (true) {
            int next = -1;
            double ratio = 0;
            for (int r = 0; r < n; r++) {
                if (chance[r] > ratio * minutes[r] && !(closed && opens[r])) {
                    ratio = chance[r] / minutes[r];
                    next = r;
                }
            }
            if (closed) {
                double block = block(inside, chance);
                if (block > ratio) {
                    ratio = block;
                    next = first(inside, chance);
                }
            }
            if (next < 0 || chance[next] < NO_CHANCE || ratio * unsolved < remaining - open) {
                break;
            }
            if (closed && opens[next]) {
                spent += opening * remaining;
                closed = false;
            }
            spent += minutes[next] * remaining;
            for (int i = 0; i < causes[next].length; i++) {
                int c = causes[next][i];
                double cured = left[c] * works[next][i];
                left[c] -= cured;
                remaining -= cured;
                for (int r : repairsOf[c]) {
                    if (chance[r] > 0 && r != next) {
                        double before = chance[r];
                        chance[r] = Math.max(0, before - cured * workOn(r, c));
                        open += chance[r] - before;
                    }
                }
            }
            open -= chance[next];
            chance[next] = 0;
            if (order != null) {
                order.add(next);
            }
            double cost = spent + Math.max(0, remaining) * unsolved;
            if (cost < best) {
                best = cost;
                keep = order == null ? 0 : order.size();
            }
        }
        if (order != null) {
            order.subList(keep, order.size()).clear();
        }
        return best;
    }

    /** The repairs behind the cover that are left, by chance over minutes. */
    private int[] inside(double[] chance) {
        return IntStream.range(0, chance.length)
                .filter(r -> opens[r] && chance[r] > 0)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer r) -> -chance[r] / minutes[r]))
                .mapToInt(r -> r)
                .toArray();
    }

    /** The best chance over minutes of the cover and the first few repairs behind it. */
    private double block(int[] inside, double[] chance) {
        double best = 0;
        double cures = 0;
        double takes = opening;
        for (int r : inside) {
            cures += chance[r];
            takes += minutes[r];
            best = Math.max(best, cures / takes);
        }
        return best;
    }

    private static int first(int[] inside, double[] chance) {
        for (int r : inside) {
            if (chance[r] > 0) {
                return r;
            }
        }
        return -1;
    }

    private double workOn(int repair, int cause) {
        for (int i = 0; i < causes[repair].length; i++) {
            if (causes[repair][i] == cause) {
                return works[repair][i];
            }
        }
        return 0;
    }

    /**
     * Cost of a given order up to where giving up is cheapest, times the weight in all; what is left then counts as unsolved.
     *
     * @param done what was done before
     */
    double costOf(List<Integer> order, double[] w, long done) {
        double[] left = w;
        long by = done;
        double spent = 0;
        double best = sum(w) * unsolved;
        for (int r : order) {
            spent += (minutes[r] + openingOf(repairs.get(r), by)) * sum(left);
            by = afterRepair(r, by);
            left = afterFailed(r, left);
            best = Math.min(best, spent + sum(left) * unsolved);
        }
        return best;
    }
}
