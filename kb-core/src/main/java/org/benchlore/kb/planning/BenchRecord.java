package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.benchlore.kb.cases.TriedFix;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;

/**
 * What the cases teach about fixes and tests: how often they work, how often they read wrong, how long they take. A pure
 * function of the packs and the cases. Immutable and thread-safe.
 */
public final class BenchRecord {
    /** Bench times kept before their median replaces the pack's figure. */
    private static final int TIMES_ENOUGH = 3;
    /** Tests that the packs' figures for misses and false alarms are worth; our choice. */
    private static final double ERROR_CASES = 20;
    /** Cases that the packs' figure for making it worse is worth; our choice. */
    private static final double WORSE_CASES = 20;

    private final Knowledge knowledge;
    private final List<CaseWork.Trial> trials;
    private final Map<String, List<CaseWork.Trial>> byFix = new TreeMap<>();
    private final Map<String, Double> fixMinutes = new HashMap<>();
    private final Map<String, Double> testMinutes = new HashMap<>();
    private final Map<String, TestErrors> errors = new HashMap<>();

    private BenchRecord(Knowledge knowledge, Collection<CaseWork> cases) {
        this.knowledge = knowledge;
        this.trials = cases.stream().flatMap(c -> c.fixes().stream()).toList();
        for (CaseWork.Trial trial : trials) {
            byFix.computeIfAbsent(trial.fixId(), id -> new ArrayList<>()).add(trial);
        }
        byFix.forEach((id, t) -> median(t.stream().map(CaseWork.Trial::minutes).toList(), TIMES_ENOUGH)
                .ifPresent(m -> fixMinutes.put(id, m)));
        Map<String, List<CaseWork.Use>> uses = new TreeMap<>();
        cases.forEach(c -> c.tests()
                .forEach(t -> uses.computeIfAbsent(t.testId(), id -> new ArrayList<>())
                        .add(t)));
        uses.forEach((id, list) -> {
            median(list.stream().map(CaseWork.Use::minutes).toList(), TIMES_ENOUGH)
                    .ifPresent(m -> testMinutes.put(id, m));
            knowledge.test(id).ifPresent(test -> errors.put(id, learn(test, list)));
        });
    }

    /** The packs' opinion alone. */
    public static BenchRecord none(Knowledge knowledge) {
        return new BenchRecord(knowledge, List.of());
    }

    /** What cases teach; their order is of no consequence. */
    public static BenchRecord of(Knowledge knowledge, Collection<CaseWork> cases) {
        return new BenchRecord(knowledge, cases);
    }

    private static Optional<Double> median(List<Optional<Double>> minutes, int enough) {
        double[] kept = minutes.stream()
                .flatMap(Optional::stream)
                .mapToDouble(m -> m)
                .filter(m -> m > 0)
                .sorted()
                .toArray();
        if (kept.length < enough) {
            return Optional.empty();
        }
        int mid = kept.length / 2;
        return Optional.of(kept.length % 2 == 1 ? kept[mid] : (kept[mid - 1] + kept[mid]) / 2);
    }

    /** Bench time of a test: the median where at least three times were kept, else the pack's. */
    public double testMinutes(BenchTest test) {
        return testMinutes.getOrDefault(test.id(), test.minutes());
    }

    /** Bench time of a fix: the median where at least three times were kept, else the pack's. */
    public double fixMinutes(Fix fix) {
        return fixMinutes.getOrDefault(fix.id(), fix.minutes());
    }

    /** How often a test reads wrong, learnt from the cases that proved a cause. */
    public TestErrors errors(BenchTest test) {
        return errors.getOrDefault(test.id(), TestErrors.of(test));
    }

    /**
     * One step of expectation and maximisation (Dempster, Laird and Rubin, JRSS-B 39, 1977): each reading is shared out
     * between right and wrong by the packs' figures, given the cause that the case proved.
     */
    private TestErrors learn(BenchTest test, List<CaseWork.Use> uses) {
        TestErrors prior = TestErrors.of(test);
        double abnormal = 0;
        double missed = 0;
        double normal = 0;
        double alarms = 0;
        for (Map.Entry<Seen, Integer> e : counted(uses).entrySet()) {
            Seen seen = e.getKey();
            Optional<Symptom> symptom = knowledge.symptom(seen.symptomId());
            if (symptom.isEmpty() || symptom.get().indexOf(seen.state()) < 0) {
                continue;
            }
            Symptom s = symptom.get();
            int read = s.indexOf(seen.state());
            int sound = s.indexOf(s.normal().id());
            double[] given = given(seen.causeId(), s);
            double right = given[read] * prior.reads(s, read, read);
            double wrong = 0;
            for (int is = 0; is < given.length; is++) {
                wrong += is == read ? 0 : given[is] * prior.reads(s, is, read);
            }
            double wrongly = e.getValue() * wrong / (right + wrong);
            double rightly = e.getValue() - wrongly;
            if (read == sound) {
                missed += wrongly;
                abnormal += wrongly;
                normal += rightly;
            } else {
                alarms += wrongly;
                normal += wrongly;
                abnormal += rightly;
            }
        }
        return new TestErrors(
                (prior.misses() * ERROR_CASES + missed) / (ERROR_CASES + abnormal),
                (prior.falseAlarms() * ERROR_CASES + alarms) / (ERROR_CASES + normal));
    }

    /** A reading in a case that proved a cause. */
    private record Seen(String causeId, String symptomId, String state) implements Comparable<Seen> {
        private static final Comparator<Seen> ORDER = Comparator.comparing(Seen::causeId)
                .thenComparing(Seen::symptomId)
                .thenComparing(Seen::state);

        @Override
        public int compareTo(Seen other) {
            return ORDER.compare(this, other);
        }
    }

    /** How often each reading came, sorted, so that sums over them do not depend on the order of the cases. */
    private static SortedMap<Seen, Integer> counted(List<CaseWork.Use> uses) {
        SortedMap<Seen, Integer> counted = new TreeMap<>();
        for (CaseWork.Use use : uses) {
            use.causeId()
                    .ifPresent(causeId -> use.findings()
                            .forEach(f -> counted.merge(new Seen(causeId, f.symptomId(), f.state()), 1, Integer::sum)));
        }
        return counted;
    }

    private double[] given(String causeId, Symptom symptom) {
        double[] usual = symptom.states().stream().mapToDouble(State::usual).toArray();
        return knowledge.cause(causeId).stream()
                .flatMap(c -> c.shows().stream())
                .filter(link -> link.symptomId().equals(symptom.id()))
                .findFirst()
                .map(link -> symptom.states().stream()
                        .mapToDouble(x -> link.states().getOrDefault(x.id(), 0.0))
                        .toArray())
                .orElse(usual);
    }

    /** Chance that a fix cures a cause: the pack's opinion, updated by the trials in which that cause stood. */
    double works(String causeId, Remedy remedy) {
        double worked = 0;
        double tried = 0;
        for (CaseWork.Trial trial : byFix.getOrDefault(remedy.fixId(), List.of())) {
            if (trial.causeId().equals(causeId) && trial.causeStood()) {
                tried++;
                worked += trial.result() == TriedFix.Result.HELPED ? 1 : 0;
            }
        }
        return (remedy.works() * remedy.cases() + worked) / (remedy.cases() + tried);
    }

    /**
     * Per cause that one of these fixes could cure, the chance that all of them would have failed on it.
     *
     * @see org.benchlore.kb.ranking.RankingQuery#tried
     */
    public SortedMap<String, Double> tried(Collection<String> fixIds) {
        SortedMap<String, Double> failed = new TreeMap<>();
        for (String fixId : new TreeSet<>(fixIds)) {
            for (Cause cause : knowledge.causesFixedBy(fixId)) {
                for (Remedy remedy : cause.fixedBy()) {
                    if (remedy.fixId().equals(fixId)) {
                        failed.merge(cause.id(), 1 - works(cause.id(), remedy), (a, b) -> a * b);
                    }
                }
            }
        }
        return failed;
    }

    /** Chance that a fix leaves the unit worse: the pack's figure, updated by every trial. */
    double worsens(Fix fix) {
        List<CaseWork.Trial> of = byFix.getOrDefault(fix.id(), List.of());
        return (fix.makesWorse() * WORSE_CASES + count(of, TriedFix.Result.MADE_WORSE)) / (WORSE_CASES + of.size());
    }

    private static int count(List<CaseWork.Trial> trials, TriedFix.Result result) {
        return (int) trials.stream().filter(t -> t.result() == result).count();
    }

    /**
     * The record of each fix that was tried, the most tried first, then by id.
     *
     * @param scope only units within it
     * @param origin only cases of this bench, such as "bench" for one's own; empty for all
     */
    public List<FixRecord> fixes(DeviceScope scope, Optional<String> origin) {
        Map<String, List<CaseWork.Trial>> within = new TreeMap<>();
        for (CaseWork.Trial trial : trials) {
            if (scope.contains(trial.scope())
                    && origin.map(trial.origin()::equals).orElse(true)) {
                within.computeIfAbsent(trial.fixId(), id -> new ArrayList<>()).add(trial);
            }
        }
        return within.entrySet().stream()
                .map(e -> record(e.getKey(), e.getValue()))
                .sorted((a, b) -> a.tried() != b.tried()
                        ? Integer.compare(b.tried(), a.tried())
                        : a.fixId().compareTo(b.fixId()))
                .toList();
    }

    /** The record of one fix, tried or not. */
    public FixRecord fix(String fixId) {
        return record(fixId, byFix.getOrDefault(fixId, List.of()));
    }

    /**
     * The proof of a fix.
     *
     * @param confidence asked for, in (0,1)
     * @param notCured probability before the run that the fix did not cure; empty for the fix's record, else ½
     * @throws IllegalArgumentException if a number is out of range
     */
    public ProofPlan proof(ProofRecord known, double confidence, Optional<Double> notCured) {
        double prior = notCured.or(
                        () -> known.fixId().map(id -> 1 - fix(id).believed().mean()))
                .orElse(0.5);
        return ProofPlan.of(
                known,
                confidence,
                prior,
                known.fixId().flatMap(knowledge::fix).map(Fix::verify).orElse(List.of()));
    }

    private FixRecord record(String fixId, List<CaseWork.Trial> of) {
        int n = of.size();
        int worked = count(of, TriedFix.Result.HELPED);
        int back = count(of, TriedFix.Result.CAME_BACK);
        int worse = count(of, TriedFix.Result.MADE_WORSE);
        List<Remedy> named = knowledge.causesFixedBy(fixId).stream()
                .flatMap(c -> c.fixedBy().stream())
                .filter(r -> r.fixId().equals(fixId))
                .toList();
        double opinion = named.stream().mapToDouble(Remedy::works).average().orElse(0.5);
        double cases = named.stream().mapToDouble(Remedy::cases).average().orElse(FixRecord.OPINION_CASES);
        double packWorse = knowledge.fix(fixId).map(Fix::makesWorse).orElse(0.05);
        return new FixRecord(
                fixId,
                n,
                worked,
                back,
                worse,
                Rate.jeffreys(worked, n),
                Rate.jeffreys(back, worked + back),
                Rate.jeffreys(worse, n),
                named.isEmpty() ? Optional.empty() : Optional.of(opinion),
                Rate.believed(opinion, cases, worked, n),
                Rate.believed(packWorse, WORSE_CASES, worse, n),
                knowledge.fix(fixId).map(Fix::minutes).orElse(0.0),
                median(of.stream().map(CaseWork.Trial::minutes).toList(), 1));
    }
}
