package org.benchlore.kb.planning;

import com.google.common.collect.Multiset;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.cases.TriedFix;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Remedy;

/**
 * What the cases teach about fixes and tests: how often they work, how often they read wrong, how long they take. A pure
 * function of the packs and the cases. Immutable and thread-safe.
 */
public final class BenchRecord {
    /** How often two fixes of one cause work on the same part; of the packs' causes with several, about four in five. */
    private static final double SAME_PART = 0.8;

    /** Cases that the packs' figure for making it worse is worth; our choice. */
    private static final double WORSE_CASES = 20;

    private final Knowledge knowledge;
    private final Map<String, FixTally> fixes;
    private final Map<String, TestTally> tests;

    private BenchRecord(Knowledge knowledge, Map<String, FixTally> fixes, Map<String, TestTally> tests) {
        this.knowledge = knowledge;
        this.fixes = fixes;
        this.tests = tests;
    }

    /** The packs' opinion alone. */
    public static BenchRecord none(Knowledge knowledge) {
        return new BenchRecord(knowledge, Map.of(), Map.of());
    }

    /** What cases teach beside what is known; their order is of no consequence. */
    public BenchRecord learn(Collection<CaseWork> cases) {
        return changed(cases, true);
    }

    /**
     * Exactly what would be known without these cases.
     *
     * @throws IllegalArgumentException if one of them was never learnt
     */
    public BenchRecord unlearn(Collection<CaseWork> cases) {
        return changed(cases, false);
    }

    /** Makes anew what the fixes and tests of these cases come to; all others are shared with the old record. */
    private BenchRecord changed(Collection<CaseWork> cases, boolean learnt) {
        Map<String, Multiset<CaseWork.Trial>> trials = new HashMap<>();
        Map<String, Multiset<CaseWork.Use>> uses = new HashMap<>();
        for (CaseWork work : cases) {
            work.fixes()
                    .forEach(t -> change(
                            trials.computeIfAbsent(t.fixId(), id -> tally(id).trials()), t, learnt));
            work.tests()
                    .forEach(u -> change(
                            uses.computeIfAbsent(
                                    u.testId(),
                                    id -> tests.getOrDefault(id, TestTally.NONE).uses()),
                            u,
                            learnt));
        }
        if (trials.isEmpty() && uses.isEmpty()) {
            return this;
        }
        Map<String, FixTally> changedFixes = new HashMap<>(fixes);
        trials.forEach((id, of) -> changedFixes.put(id, new FixTally(of)));
        Map<String, TestTally> changedTests = new HashMap<>(tests);
        uses.forEach((id, of) -> changedTests.put(id, TestTally.of(id, of, knowledge)));
        return new BenchRecord(knowledge, changedFixes, changedTests);
    }

    private static <T> void change(Multiset<T> done, T what, boolean learnt) {
        if (learnt) {
            done.add(what);
        } else if (!done.remove(what)) {
            throw new IllegalArgumentException("was never learnt: " + what);
        }
    }

    private FixTally tally(String fixId) {
        return fixes.getOrDefault(fixId, FixTally.NONE);
    }

    /** Bench time of a test: the median where at least three times were kept, else the pack's. */
    public double testMinutes(BenchTest test) {
        return tests.getOrDefault(test.id(), TestTally.NONE).minutes().orElse(test.minutes());
    }

    /** Bench time of a fix: the median where at least three times were kept, else the pack's. */
    public double fixMinutes(Fix fix) {
        return tally(fix.id()).minutes().orElse(fix.minutes());
    }

    /** How often a test reads wrong, learnt from the cases that proved a cause. */
    public TestErrors errors(BenchTest test) {
        return tests.getOrDefault(test.id(), TestTally.NONE).errors().orElse(TestErrors.of(test));
    }

    /** Chance that a fix cures a cause: the pack's opinion, updated by the trials in which that cause stood. */
    double works(String causeId, Remedy remedy) {
        FixTally of = tally(remedy.fixId());
        return (remedy.works() * remedy.cases() + of.cured(causeId)) / (remedy.cases() + of.stood(causeId));
    }

    /**
     * Chance that a fix cures a cause on which others failed. Mostly fixes of one cause work on one part, and one that works
     * less often only where the other would: where a new relay did not help, cleaning the old one would not have either.
     */
    double works(Cause cause, Remedy remedy, Collection<String> failedFixes) {
        Failure failed = failure(cause, failedFixes);
        return 1 - failed.and(works(cause.id(), remedy)).chance() / failed.chance();
    }

    private Failure failure(Cause cause, Collection<String> fixIds) {
        Failure failed = Failure.NONE;
        for (Remedy remedy : cause.fixedBy()) {
            if (fixIds.contains(remedy.fixId())) {
                failed = failed.and(works(cause.id(), remedy));
            }
        }
        return failed;
    }

    /**
     * That fixes of one cause fail together.
     *
     * @param best how often the one works that works most often
     * @param apart chance that all fail, each working on a part of its own
     */
    private record Failure(double best, double apart) {
        static final Failure NONE = new Failure(0, 1);

        Failure and(double works) {
            return new Failure(Math.max(best, works), apart * (1 - works));
        }

        double chance() {
            return SAME_PART * (1 - best) + (1 - SAME_PART) * apart;
        }
    }

    /**
     * Per cause that one of these fixes could cure, the chance that all of them would have failed on it, as in {@link
     * #works(Cause, Remedy, Collection)}.
     *
     * @see org.benchlore.kb.ranking.RankingQuery#tried
     */
    public SortedMap<String, Double> tried(Collection<String> fixIds) {
        SortedMap<String, Double> failed = new TreeMap<>();
        for (String fixId : fixIds) {
            for (Cause cause : knowledge.causesFixedBy(fixId)) {
                failed.computeIfAbsent(cause.id(), id -> failure(cause, fixIds).chance());
            }
        }
        return failed;
    }

    /** Chance that a fix leaves the unit worse: the pack's figure, updated by every trial. */
    double worsens(Fix fix) {
        FixTally of = tally(fix.id());
        return (fix.makesWorse() * WORSE_CASES + of.count(TriedFix.Result.MADE_WORSE)) / (WORSE_CASES + of.tried());
    }

    /**
     * The record of each fix that was tried, the most tried first, then by id.
     *
     * @param scope only units within it
     * @param origin only cases of this bench, such as "bench" for one's own; empty for all
     */
    public List<FixRecord> fixes(DeviceScope scope, Optional<String> origin) {
        return fixes.entrySet().stream()
                .map(e -> record(
                        e.getKey(),
                        e.getValue()
                                .only(t -> scope.contains(t.scope())
                                        && origin.map(t.origin()::equals).orElse(true))))
                .filter(record -> record.tried() > 0)
                .sorted(Comparator.comparingInt(FixRecord::tried).reversed().thenComparing(FixRecord::fixId))
                .toList();
    }

    /** The record of one fix, tried or not. */
    public FixRecord fix(String fixId) {
        return record(fixId, tally(fixId));
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

    private FixRecord record(String fixId, FixTally of) {
        int n = of.tried();
        int worked = of.count(TriedFix.Result.HELPED);
        int back = of.count(TriedFix.Result.CAME_BACK);
        int worse = of.count(TriedFix.Result.MADE_WORSE);
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
                of.medianMinutes(1));
    }
}
