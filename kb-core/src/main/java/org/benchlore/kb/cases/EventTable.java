package org.benchlore.kb.cases;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiPredicate;
import org.benchlore.kb.cases.CaseStore.Recorded;
import org.jspecify.annotations.Nullable;

/**
 * The tables and the statements on them, in plain SQL, over one connection. Rows are only ever added. Positions run from
 * 1 without gaps in the order of commit, since whoever writes has the database to itself. Not thread-safe.
 */
final class EventTable {
    /** 2 added kinds of events; the tables are those of 1. */
    static final int SCHEMA_VERSION = 2;

    static final String STAMP = "benchlore_store";

    /** What one append did: the events that were new, or the conflict for which it did nothing. */
    record Appended(List<Recorded> added, @Nullable Conflict conflict) {}

    /** Two events of the same id that say different things. */
    record Conflict(CaseEvent recorded, CaseEvent given) {}

    /** Event ids looked up by one statement; each number of them is prepared once. */
    private static final int ASKED_AT_ONCE = 32;

    private final Connection connection;
    private final Map<String, PreparedStatement> prepared = new LinkedHashMap<>();

    EventTable(Connection connection) {
        this.connection = connection;
    }

    /** Creates the tables, within the caller's transaction. */
    void create() throws SQLException {
        String position = SqliteEngine.POSITION_TYPE;
        for (String sql : List.of(
                "create table " + STAMP + " (schema_version integer not null)",
                "insert into " + STAMP + " (schema_version) values (" + SCHEMA_VERSION + ")",
                "create table event (position " + position + " not null primary key,"
                        + " event_id varchar(80) not null unique, case_id varchar(80) not null, body text not null)",
                "create index event_by_case on event (case_id)",
                "create table bench_case (case_id varchar(80) not null primary key, began_at bigint not null)",
                "create index bench_case_by_time on bench_case (began_at, case_id)")) {
            try (Statement statement = connection.createStatement()) {
                statement.execute(sql);
            }
        }
    }

    /** Stamps an older store, so that an older version of this program does not meet events it cannot read. */
    void stamp() throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("update " + STAMP + " set schema_version = " + SCHEMA_VERSION);
        }
    }

    /** The schema version stamped on the database, or empty when it has none. */
    OptionalInt version() throws SQLException {
        if (!SqliteEngine.hasTable(connection, STAMP)) {
            return OptionalInt.empty();
        }
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select schema_version from " + STAMP)) {
            return row.next() ? OptionalInt.of(row.getInt(1)) : OptionalInt.empty();
        }
    }

    /**
     * Adds those of the events that are new, all or, when one conflicts, none; within the caller's transaction.
     *
     * @param same whether a recorded event and a given one of the same id say the same
     */
    Appended append(List<CaseEvent> events, BiPredicate<CaseEvent, CaseEvent> same) throws SQLException {
        Map<String, CaseEvent> recorded = recorded(events);
        Map<String, CaseEvent> fresh = new LinkedHashMap<>();
        for (CaseEvent event : events) {
            String id = event.head().eventId();
            CaseEvent known = fresh.getOrDefault(id, recorded.get(id));
            if (known == null) {
                fresh.put(id, event);
            } else if (!same.test(known, event)) {
                return new Appended(List.of(), new Conflict(known, event));
            }
        }
        List<Recorded> added = new ArrayList<>(fresh.size());
        if (!fresh.isEmpty()) {
            long position = position();
            Map<String, Instant> began = new LinkedHashMap<>();
            for (CaseEvent event : fresh.values()) {
                Recorded next = new Recorded(++position, event);
                insert(next);
                added.add(next);
                began.merge(event.head().caseId(), event.head().at(), (a, b) -> a.isBefore(b) ? a : b);
            }
            for (Map.Entry<String, Instant> first : began.entrySet()) {
                began(first.getKey(), first.getValue());
            }
        }
        return new Appended(added, null);
    }

    private void insert(Recorded recorded) throws SQLException {
        CaseEvent.Head head = recorded.event().head();
        PreparedStatement event =
                statement("insert into event (position, event_id, case_id, body) values (?, ?, ?, ?)");
        event.setLong(1, recorded.position());
        event.setString(2, head.eventId());
        event.setString(3, head.caseId());
        event.setString(4, body(recorded.event()));
        event.executeUpdate();
    }

    /**
     * An event as it is stored.
     *
     * @throws UnfitEventException if no store takes it
     */
    static String body(CaseEvent event) {
        UnfitEventException.requireUnit(event);
        return CaseJson.write(event);
    }

    private void began(String caseId, Instant at) throws SQLException {
        PreparedStatement began = statement("insert into bench_case (case_id, began_at) values (?, ?)"
                + " on conflict (case_id) do update set began_at = excluded.began_at"
                + " where excluded.began_at < bench_case.began_at");
        began.setString(1, caseId);
        began.setLong(2, at.toEpochMilli());
        began.executeUpdate();
    }

    /** Those events whose ids are recorded already, as they are recorded, by id. */
    private Map<String, CaseEvent> recorded(List<CaseEvent> events) throws SQLException {
        Map<String, CaseEvent> recorded = new HashMap<>();
        for (int from = 0; from < events.size(); from += ASKED_AT_ONCE) {
            List<CaseEvent> some = events.subList(from, Math.min(events.size(), from + ASKED_AT_ONCE));
            PreparedStatement query =
                    statement("select body from event where event_id in (?" + ", ?".repeat(some.size() - 1) + ")");
            for (int i = 0; i < some.size(); i++) {
                query.setString(i + 1, some.get(i).head().eventId());
            }
            try (ResultSet row = query.executeQuery()) {
                while (row.next()) {
                    CaseEvent event = CaseJson.read(row.getString(1));
                    recorded.put(event.head().eventId(), event);
                }
            }
        }
        return recorded;
    }

    long position() throws SQLException {
        try (ResultSet row =
                statement("select coalesce(max(position), 0) from event").executeQuery()) {
            return row.next() ? row.getLong(1) : 0;
        }
    }

    Optional<String> eventIdAt(long position) throws SQLException {
        PreparedStatement query = statement("select event_id from event where position = ?");
        query.setLong(1, position);
        List<String> ids = strings(query);
        return ids.isEmpty() ? Optional.empty() : Optional.of(ids.get(0));
    }

    List<Recorded> after(long position, int limit) throws SQLException {
        PreparedStatement query =
                statement("select position, body from event where position > ? order by position limit ?");
        query.setLong(1, position);
        query.setInt(2, limit);
        return recorded(query);
    }

    List<String> casesBetween(long after, long upTo) throws SQLException {
        PreparedStatement query =
                statement("select distinct case_id from event where position > ? and position <= ? order by case_id");
        query.setLong(1, after);
        query.setLong(2, upTo);
        return strings(query);
    }

    List<Recorded> ofCase(String caseId) throws SQLException {
        PreparedStatement query = statement("select position, body from event where case_id = ? order by position");
        query.setString(1, caseId);
        return recorded(query);
    }

    private static List<Recorded> recorded(PreparedStatement query) throws SQLException {
        List<Recorded> all = new ArrayList<>();
        try (ResultSet row = query.executeQuery()) {
            while (row.next()) {
                all.add(new Recorded(row.getLong(1), CaseJson.read(row.getString(2))));
            }
        }
        return all;
    }

    List<String> newestCases(int limit) throws SQLException {
        PreparedStatement query =
                statement("select case_id from bench_case order by began_at desc, case_id desc limit ?");
        query.setInt(1, limit);
        return strings(query);
    }

    List<String> casesOlderThan(String caseId, int limit) throws SQLException {
        PreparedStatement query = statement("select c.case_id from bench_case c, bench_case than where than.case_id = ?"
                + " and (c.began_at, c.case_id) < (than.began_at, than.case_id)"
                + " order by c.began_at desc, c.case_id desc limit ?");
        query.setString(1, caseId);
        query.setInt(2, limit);
        return strings(query);
    }

    private static List<String> strings(PreparedStatement query) throws SQLException {
        List<String> all = new ArrayList<>();
        try (ResultSet row = query.executeQuery()) {
            while (row.next()) {
                all.add(row.getString(1));
            }
        }
        return all;
    }

    boolean hasCase(String caseId) throws SQLException {
        PreparedStatement query = statement("select case_id from bench_case where case_id = ?");
        query.setString(1, caseId);
        return !strings(query).isEmpty();
    }

    long caseCount() throws SQLException {
        try (ResultSet row = statement("select count(*) from bench_case").executeQuery()) {
            return row.next() ? row.getLong(1) : 0;
        }
    }

    private PreparedStatement statement(String sql) throws SQLException {
        PreparedStatement known = prepared.get(sql);
        if (known == null) {
            known = connection.prepareStatement(sql);
            prepared.put(sql, known);
        }
        return known;
    }

    void begin() throws SQLException {
        SqliteEngine.begin(connection);
    }

    void commit() throws SQLException {
        SqliteEngine.commit(connection);
    }

    void rollback(Throwable because) {
        forgetStatements();
        try {
            SqliteEngine.rollback(connection);
        } catch (SQLException e) {
            because.addSuppressed(e); // SQLite has already rolled back after some errors
        }
    }

    /** After an error: the driver does not run a prepared statement again that failed once. */
    void forgetStatements() {
        List<PreparedStatement> failed = List.copyOf(prepared.values());
        prepared.clear();
        for (PreparedStatement statement : failed) {
            try {
                statement.close();
            } catch (SQLException repeated) {
                // the error that brought us here, told again
            }
        }
    }

    void close() throws SQLException {
        connection.close();
    }
}
