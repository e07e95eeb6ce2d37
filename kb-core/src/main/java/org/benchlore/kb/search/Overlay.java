package org.benchlore.kb.search;

import java.util.HashSet;
import java.util.Set;
import org.apache.lucene.analysis.Analyzer;

/** Cases newer than a shelf that cannot be written: they are searched in its place until it can take them. */
final class Overlay implements AutoCloseable {
    private final Shelf shelf;
    private final Set<String> keys = new HashSet<>();
    private boolean hidesAll;

    Overlay(Analyzer analyzer, String fingerprint) {
        this.shelf = Shelf.inMemory(analyzer, fingerprint, writer -> {});
    }

    Shelf shelf() {
        return shelf;
    }

    void write(Shelf.Change change, Reached reached) {
        shelf.lock(); // which handing down, or a change that failed, has let go
        if (!shelf.write(change, reached)) {
            throw new IllegalStateException("an index in memory can always be written, but: " + shelf.trouble());
        }
    }

    /** Keys of the cases that were changed or withdrawn. */
    Set<String> keys() {
        return keys;
    }

    /** Whether it stands for all cases, not only for {@link #keys}. */
    boolean hidesAll() {
        return hidesAll;
    }

    void hideAll() {
        hidesAll = true;
        keys.clear();
    }

    @Override
    public void close() {
        shelf.close();
    }
}
