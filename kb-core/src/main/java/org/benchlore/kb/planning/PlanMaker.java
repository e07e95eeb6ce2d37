package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.ranking.RankingModel;

/** Grows the decision tree of one situation and prices the simpler ways beside it. For one use. */
final class PlanMaker {
    /** Steps from root to leaf, and how rare a node may be, for a tree that still prints on one page. */
    private static final int LEVELS = 8;

    private static final double RARE = 0.05;
    private static final int DEPTH = 2;
    private static final int WIDTH = 6;
    /** Up to so many actions, with few tests among them, the plan looks to the end and is the optimum. */
    private static final int EXACT_ACTIONS = 7;

    private static final int EXACT_TESTS = 2;
    private static final double SURE = 0.9;
    private static final int SUSPECTS = 6;
    private static final double NEGLIGIBLE = 1e-3;

    private final Knowledge knowledge;
    private final Situation now;
    private final List<TestReadings.Open> tests;
    private final Trouble trouble;
    private final Lookahead lookahead;
    private double minutes;
    private double solved;

    PlanMaker(Knowledge knowledge, Situation now, List<TestReadings.Open> tests) {
        this.knowledge = knowledge;
        this.now = now;
        this.tests = tests;
        this.trouble = now.trouble(tests);
        boolean small = tests.size() <= EXACT_TESTS && tests.size() + now.repairs.size() <= EXACT_ACTIONS;
        this.lookahead = small ? Lookahead.exact(trouble) : new Lookahead(trouble, DEPTH, WIDTH);
    }

    /** The plan of a unit that may be powered. */
    Plan plan() {
        return plan(grow(now.weights, 0, 0, LEVELS), Optional.empty());
    }

    /**
     * The plan while power is off: the one step to do now, and to ask again.
     *
     * @param next what to do now
     */
    Plan unpowered(PowerHold hold, NextStep next) {
        Optional<Integer> fix = next.stopTesting()
                ? next.repair().flatMap(r -> now.safeRepairs(trouble).stream().findFirst())
                : Optional.empty();
        Optional<Integer> test = next.first()
                .flatMap(first -> IntStream.range(0, tests.size())
                        .filter(t ->
                                tests.get(t).of.test.id().equals(first.test().id()))
                        .boxed()
                        .findFirst());
        Plan.Step root = fix.map(r -> fix(r, now.weights, 0, 0, 1))
                .or(() -> test.map(t -> test(t, now.weights, 0, 0, 1)))
                .orElseGet(() -> stop(now.weights));
        return plan(root, Optional.of(hold));
    }

    private Plan plan(Plan.Step root, Optional<PowerHold> hold) {
        Trouble.Order order = trouble.greedyOrder(now.weights, 0);
        List<NextStep.FixChoice> repairs = new ArrayList<>();
        double[] w = now.weights;
        long done = 0;
        for (int r : order.repairs()) {
            if (now.mayTry(r)) {
                repairs.add(now.choice(trouble, r, w, done));
            }
            done = trouble.afterRepair(r, done);
            w = trouble.afterFailed(r, w);
        }
        return new Plan(
                root,
                minutes,
                trouble.costOf(byLikelihood(now.weights), now.weights, 0),
                suspectBySuspect(),
                order.cost(),
                repairs,
                trouble.exclusive(),
                List.copyOf(now.withheld),
                Math.min(1, solved),
                hold);
    }

    private Plan.Step grow(double[] w, long repaired, long probed, int levels) {
        double reached = Trouble.sum(w);
        if (levels == 0 || reached < RARE) {
            Trouble.Order rest = trouble.greedyOrder(w, repaired);
            minutes += rest.cost();
            double[] left = w;
            for (int r : rest.repairs()) {
                left = trouble.afterFailed(r, left);
            }
            solved += reached - Trouble.sum(left);
            return step(Plan.Action.ASK_AGAIN, "", 0, 0, 0, w, Optional.empty(), List.of());
        }
        Lookahead.Choice choice = lookahead.choose(w, repaired, probed);
        return switch (choice.kind()) {
            case STOP -> stop(w);
            case REPAIR -> fix(choice.number(), w, repaired, probed, levels);
            case TEST -> test(choice.number(), w, repaired, probed, levels);
        };
    }

    private Plan.Step stop(double[] w) {
        minutes += Trouble.sum(w) * trouble.unsolved;
        return step(Plan.Action.STOP, "", 0, 0, 0, w, Optional.empty(), List.of());
    }

    private Plan.Step fix(int repair, double[] w, long repaired, long probed, int levels) {
        NextStep.FixChoice fix = now.choice(trouble, repair, w, repaired);
        double reached = Trouble.sum(w);
        minutes += reached * (now.repairs.get(repair).minutes() + fix.openingMinutes());
        solved += trouble.cures(repair, w);
        double[] left = trouble.afterFailed(repair, w);
        Plan.Step then = grow(left, trouble.afterRepair(repair, repaired), probed, levels - 1);
        return step(
                Plan.Action.FIX,
                fix.fixId(),
                fix.minutes(),
                fix.openingMinutes(),
                fix.priceMinutes(),
                w,
                Optional.of(fix.cures()),
                List.of(new Plan.Branch(List.of(), share(Trouble.sum(left), reached), then)));
    }

    private Plan.Step test(int probe, double[] w, long repaired, long probed, int levels) {
        Trouble.Probe test = trouble.probes.get(probe);
        double reached = Trouble.sum(w);
        double opening = trouble.openingOf(test, repaired);
        minutes += reached * (test.minutes + opening);
        long done = Trouble.afterProbe(test, repaired);
        Map<String, List<Plan.Branch>> alike = new LinkedHashMap<>();
        for (int r = 0; r < test.reads.length; r++) {
            double[] after = Trouble.afterRead(test.reads[r], w);
            if (Trouble.sum(after) > 0) {
                Plan.Step then = grow(after, done, probed | test.settles, levels - 1);
                alike.computeIfAbsent(shape(then), s -> new ArrayList<>())
                        .add(new Plan.Branch(List.of(reading(probe, r)), share(Trouble.sum(after), reached), then));
            }
        }
        List<Plan.Branch> branches = alike.values().stream()
                .map(PlanMaker::together)
                .sorted(Comparator.comparingDouble(Plan.Branch::probability).reversed())
                .toList();
        return step(Plan.Action.TEST, test.id, test.minutes, opening, 0, w, Optional.empty(), branches);
    }

    /** Branches that go on alike become one; it shows the likeliest of them. */
    private static Plan.Branch together(List<Plan.Branch> alike) {
        Plan.Branch likeliest = alike.stream()
                .max(Comparator.comparingDouble(Plan.Branch::probability))
                .orElseThrow();
        return new Plan.Branch(
                alike.stream().flatMap(b -> b.readings().stream()).toList(),
                share(alike.stream().mapToDouble(Plan.Branch::probability).sum(), 1),
                likeliest.step());
    }

    private static String shape(Plan.Step step) {
        StringBuilder shape = new StringBuilder(step.action() + step.id());
        for (Plan.Branch branch : step.branches()) {
            shape.append('(')
                    .append(branch.readings())
                    .append(shape(branch.step()))
                    .append(')');
        }
        return shape.toString();
    }

    private Plan.Reading reading(int probe, int index) {
        List<TestReadings.Read> joint = tests.get(probe).jointReads();
        List<Plan.Seen> seen = new ArrayList<>();
        int rest = index;
        for (int i = joint.size() - 1; i >= 0; i--) {
            TestReadings.Read read = joint.get(i);
            seen.add(
                    0,
                    new Plan.Seen(
                            read.symptom.id(),
                            read.symptom.states().get(rest % read.given.length).id()));
            rest /= read.given.length;
        }
        return new Plan.Reading(seen);
    }

    private Plan.Step step(
            Plan.Action action,
            String id,
            double time,
            double opening,
            double price,
            double[] w,
            Optional<Double> cures,
            List<Plan.Branch> branches) {
        int top = IntStream.range(0, w.length)
                .boxed()
                .max(Comparator.comparingDouble(c -> w[c]))
                .orElseThrow();
        return new Plan.Step(
                action,
                id,
                time,
                opening,
                price,
                Trouble.sum(w),
                top < now.kept.length ? now.causeId(top) : RankingModel.UNLISTED,
                w[top] / Trouble.sum(w),
                cures,
                branches);
    }

    /** The first-named fix of each cause, the likeliest cause first. */
    private List<Integer> byLikelihood(double[] w) {
        Set<Integer> order = new LinkedHashSet<>();
        IntStream.range(0, now.kept.length)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer c) -> -w[c]))
                .forEach(c -> knowledge.cause(now.causeId(c)).orElseThrow().fixedBy().stream()
                        .map(Remedy::fixId)
                        .flatMap(id -> IntStream.range(0, now.repairs.size())
                                .filter(r -> now.repairs.get(r).id().equals(id))
                                .boxed())
                        .findFirst()
                        .ifPresent(order::add));
        return List.copyOf(order);
    }

    /** The tests that the packs name for each suspect, suspects in order of likelihood. */
    private double suspectBySuspect() {
        Set<String> ids = new LinkedHashSet<>();
        for (int c = 0; c < Math.min(SUSPECTS, now.kept.length); c++) {
            knowledge.cause(now.causeId(c)).orElseThrow().confirmedBy().stream()
                    .findFirst()
                    .ifPresent(ids::add);
        }
        List<TestReadings.Open> named = new ArrayList<>();
        ids.forEach(id -> now.test(id).ifPresent(named::add));
        return fixedOrder(now.trouble(named), 0, now.weights, 0);
    }

    private double fixedOrder(Trouble named, int probe, double[] w, long done) {
        double sum = Trouble.sum(w);
        double top =
                IntStream.range(0, now.kept.length).mapToDouble(c -> w[c]).max().orElse(0);
        if (probe == named.probes.size() || top >= SURE * sum || sum < NEGLIGIBLE) {
            return named.costOf(byLikelihood(w), w, done);
        }
        Trouble.Probe next = named.probes.get(probe);
        double cost = (next.minutes + named.openingOf(next, done)) * sum;
        long after = Trouble.afterProbe(next, done);
        for (double[] reads : next.reads) {
            cost += fixedOrder(named, probe + 1, Trouble.afterRead(reads, w), after);
        }
        return cost;
    }

    /** A probability; sums over causes may come out a rounding step above the whole. */
    private static double share(double part, double whole) {
        return Math.min(1, part / whole);
    }
}
