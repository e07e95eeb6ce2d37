package org.benchlore.kb;

import java.nio.file.Path;
import java.util.Collection;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.CodeRecord;
import org.benchlore.kb.reading.Finding;
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

    List<SearchHit> similar(List<Finding> findings, DeviceScope scope, int limit) {
        return current().similar(findings, scope, limit);
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
            follow(opened, reached.position());
        }
        return opened;
    }

    private SearchIndex opened() {
        SearchIndex opened = index;
        if (opened == null) {
            opened = home == null ? SearchIndex.inMemory(knowledge) : SearchIndex.open(home.resolve(FOLDER), knowledge);
            index = opened;
        }
        return opened;
    }

    private void follow(SearchIndex opened, long from) {
        long position = from;
        while (true) {
            List<CaseStore.Recorded> page = store.eventsAfter(position, PAGE);
            if (page.isEmpty()) {
                return;
            }
            Set<String> touched = new LinkedHashSet<>();
            page.forEach(r -> touched.add(r.event().head().caseId()));
            CaseStore.Recorded last = page.get(page.size() - 1);
            position = last.position();
            opened.update(
                    histories(touched).toList(),
                    new Reached(position, last.event().head().eventId()));
        }
    }

    private void rebuild(SearchIndex opened) {
        long position = store.position();
        String lastId = store.eventIdAt(position).orElse("");
        opened.rebuild(all(), position == 0 ? Reached.NOTHING : new Reached(position, lastId));
    }

    private Stream<CaseHistory> histories(Collection<String> ids) {
        return ids.stream().flatMap(id -> store.history(id).stream());
    }

    /** Every case, a page of ids at a time. */
    private Iterator<CaseHistory> all() {
        return Stream.iterate(
                        store.caseIds(PAGE),
                        ids -> !ids.isEmpty(),
                        ids -> ids.size() < PAGE ? List.<String>of() : store.caseIds(PAGE, ids.get(ids.size() - 1)))
                .flatMap(this::histories)
                .iterator();
    }

    /** Makes the cases of the index anew. */
    synchronized void rebuild() {
        rebuild(opened());
    }

    @Override
    public synchronized void close() {
        SearchIndex opened = index;
        if (opened != null) {
            opened.close();
        }
    }
}
