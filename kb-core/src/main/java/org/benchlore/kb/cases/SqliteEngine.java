package org.benchlore.kb.cases;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import org.benchlore.kb.cases.StoreException.Trouble;
import org.sqlite.SQLiteConfig;

/**
 * Everything that is true of SQLite only: how to open it, how to make it durable, what its error numbers mean. The
 * statements in {@link EventTable} are plain SQL.
 *
 * <p>A commit returns after the write-ahead log is on the disk (WAL, synchronous FULL, and F_FULLFSYNC where the
 * platform needs it: <a href="https://www.sqlite.org/pragma.html#pragma_synchronous">SQLite, PRAGMA synchronous</a>).
 * Writers begin IMMEDIATE, so that a transaction never has to be given up halfway because another process wrote. They
 * say so in SQL: with autocommit off, the driver begins the next transaction as soon as one ends, and an idle writer
 * would shut all others out.
 */
final class SqliteEngine {
    /** Column type of a position: in SQLite the row number itself, which must be spelt this way. */
    static final String POSITION_TYPE = "integer";

    private static final int OPENING_TRIES = 20;
    private static final String NO_ACCESS =
            "cannot be opened or written; mend the permissions of file and directory, or choose another home";

    private SqliteEngine() {}

    static Connection openMemory() throws SQLException {
        return new SQLiteConfig().createConnection("jdbc:sqlite::memory:");
    }

    /** Opens for writing; makes the home and an empty database if there is none. */
    static Connection openWriter(Path file, Duration patience) throws SQLException {
        makeHome(file);
        SQLiteConfig config = config(patience);
        config.setGetGeneratedKeys(false); // asked after every insert, and nobody wants one
        Connection connection = config.createConnection(url(file));
        try {
            requireWritable(file);
            switchToWal(connection);
            run(connection, "pragma synchronous=FULL");
            run(connection, "pragma fullfsync=1");
            run(connection, "pragma checkpoint_fullfsync=1");
            return connection;
        } catch (SQLException | RuntimeException e) {
            connection.close();
            throw e;
        }
    }

    /** SQLite opens a file that it may only read without a word, and complains at the first event recorded. */
    private static void requireWritable(Path file) {
        if (!Files.isWritable(file)) {
            throw new StoreException(Trouble.NO_ACCESS, file.toString(), NO_ACCESS, null);
        }
    }

    /** Opens beside a writer, for reading only. */
    static Connection openReader(Path file, Duration patience) throws SQLException {
        SQLiteConfig config = config(patience);
        config.setReadOnly(true);
        return config.createConnection(url(file));
    }

    /**
     * Opens a store on a medium that cannot be written. SQLite wants to keep its shared-memory file beside the log; when
     * it cannot and there is no log, the database is complete in itself and can be read as immutable.
     */
    static Connection openImmutable(Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        return config.createConnection(url(file) + "?immutable=1");
    }

    private static SQLiteConfig config(Duration patience) {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout((int) Math.min(patience.toMillis(), Integer.MAX_VALUE));
        return config;
    }

    /** As a file URI, since a home may have a '?' or '#' in its name. */
    private static String url(Path file) {
        return "jdbc:sqlite:" + file.toAbsolutePath().toUri();
    }

    private static void makeHome(Path file) {
        Path home = file.toAbsolutePath().getParent();
        if (home == null || !home.getFileSystem().equals(FileSystems.getDefault())) {
            throw new IllegalArgumentException("home '" + home + "' is not a directory on disk; choose one that is");
        }
        try {
            Files.createDirectories(home);
        } catch (IOException e) {
            throw new StoreException(
                    Trouble.NO_ACCESS,
                    home.toString(),
                    "cannot make this directory; mend its permissions or choose another home",
                    e);
        }
    }

    /**
     * The switch needs the database to itself and does not wait for it. When several processes open a new home at once,
     * wait for the others by an empty transaction, which does, and try again.
     */
    private static void switchToWal(Connection connection) throws SQLException {
        for (int tries = 1; ; tries++) {
            try {
                run(connection, "pragma journal_mode=WAL");
                return;
            } catch (SQLException e) {
                if (trouble(e) != Trouble.BUSY || tries == OPENING_TRIES) {
                    throw e;
                }
                begin(connection);
                rollback(connection);
            }
        }
    }

    static void begin(Connection connection) throws SQLException {
        run(connection, "begin immediate");
    }

    static void commit(Connection connection) throws SQLException {
        run(connection, "commit");
    }

    static void rollback(Connection connection) throws SQLException {
        run(connection, "rollback");
    }

    private static void run(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** Whether somebody else's tables are in it. */
    static boolean foreign(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select count(*) from sqlite_master where type = 'table'")) {
            return row.next() && row.getInt(1) > 0;
        }
    }

    static boolean hasTable(Connection connection, String table) throws SQLException {
        try (PreparedStatement query =
                connection.prepareStatement("select name from sqlite_master where type = 'table' and name = ?")) {
            query.setString(1, table);
            try (ResultSet row = query.executeQuery()) {
                return row.next();
            }
        }
    }

    // Primary result codes: https://www.sqlite.org/rescode.html
    private static Trouble trouble(SQLException e) {
        return switch (e.getErrorCode() & 0xff) {
            case 5, 6 -> Trouble.BUSY; // SQLITE_BUSY, SQLITE_LOCKED
            case 13 -> Trouble.FULL; // SQLITE_FULL
            case 3, 8, 14, 23 -> Trouble.NO_ACCESS; // SQLITE_PERM, _READONLY, _CANTOPEN, _AUTH
            case 11, 26 -> Trouble.NOT_A_STORE; // SQLITE_CORRUPT, SQLITE_NOTADB
            default -> Trouble.FAILED;
        };
    }

    static StoreException explain(SQLException e, String where) {
        Trouble trouble = trouble(e);
        String sentence = switch (trouble) {
            case BUSY -> "another program is writing and did not finish in time; try again, or close it";
            case FULL -> "no room on the disk, nothing of this batch was stored; free some space and try again";
            case NO_ACCESS -> NO_ACCESS;
            case NOT_A_STORE ->
                "is not a case store, or is damaged; put it aside and restore a copy or import an export";
            default -> "the database failed (" + e.getMessage() + "); check the disk, then open the store again";
        };
        return new StoreException(trouble, where, sentence, e);
    }
}
