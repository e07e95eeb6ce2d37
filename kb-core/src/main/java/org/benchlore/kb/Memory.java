package org.benchlore.kb;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.Lesson;
import org.benchlore.kb.ranking.Lessons;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingSettings;

/**
 * Follows the store and keeps the ranking model that its events make. What a touched case taught before is taken back
 * exactly and what it teaches now is added, so the model is that of the events up to its position, whatever the steps in
 * which they came. Readers take the current model without a lock; whoever finds new events catches up for all.
 */
final class Memory {
    private static final int PAGE = 20_000;

    private final CaseStore store;
    private final Lessons lessons;
    private final RankingModel packs;
    private volatile Snapshot snapshot;

    private record Snapshot(RankingModel model, long position) {}

    Memory(CaseStore store, Knowledge knowledge, RankingSettings settings) {
        this.store = store;
        this.packs = RankingModel.of(knowledge, settings);
        this.lessons = new Lessons(knowledge, packs);
        this.snapshot = new Snapshot(packs, 0);
    }

    /** The model of everything recorded so far, by this process or another. */
    RankingModel current() {
        if (store.position() != snapshot.position()) {
            catchUp();
        }
        return snapshot.model();
    }

    /** The packs' opinion alone. */
    RankingModel packs() {
        return packs;
    }

    /** What cases teach. */
    Lessons lessons() {
        return lessons;
    }

    /** Forgets what was derived and derives it again. */
    synchronized void rebuild() {
        snapshot = new Snapshot(packs, 0);
        catchUp();
    }

    private synchronized void catchUp() {
        while (true) {
            Snapshot old = snapshot;
            List<CaseStore.Recorded> page = store.eventsAfter(old.position(), PAGE);
            if (page.isEmpty()) {
                return;
            }
            long position = page.get(page.size() - 1).position();
            List<Lesson> gone = new ArrayList<>();
            List<Lesson> learnt = new ArrayList<>();
            byCase(page).forEach((id, fresh) -> {
                List<CaseEvent> before = old.position() == 0 ? List.of() : recordedUpTo(old.position(), id);
                lesson(before).ifPresent(gone::add);
                List<CaseEvent> after = new ArrayList<>(before);
                after.addAll(fresh);
                lesson(after).ifPresent(learnt::add);
            });
            snapshot = new Snapshot(old.model().unlearn(gone).learn(learnt), position);
        }
    }

    private static Map<String, List<CaseEvent>> byCase(List<CaseStore.Recorded> page) {
        Map<String, List<CaseEvent>> byCase = new HashMap<>();
        for (CaseStore.Recorded recorded : page) {
            byCase.computeIfAbsent(recorded.event().head().caseId(), id -> new ArrayList<>())
                    .add(recorded.event());
        }
        return byCase;
    }

    private List<CaseEvent> recordedUpTo(long position, String caseId) {
        return store.recordedOf(caseId).stream()
                .filter(r -> r.position() <= position)
                .map(CaseStore.Recorded::event)
                .toList();
    }

    private Optional<Lesson> lesson(List<CaseEvent> events) {
        return events.isEmpty() ? Optional.empty() : CaseHistory.fold(events).flatMap(lessons::of);
    }
}
