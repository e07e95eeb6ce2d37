package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Caution;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;

/**
 * One unit at one moment: the causes that matter, what can be repaired and what can still be tested. The likeliest causes
 * are kept by name; the rest are taken together, and no repair is reckoned to cure them.
 */
final class Situation {
    /** Share of the posterior that is kept by name, and how many causes at most. */
    private static final double KEPT_SHARE = 0.995;

    private static final int KEPT_CAUSES = 48;
    private static final int KEPT_REPAIRS = 60;
    /** Tests looked at closely: so many by information per minute, and of the others so many by information. */
    private static final int BY_RATE = 16;

    private static final int BY_BITS = 8;
    /** A fix left out for tools or risk is named from this chance of a cure on. */
    private static final double WORTH_NAMING = 0.1;

    /** A test below this tells nothing that is not rounding, in nats. */
    private static final double NOTHING = 1e-9;

    private final Knowledge knowledge;
    private final BenchRecord record;
    private final BenchConditions conditions;
    private final Standing standing;
    private final RankingQuery query;
    /** Over all causes in the model's order, failed fixes held against theirs. */
    final double[] posterior;
    /** Numbers of the causes kept, the likeliest first. */
    final int[] kept;
    /** Weight per kept cause and, last, of the rest. */
    final double[] weights;
    /** Tests that can still tell something, by id. */
    private final List<TestReadings.Hope> tests;
    /** Repairs by number, as {@link Trouble} counts them. */
    final List<Trouble.Repair> repairs = new ArrayList<>();
    /** Fixes that the conditions leave out and that might well cure, the likeliest first. */
    final List<NextStep.Withheld> withheld = new ArrayList<>();

    private final List<Cause> causes;
    /** How many tests and fixes wait for power. */
    private int testsHeld;

    private int fixesHeld;
    /** Minutes to open the unit; 0 if it lies open. */
    private final double opening;

    Situation(
            Knowledge knowledge,
            RankingModel model,
            BenchRecord record,
            List<TestReadings> readings,
            RankingQuery query,
            BenchConditions conditions,
            Standing standing) {
        this.knowledge = knowledge;
        this.record = record;
        this.conditions = conditions;
        this.standing = standing;
        this.query = query;
        this.causes = List.copyOf(knowledge.causes());
        this.posterior = model.probabilities(query);
        this.kept = keep();
        this.weights = new double[kept.length + 1];
        double sum = 0;
        for (int i = 0; i < kept.length; i++) {
            weights[i] = posterior[kept[i]];
            sum += weights[i];
        }
        weights[kept.length] = Math.max(0, 1 - sum);
        this.opening = conditions.opened() ? 0 : knowledge.openingMinutes(query.scope());
        findRepairs();
        this.tests = findTests(readings);
    }

    /** The unlisted cause is never kept: nothing is known to cure it. What a fix that makes the unit safe is for always is. */
    private int[] keep() {
        record Share(int cause, double p) {}
        List<Share> shares = new ArrayList<>(posterior.length);
        for (int c = 0; c < posterior.length - 1; c++) {
            if (posterior[c] > 0) {
                shares.add(new Share(c, posterior[c]));
            }
        }
        shares.sort(Comparator.comparingDouble(Share::p).reversed().thenComparing(Share::cause));
        double goal = KEPT_SHARE * (1 - posterior[posterior.length - 1]);
        double sum = 0;
        int n = 0;
        while (n < shares.size() && n < KEPT_CAUSES && sum < goal) {
            sum += shares.get(n++).p();
        }
        List<Share> left = shares.subList(n, shares.size()).stream()
                .filter(share ->
                        causes.get(share.cause()).fixedBy().stream().anyMatch(remedy -> standing.lifts(remedy.fixId())))
                .toList();
        return Stream.concat(shares.subList(0, n).stream(), left.stream())
                .mapToInt(Share::cause)
                .toArray();
    }

    private void findRepairs() {
        Map<String, Map<Integer, Double>> cures = new LinkedHashMap<>();
        for (int i = 0; i < kept.length; i++) {
            Cause cause = causes.get(kept[i]);
            for (Remedy remedy : cause.fixedBy()) {
                double works = record.works(cause, remedy, conditions.failedFixes());
                if (works > 0) {
                    cures.computeIfAbsent(remedy.fixId(), id -> new LinkedHashMap<>())
                            .merge(i, works, Math::max);
                }
            }
        }
        cures.forEach((id, by) -> {
            Fix fix = knowledge.fix(id).orElseThrow();
            if (conditions.failedFixes().contains(id)
                    || !fix.scope().contains(query.scope())
                    || !knowledge.lacking(fix, query.kinds()).isEmpty()) {
                return;
            }
            if (standing.forbids(fix)) {
                fixesHeld++;
                return;
            }
            boolean risky = fix.risk().compareTo(conditions.accepted()) > 0;
            if (risky || !conditions.has(fix.tools())) {
                double cure = by.entrySet().stream()
                                .mapToDouble(e -> weights[e.getKey()] * e.getValue())
                                .sum()
                        / Trouble.sum(weights);
                if (cure >= WORTH_NAMING) {
                    withheld.add(new NextStep.Withheld(id, cure, risky));
                }
            } else if (repairs.size() < KEPT_REPAIRS) {
                repairs.add(new Trouble.Repair(
                        id, price(fix), fix.opens(), List.copyOf(by.keySet()), List.copyOf(by.values())));
            }
        });
        withheld.sort(Comparator.comparingDouble(NextStep.Withheld::cures)
                .reversed()
                .thenComparing(NextStep.Withheld::fixId));
    }

    /** Minutes of a fix, what its parts and its chance of leaving the unit worse, and so unrepaired, are worth in minutes. */
    private double price(Fix fix) {
        return record.fixMinutes(fix) + fix.price() + record.worsens(fix) * conditions.unsolvedMinutes();
    }

    private List<TestReadings.Hope> findTests(List<TestReadings> readings) {
        Set<String> known = new HashSet<>();
        query.findings().forEach(f -> known.add(f.symptomId()));
        knowledge.symptoms().stream()
                .filter(symptom -> !knowledge.lacking(symptom, query.kinds()).isEmpty())
                .forEach(symptom -> known.add(symptom.id()));
        double extra = opening * (1 - chanceOpened());
        List<TestReadings.Hope> hopes = new ArrayList<>();
        for (TestReadings test : readings) {
            if (knowledge.lacking(test.test, query.kinds()).isEmpty()
                    && test.test.risk().compareTo(conditions.accepted()) <= 0
                    && conditions.has(test.test.tools())) {
                TestReadings.Hope hope = test.hope(known, posterior, extra);
                if (hope.nats > NOTHING && standing.forbids(test.test)) {
                    testsHeld++;
                } else if (hope.nats > NOTHING) {
                    hopes.add(hope);
                }
            }
        }
        return List.copyOf(hopes);
    }

    /** Chance that the fixes alone would have the unit opened. */
    private double chanceOpened() {
        Trouble fixes = new Trouble(weights, repairs, List.of(), conditions.unsolvedMinutes(), opening);
        double[] left = weights;
        for (int r : fixes.greedyOrder(weights, 0).repairs()) {
            if (repairs.get(r).opens()) {
                return Trouble.sum(left) / Trouble.sum(weights);
            }
            left = fixes.afterFailed(r, left);
        }
        return 0;
    }

    /** The test of an id, if it can still tell something. */
    Optional<TestReadings.Open> test(String id) {
        return tests.stream()
                .filter(h -> h.of.test.id().equals(id))
                .findFirst()
                .map(h -> h.open(posterior))
                .filter(o -> o.nats > NOTHING);
    }

    /** The test to do first where power is forbidden: it looks at what may lift that, and tells most per minute. */
    Optional<TestReadings.Open> safeTest() {
        return standing.rules().stream()
                .flatMap(rule -> tests.stream()
                        .filter(h -> rule.liftedBy(h.of.test))
                        .map(h -> h.open(posterior))
                        .filter(o -> o.nats > NOTHING)
                        .max(Comparator.comparingDouble(TestReadings.Open::natsPerMinute)
                                .thenComparing(o -> o.of.test.id(), Comparator.reverseOrder()))
                        .stream())
                .findFirst();
    }

    /**
     * Numbers of the repairs that make the unit safe, in order: each lifts most of what still stands, and of those cures
     * likeliest. What takes a pack out comes before all else.
     */
    List<Integer> safeRepairs(Trouble trouble) {
        List<Integer> steps = new ArrayList<>();
        List<PowerOff> left = new ArrayList<>(standing.rules());
        while (true) {
            List<PowerOff> now = List.copyOf(left);
            Optional<Integer> best = IntStream.range(0, repairs.size())
                    .filter(r -> lifted(r, now) > 0)
                    .boxed()
                    .max(Comparator.comparing((Integer r) -> takesPackOut(r, now))
                            .thenComparing(r -> lifted(r, now))
                            .thenComparing(r -> trouble.cures(r, weights))
                            .thenComparing(r -> repairs.get(r).id(), Comparator.reverseOrder()));
            if (best.isEmpty()) {
                return List.copyOf(steps);
            }
            steps.add(best.get());
            left.removeIf(rule -> rule.fixes().contains(repairs.get(best.get()).id()));
        }
    }

    private long lifted(int repair, List<PowerOff> rules) {
        String id = repairs.get(repair).id();
        return rules.stream().filter(rule -> rule.fixes().contains(id)).count();
    }

    private boolean takesPackOut(int repair, List<PowerOff> rules) {
        String id = repairs.get(repair).id();
        return rules.stream().anyMatch(rule -> ofPack(rule) && rule.fixes().contains(id));
    }

    /** Whether all that lifts a rule is done to the pack, on a closed unit: it has to go, whatever the fault, and no look helps. */
    private boolean ofPack(PowerOff rule) {
        return rule.fixes().stream()
                .flatMap(id -> knowledge.fix(id).stream())
                .allMatch(fix -> !fix.opens()
                        && fix.cautions().stream()
                                .flatMap(id -> knowledge.caution(id).stream())
                                .anyMatch(caution -> caution.hazard() == Caution.Hazard.LITHIUM));
    }

    /** What forbids power, and what makes the unit safe: that comes before all else. */
    Optional<PowerHold> hold() {
        if (standing.rules().isEmpty()) {
            return Optional.empty();
        }
        Trouble fixes = trouble(List.of());
        List<Integer> steps = safeRepairs(fixes);
        boolean pack = !steps.isEmpty() && takesPackOut(steps.get(0), standing.rules());
        Optional<String> test = pack ? Optional.empty() : safeTest().map(o -> o.of.test.id());
        List<String> first = test.isPresent()
                ? List.of()
                : steps.stream().map(r -> repairs.get(r).id()).toList();
        return Optional.of(new PowerHold(
                standing.rules().stream().map(rule -> reason(rule, fixes)).toList(),
                testsHeld,
                fixesHeld,
                test,
                first));
    }

    private PowerHold.Reason reason(PowerOff rule, Trouble trouble) {
        List<String> fixes = rule.fixes().stream()
                .flatMap(id -> knowledge.fix(id).stream())
                .filter(fix -> fix.scope().contains(query.scope()))
                .filter(fix -> knowledge.lacking(fix, query.kinds()).isEmpty())
                .map(Fix::id)
                .sorted(Comparator.comparingDouble((String id) -> -cures(id, trouble)))
                .toList();
        List<PowerOff.Sign> until = rule.until().stream()
                .flatMap(id -> knowledge.symptom(id).stream())
                .map(symptom -> new PowerOff.Sign(symptom.id(), symptom.normal().id()))
                .toList();
        return new PowerHold.Reason(rule.id(), rule.symptomId(), rule.stateId(), rule.why(), until, fixes);
    }

    private double cures(String fixId, Trouble trouble) {
        return IntStream.range(0, repairs.size())
                .filter(r -> repairs.get(r).id().equals(fixId))
                .mapToDouble(r -> trouble.cures(r, weights))
                .sum();
    }

    /** Whether what makes the unit safe is plain: of two or more repairs a test without power may tell which. */
    boolean plainlySafe(List<Integer> steps) {
        List<PowerOff> rules = standing.rules();
        return takesPackOut(steps.get(0), rules)
                || IntStream.range(0, repairs.size())
                                .filter(r -> lifted(r, rules) >= lifted(steps.get(0), rules))
                                .count()
                        < 2;
    }

    boolean held() {
        return !standing.rules().isEmpty();
    }

    /** Whether a repair may be tried now: while power is off only what makes the unit safe, since no other can be seen to help. */
    boolean mayTry(int repair) {
        return !held() || standing.lifts(repairs.get(repair).id());
    }

    /** Tests worth a closer look: the most telling per minute, and of the others the most telling. */
    List<TestReadings.Open> close() {
        List<TestReadings.Open> close =
                best(tests, BY_RATE, TestReadings.Hope::natsPerMinute, TestReadings.Open::natsPerMinute);
        Set<TestReadings> taken = close.stream().map(o -> o.of).collect(Collectors.toSet());
        close.addAll(
                best(tests.stream().filter(h -> !taken.contains(h.of)).toList(), BY_BITS, h -> h.nats, o -> o.nats));
        return List.copyOf(close);
    }

    /** The best so many, ties by id; a test is worked out only if what it may tell at most could bring it among them. */
    private List<TestReadings.Open> best(
            List<TestReadings.Hope> hopes,
            int most,
            ToDoubleFunction<TestReadings.Hope> atMost,
            ToDoubleFunction<TestReadings.Open> really) {
        Comparator<TestReadings.Open> better =
                Comparator.comparingDouble(really).reversed().thenComparing(o -> o.of.test.id());
        List<TestReadings.Open> best = new ArrayList<>();
        for (TestReadings.Hope hope : hopes.stream()
                .sorted(Comparator.comparingDouble(atMost).reversed())
                .toList()) {
            if (best.size() == most && atMost.applyAsDouble(hope) < really.applyAsDouble(best.get(most - 1))) {
                break;
            }
            TestReadings.Open open = hope.open(posterior);
            if (open.nats > NOTHING) {
                best.add(open);
                best.sort(better);
                best.subList(Math.min(most, best.size()), best.size()).clear();
            }
        }
        return best;
    }

    /** The problem with some of the tests. */
    Trouble trouble(List<TestReadings.Open> some) {
        List<Trouble.Probe> probes = new ArrayList<>(some.size());
        for (TestReadings.Open open : some) {
            long settles = 0;
            for (int other = 0; other < some.size(); other++) {
                settles |= open.shares(some.get(other)) ? 1L << other : 0;
            }
            probes.add(new Trouble.Probe(
                    open.of.test.id(), open.of.minutes, open.of.test.opens(), reduce(open.joint()), settles));
        }
        return new Trouble(weights, repairs, probes, conditions.unsolvedMinutes(), opening);
    }

    /** Readings given the kept causes and, last, given the rest. */
    double[][] reduce(double[][] given) {
        double[][] reduced = new double[given.length][kept.length + 1];
        double rest = weights[kept.length];
        for (int r = 0; r < given.length; r++) {
            double known = 0;
            for (int i = 0; i < kept.length; i++) {
                reduced[r][i] = given[r][kept[i]];
                known += weights[i] * reduced[r][i];
            }
            double all = TestReadings.dot(given[r], posterior);
            reduced[r][kept.length] = rest > 0 ? Math.max(0, Math.min(1, (all - known) / rest)) : 0;
        }
        return reduced;
    }

    /** Id of a kept cause. */
    String causeId(int i) {
        return causes.get(kept[i]).id();
    }

    /** A repair as an answer, at some weights, after what was done. */
    NextStep.FixChoice choice(Trouble trouble, int repair, double[] w, long done) {
        Trouble.Repair r = repairs.get(repair);
        int likeliest =
                r.causes().stream().max(Comparator.comparingDouble(c -> w[c])).orElseThrow();
        Fix fix = knowledge.fix(r.id()).orElseThrow();
        return new NextStep.FixChoice(
                r.id(),
                causeId(likeliest),
                record.fixMinutes(fix),
                trouble.openingOf(r, done),
                fix.price(),
                trouble.cures(repair, w) / Trouble.sum(w));
    }

    /** The likeliest kept causes after a reading, at most so many. */
    List<TestProposal.Shift> shifts(double[] given, double total, int most) {
        double[] after = new double[kept.length];
        for (int i = 0; i < kept.length; i++) {
            after[i] = weights[i] * given[kept[i]] / total;
        }
        List<TestProposal.Shift> shifts = new ArrayList<>(most);
        boolean[] taken = new boolean[kept.length];
        for (int n = 0; n < Math.min(most, kept.length); n++) {
            int best = -1;
            for (int i = 0; i < kept.length; i++) {
                best = !taken[i] && (best < 0 || after[i] > after[best]) ? i : best;
            }
            taken[best] = true;
            shifts.add(new TestProposal.Shift(causeId(best), weights[best], Math.min(1, after[best])));
        }
        return shifts;
    }
}
