package org.benchlore.kb.planning;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingSettings;

/**
 * Bench minutes to the right fix, by policy, in seeded simulated repairs: {@code kb-core/measure planning [--json]
 * [--repairs N] [--sigma S] [--correlation R] [--packs DIR]}; without a sigma both 0 and 0.7. Every policy meets the same
 * units; see {@link Simulation} for the world. Worlds are simulated side by side, each from its own seed, so the figures do
 * not depend on the machine. {@code --gap} prints the gap to the exact optimum on random instances of seven actions.
 */
final class PlanningMeasure {
    private static final int REPAIRS_PER_WORLD = 25;
    private static final double CORRELATION = 0.5;
    /** No unit is let go here, so ending without a repair is priced at hours of what the simple policies take. */
    private static final double UNREPAIRED = 2400;

    /**
     * Every simulated fault has an entry, and whoever must not let a unit go had better believe so; nor are simulated
     * complaints misread.
     */
    private static final RankingSettings ALL_LISTED = new RankingSettings(
            1e-100,
            RankingSettings.DEFAULT.unlistedSpread(),
            RankingSettings.DEFAULT.unlistedSpreadKnown(),
            RankingSettings.DEFAULT.backgroundCases(),
            RankingSettings.DEFAULT.scopeCases(),
            RankingSettings.DEFAULT.mentionAlways(),
            RankingSettings.DEFAULT.mentionUsually(),
            0,
            RankingSettings.DEFAULT.aside(),
            RankingSettings.DEFAULT.doubt());

    private static final double SURE = 0.9;
    private static final int SUSPECTS = 6;
    private static final int MOST_STEPS = 400;
    /** What {@code --json} prints. */
    private static final List<String> NAMED =
            List.of("plan", "most-likely-first", "fixed-order", "random", "clairvoyant");

    private final Knowledge knowledge;
    private final RankingModel model;
    private final BenchRecord record;
    private final TestPlanner planner;
    private final List<Cause> causes;
    private final BenchConditions conditions;

    private PlanningMeasure(Knowledge knowledge) {
        this.knowledge = knowledge;
        this.model = RankingModel.of(knowledge, ALL_LISTED);
        this.record = BenchRecord.none(knowledge);
        this.planner = new TestPlanner(knowledge, model, record);
        this.causes = List.copyOf(knowledge.causes());
        // No simulated unit hurts anybody, and nothing there lifts what forbids power.
        this.conditions = BenchConditions.DEFAULT
                .accepting(Risk.HIGH)
                .costing(1, UNREPAIRED)
                .madeSafe(knowledge.powerOff().stream().map(PowerOff::id).toList());
    }

    interface Policy {
        void step(Simulation.Unit unit, Random random);
    }

    /** What one policy took, over so many repairs. */
    private record Score(double minutes, int rightFirst) {
        Score plus(Score other) {
            return new Score(minutes + other.minutes, rightFirst + other.rightFirst);
        }
    }

    public static void main(String[] args) {
        List<String> given = List.of(args);
        if (given.contains("--gap")) {
            gap(given.contains("--json"));
            return;
        }
        boolean json = given.contains("--json");
        int repairs = (int) number(given, "--repairs", 10_000);
        Path packs = Path.of(option(given, "--packs", "../kb-data/src/main/resources/org/benchlore/kb/data/packs"));
        PlanningMeasure measure = new PlanningMeasure(PackReader.read(PackSource.readFolder(packs)));
        double correlation = number(given, "--correlation", CORRELATION);
        List<Double> sigmas = given.contains("--sigma") ? List.of(number(given, "--sigma", 0)) : List.of(0.0, 0.7);
        sigmas.forEach(sigma -> measure.run(repairs, sigma, correlation, json));
    }

    private static void gap(boolean json) {
        for (boolean cover : new boolean[] {false, true}) {
            TroubleTest.Gap gap = TroubleTest.gap(new Random(7), cover);
            System.out.printf(
                    Locale.ROOT,
                    json
                            ? "{\"cover\":%b,\"meanOverOptimum\":%.5f,\"worstOverOptimum\":%.5f,\"instances\":%d}%n"
                            : "cover %-5b mean %.5f, worst %.5f of the optimum, %d instances%n",
                    cover,
                    gap.mean(),
                    gap.worst(),
                    gap.instances());
        }
    }

    private static String option(List<String> given, String name, String otherwise) {
        int at = given.indexOf(name);
        return at < 0 ? otherwise : given.get(at + 1);
    }

    private static double number(List<String> given, String name, double otherwise) {
        return Double.parseDouble(option(given, name, String.valueOf(otherwise)));
    }

    private Map<String, Policy> policies(boolean named) {
        Map<String, Policy> policies = new LinkedHashMap<>();
        policies.put("plan", (unit, random) -> plan(unit, 2));
        policies.put("next", (unit, random) -> plan(unit, 1));
        policies.put("repairs-by-chance-over-minutes", (unit, random) -> repairOnly(unit));
        policies.put("most-likely-first", (unit, random) -> mostLikely(unit));
        policies.put("fixed-order", (unit, random) -> fixedOrder(unit));
        policies.put("random", this::random);
        policies.put("clairvoyant", (unit, random) -> clairvoyant(unit));
        if (named) {
            policies.keySet().retainAll(NAMED);
        }
        return policies;
    }

    private void run(int repairs, double sigma, double correlation, boolean json) {
        Map<String, Policy> policies = policies(json);
        int worlds = (repairs + REPAIRS_PER_WORLD - 1) / REPAIRS_PER_WORLD;
        Map<String, Score> scores = new LinkedHashMap<>();
        IntStream.range(0, worlds)
                .parallel()
                .mapToObj(w -> world(policies, w, repairs, sigma, correlation))
                .toList()
                .forEach(world -> world.forEach((name, score) -> scores.merge(name, score, Score::plus)));
        scores.forEach((name, score) -> System.out.printf(
                Locale.ROOT,
                json
                        ? "{\"policy\":\"%s\",\"meanMinutes\":%.2f,\"rightFirst\":%.4f,\"sigma\":%.1f}%n"
                        : "%-32s %7.1f minutes, right first %.3f (sigma %.1f)%n",
                name,
                score.minutes() / repairs,
                (double) score.rightFirst() / repairs,
                sigma));
        double best = List.of("most-likely-first", "fixed-order", "random").stream()
                .mapToDouble(name -> Objects.requireNonNull(scores.get(name)).minutes())
                .min()
                .orElseThrow();
        if (!json) {
            System.out.printf(
                    Locale.ROOT,
                    "plan / best simple policy: %.3f (%d repairs, sigma %.1f, correlation %.1f, %d causes, %d tests, %d"
                            + " fixes)%n",
                    Objects.requireNonNull(scores.get("plan")).minutes() / best,
                    repairs,
                    sigma,
                    correlation,
                    causes.size(),
                    knowledge.tests().size(),
                    knowledge.fixes().size());
        }
    }

    private Map<String, Score> world(
            Map<String, Policy> policies, int number, int repairs, double sigma, double correlation) {
        int from = number * REPAIRS_PER_WORLD;
        Simulation world = new Simulation(knowledge, model, new Random(1000L + from), sigma, correlation);
        Map<String, Score> scores = new LinkedHashMap<>();
        for (int i = from; i < Math.min(repairs, from + REPAIRS_PER_WORLD); i++) {
            Simulation.Unit unit = world.unit(new Random(7_000_000L + i));
            for (Map.Entry<String, Policy> policy : policies.entrySet()) {
                Simulation.Unit own = unit.again();
                Random random = new Random(i);
                for (int step = 0; !own.cured && step < MOST_STEPS; step++) {
                    policy.getValue().step(own, random);
                }
                boolean right = own.cured && own.failed.size() == 1;
                scores.merge(policy.getKey(), new Score(own.minutes, right ? 1 : 0), Score::plus);
            }
        }
        return scores;
    }

    private void plan(Simulation.Unit unit, int depth) {
        Situation now = planner.situation(
                unit.query(), conditions.afterFailing(unit.failed).opened(unit.opened));
        List<TestReadings.Open> close = now.close();
        Trouble trouble = now.trouble(close);
        Lookahead.Choice choice = new Lookahead(trouble, depth, 6).choose(now.weights, 0, 0);
        switch (choice.kind()) {
            case TEST -> unit.test(close.get(choice.number()).of.test);
            case REPAIR -> unit.fix(now.repairs.get(choice.number()).id());
            case STOP -> repairOnly(unit);
        }
    }

    private double[] posterior(Simulation.Unit unit) {
        return model.probabilities(unit.query().tried(record.tried(unit.failed)));
    }

    /** The untried fix with the most chance per minute over all causes. */
    private void repairOnly(Simulation.Unit unit) {
        double[] p = posterior(unit);
        Map<String, Double> chance = new LinkedHashMap<>();
        for (int c = 0; c < causes.size(); c++) {
            for (Remedy remedy : causes.get(c).fixedBy()) {
                if (!unit.failed.contains(remedy.fixId())) {
                    chance.merge(remedy.fixId(), p[c] * remedy.works(), Double::sum);
                }
            }
        }
        unit.fix(chance.entrySet().stream()
                .max(Comparator.comparingDouble(e ->
                        e.getValue() / knowledge.fix(e.getKey()).orElseThrow().minutes()))
                .orElseThrow()
                .getKey());
    }

    private void mostLikely(Simulation.Unit unit) {
        double[] p = posterior(unit);
        unit.fix(suspects(p)
                .flatMap(c -> causes.get(c).fixedBy().stream().map(Remedy::fixId))
                .filter(id -> !unit.failed.contains(id))
                .findFirst()
                .orElseThrow());
    }

    private Stream<Integer> suspects(double[] p) {
        return IntStream.range(0, causes.size()).boxed().sorted(Comparator.comparingDouble((Integer c) -> -p[c]));
    }

    /** Suspect by suspect the test that confirms it, until one is 90 % sure; then the most likely first. */
    private void fixedOrder(Simulation.Unit unit) {
        double[] p = posterior(unit);
        boolean sure = IntStream.range(0, causes.size()).anyMatch(c -> p[c] >= SURE);
        Set<String> tests = new LinkedHashSet<>();
        suspects(p)
                .limit(SUSPECTS)
                .forEach(c -> causes.get(c).confirmedBy().stream().findFirst().ifPresent(tests::add));
        List<BenchTest> open = tests.stream()
                .map(id -> knowledge.test(id).orElseThrow())
                .filter(t -> !unit.findings.keySet().containsAll(t.reveals()))
                .toList();
        if (sure || open.isEmpty() || !unit.failed.isEmpty()) {
            mostLikely(unit);
        } else {
            unit.test(open.get(0));
        }
    }

    /** Any fix of any cause of at least one percent. */
    private void random(Simulation.Unit unit, Random random) {
        double[] p = posterior(unit);
        List<String> fixes = new ArrayList<>();
        for (double least : new double[] {0.01, 0}) {
            for (int c = 0; c < causes.size() && (least > 0 || fixes.isEmpty()); c++) {
                if (p[c] >= least) {
                    causes.get(c).fixedBy().stream()
                            .map(Remedy::fixId)
                            .filter(id -> !unit.failed.contains(id))
                            .forEach(fixes::add);
                }
            }
        }
        unit.fix(fixes.get(random.nextInt(fixes.size())));
    }

    private void clairvoyant(Simulation.Unit unit) {
        unit.fix(unit.cause.fixedBy().stream()
                .filter(r -> !unit.failed.contains(r.fixId()))
                .max(Comparator.comparingDouble(
                        r -> r.works() / knowledge.fix(r.fixId()).orElseThrow().minutes()))
                .orElseThrow()
                .fixId());
    }
}
