package org.benchlore.kb;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
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
 *
 * <p>Dependence between findings is learnt anew only when the number of ended cases passes a power of two, from the
 * earliest that many: a set that the cases alone decide, and one that rarely changes.
 */
final class Memory {
    private static final int PAGE = 20_000;

    /** Fewer ended cases tell nothing of findings that travel together. */
    private static final int LEAST_TO_FIT = 32;

    /** More make the fit slow and no better. */
    private static final int MOST_TO_FIT = 2048;

    private final CaseStore store;
    private final Lessons lessons;
    private final RankingModel packs;
    private volatile Snapshot snapshot;

    /** The earliest lessons, at most {@link #MOST_TO_FIT}. */
    private final TreeMap<When, Lesson> earliest = new TreeMap<>();

    /** Whether lessons were dropped from {@link #earliest} for want of room. */
    private boolean overflowed;

    private List<Lesson> fitted = List.of();

    private record Snapshot(RankingModel model, long position) {}

    private record When(Instant openedAt, String caseId) implements Comparable<When> {
        private static final Comparator<When> ORDER =
                Comparator.comparing(When::openedAt).thenComparing(When::caseId);

        @Override
        public int compareTo(When other) {
            return ORDER.compare(this, other);
        }
    }

    private record Taught(When when, Lesson lesson) {}

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

    /** The model of everything recorded so far but what one case taught; dependence, fitted to many cases, stays. */
    RankingModel without(String caseId) {
        current();
        Snapshot now = snapshot;
        return now.model()
                .unlearn(taught(recordedUpTo(now.position(), caseId)).map(Taught::lesson).stream()
                        .toList());
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
        earliest.clear();
        overflowed = false;
        fitted = List.of();
        catchUp();
    }

    private synchronized void catchUp() {
        Snapshot now = snapshot;
        boolean gap = false;
        for (List<CaseStore.Recorded> page = after(now); !page.isEmpty(); page = after(now)) {
            Snapshot old = now;
            List<Lesson> gone = new ArrayList<>();
            List<Lesson> learnt = new ArrayList<>();
            for (Map.Entry<String, List<CaseEvent>> touched : byCase(page).entrySet()) {
                List<CaseEvent> events =
                        old.position() == 0 ? new ArrayList<>() : recordedUpTo(old.position(), touched.getKey());
                Optional<Taught> before = taught(events);
                events.addAll(touched.getValue());
                Optional<Taught> after = taught(events);
                before.ifPresent(t -> gone.add(t.lesson()));
                after.ifPresent(t -> learnt.add(t.lesson()));
                gap |= before.isPresent() && earliest.remove(before.get().when()) != null && overflowed;
                after.ifPresent(this::keep);
            }
            long position = page.get(page.size() - 1).position();
            now = new Snapshot(old.model().unlearn(gone).learn(learnt), position);
        }
        if (gap) {
            rebuild();
        } else {
            snapshot = new Snapshot(fit(now.model()), now.position());
        }
    }

    private List<CaseStore.Recorded> after(Snapshot now) {
        return store.eventsAfter(now.position(), PAGE);
    }

    private void keep(Taught taught) {
        earliest.put(taught.when(), taught.lesson());
        if (earliest.size() > MOST_TO_FIT) {
            earliest.pollLastEntry();
            overflowed = true;
        }
    }

    private RankingModel fit(RankingModel model) {
        int due = earliest.size() < LEAST_TO_FIT ? 0 : Integer.highestOneBit(earliest.size());
        List<Lesson> first = earliest.values().stream().limit(due).toList();
        if (first.equals(fitted)) {
            return model;
        }
        fitted = first;
        return model.fit(first);
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
        List<CaseEvent> events = new ArrayList<>();
        for (CaseStore.Recorded recorded : store.recordedOf(caseId)) {
            if (recorded.position() <= position) {
                events.add(recorded.event());
            }
        }
        return events;
    }

    private Optional<Taught> taught(List<CaseEvent> events) {
        if (events.isEmpty()) {
            return Optional.empty();
        }
        return CaseHistory.fold(events)
                .flatMap(h -> lessons.of(h).map(lesson -> new Taught(new When(h.openedAt(), h.id()), lesson)));
    }
}
