package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.cases.Stakes;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Reading;

/**
 * Chooses the next test and plans the repair over one snapshot of packs and cases. Immutable and thread-safe.
 *
 * <p>The information of a test is the mutual information, in bits, between the cause and what the test will read (Shannon
 * 1948; Lindley, Annals of Mathematical Statistics 27, 1956), with the test's own errors in it. Its value is by how much it
 * lowers the expected minutes of repair (Howard, IEEE Transactions on Systems Science and Cybernetics 2, 1966, for the value
 * of information; {@code Trouble} for the cost of repair). A test that reads several symptoms is worth what they tell
 * together, each independent of the others given the cause.
 */
public final class TestPlanner {
    private static final int SHIFTS = 3;

    /** Device scopes kept ready; beyond this the tables are made anew. */
    private static final int MAX_SCOPES = 64;

    private final Knowledge knowledge;
    private final RankingModel model;
    private final BenchRecord record;
    private final Map<DeviceScope, List<TestReadings>> readings = new ConcurrentHashMap<>();

    /** Plans by the packs' figures for tests and fixes. */
    public TestPlanner(Knowledge knowledge, RankingModel model) {
        this(knowledge, model, BenchRecord.none(knowledge));
    }

    /** Plans over one snapshot. */
    public TestPlanner(Knowledge knowledge, RankingModel model, BenchRecord record) {
        this.knowledge = knowledge;
        this.model = model;
        this.record = record;
    }

    /**
     * What to do now: tests by what they save per minute, the fix to try otherwise, and whether to stop testing.
     *
     * @param query what is known so far
     */
    public NextStep next(RankingQuery query, BenchConditions conditions) {
        Situation now = situation(query, conditions);
        return next(now, now.hold());
    }

    /** What forbids power now, and what lifts it; empty where the unit may be powered. */
    public Optional<PowerHold> hold(RankingQuery query, BenchConditions conditions) {
        return situation(query, conditions).hold();
    }

    private NextStep next(Situation now, Optional<PowerHold> hold) {
        Optional<String> safeTest = hold.flatMap(PowerHold::firstTest);
        List<TestReadings.Open> close = closeWith(now, safeTest);
        Trouble trouble = now.trouble(close);
        Lookahead step = new Lookahead(trouble, 1, 1);
        Trouble.Order repair = trouble.greedyOrder(now.weights, 0);
        List<TestProposal> proposals = new ArrayList<>(close.size());
        for (int t = 0; t < close.size(); t++) {
            TestReadings.Open open = close.get(t);
            double minutes = open.of.minutes;
            double opening = trouble.openingOf(trouble.probes.get(t), 0);
            double net = repair.cost() - step.oneStep(t, now.weights, 0);
            double bits = open.nats / Math.log(2);
            proposals.add(new TestProposal(
                    open.of.test,
                    minutes,
                    opening,
                    bits,
                    bits / open.time,
                    Math.max(0, net + minutes + opening),
                    Math.max(0, net / open.time + 1),
                    results(now, open)));
        }
        proposals.sort(Comparator.comparingDouble(TestProposal::savingPerMinute)
                .thenComparing(TestProposal::bitsPerMinute)
                .reversed()
                .thenComparing(p -> p.test().id()));
        safeTest.ifPresent(
                id -> proposals.sort(Comparator.comparing(p -> !p.test().id().equals(id))));
        List<Integer> order = now.held() ? now.safeRepairs(trouble) : repair.repairs();
        Optional<NextStep.FixChoice> first =
                order.stream().findFirst().map(r -> now.choice(trouble, r, now.weights, 0));
        boolean sure = hold.flatMap(PowerHold::firstFix).isPresent() && now.plainlySafe(order);
        boolean stop = sure || (safeTest.isEmpty() && proposals.stream().noneMatch(p -> p.netMinutes() > 0));
        return new NextStep(proposals, first, repair.cost(), stop, now.withheld, hold);
    }

    /** The tests worth a closer look, and the one that may make the unit safe. */
    private static List<TestReadings.Open> closeWith(Situation now, Optional<String> safeTest) {
        List<TestReadings.Open> close = now.close();
        Optional<TestReadings.Open> left = safeTest.filter(
                        id -> close.stream().noneMatch(o -> o.of.test.id().equals(id)))
                .flatMap(now::test);
        return Stream.concat(close.stream(), left.stream()).toList();
    }

    /** The whole plan as a decision tree, with its cost beside simpler ways. */
    public Plan plan(RankingQuery query, BenchConditions conditions) {
        Situation now = situation(query, conditions);
        Optional<PowerHold> hold = now.hold();
        PlanMaker maker = new PlanMaker(knowledge, now, closeWith(now, hold.flatMap(PowerHold::firstTest)));
        return hold.isEmpty() ? maker.plan() : maker.unpowered(hold.get(), next(now, hold));
    }

    /**
     * Whether to touch a unit. Success is the chance that the fix cures what the ranking expects, by pack and record; its
     * interval is the fix record's, scaled to that.
     *
     * @param query what is known; where nothing of it tells of a fault the unit works, and success is the fix's record alone
     * @throws IllegalArgumentException if the packs have no such fix
     */
    public Worth worth(RankingQuery query, String fixId, Stakes stakes) {
        Fix fix = knowledge.fix(fixId).orElseThrow(() -> knowledge.unknown(EntryKind.FIX, fixId));
        double[] p = model.probabilities(query);
        List<Cause> causes = List.copyOf(knowledge.causes());
        double cures = 0;
        for (int c = 0; c < causes.size(); c++) {
            for (Remedy remedy : causes.get(c).fixedBy()) {
                cures += remedy.fixId().equals(fixId)
                        ? p[c] * record.works(causes.get(c).id(), remedy)
                        : 0;
            }
        }
        double worse = record.worsens(fix);
        Rate believed = record.fix(fixId).believed();
        double success = Math.min(model.tells(query) ? cures : believed.mean(), 1 - worse);
        double scale = success / believed.mean();
        return Worth.of(
                stakes,
                new Rate(success, Math.min(success, believed.low() * scale), Math.min(1, believed.high() * scale)),
                worse);
    }

    /**
     * Whether a unit lies open after these events: a test or fix that needs it open was done, and nothing ended since but in
     * vain.
     */
    public boolean opened(List<CaseEvent> events) {
        boolean open = false;
        for (CaseEvent event : events) {
            if (event instanceof CaseEvent.Tested tested) {
                open |= knowledge.test(tested.testId()).map(BenchTest::opens).orElse(false);
            } else if (event instanceof CaseEvent.FixApplied fix) {
                open |= knowledge.fix(fix.fixId()).map(Fix::opens).orElse(false);
            } else if (event instanceof CaseEvent.Ended ended) {
                open &= ended.outcome() == Outcome.NOT_FIXED;
            }
        }
        return open;
    }

    /**
     * Ids of the rules that forbade power ({@link org.benchlore.kb.knowledge.PowerOff}) until a fix in these events lifted
     * them, or a note that tells of one; for {@link BenchConditions#madeSafe}. What was seen again since forbids it again.
     *
     * @param read what a text of the case says, read in the case's scope; empty for one that cannot be read
     */
    public List<String> madeSafe(List<CaseEvent> events, Function<String, Optional<Reading>> read) {
        return Standing.madeSafe(knowledge, events, read);
    }

    /** Ids of the rules whose remedy a note tells of, behind what it says against power; for {@link BenchConditions#madeSafe}. */
    public List<String> madeSafe(Reading reading) {
        return Standing.madeSafe(knowledge, reading);
    }

    Situation situation(RankingQuery query, BenchConditions conditions) {
        RankingQuery known =
                conditions.failedFixes().isEmpty() ? query : query.tried(record.tried(conditions.failedFixes()));
        return new Situation(
                knowledge,
                model,
                record,
                readings(query.scope()),
                known,
                conditions,
                Standing.of(knowledge, query, conditions));
    }

    List<TestReadings> readings(DeviceScope scope) {
        List<TestReadings> known = readings.get(scope);
        if (known == null) {
            List<TestReadings> made = new ArrayList<>();
            for (BenchTest test : knowledge.tests()) {
                if (test.scope().contains(scope)) {
                    made.add(TestReadings.of(test, knowledge, record, id -> model.states(id, scope)));
                }
            }
            known = List.copyOf(made);
            if (readings.size() < MAX_SCOPES) {
                readings.put(scope, known);
            }
        }
        return known;
    }

    private static List<TestProposal.Result> results(Situation now, TestReadings.Open open) {
        List<TestProposal.Result> results = new ArrayList<>();
        for (TestReadings.Read read : open.reads) {
            for (int x = 0; x < read.given.length; x++) {
                String state = read.symptom.states().get(x).id();
                double p = TestReadings.dot(read.given[x], now.posterior);
                String means = open.of.test.readings().stream()
                        .filter(m -> m.symptomId().equals(read.symptom.id())
                                && m.stateId().equals(state))
                        .map(BenchTest.ReadingMeans::means)
                        .findFirst()
                        .orElse("");
                results.add(new TestProposal.Result(
                        read.symptom.id(), state, p, means, now.shifts(read.given[x], p, SHIFTS)));
            }
        }
        return results;
    }
}
