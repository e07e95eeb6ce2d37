package org.benchlore.kb.cases;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.OptionalInt;
import org.benchlore.kb.cases.StoreException.Trouble;

/** Opens stores: makes the tables in a new one, and refuses what is newer, damaged or something else. */
final class StoreOpening {
    private StoreOpening() {}

    static CaseStore forWriting(Path file, Duration patience) {
        try {
            Connection writing = SqliteEngine.openWriter(file, patience);
            try {
                EventTable writer = new EventTable(writing);
                prepare(writer, writing, file.toString());
                return new CaseStore(file.toString(), writer, new EventTable(SqliteEngine.openReader(file, patience)));
            } catch (SQLException | RuntimeException e) {
                writing.close();
                throw e;
            }
        } catch (SQLException e) {
            throw SqliteEngine.explain(e, file.toString());
        }
    }

    static CaseStore forReading(Path file) {
        if (Files.notExists(file)) {
            throw new StoreException(
                    Trouble.MISSING,
                    file.toString(),
                    "there is no case store here; give another home, or open this one for writing once",
                    null);
        }
        try {
            return readOnly(file, SqliteEngine.openReader(file, CaseStore.PATIENCE));
        } catch (SQLException e) {
            StoreException first = SqliteEngine.explain(e, file.toString());
            if (first.trouble() != Trouble.NO_ACCESS || Files.exists(file.resolveSibling(CaseStore.FILE + "-wal"))) {
                throw first;
            }
            try {
                return readOnly(file, SqliteEngine.openImmutable(file));
            } catch (SQLException again) {
                first.addSuppressed(again);
                throw first;
            }
        }
    }

    private static CaseStore readOnly(Path file, Connection connection) throws SQLException {
        try {
            EventTable table = new EventTable(connection);
            checkVersion(table.version(), file.toString());
            table.position(); // shows whether it can be read at all
            return new CaseStore(file.toString(), null, table);
        } catch (SQLException | RuntimeException e) {
            connection.close();
            throw e;
        }
    }

    static CaseStore inMemory() {
        String where = "cases in memory";
        try {
            Connection connection = SqliteEngine.openMemory();
            EventTable table = new EventTable(connection);
            prepare(table, connection, where);
            return new CaseStore(where, table, table);
        } catch (SQLException e) {
            throw SqliteEngine.explain(e, where);
        }
    }

    /** Over an open connection, for tests that tamper with it. */
    static CaseStore over(Connection writing, Connection reading, String where) throws SQLException {
        EventTable writer = new EventTable(writing);
        prepare(writer, writing, where);
        return new CaseStore(where, writer, new EventTable(reading));
    }

    private static void prepare(EventTable table, Connection connection, String where) throws SQLException {
        table.begin();
        try {
            OptionalInt version = table.version();
            if (version.isEmpty() && !SqliteEngine.foreign(connection)) {
                table.create();
            } else {
                checkVersion(version, where);
                if (version.orElseThrow() < EventTable.SCHEMA_VERSION) {
                    table.stamp();
                }
            }
            table.commit();
        } catch (SQLException | RuntimeException | Error e) {
            table.rollback(e);
            throw e;
        }
    }

    private static void checkVersion(OptionalInt version, String where) {
        if (version.isEmpty()) {
            throw new StoreException(
                    Trouble.NOT_A_STORE, where, "is a database of something else; give another home", null);
        }
        if (version.getAsInt() > EventTable.SCHEMA_VERSION) {
            throw new StoreException(
                    Trouble.NEWER,
                    where,
                    "written by a newer version (schema " + version.getAsInt() + ", this one knows "
                            + EventTable.SCHEMA_VERSION + "); update, or open a copy",
                    null);
        }
    }
}
