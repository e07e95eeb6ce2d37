package org.benchlore.kb.search;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.Term;
import org.apache.lucene.store.MMapDirectory;
import org.jspecify.annotations.Nullable;

/**
 * Where the documents are: a shelf, on disk where that can be had, and above it an overlay for as long as the shelf
 * cannot be written. Not thread-safe; {@link SearchIndex} guards it.
 */
final class Holdings implements AutoCloseable {
    private static final Term ALL_CASES = new Term(Fields.KIND, HitKind.CASE.id());

    private final Analyzer analyzer;
    private final String fingerprint;
    private final Shelf shelf;
    private final String lasting; // trouble that stays until the index is opened again
    private @Nullable Overlay overlay;

    /** Looks at the directory, or stays in memory if there is none. */
    Holdings(@Nullable Path directory, Analyzer analyzer, String fingerprint, Shelf.Change entries) {
        this.analyzer = analyzer;
        this.fingerprint = fingerprint;
        String trouble = "";
        Shelf found = null;
        if (directory != null) {
            try {
                found = Shelf.on(new MMapDirectory(directory), directory.toString(), analyzer, fingerprint, entries);
                trouble = found.trouble();
            } catch (IOException e) {
                trouble = directory + ": no directory can be made here (" + e + "); choose a place that can be written";
            }
        }
        if (found != null && found.usable()) {
            shelf = found;
            lasting = "";
        } else {
            if (found != null) {
                found.close();
            }
            shelf = Shelf.inMemory(analyzer, fingerprint, entries);
            lasting = trouble.isEmpty() ? "" : trouble + ". Until it is opened again the whole index is in memory";
        }
    }

    boolean writable() {
        return lasting.isEmpty() && shelf.writable();
    }

    /** Why it is not writable; empty if it is. */
    String trouble() {
        return writable() ? "" : lasting.isEmpty() ? shelf.trouble() : lasting;
    }

    Snapshot snapshot() throws IOException {
        return new Snapshot(shelf, overlay);
    }

    /** Changes the cases with these keys. */
    void update(Collection<String> keys, Shelf.Change change, Reached now) {
        takeOver();
        Overlay above = overlay;
        Reached before = (above == null ? shelf : above.shelf()).reached();
        if (now.position() < before.position() || (keys.isEmpty() && now.equals(before))) {
            return;
        }
        if (above != null || !shelf.write(change, now)) {
            Overlay kept = above == null ? new Overlay(analyzer, fingerprint) : above;
            kept.keys().addAll(keys);
            kept.write(change, now);
            overlay = kept;
        }
    }

    /** Puts other cases in the place of all there are. */
    void replace(Shelf.Change cases, Reached now) {
        takeOver();
        dropOverlay();
        if (shelf.writable()) {
            boolean done = shelf.write(
                    writer -> {
                        writer.deleteDocuments(ALL_CASES);
                        cases.apply(writer);
                    },
                    now);
            if (!done) { // the cases are used up, so there is no second try here
                throw new SearchIndexException(shelf.trouble());
            }
        } else {
            Overlay kept = new Overlay(analyzer, fingerprint);
            kept.hideAll();
            kept.write(cases, now);
            overlay = kept;
        }
    }

    /** Gets the lock if it has become free, hands the overlay down, and drops one that has been overtaken. */
    private void takeOver() {
        if (!shelf.writable() && !shelf.lock()) {
            shelf.refresh();
        }
        Overlay above = overlay;
        if (above == null) {
            return;
        }
        Reached kept = above.shelf().reached();
        boolean overtaken = above.hidesAll()
                ? shelf.reached().equals(kept)
                : shelf.reached().position() >= kept.position();
        if (overtaken || (shelf.writable() && shelf.write(writer -> handDown(above, writer), kept))) {
            dropOverlay();
        }
    }

    private static void handDown(Overlay above, IndexWriter writer) throws IOException {
        if (above.hidesAll()) {
            writer.deleteDocuments(ALL_CASES);
        }
        for (String key : above.keys()) {
            writer.deleteDocuments(new Term(Fields.KEY, key));
        }
        above.shelf().handDown(writer);
    }

    /** Snapshots that still show it keep what they need. */
    private void dropOverlay() {
        Overlay above = overlay;
        overlay = null;
        if (above != null) {
            above.close();
        }
    }

    @Override
    public void close() {
        dropOverlay();
        shelf.close();
    }
}
