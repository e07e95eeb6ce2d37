package org.benchlore.kb.cases;

import static java.util.Objects.requireNonNull;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BiPredicate;
import java.util.function.Consumer;
import org.benchlore.kb.cases.StoreException.Trouble;
import org.jspecify.annotations.Nullable;

/**
 * The durable log of case events: what was acknowledged stays, through a crash of the process or of the machine.
 * Thread-safe; several processes may open one home, each sees what the others have recorded, and writers wait for each
 * other. Rows are never changed or removed: taking something back is an event too.
 *
 * <p>A home holds one file, {@value #FILE}, with its write-ahead log beside it while it is open. The home must be on a
 * local disk, since network file systems do not lock reliably. There are no background threads; close it once.
 *
 * <p>Every method throws {@link StoreException} when the store is in trouble, and {@link IllegalStateException} after
 * {@link #close}.
 */
public final class CaseStore implements AutoCloseable {
    /** Name of the database in its home. */
    public static final String FILE = "cases.db";

    /** How long a writer waits for other writers unless told otherwise. */
    public static final Duration PATIENCE = Duration.ofSeconds(10);

    /**
     * An event and its place in the log.
     *
     * @param position from 1, without gaps, in the order of recording in this store
     * @param event the event
     */
    public record Recorded(long position, CaseEvent event) {}

    private final String where;
    private final @Nullable EventTable writer;
    private final EventTable reader;
    private final ReentrantLock writing;
    private final ReentrantLock reading;
    private final List<Consumer<CaseEvent>> listeners = new CopyOnWriteArrayList<>();
    private boolean closed;

    CaseStore(String where, @Nullable EventTable writer, EventTable reader) {
        this.where = where;
        this.writer = writer;
        this.reader = reader;
        this.reading = new ReentrantLock();
        this.writing = writer == reader ? reading : new ReentrantLock();
    }

    /** Opens the store in a home for reading and writing, and makes it when there is none. Waits {@link #PATIENCE}. */
    public static CaseStore open(Path home) {
        return open(home, PATIENCE);
    }

    /**
     * Opens the store in a home for reading and writing, and makes it when there is none.
     *
     * @param home a directory on a local disk; made when missing
     * @param patience how long to wait for other writers before {@link Trouble#BUSY}; from 0
     */
    public static CaseStore open(Path home, Duration patience) {
        requireDirectory(home);
        return StoreOpening.forWriting(home.resolve(FILE), patience);
    }

    /**
     * Opens an existing store for reading; works while others write, and on media that cannot be written. There, if
     * nobody has it open, the store is taken to be at rest: what is recorded later is not seen.
     *
     * @throws StoreException with {@link Trouble#MISSING} if there is no store in the home
     */
    public static CaseStore openReadOnly(Path home) {
        requireDirectory(home);
        return StoreOpening.forReading(home.resolve(FILE));
    }

    /**
     * Does nothing where there is a directory or nothing; whether it may be written shows on opening.
     *
     * @throws StoreException with {@link Trouble#NO_ACCESS} if there is something else
     */
    public static void requireDirectory(Path home) {
        if (Files.exists(home) && !Files.isDirectory(home)) {
            throw new StoreException(
                    Trouble.NO_ACCESS,
                    home.toString(),
                    "is a file and no directory; choose another home, or move the file away",
                    null);
        }
    }

    /** A store in memory, gone when closed. */
    public static CaseStore inMemory() {
        return StoreOpening.inMemory();
    }

    /**
     * Records events in one transaction: all or none, durable when it returns. An event that is already recorded changes
     * nothing; where a bench got it from (its {@code origin}) does not make it another event.
     *
     * @return those that were new, in the order given
     * @throws EventConflictException if an id is already recorded, or given twice, with another body
     * @throws ListenerException if a listener failed; the events are recorded all the same
     * @throws IllegalArgumentException if an event would take more than 1 MiB, or a unit's tag or device scope more than
     *     200 characters
     * @throws StoreException with {@link Trouble#READ_ONLY} if opened for reading only
     */
    public List<Recorded> append(List<CaseEvent> events) {
        EventTable.Appended done = appendGroups(
                        List.of(new Group(events, CaseStore::sameButForOrigin)), CaseStore::fail)
                .get(0);
        EventTable.Conflict conflict = done.conflict();
        if (conflict != null) {
            throw new EventConflictException(where, conflict.recorded(), conflict.given());
        }
        return List.copyOf(done.added());
    }

    private static void fail(ListenerException failed) {
        throw failed;
    }

    static boolean sameButForOrigin(CaseEvent recorded, CaseEvent given) {
        return recorded.equals(given) || EventCopies.withoutOrigin(recorded).equals(EventCopies.withoutOrigin(given));
    }

    /** Events that are stored together or not at all, and what counts as the same event again. */
    record Group(List<CaseEvent> events, BiPredicate<CaseEvent, CaseEvent> same) {}

    /**
     * Records groups of events in one transaction; of a group with a conflict nothing, of the others everything.
     *
     * @param failed hears of it where a listener failed
     */
    List<EventTable.Appended> appendGroups(List<Group> groups, Consumer<ListenerException> failed) {
        EventTable table = writing();
        List<EventTable.Appended> all = locked(writing, () -> {
            List<EventTable.Appended> done = new ArrayList<>(groups.size());
            table.begin();
            try {
                for (Group group : groups) {
                    done.add(table.append(group.events(), group.same()));
                }
                table.commit();
                return done;
            } catch (SQLException | RuntimeException | Error e) {
                table.rollback(e);
                throw e;
            }
        });
        tell(all.stream()
                        .flatMap(done -> done.added().stream())
                        .map(Recorded::event)
                        .toList())
                .ifPresent(failed);
        return all;
    }

    private EventTable writing() {
        EventTable table = writer;
        if (table == null) {
            throw new StoreException(
                    Trouble.READ_ONLY, where, "was opened for reading only; open it for writing to change it", null);
        }
        return table;
    }

    /**
     * Does nothing in a store that can be written.
     *
     * @throws StoreException with {@link Trouble#READ_ONLY} if opened for reading only
     */
    public void requireWriting() {
        writing();
    }

    /** Every listener hears of every event, whatever another one throws. */
    private Optional<ListenerException> tell(List<CaseEvent> added) {
        ListenerException failed = null;
        for (CaseEvent event : added) {
            for (Consumer<CaseEvent> listener : listeners) {
                try {
                    listener.accept(event);
                } catch (RuntimeException e) {
                    failed = failed == null ? new ListenerException(where, added, event, e) : failed;
                }
            }
        }
        return Optional.ofNullable(failed);
    }

    /**
     * Calls a listener for each event that is new in the store and came by this instance, recorded or imported: on the
     * recording thread, in order, once the event is durable and with no lock held. Where one throws, the events stay, all
     * listeners hear of all events, and whoever recorded gets a {@link ListenerException}.
     */
    public void onAppended(Consumer<CaseEvent> listener) {
        listeners.add(requireNonNull(listener, "listener"));
    }

    /**
     * Events recorded after a position, in order of position. A follower asks again from the last position it got.
     *
     * @param position 0 for all
     * @param limit most events to return, from 1
     */
    public List<Recorded> eventsAfter(long position, int limit) {
        requireLimit(limit);
        return read(table -> table.after(position, limit));
    }

    /**
     * Cases of which something was recorded, each once, in order of id. A follower that knows the log up to one position
     * looks at these to know it up to another.
     *
     * @param after position from which on, 0 for the beginning
     * @param upTo the last position to look at
     */
    public List<String> casesBetween(long after, long upTo) {
        return read(table -> table.casesBetween(after, upTo));
    }

    /** Position of the last event recorded; 0 for an empty store. */
    public long position() {
        return read(EventTable::position);
    }

    /**
     * Id of the event at a position, or empty if the log is shorter. A follower that keeps it beside its position can
     * tell that the store was replaced by another or put back from a copy.
     */
    public Optional<String> eventIdAt(long position) {
        return read(table -> table.eventIdAt(position));
    }

    /** Everything recorded of a case with its place in the log, in order of recording; empty for an unknown case. */
    public List<Recorded> recordedOf(String caseId) {
        return read(table -> table.ofCase(caseId));
    }

    /** Everything recorded of a case, taken-back events too, in order of time and id; empty for an unknown case. */
    public List<CaseEvent> eventsOf(String caseId) {
        return recordedOf(caseId).stream()
                .map(Recorded::event)
                .sorted(CaseEvent.ORDER)
                .toList();
    }

    /** The history of a case; empty if it is unknown or nobody has recorded its opening. */
    public Optional<CaseHistory> history(String caseId) {
        return CaseHistory.fold(eventsOf(caseId));
    }

    /**
     * Cases, the newest first by the time of their earliest event, ties by id, backwards.
     *
     * @param limit most ids to return, from 1
     */
    public List<String> caseIds(int limit) {
        requireLimit(limit);
        return read(table -> table.newestCases(limit));
    }

    /**
     * The next page of {@link #caseIds(int)}.
     *
     * @param after last id of the page before; nothing follows an unknown id
     * @param limit most ids to return, from 1
     */
    public List<String> caseIds(int limit, String after) {
        requireLimit(limit);
        return read(table -> table.casesOlderThan(after, limit));
    }

    /** Whether anything is recorded of a case. */
    public boolean hasCase(String caseId) {
        return read(table -> table.hasCase(caseId));
    }

    /** Number of cases of which anything is recorded. */
    public long caseCount() {
        return read(EventTable::caseCount);
    }

    /** Where the store is, as messages name it. */
    String where() {
        return where;
    }

    private static void requireLimit(int limit) {
        if (limit < 1) {
            throw new IllegalArgumentException("limit " + limit + "; ask for at least 1");
        }
    }

    private interface Work<T> {
        T run() throws SQLException;
    }

    private interface Query<T> {
        T of(EventTable table) throws SQLException;
    }

    private <T> T read(Query<T> query) {
        return locked(reading, () -> {
            try {
                return query.of(reader);
            } catch (SQLException e) {
                reader.forgetStatements();
                throw e;
            }
        });
    }

    private <T> T locked(ReentrantLock lock, Work<T> work) {
        lock.lock();
        try {
            if (closed) {
                throw new IllegalStateException(where + ": the case store is closed; open it again");
            }
            return work.run();
        } catch (SQLException e) {
            throw SqliteEngine.explain(e, where);
        } catch (BadLineException e) {
            throw new StoreException(
                    Trouble.NOT_A_STORE,
                    where,
                    "holds an event that cannot be read (" + e.what() + "); restore a copy or import an export",
                    e);
        } finally {
            lock.unlock();
        }
    }

    /** Waits for what is under way, then lets go of the files. Closing again does nothing. */
    @Override
    public void close() {
        writing.lock();
        reading.lock();
        try {
            if (closed) {
                return;
            }
            closed = true;
            try {
                reader.close();
            } finally {
                if (writer != null) {
                    writer.close(); // last, so that it takes the write-ahead log with it
                }
            }
        } catch (SQLException e) {
            throw SqliteEngine.explain(e, where);
        } finally {
            reading.unlock();
            writing.unlock();
        }
    }
}
