package org.benchlore.kb.search;

import java.io.EOFException;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.NoSuchFileException;
import java.util.Map;
import java.util.Objects;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.CorruptIndexException;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexFileNames;
import org.apache.lucene.index.IndexFormatTooNewException;
import org.apache.lucene.index.IndexFormatTooOldException;
import org.apache.lucene.index.IndexNotFoundException;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SerialMergeScheduler;
import org.apache.lucene.store.AlreadyClosedException;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.Lock;
import org.apache.lucene.store.LockObtainFailedException;
import org.jspecify.annotations.Nullable;

/**
 * One Lucene directory: what is committed in it, and the write lock where it could be had. Not thread-safe; {@link
 * SearchIndex} guards it. Every change is committed at once, so that the stamp and the documents always agree and other
 * processes see both. Merges run in the caller's thread.
 */
final class Shelf implements AutoCloseable {
    /** Puts documents into a writer. */
    interface Change {
        void apply(IndexWriter writer) throws IOException;
    }

    private enum State {
        SOUND,
        MISSING_OR_STALE,
        DAMAGED,
        FOREIGN
    }

    /** Above this size only the structure of the files is checked at opening, not every byte. */
    private static final long FULLY_CHECKED_BYTES = 256L << 20;

    private final Directory directory;
    private final String where;
    private final Analyzer analyzer;
    private final String fingerprint;
    private @Nullable IndexWriter writer;
    private @Nullable DirectoryReader reader;
    private Stamp stamp;
    private String trouble = "";
    private boolean abandoned; // another process has remade it for other packs

    private Shelf(Directory directory, String where, Analyzer analyzer, String fingerprint) {
        this.directory = directory;
        this.where = where;
        this.analyzer = analyzer;
        this.fingerprint = fingerprint;
        this.stamp = new Stamp(fingerprint, Reached.NOTHING);
    }

    static Shelf inMemory(Analyzer analyzer, String fingerprint, Change entries) {
        Shelf shelf = new Shelf(new ByteBuffersDirectory(), "memory", analyzer, fingerprint);
        if (!shelf.open(entries)) {
            throw new IllegalStateException("an index in memory can always be made, but: " + shelf.trouble);
        }
        return shelf;
    }

    /** Takes over the directory; look at {@link #usable} and {@link #trouble} next. */
    static Shelf on(Directory directory, String where, Analyzer analyzer, String fingerprint, Change entries) {
        Shelf shelf = new Shelf(directory, where, analyzer, fingerprint);
        shelf.open(entries);
        return shelf;
    }

    boolean usable() {
        return reader != null;
    }

    boolean writable() {
        return writer != null;
    }

    /** Why it is not usable or not writable; empty if all is well. */
    String trouble() {
        return trouble;
    }

    Reached reached() {
        return stamp.reached();
    }

    /** What is committed; the reference stays with the shelf. */
    DirectoryReader reader() {
        return Objects.requireNonNull(reader, "not usable");
    }

    private boolean open(Change entries) {
        try {
            State state = look();
            if (state == State.FOREIGN) {
                trouble = where + ": holds an index that is not ours; choose another place";
                return false;
            }
            boolean locked = lock(state == State.DAMAGED);
            if (!locked && !usable()) {
                look(); // whoever has the lock may just have made it
            }
            if (locked && (!usable() || !reader().isCurrent())) {
                release(); // somebody may have written between the look and the lock
                if (look() != State.SOUND) {
                    write(
                            fresh -> {
                                fresh.deleteAll();
                                entries.apply(fresh);
                            },
                            Reached.NOTHING);
                }
            }
        } catch (IOException | RuntimeException e) {
            giveUp("cannot be used", e);
            release();
        }
        return usable();
    }

    /** Reads what is committed, if it is sound and made from the same packs. */
    private State look() throws IOException {
        DirectoryReader found;
        try {
            found = DirectoryReader.open(directory);
        } catch (IndexNotFoundException e) {
            return State.MISSING_OR_STALE;
        } catch (CorruptIndexException
                | IndexFormatTooOldException
                | IndexFormatTooNewException
                | EOFException
                | NoSuchFileException
                | FileNotFoundException
                | IllegalArgumentException e) { // the last: a codec nobody here knows
            return State.DAMAGED;
        }
        Map<String, String> data = found.getIndexCommit().getUserData();
        Stamp read = Stamp.read(data, fingerprint);
        State state = read != null
                ? soundness(found)
                : Stamp.ours(data) || found.maxDoc() == 0 ? State.MISSING_OR_STALE : State.FOREIGN;
        if (read == null || state != State.SOUND) {
            found.close();
            return state;
        }
        reader = found;
        stamp = read;
        return state;
    }

    private State soundness(DirectoryReader found) throws IOException {
        long bytes = 0;
        for (String file : found.getIndexCommit().getFileNames()) {
            bytes += directory.fileLength(file);
        }
        if (bytes <= FULLY_CHECKED_BYTES) {
            try {
                for (LeafReaderContext leaf : found.leaves()) {
                    leaf.reader().checkIntegrity();
                }
            } catch (CorruptIndexException | EOFException e) {
                return State.DAMAGED;
            }
        }
        return State.SOUND;
    }

    /** Tries to get the write lock of a usable shelf, and catches up with what others wrote. */
    boolean lock() {
        if (writer == null && !abandoned && lock(false)) {
            refresh();
            if (abandoned) {
                unlock();
            }
        }
        return writer != null;
    }

    private boolean lock(boolean clear) {
        try {
            if (clear) {
                clear();
            }
            IndexWriterConfig config = new IndexWriterConfig(analyzer)
                    .setSimilarity(Snapshot.SIMILARITY)
                    .setMergeScheduler(new SerialMergeScheduler())
                    .setCommitOnClose(false);
            writer = new IndexWriter(directory, config);
            trouble = "";
            return true;
        } catch (LockObtainFailedException | OverlappingFileLockException e) {
            trouble = where + ": another program keeps this index open for writing; searching goes on, and what is new"
                    + " is kept in memory until that program closes it";
        } catch (IOException | RuntimeException e) {
            giveUp("cannot be written", e);
        }
        return false;
    }

    /**
     * Deletes the files of a damaged index, which Lucene would stumble over even when told to start anew. Only names that
     * Lucene gives, never the lock, and only while holding it.
     */
    private void clear() throws IOException {
        Lock lock = directory.obtainLock(IndexWriter.WRITE_LOCK_NAME);
        try {
            for (String name : directory.listAll()) {
                boolean lucene = IndexFileNames.CODEC_FILE_PATTERN.matcher(name).matches()
                        || name.startsWith(IndexFileNames.SEGMENTS)
                        || name.startsWith(IndexFileNames.PENDING_SEGMENTS);
                if (lucene && !name.equals(IndexWriter.WRITE_LOCK_NAME)) {
                    directory.deleteFile(name);
                }
            }
        } finally {
            lock.close();
        }
    }

    /**
     * Makes a change and commits it, or leaves everything as it was and lets the lock go.
     *
     * @return whether the change stands
     */
    boolean write(Change change, Reached reached) {
        IndexWriter open = writer;
        if (open == null) {
            return false;
        }
        try {
            change.apply(open);
            open.setLiveCommitData(stamp.at(reached).data().entrySet());
            open.commit();
        } catch (IOException | AlreadyClosedException | AssertionError e) {
            // The last: with assertions on, Lucene asserts that nobody interrupts while a directory is synced.
            giveUp("cannot be written", e);
            return false;
        } catch (RuntimeException e) { // from what makes the documents
            unlock();
            throw e;
        }
        refresh();
        return stamp.reached().equals(reached);
    }

    /** Copies everything into another shelf's writer. */
    void handDown(IndexWriter other) throws IOException {
        unlock(); // the copy needs the lock of its source
        other.addIndexes(directory);
    }

    /** Catches up with what is committed. */
    void refresh() {
        if (abandoned) {
            return;
        }
        try {
            DirectoryReader newer =
                    reader == null ? DirectoryReader.open(directory) : DirectoryReader.openIfChanged(reader);
            if (newer == null) {
                return;
            }
            Stamp read = Stamp.read(newer.getIndexCommit().getUserData(), fingerprint);
            if (read == null) {
                newer.close();
                abandoned = true;
                trouble = where + ": another program remade this index for other packs; what is new is kept in memory."
                        + " Use the same packs, or another home";
                return;
            }
            release();
            reader = newer;
            stamp = read;
        } catch (IOException | RuntimeException e) {
            giveUp("cannot be read again", e); // what was open stays open
        }
    }

    private void giveUp(String what, Throwable e) {
        trouble = where + ": " + what + " (" + e + "); searching goes on, and what is new is kept in memory";
        unlock();
    }

    private void unlock() {
        IndexWriter open = writer;
        writer = null;
        if (open != null) {
            try {
                open.rollback();
            } catch (IOException | RuntimeException e) {
                trouble = trouble.isEmpty() ? where + ": could not be let go (" + e + ")" : trouble;
            }
        }
    }

    private void release() {
        DirectoryReader open = reader;
        reader = null;
        if (open != null) {
            try {
                open.decRef();
            } catch (IOException e) {
                trouble = where + ": could not be let go (" + e + ")"; // a mapped file that stays mapped harms nobody
            }
        }
    }

    @Override
    public void close() {
        unlock();
        release();
        try {
            directory.close();
        } catch (IOException e) {
            trouble = where + ": could not be let go (" + e + ")";
        }
    }
}
