package org.benchlore.kb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.BenchRecord;
import org.benchlore.kb.planning.CaseWork;
import org.benchlore.kb.ranking.Lesson;
import org.benchlore.kb.ranking.Lessons;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;

/**
 * Follows the store and keeps what its events teach: the ranking model, and what was done in each case. What a touched
 * case taught before is taken back exactly and what it teaches now is added, so a snapshot is that of the events up to its
 * position, whatever the steps in which they came. Readers take the current one without a lock; whoever finds new events
 * catches up for all.
 *
 * <p>Dependence between findings is learnt anew only when the number of ended cases passes a power of two, from the
 * earliest that many: a set that the cases alone decide, and one that rarely changes.
 */
final class Memory {
    /** Cases learnt at a time, so that a replay of a long log does not keep what they teach. */
    private static final int BATCH = 4096;

    private final CaseStore store;
    private final Knowledge knowledge;
    private final Lessons lessons;
    private final Lore nothing;
    private volatile Lore lore;

    private record Taught(Earliest.When when, Lesson lesson) {}

    Memory(CaseStore store, Knowledge knowledge, RankingSettings settings) {
        this(store, knowledge, settings, RankingModel.MOST_TO_FIT);
    }

    /** @param mostToFit ended cases to learn dependence from at most, a power of two */
    Memory(CaseStore store, Knowledge knowledge, RankingSettings settings, int mostToFit) {
        this.store = store;
        this.knowledge = knowledge;
        RankingModel packs = RankingModel.of(knowledge, settings);
        this.lessons = new Lessons(knowledge, packs);
        this.nothing = new Lore(knowledge, 0, packs, new Earliest(mostToFit), List.of(), BenchRecord.none(knowledge));
        this.lore = nothing;
    }

    /** Everything recorded so far, by this process or another. */
    Lore current() {
        if (store.position() != lore.position()) {
            catchUp();
        }
        return lore;
    }

    /** Everything recorded so far but what the case that the query is about taught. */
    Lore about(RankingQuery query) {
        return query.about().isEmpty() ? current() : without(query.about());
    }

    /** Everything recorded so far but what one case taught; dependence, fitted to many cases, stays. */
    Lore without(String caseId) {
        Lore now = current();
        Optional<CaseHistory> told = history(caseId, now);
        Optional<Lesson> taught = told.flatMap(lessons::of);
        BenchRecord others = told.map(history -> now.record().unlearn(List.of(CaseWork.of(history))))
                .orElse(now.record());
        return taught.isEmpty() && others.equals(now.record())
                ? now
                : new Lore(
                        knowledge,
                        now.position(),
                        taught.map(lesson -> now.model().unlearn(List.of(lesson)))
                                .orElse(now.model()),
                        now.earliest(),
                        now.fitted(),
                        others);
    }

    /** What a case had taught by then; empty if nothing. */
    Optional<Lesson> lesson(String caseId, Lore then) {
        return history(caseId, then).flatMap(lessons::of);
    }

    /** A case as it stood by then. */
    Optional<CaseHistory> history(String caseId, Lore then) {
        return told(store.recordedOf(caseId), then.position());
    }

    /** The packs' opinion alone. */
    RankingModel packs() {
        return nothing.model();
    }

    /** Forgets what was derived and derives it again. */
    synchronized void rebuild() {
        lore = fit(follow(nothing, store.position()));
    }

    private synchronized void catchUp() {
        long position = store.position();
        if (position == lore.position()) {
            return; // another thread was first
        }
        Lore next = follow(lore, position);
        // A replay learns each case once and takes none back, so that nothing can be lacking after it.
        lore = fit(next.earliest().lacks() ? follow(nothing, position) : next);
    }

    private Lore follow(Lore known, long position) {
        RankingModel model = known.model();
        Earliest earliest = known.earliest().copy();
        BenchRecord record = known.record();
        List<Lesson> gone = new ArrayList<>();
        List<Lesson> learnt = new ArrayList<>();
        List<CaseWork> undone = new ArrayList<>();
        List<CaseWork> done = new ArrayList<>();
        for (String id : store.casesBetween(known.position(), position)) {
            List<CaseStore.Recorded> all = store.recordedOf(id);
            Optional<CaseHistory> before = told(all, known.position());
            Optional<CaseHistory> now = told(all, position);
            before.flatMap(this::taught).ifPresent(t -> {
                gone.add(t.lesson());
                earliest.remove(t.when());
            });
            now.flatMap(this::taught).ifPresent(t -> {
                learnt.add(t.lesson());
                earliest.add(t.when(), t.lesson());
            });
            before.map(CaseWork::of).ifPresent(undone::add);
            now.map(CaseWork::of).ifPresent(done::add);
            if (undone.size() + done.size() >= BATCH) {
                model = model.unlearn(gone).learn(learnt);
                record = record.unlearn(undone).learn(done);
                List.of(gone, learnt, undone, done).forEach(List::clear);
            }
        }
        return new Lore(
                knowledge,
                position,
                model.unlearn(gone).learn(learnt),
                earliest,
                known.fitted(),
                record.unlearn(undone).learn(done));
    }

    private Lore fit(Lore next) {
        List<Lesson> first = next.earliest().powerOfTwo(RankingModel.LEAST_TO_FIT);
        return first.equals(next.fitted())
                ? next
                : new Lore(knowledge, next.position(), next.model().fit(first), next.earliest(), first, next.record());
    }

    private static Optional<CaseHistory> told(List<CaseStore.Recorded> recorded, long upTo) {
        List<CaseEvent> events = recorded.stream()
                .filter(r -> r.position() <= upTo)
                .map(CaseStore.Recorded::event)
                .toList();
        return CaseHistory.fold(events);
    }

    private Optional<Taught> taught(CaseHistory history) {
        return lessons.of(history)
                .map(lesson -> new Taught(new Earliest.When(history.openedAt(), history.id()), lesson));
    }
}
