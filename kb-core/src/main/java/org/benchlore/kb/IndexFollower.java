package org.benchlore.kb;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.CodeRecord;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.search.Reached;
import org.benchlore.kb.search.SearchHit;
import org.benchlore.kb.search.SearchIndex;
import org.benchlore.kb.search.SearchQuery;
import org.benchlore.kb.search.SearchResult;
import org.benchlore.kb.search.Suggestion;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the search index abreast of the store. The index is opened on the first search, so that nobody who only ranks or
 * records pays for it, and follows the log before each answer.
 */
final class IndexFollower implements AutoCloseable {
    /** Folder of the index in the home. */
    private static final String FOLDER = "index";

    private static final int PAGE = 10_000;

    private final Knowledge knowledge;
    private final CaseStore store;
    private final @Nullable Path home;
    private @Nullable SearchIndex index;
    private boolean closed;

    /**
     * An index for a store.
     *
     * @param home where the index lies, or null to keep it in memory
     */
    IndexFollower(Knowledge knowledge, CaseStore store, @Nullable Path home) {
        this.knowledge = knowledge;
        this.store = store;
        this.home = home;
    }

    SearchResult search(SearchQuery query) {
        return current().search(query);
    }

    List<SearchHit> similar(CaseHistory history, int limit) {
        return current().similar(history, limit);
    }

    List<SearchHit> concludedOn(String causeId, RankingQuery query, int limit) {
        return current().concludedOn(causeId, query.findings(), query.words(), query.scope(), limit);
    }

    /** What past cases teach of codes; the index is not even opened where there are none. */
    List<CodeRecord> codes(Collection<String> codes, DeviceScope scope, String exceptCase) {
        return codes.isEmpty() ? List.of() : current().codes(codes, scope, exceptCase);
    }

    List<Suggestion> suggest(String prefix, int limit) {
        return current().suggest(prefix, limit);
    }

    private synchronized SearchIndex current() {
        SearchIndex opened = opened();
        Reached reached = opened.reached();
        long position = store.position();
        boolean sameLog = store.eventIdAt(reached.position()).orElse("").equals(reached.eventId());
        if (!sameLog || (reached.position() == 0 && position > 0)) {
            rebuild(opened);
        } else if (reached.position() < position) {
            follow(opened, reached.position(), position);
        }
        return opened;
    }

    private SearchIndex opened() {
        if (closed) {
            throw new ClosedKnowledgeBaseException(null);
        }
        SearchIndex opened = index;
        if (opened == null) {
            opened = home == null ? SearchIndex.inMemory(knowledge) : SearchIndex.open(home.resolve(FOLDER), knowledge);
            index = opened;
        }
        return opened;
    }

    private void follow(SearchIndex opened, long from, long position) {
        for (long reached = from; reached < position; ) {
            long next = Math.min(reached + PAGE, position);
            opened.update(
                    histories(store.casesBetween(reached, next)).toList(),
                    new Reached(next, store.eventIdAt(next).orElse("")));
            reached = next;
        }
    }

    private void rebuild(SearchIndex opened) {
        long position = store.position();
        String lastId = store.eventIdAt(position).orElse("");
        opened.rebuild(
                histories(store.casesBetween(0, position)).iterator(),
                position == 0 ? Reached.NOTHING : new Reached(position, lastId));
    }

    private Stream<CaseHistory> histories(Collection<String> ids) {
        return ids.stream().flatMap(id -> store.history(id).stream());
    }

    /** Makes the cases of the index anew. */
    synchronized void rebuild() {
        rebuild(opened());
    }

    @Override
    public synchronized void close() {
        closed = true;
        SearchIndex opened = index;
        if (opened != null) {
            opened.close();
        }
    }
}
