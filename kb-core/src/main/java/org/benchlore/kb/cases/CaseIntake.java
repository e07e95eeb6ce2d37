package org.benchlore.kb.cases;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Stores records in batches, each batch one durable transaction: of a record everything or nothing. A record that cannot
 * be stored is reported and stops nothing. For one thread and one use; several may fill one store at once.
 */
public final class CaseIntake {
    private static final int BATCH_EVENTS = 2000;

    private final CaseStore store;
    private final String source;
    private final String origin;
    private final List<CaseRecord> waiting = new ArrayList<>();
    private final List<ImportProblem> problems = new ArrayList<>();
    private int waitingEvents;
    private long moreProblems;
    private long openings;
    private long events;
    private long added;
    private long leftOut;
    private @Nullable ListenerException failed;

    /**
     * @param store where to
     * @param source how problems name where the records come from, usually the file
     * @param origin whose cases they are: {@link CaseHistory#OWN} for one's own, else a name for the other bench
     * @throws IllegalArgumentException if the origin is blank or longer than 80 characters
     */
    public CaseIntake(CaseStore store, String source, String origin) {
        if (origin.isBlank() || origin.length() > CaseEvent.Head.MAX_ID) {
            throw new IllegalArgumentException("origin '" + JsonFields.shown(origin) + "'; give a name of 1 to "
                    + CaseEvent.Head.MAX_ID + " characters");
        }
        this.store = store;
        this.source = source;
        this.origin = origin;
    }

    /**
     * Takes a record; it is stored by {@link #finish} at the latest.
     *
     * @throws StoreException if the store is in trouble; batches stored before stay
     */
    public void add(CaseRecord record) {
        List<CaseEvent> told = record.events().stream()
                .map(event -> EventCopies.fromOrigin(event, origin))
                .toList();
        waiting.add(new CaseRecord(record.line(), told, record.readFromWords()));
        waitingEvents += told.size();
        if (waitingEvents >= BATCH_EVENTS) {
            store();
        }
    }

    /** Counts a record whose case is stored already, without looking at it again. */
    public void known(CaseRecord record) {
        count(record);
    }

    /** Counts a case that the caller does not want stored. */
    public void leaveOut() {
        leftOut++;
    }

    /** Takes a problem found while reading. */
    public void report(ImportProblem problem) {
        if (problems.size() < ImportResult.MOST_PROBLEMS) {
            problems.add(problem);
        } else {
            moreProblems++;
        }
    }

    /** Counts problems that are told elsewhere. */
    public void reportMore(long more) {
        moreProblems += more;
    }

    /**
     * Stores what is waiting and says what was done.
     *
     * @throws ListenerException if a listener failed; every record is stored that can be
     */
    public ImportResult finish() {
        store();
        if (failed != null) {
            throw failed;
        }
        problems.sort(Comparator.comparingLong(ImportProblem::line));
        return new ImportResult(openings, events, added, events - added, leftOut, problems, moreProblems);
    }

    private void store() {
        List<EventTable.Appended> done;
        try {
            done = append();
        } catch (UnfitEventException e) {
            if (!waiting.removeIf(this::unfit)) {
                throw e;
            }
            done = append();
        }
        for (int i = 0; i < done.size(); i++) {
            settle(waiting.get(i), done.get(i));
        }
        waiting.clear();
        waitingEvents = 0;
    }

    private List<EventTable.Appended> append() {
        return store.appendGroups(
                waiting.stream()
                        .map(r -> new CaseStore.Group(r.events(), (recorded, given) -> same(recorded, given, r)))
                        .toList(),
                e -> failed = failed == null ? e : failed);
    }

    /** Whether a record holds an event that no store takes, which is reported then. */
    private boolean unfit(CaseRecord record) {
        try {
            record.events().forEach(EventTable::body);
            return false;
        } catch (UnfitEventException e) {
            BadLineException bad = BadLineException.of(e);
            report(new ImportProblem(source, record.line(), bad.what(), bad.remedy()));
            return true;
        }
    }

    private void settle(CaseRecord record, EventTable.Appended done) {
        EventTable.Conflict conflict = done.conflict();
        if (conflict != null) {
            report(new ImportProblem(
                    source,
                    record.line(),
                    EventConflictException.what(conflict.recorded(), conflict.given()),
                    EventConflictException.REMEDY));
            return;
        }
        count(record);
        added += done.added().size();
    }

    private void count(CaseRecord record) {
        events += record.events().size();
        openings += record.events().stream()
                .filter(CaseEvent.Opened.class::isInstance)
                .count();
    }

    /** An anonymised event and the full one are the same; the one that came first stays. */
    private static boolean same(CaseEvent recorded, CaseEvent given, CaseRecord record) {
        return CaseStore.sameButForOrigin(recorded, given)
                || (record.readFromWords().contains(given.head().eventId())
                        && CaseLineReader.sameButForReading(recorded, given))
                || CaseStore.sameButForOrigin(recorded, EventCopies.anonymous(given))
                || CaseStore.sameButForOrigin(EventCopies.anonymous(recorded), given);
    }
}
