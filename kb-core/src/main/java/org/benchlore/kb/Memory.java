package org.benchlore.kb;

import java.util.ArrayList;
import java.util.List;
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
 *
 * <p>Dependence between findings is learnt anew only when the number of ended cases passes a power of two, from the
 * earliest that many: a set that the cases alone decide, and one that rarely changes.
 */
final class Memory {
    /** Lessons learnt at a time, so that a replay of a long log does not keep them all. */
    private static final int BATCH = 4096;

    /** Fewer ended cases tell nothing of findings that travel together. */
    private static final int LEAST_TO_FIT = 32;

    /** More make the fit slow and no better. */
    private static final int MOST_TO_FIT = 2048;

    private final CaseStore store;
    private final Lessons lessons;
    private final RankingModel packs;
    private final Snapshot nothing;
    private volatile Snapshot snapshot;

    /**
     * What is known at a position.
     *
     * @param earliest not touched any more
     * @param fitted the lessons that dependence was learnt from
     */
    private record Snapshot(RankingModel model, long position, Earliest earliest, List<Lesson> fitted) {}

    private record Taught(Earliest.When when, Lesson lesson) {}

    Memory(CaseStore store, Knowledge knowledge, RankingSettings settings) {
        this(store, knowledge, settings, MOST_TO_FIT);
    }

    /** @param mostToFit ended cases to learn dependence from at most, a power of two */
    Memory(CaseStore store, Knowledge knowledge, RankingSettings settings, int mostToFit) {
        this.store = store;
        this.packs = RankingModel.of(knowledge, settings);
        this.lessons = new Lessons(knowledge, packs);
        this.nothing = new Snapshot(packs, 0, new Earliest(mostToFit), List.of());
        this.snapshot = nothing;
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
                .unlearn(taught(store.recordedOf(caseId), now.position()).map(Taught::lesson).stream()
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
        snapshot = fit(follow(nothing, store.position()));
    }

    private synchronized void catchUp() {
        long position = store.position();
        Snapshot next = follow(snapshot, position);
        // A replay learns each case once and takes none back, so that nothing can be lacking after it.
        snapshot = fit(next.earliest().lacks() ? follow(nothing, position) : next);
    }

    private Snapshot follow(Snapshot known, long position) {
        RankingModel model = known.model();
        Earliest earliest = known.earliest().copy();
        List<Lesson> gone = new ArrayList<>();
        List<Lesson> learnt = new ArrayList<>();
        for (String id : store.casesBetween(known.position(), position)) {
            List<CaseStore.Recorded> all = store.recordedOf(id);
            Optional<Taught> before = taught(all, known.position());
            Optional<Taught> after = taught(all, position);
            before.ifPresent(t -> {
                gone.add(t.lesson());
                earliest.remove(t.when());
            });
            after.ifPresent(t -> {
                learnt.add(t.lesson());
                earliest.add(t.when(), t.lesson());
            });
            if (gone.size() + learnt.size() >= BATCH) {
                model = model.unlearn(gone).learn(learnt);
                gone.clear();
                learnt.clear();
            }
        }
        return new Snapshot(model.unlearn(gone).learn(learnt), position, earliest, known.fitted());
    }

    private static Snapshot fit(Snapshot next) {
        List<Lesson> first = next.earliest().powerOfTwo(LEAST_TO_FIT);
        return first.equals(next.fitted())
                ? next
                : new Snapshot(next.model().fit(first), next.position(), next.earliest(), first);
    }

    private Optional<Taught> taught(List<CaseStore.Recorded> recorded, long upTo) {
        List<CaseEvent> events = recorded.stream()
                .filter(r -> r.position() <= upTo)
                .map(CaseStore.Recorded::event)
                .toList();
        return CaseHistory.fold(events)
                .flatMap(h -> lessons.of(h).map(lesson -> new Taught(new Earliest.When(h.openedAt(), h.id()), lesson)));
    }
}
