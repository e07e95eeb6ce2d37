package org.benchlore.kb;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.benchlore.kb.cases.CaseIds;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.ranking.RankingSettings;
import org.jspecify.annotations.Nullable;

/** Gathers what a {@link KnowledgeBase} is made of. For one thread and one use. */
public final class KnowledgeBaseBuilder {
    /** Folder in the home whose packs are read after all others, in order of name. */
    public static final String HOME_PACKS = "packs";

    /** File in the home that spares parsing the packs again; may be deleted at any time. */
    private static final String PARSED_PACKS = "packs.parsed";

    private final List<PackSource> packs = new ArrayList<>();
    private final List<Path> files = new ArrayList<>();
    private @Nullable Path home;
    private boolean readOnly;
    private boolean used;
    private RankingSettings settings = RankingSettings.DEFAULT;
    private Clock clock = Clock.systemUTC();
    private RandomGenerator random = new SecureRandom();

    KnowledgeBaseBuilder() {}

    /** A pack file, read after those given as text. */
    public KnowledgeBaseBuilder pack(Path file) {
        files.add(requireNonNull(file, "file"));
        return this;
    }

    /** Packs as text, in reading order. */
    public KnowledgeBaseBuilder packs(List<PackSource> sources) {
        packs.addAll(List.copyOf(requireNonNull(sources, "sources")));
        return this;
    }

    /**
     * Where cases, index and the bench's own packs live; made when missing. Without a home everything is kept in memory and
     * gone on close.
     */
    public KnowledgeBaseBuilder home(Path directory) {
        home = requireNonNull(directory, "directory");
        return this;
    }

    /**
     * Only read: no case, pack or index in the home is changed, and recording and rebuilding are refused. The index is kept
     * in memory. The store may put its lock and log files, {@code cases.db-shm} and {@code cases.db-wal}, into the home.
     */
    public KnowledgeBaseBuilder readOnly() {
        readOnly = true;
        return this;
    }

    /** Other constants for the ranking. */
    public KnowledgeBaseBuilder settings(RankingSettings constants) {
        settings = requireNonNull(constants, "constants");
        return this;
    }

    /** Another clock for event times, and in its zone for the day in case ids; the clock of the system in UTC without. */
    public KnowledgeBaseBuilder clock(Clock other) {
        clock = requireNonNull(other, "other");
        return this;
    }

    /** Another source of chance for ids. */
    public KnowledgeBaseBuilder random(RandomGenerator other) {
        random = requireNonNull(other, "other");
        return this;
    }

    /**
     * Reads the packs and opens the home.
     *
     * @throws IllegalStateException if this builder has opened already
     * @throws org.benchlore.kb.knowledge.BadPackException with every problem of every pack; its message tells the first
     * @throws org.benchlore.kb.cases.StoreException if the home cannot be used
     */
    public KnowledgeBase open() {
        if (used) {
            throw new IllegalStateException("this builder has opened already; make another for another knowledge base");
        }
        if (home != null) {
            CaseStore.requireDirectory(home); // before the packs, which take their time
        }
        List<PackSource> all = new ArrayList<>(packs);
        all.addAll(PackSource.read(files));
        if (home != null) {
            all.addAll(PackSource.readFolder(home.resolve(HOME_PACKS)));
        }
        Knowledge knowledge =
                home == null ? PackReader.read(all) : PackReader.read(all, home.resolve(PARSED_PACKS), !readOnly);
        CaseStore store =
                home == null ? CaseStore.inMemory() : readOnly ? CaseStore.openReadOnly(home) : CaseStore.open(home);
        try {
            IndexFollower index = new IndexFollower(knowledge, store, readOnly ? null : home);
            KnowledgeBase opened =
                    new KnowledgeBase(knowledge, store, settings, index, new CaseIds(clock, random), clock);
            used = true;
            return opened;
        } catch (RuntimeException | Error e) {
            try {
                store.close();
            } catch (RuntimeException again) {
                e.addSuppressed(again);
            }
            throw e;
        }
    }
}
