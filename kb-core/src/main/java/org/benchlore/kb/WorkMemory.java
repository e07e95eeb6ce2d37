package org.benchlore.kb;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.BenchRecord;
import org.benchlore.kb.planning.CaseWork;
import org.benchlore.kb.planning.TestPlanner;
import org.benchlore.kb.ranking.RankingModel;
import org.jspecify.annotations.Nullable;

/** Follows the store and keeps what was done in each case, and the planner made of it. As {@link Memory} for rankings. */
final class WorkMemory {
    private static final int PAGE = 20_000;

    private final CaseStore store;
    private final Knowledge knowledge;
    private final Map<String, CaseWork> byCase = new HashMap<>();
    private volatile Snapshot snapshot;

    private record Snapshot(
            BenchRecord record,
            long position,
            @Nullable RankingModel model,
            @Nullable TestPlanner planner) {}

    WorkMemory(CaseStore store, Knowledge knowledge) {
        this.store = store;
        this.knowledge = knowledge;
        this.snapshot = new Snapshot(BenchRecord.none(knowledge), 0, null, null);
    }

    /** The record of everything stored so far. */
    BenchRecord current() {
        if (store.position() != snapshot.position()) {
            catchUp();
        }
        return snapshot.record();
    }

    /** The record of everything stored so far but one case. */
    BenchRecord without(String caseId) {
        current();
        synchronized (this) {
            return byCase.containsKey(caseId)
                    ? BenchRecord.of(
                            knowledge,
                            byCase.entrySet().stream()
                                    .filter(e -> !e.getKey().equals(caseId))
                                    .map(Map.Entry::getValue)
                                    .toList())
                    : snapshot.record();
        }
    }

    /** A planner over a model and the record. */
    TestPlanner planner(RankingModel model) {
        BenchRecord record = current();
        Snapshot now = snapshot;
        TestPlanner planner = now.planner();
        if (planner == null || now.model() != model) {
            planner = new TestPlanner(knowledge, model, record);
            keep(now, model, planner);
        }
        return planner;
    }

    private synchronized void keep(Snapshot seen, RankingModel model, TestPlanner planner) {
        if (snapshot.position() == seen.position()) {
            snapshot = new Snapshot(seen.record(), seen.position(), model, planner);
        }
    }

    synchronized void rebuild() {
        byCase.clear();
        snapshot = new Snapshot(BenchRecord.none(knowledge), 0, null, null);
        catchUp();
    }

    private synchronized void catchUp() {
        long position = snapshot.position();
        Set<String> touched = new HashSet<>();
        while (true) {
            List<CaseStore.Recorded> page = store.eventsAfter(position, PAGE);
            if (page.isEmpty()) {
                break;
            }
            position = page.get(page.size() - 1).position();
            page.forEach(r -> touched.add(r.event().head().caseId()));
        }
        if (touched.isEmpty()) {
            return;
        }
        for (String id : touched) {
            store.history(id).ifPresent(history -> byCase.put(id, CaseWork.of(history)));
        }
        snapshot = new Snapshot(BenchRecord.of(knowledge, byCase.values()), position, null, null);
    }
}
