package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Repair orders and lookahead against brute force. Rows B01 to B07: own small examples, all orders enumerated. */
class TroubleTest {
    private static final double EXACT = 1e-9;
    /** Dear enough that every repair is tried before giving up, cheap enough for nine digits. */
    private static final double NEVER = 1e3;

    private static Trouble.Repair repair(double minutes, int cause, double works) {
        return new Trouble.Repair("r" + cause, minutes, false, List.of(cause), List.of(works));
    }

    private static Trouble single(double[] p, double[] minutes, double unsolved) {
        List<Trouble.Repair> repairs = new ArrayList<>();
        for (int i = 0; i < p.length; i++) {
            repairs.add(repair(minutes[i], i, 1));
        }
        return new Trouble(p, repairs, List.of(), unsolved, 0);
    }

    private static List<List<Integer>> orders(int n) {
        List<List<Integer>> orders = new ArrayList<>();
        extend(new ArrayList<>(), n, orders);
        return orders;
    }

    private static void extend(List<Integer> order, int n, List<List<Integer>> orders) {
        if (order.size() == n) {
            orders.add(List.copyOf(order));
        }
        for (int i = 0; i < n; i++) {
            if (!order.contains(i)) {
                order.add(i);
                extend(order, n, orders);
                order.remove(order.size() - 1);
            }
        }
    }

    private static double bruteForce(Trouble trouble, boolean best) {
        return orders(trouble.repairs().size()).stream()
                        .mapToDouble(o -> trouble.costOf(o, trouble.weights, 0) * (best ? 1 : -1))
                        .min()
                        .orElseThrow()
                * (best ? 1 : -1);
    }

    /** B01: p/c rule (Kadane and Simon 1977; Kalagnanam and Henrion 1990; Heckerman, Breese and Rommelse 1995). */
    @Test
    void three_actions_in_order_of_chance_over_cost() {
        Trouble trouble = single(new double[] {.5, .3, .2}, new double[] {10, 3, 5}, NEVER);
        Trouble.Order order = trouble.greedyOrder(trouble.weights, 0);
        assertThat(order.repairs()).containsExactly(1, 0, 2);
        assertThat(order.cost()).isCloseTo(11.0, within(EXACT));
        assertThat(bruteForce(trouble, true)).isCloseTo(11.0, within(EXACT));
        assertThat(bruteForce(trouble, false)).isCloseTo(13.9, within(EXACT));
        assertThat(trouble.exclusive()).isTrue();
    }

    /** B02. */
    @Test
    void five_actions() {
        Trouble trouble = single(new double[] {.35, .25, .20, .15, .05}, new double[] {12, 2, 8, 1, 20}, NEVER);
        Trouble.Order order = trouble.greedyOrder(trouble.weights, 0);
        assertThat(order.repairs()).containsExactly(3, 1, 0, 2, 4);
        assertThat(order.cost()).isCloseTo(12.9, within(EXACT));
        assertThat(trouble.costOf(List.of(1, 3, 0, 2, 4), trouble.weights, 0)).isCloseTo(12.95, within(EXACT));
        assertThat(bruteForce(trouble, false)).isCloseTo(37.55, within(EXACT));
    }

    /** B03: observe, then repair; the repair part, 18.5, does not depend on the order. A tie of .15 leaves two best orders. */
    @Test
    void observation_and_repair_costs_with_a_tie() {
        Trouble trouble = single(new double[] {.45, .30, .15, .10}, new double[] {6, 2, 1, 4}, NEVER);
        double repairs = .45 * 20 + .30 * 15 + .15 * 30 + .10 * 5;
        assertThat(repairs).isCloseTo(18.5, within(EXACT));
        assertThat(trouble.greedyCost(trouble.weights, 0) + repairs).isCloseTo(24.9, within(EXACT));
        assertThat(trouble.costOf(List.of(1, 2, 0, 3), trouble.weights, 0) + repairs)
                .isCloseTo(24.9, within(EXACT));
        assertThat(trouble.costOf(List.of(2, 1, 0, 3), trouble.weights, 0) + repairs)
                .isCloseTo(24.9, within(EXACT));
        assertThat(bruteForce(trouble, false) + repairs).isCloseTo(28.95, within(EXACT));
    }

    /** B04: imperfect cures and a service call for 30. */
    @Test
    void imperfect_cures_then_a_service_call() {
        double[] p = {.5, .3, .2};
        List<Trouble.Repair> repairs = List.of(repair(4, 0, .6), repair(3, 1, 1), repair(5, 2, .9));
        Trouble called = new Trouble(p, repairs, List.of(), 30, 0);
        Trouble.Order order = called.greedyOrder(p, 0);
        assertThat(order.repairs()).containsExactly(1, 0, 2);
        assertThat(order.cost()).isCloseTo(14.4, within(EXACT));
        double calls = 30 * (.5 * .4 + .2 * .1); // the same in any order, since every repair is worth trying first
        assertThat(called.costOf(List.of(1, 0, 2), p, 0) - calls).isCloseTo(7.8, within(EXACT));
        assertThat(bruteForce(called, false) - calls).isCloseTo(9.84, within(EXACT));
    }

    /**
     * B05 (clusters: Ottosen and Jensen, arXiv 1203.3502; own numbers): parts behind one cover that is opened once. p/c that
     * forgets the cover pays 16.1 in (i), p/c that charges it to each part 10.58 in (ii).
     */
    @Test
    void a_shared_cover_is_weighed_with_all_that_lies_behind_it() {
        Trouble first = behindCover(new double[] {.45, .30, .25}, new double[] {6, 2, 2}, 10);
        assertThat(first.exclusive()).isFalse();
        assertThat(first.greedyOrder(first.weights, 0).repairs()).containsExactly(0, 1, 2);
        assertThat(first.greedyCost(first.weights, 0)).isCloseTo(13.1, within(EXACT));
        assertThat(first.costOf(List.of(1, 2, 0), first.weights, 0)).isCloseTo(16.1, within(EXACT));
        assertThat(bruteForce(first, true)).isCloseTo(13.1, within(EXACT));

        Trouble second = behindCover(new double[] {.30, .36, .34}, new double[] {5, 2, 2}, 5);
        assertThat(second.greedyOrder(second.weights, 0).repairs()).containsExactly(1, 2, 0);
        assertThat(second.greedyCost(second.weights, 0)).isCloseTo(9.78, within(EXACT));
        assertThat(second.costOf(List.of(0, 1, 2), second.weights, 0)).isCloseTo(10.58, within(EXACT));
        assertThat(bruteForce(second, true)).isCloseTo(9.78, within(EXACT));
        // once it lies open, the plain rule holds again
        assertThat(first.greedyOrder(first.weights, Trouble.OPEN).repairs()).containsExactly(1, 2, 0);
    }

    /** All but the first behind the cover. */
    private static Trouble behindCover(double[] p, double[] minutes, double opening) {
        List<Trouble.Repair> repairs = new ArrayList<>();
        for (int i = 0; i < p.length; i++) {
            repairs.add(new Trouble.Repair("r" + i, minutes[i], i > 0, List.of(i), List.of(1.0)));
        }
        return new Trouble(p, repairs, List.of(), NEVER, opening);
    }

    /** B06: A cures 1 and 2, B cures 2 and 3: greedy is not the best, and the lookahead finds it. */
    @Test
    void an_action_that_cures_several_causes() {
        double[] p = {.15, .35, .50};
        List<Trouble.Repair> repairs = List.of(
                new Trouble.Repair("a", 4, false, List.of(0, 1), List.of(1.0, 1.0)),
                new Trouble.Repair("b", 9, false, List.of(1, 2), List.of(1.0, 1.0)),
                new Trouble.Repair("c", 6, false, List.of(2), List.of(1.0)),
                new Trouble.Repair("d", 1, false, List.of(0), List.of(1.0)));
        Trouble trouble = new Trouble(p, repairs, List.of(), NEVER, 0);
        assertThat(trouble.exclusive()).isFalse();
        assertThat(trouble.greedyCost(p, 0)).isCloseTo(8.65, within(EXACT));
        assertThat(bruteForce(trouble, true)).isCloseTo(7.0, within(EXACT));
        Lookahead.Choice choice = new Lookahead(trouble, 2, 6).choose(p, 0, 0);
        assertThat(choice.kind()).isEqualTo(Lookahead.Kind.REPAIR);
        assertThat(choice.number()).isZero();
        assertThat(choice.cost()).isCloseTo(7.0, within(EXACT));
    }

    /** B07: saving per minute prefers the second test, net saving the first (Howard 1966). */
    @Test
    void value_of_two_tests() {
        double[] p = {.5, .3, .2};
        List<Trouble.Repair> repairs = List.of(repair(30, 0, 1), repair(20, 1, 1), repair(10, 2, 1));
        double[][] one = {{.9, .1, .1}, {.1, .9, .9}};
        double[][] two = {{.3, .8, .2}, {.7, .2, .8}};
        Trouble trouble = new Trouble(
                p,
                repairs,
                List.of(new Trouble.Probe("one", 4, false, one, 1), new Trouble.Probe("two", 2, false, two, 2)),
                NEVER,
                0);
        assertThat(trouble.greedyCost(p, 0)).isCloseTo(40.0, within(1e-6));
        Lookahead step = new Lookahead(trouble, 1, 2);
        assertThat(step.oneStep(0, p, 0)).isCloseTo(40 - 7.0, within(1e-6));
        assertThat(step.oneStep(1, p, 0)).isCloseTo(40 - 4.1, within(1e-6));
        assertThat(trouble.greedyCost(Trouble.afterRead(one[0], p), 0) / .5).isCloseTo(32.2, within(1e-6));
        assertThat(trouble.greedyCost(Trouble.afterRead(one[1], p), 0) / .5).isCloseTo(25.8, within(1e-6));
        assertThat(new Lookahead(trouble, 1, 2).choose(p, 0, 0).number()).isZero();
        assertThat(bits(one, p)).isCloseTo(.531004, within(1e-6));
        assertThat(bits(two, p)).isCloseTo(.184206, within(1e-6));
    }

    private static double bits(double[][] reads, double[] p) {
        double nats = 0;
        for (double[] read : reads) {
            double total = TestReadings.dot(read, p);
            for (int c = 0; c < p.length; c++) {
                nats += p[c] * read[c] * Math.log(read[c] / total);
            }
        }
        return nats / Math.log(2);
    }

    @Test
    void chance_over_cost_is_the_brute_force_optimum_up_to_seven_actions() {
        Random random = new Random(5);
        for (int n = 1; n <= 7; n++) {
            for (int i = 0; i < 10; i++) {
                Trouble trouble = random(random, n, 0, false);
                assertThat(trouble.exclusive()).isTrue();
                assertThat(trouble.greedyCost(trouble.weights, 0))
                        .isCloseTo(bruteForce(trouble, true), within(EXACT * 100));
            }
        }
    }

    @Test
    void with_a_cover_too_the_order_of_single_repairs_is_the_brute_force_optimum() {
        Random random = new Random(8);
        for (int n = 1; n <= 7; n++) {
            for (int i = 0; i < 10; i++) {
                Trouble trouble = covered(random(random, n, 0, false), random);
                assertThat(trouble.greedyCost(trouble.weights, 0))
                        .isCloseTo(bruteForce(trouble, true), within(EXACT * 100));
            }
        }
    }

    /** The same behind a cover: each repair and test inside or outside by chance. */
    private static Trouble covered(Trouble trouble, Random random) {
        List<Trouble.Repair> repairs = trouble.repairs().stream()
                .map(r -> new Trouble.Repair(r.id(), r.minutes(), random.nextInt(3) > 0, r.causes(), r.works()))
                .toList();
        List<Trouble.Probe> probes = trouble.probes.stream()
                .map(p -> new Trouble.Probe(p.id, p.minutes, random.nextBoolean(), p.reads, p.settles))
                .toList();
        return new Trouble(trouble.weights, repairs, probes, trouble.unsolved, 5 + 25 * random.nextDouble());
    }

    @Test
    void with_overlapping_repairs_and_a_cover_exact_lookahead_is_the_brute_force_optimum() {
        Random random = new Random(6);
        for (int i = 0; i < 40; i++) {
            Trouble plain = random(random, 5, 0, true);
            Trouble trouble = i % 2 == 0 ? plain : covered(plain, random);
            assertThat(Lookahead.exact(trouble).choose(trouble.weights, 0, 0).cost())
                    .isCloseTo(bruteForce(trouble, true), within(EXACT * 100));
        }
    }

    /** What ships, two steps deep and six wide, followed to the end, against the optimum of tests and repairs mixed. */
    @Test
    void bounded_lookahead_stays_within_a_twentieth_of_the_optimum() {
        Gap closed = gap(new Random(7), false);
        assertThat(closed.worst()).isLessThan(1.05);
        assertThat(closed.mean()).isLessThan(1.005);
        Gap covered = gap(new Random(7), true);
        assertThat(covered.worst()).isLessThan(1.05);
        assertThat(covered.mean()).isLessThan(1.005);
    }

    /** Cost followed to the end over the optimum, of seven actions each. */
    record Gap(double mean, double worst, int instances) {}

    static Gap gap(Random random, boolean cover) {
        double worst = 1;
        double sum = 0;
        int instances = 60;
        for (int i = 0; i < instances; i++) {
            Trouble plain = random(random, 4, 3, i % 2 == 0);
            Trouble trouble = cover ? covered(plain, random) : plain;
            double best = Lookahead.exact(trouble).choose(trouble.weights, 0, 0).cost();
            double ours = follow(new Lookahead(trouble, 2, 6), trouble, trouble.weights, 0, 0);
            assertThat(ours).isGreaterThan(best - EXACT * 100);
            worst = Math.max(worst, ours / best);
            sum += ours / best;
        }
        return new Gap(sum / instances, worst, instances);
    }

    private static double follow(Lookahead policy, Trouble trouble, double[] w, long repaired, long probed) {
        Lookahead.Choice choice = policy.choose(w, repaired, probed);
        int n = choice.number();
        return switch (choice.kind()) {
            case STOP -> Trouble.sum(w) * trouble.unsolved;
            case REPAIR -> {
                Trouble.Repair repair = trouble.repairs().get(n);
                yield (repair.minutes() + trouble.openingOf(repair, repaired)) * Trouble.sum(w)
                        + follow(policy, trouble, trouble.afterFailed(n, w), trouble.afterRepair(n, repaired), probed);
            }
            case TEST -> {
                Trouble.Probe probe = trouble.probes.get(n);
                double cost = (probe.minutes + trouble.openingOf(probe, repaired)) * Trouble.sum(w);
                long done = Trouble.afterProbe(probe, repaired);
                for (double[] reads : probe.reads) {
                    cost += follow(policy, trouble, Trouble.afterRead(reads, w), done, probed | probe.settles);
                }
                yield cost;
            }
        };
    }

    private static Trouble random(Random random, int causes, int probes, boolean overlapping) {
        double[] p = shares(random, causes + 1);
        List<Trouble.Repair> repairs = new ArrayList<>();
        for (int i = 0; i < causes; i++) {
            List<Integer> cures = overlapping && i > 0 ? List.of(i, i - 1) : List.of(i);
            repairs.add(new Trouble.Repair(
                    "r" + i,
                    5 + 60 * random.nextDouble(),
                    false,
                    cures,
                    cures.stream().map(c -> 0.5 + random.nextDouble() / 2).toList()));
        }
        List<Trouble.Probe> tests = new ArrayList<>();
        for (int i = 0; i < probes; i++) {
            double[][] reads = new double[2][causes + 1];
            for (int c = 0; c <= causes; c++) {
                reads[0][c] = random.nextBoolean() ? 0.05 + random.nextDouble() / 10 : 0.85 + random.nextDouble() / 10;
                reads[1][c] = 1 - reads[0][c];
            }
            tests.add(new Trouble.Probe("t" + i, 2 + 15 * random.nextDouble(), false, reads, 1L << i));
        }
        return new Trouble(p, repairs, tests, 100 + 200 * random.nextDouble(), 0);
    }

    private static double[] shares(Random random, int n) {
        double[] p = new double[n];
        for (int i = 0; i < n; i++) {
            p[i] = 0.05 + random.nextDouble();
        }
        double sum = Trouble.sum(p);
        for (int i = 0; i < n; i++) {
            p[i] /= sum;
        }
        return p;
    }
}
