package org.benchlore.kb.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermQuery;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.CodeRecord;
import org.benchlore.kb.reading.Finding;
import org.jspecify.annotations.Nullable;

/**
 * Finds entries and cases by words and by findings. Thread-safe; each answer comes from one consistent state, and a
 * search neither waits for an update nor is disturbed by one, by an interrupt or by {@link #close}. It starts no thread.
 *
 * <p>The index is a cache, derived from the packs and the event log, and may be deleted at any time while no program
 * uses it. It knows the format, the Lucene version and the packs it was made from and how far it followed the log; one
 * that is missing, stale or damaged is made anew from the packs when it is opened, and then has {@link #reached}
 * {@link Reached#NOTHING}. It is for the caller to bring in the cases:
 *
 * <pre>{@code
 * Reached reached = index.reached();
 * if (store.eventIdAt(reached.position()).equals(Optional.of(reached.eventId()))) {
 *   index.update(casesTouchedAfter(reached.position()), now);   // the usual case: a few, or none
 * } else {
 *   index.rebuild(allCases(), now);                             // a new index, or a store that was replaced
 * }
 * }</pre>
 *
 * <p>Several programs may open one directory. The first has the write lock until it closes; the others search what it
 * has committed, keep what they learn beyond that in memory, and take the lock in a later {@link #update} once it is
 * free. Where the directory cannot be written or holds something else, the whole index is in memory. Either way searches
 * work, {@link #writable} says no and {@link #trouble} says why. No lock file is ever deleted.
 */
public final class SearchIndex implements AutoCloseable {
    private static final String IN_MEMORY = "index in memory";
    private static final int MOST_SUGGESTIONS = 100;
    private static final float OF_THE_WORDS = 0.04f; // findings make cases alike, words only help where those are few
    private static final float OF_THE_SCOPE = 0.8f;

    private final String where;
    private final Wordbook wordbook;
    private final CaseDrafts drafts;
    private final Documents documents;
    private final Holdings holdings;
    private volatile @Nullable Snapshot current;

    private SearchIndex(@Nullable Path directory, Knowledge knowledge) {
        List<Draft> entries = EntryDrafts.of(knowledge);
        where = directory == null ? IN_MEMORY : directory.toString();
        wordbook = new Wordbook(knowledge, entries);
        drafts = new CaseDrafts(knowledge);
        documents = new Documents(wordbook);
        holdings = new Holdings(directory, wordbook.analyzer(), Fingerprint.of(entries), writer -> {
            for (int i = 0; i < entries.size(); i++) {
                writer.addDocument(documents.entry(entries.get(i), i));
            }
        });
        publish();
    }

    /**
     * Opens the index in a directory, which is made if need be.
     *
     * @param directory for this index alone
     * @param knowledge the packs; an index made from others is made anew
     */
    public static SearchIndex open(Path directory, Knowledge knowledge) {
        return uninterrupted(() -> new SearchIndex(directory, knowledge));
    }

    /** An index that is gone when it is closed. */
    public static SearchIndex inMemory(Knowledge knowledge) {
        return uninterrupted(() -> new SearchIndex(null, knowledge));
    }

    /**
     * How far the index has followed the event log.
     *
     * @throws ClosedIndexException after {@link #close}
     */
    public Reached reached() {
        return ask(snapshot -> snapshot.reached());
    }

    /** Whether changes now go where the index was opened. */
    public synchronized boolean writable() {
        return holdings.writable();
    }

    /** Why it is not {@link #writable}: where, what, and what to do about it; empty if it is. */
    public synchronized Optional<String> trouble() {
        return Optional.of(holdings.trouble()).filter(trouble -> !trouble.isEmpty());
    }

    /**
     * Takes in cases that have changed. Withdrawn ones are taken out. Durable when it returns, if {@link #writable}.
     *
     * @param changed every case touched by an event after {@link #reached}, as it is now
     * @param now the last event they reflect; if it is older than what is reached, nothing happens
     * @throws ClosedIndexException after {@link #close}
     */
    public void update(Collection<CaseHistory> changed, Reached now) {
        List<CaseHistory> cases = List.copyOf(changed);
        List<String> keys = cases.stream()
                .map(history -> Draft.key(HitKind.CASE, history.id()))
                .toList();
        change(() -> holdings.update(
                keys,
                writer -> {
                    for (CaseHistory history : cases) {
                        put(writer, history);
                    }
                },
                now));
    }

    /**
     * Replaces all cases. Searches see the old ones until it is done.
     *
     * @param all every case once, as it is now
     * @param now the last event they reflect
     * @throws SearchIndexException if the disk fails meanwhile; the old cases stand, and it can be tried again
     * @throws ClosedIndexException after {@link #close}
     */
    public void rebuild(Iterator<CaseHistory> all, Reached now) {
        change(() -> holdings.replace(
                writer -> {
                    while (all.hasNext()) {
                        CaseHistory history = all.next();
                        if (!history.withdrawn()) {
                            writer.addDocument(documents.pastCase(drafts.of(history)));
                        }
                    }
                },
                now));
    }

    /**
     * Searches entries and cases.
     *
     * @throws ClosedIndexException after {@link #close}
     * @throws SearchIndexException if the index turns out to be damaged
     */
    public SearchResult search(SearchQuery query) {
        return ask(snapshot -> new Finder(snapshot, wordbook).search(query));
    }

    /**
     * Names, other names and symptom phrases with a word that begins so, names of entries first, for use while typing.
     *
     * @param prefix what stands there so far; nothing is suggested for nothing
     * @param limit most suggestions, 1 to 100
     * @throws ClosedIndexException after {@link #close}
     */
    public List<Suggestion> suggest(String prefix, int limit) {
        requireWithin(limit, MOST_SUGGESTIONS);
        String typed = Snippets.cut(prefix, 0, SearchQuery.MAX_WORDS_LENGTH);
        return ask(snapshot -> {
            List<Suggestion> found = wordbook.completions().of(typed, limit);
            if (!found.isEmpty()) {
                return found;
            }
            Optional<String> mended = wordbook.speller().mend(typed, term -> false);
            return mended.map(text -> wordbook.completions().of(text, limit)).orElse(List.of());
        });
    }

    /**
     * Cases like this one, itself left out: those that share its findings, rare ones most, then its words; nearer device
     * scopes first.
     *
     * @param limit most cases, 1 to {@value SearchQuery#MAX_LIMIT}
     * @throws ClosedIndexException after {@link #close}
     */
    public List<SearchHit> similar(CaseHistory history, int limit) {
        return similar(history.findings(), history.complaint(), history.scope(), history.id(), limit);
    }

    /**
     * Cases with findings like these, rare ones counting most; nearer device scopes first.
     *
     * @param limit most cases, 1 to {@value SearchQuery#MAX_LIMIT}
     * @throws ClosedIndexException after {@link #close}
     */
    public List<SearchHit> similar(List<Finding> findings, DeviceScope scope, int limit) {
        return similar(findings, "", scope, "", limit);
    }

    private List<SearchHit> similar(List<Finding> findings, String text, DeviceScope scope, String except, int limit) {
        requireWithin(limit, SearchQuery.MAX_LIMIT);
        List<Word> words = words(text);
        BooleanQuery.Builder all = cases().add(alike(findings, words), Occur.MUST);
        if (!except.isEmpty()) {
            all.add(new TermQuery(Documents.key(HitKind.CASE, except)), Occur.MUST_NOT);
        }
        Queries.preferNear(all, scope, OF_THE_SCOPE);
        return ask(snapshot -> new Finder(snapshot, wordbook).best(all.build(), limit, words));
    }

    /**
     * Cases concluded on a cause, those most like a unit first: by findings, rare ones counting most, then by words; nearer
     * device scopes first.
     *
     * @param findings of the unit
     * @param text what was said of it, or empty
     * @param limit most cases, 1 to {@value SearchQuery#MAX_LIMIT}
     * @throws ClosedIndexException after {@link #close}
     */
    public List<SearchHit> concludedOn(
            String causeId, List<Finding> findings, String text, DeviceScope scope, int limit) {
        requireWithin(limit, SearchQuery.MAX_LIMIT);
        List<Word> words = words(text);
        BooleanQuery.Builder all = cases().add(new TermQuery(new Term(Fields.CAUSE, causeId)), Occur.FILTER)
                .add(alike(findings, words), Occur.SHOULD);
        Queries.preferNear(all, scope, OF_THE_SCOPE);
        return ask(snapshot -> new Finder(snapshot, wordbook).best(all.build(), limit, words));
    }

    private List<Word> words(String text) {
        return wordbook.words(Snippets.cut(text, 0, SearchQuery.MAX_WORDS_LENGTH));
    }

    private static BooleanQuery.Builder cases() {
        return new BooleanQuery.Builder().add(new TermQuery(new Term(Fields.KIND, HitKind.CASE.id())), Occur.FILTER);
    }

    private static Query alike(List<Finding> findings, List<Word> words) {
        return new BooleanQuery.Builder()
                .add(Queries.alike(findings), Occur.SHOULD)
                .add(new BoostQuery(Queries.cases(words, List.of(), List.of()).build(), OF_THE_WORDS), Occur.SHOULD)
                .build();
    }

    /**
     * In which concluded cases codes stand.
     *
     * @param codes as written
     * @param scope only cases of devices that contain it or lie inside it
     * @param except id of a case that does not count, or empty
     * @throws ClosedIndexException after {@link #close}
     */
    public List<CodeRecord> codes(Collection<String> codes, DeviceScope scope, String except) {
        return ask(snapshot -> {
            CaseCauses causes = new CaseCauses(snapshot, scope, except);
            SortedMap<String, Long> all = causes.count(List.of());
            List<CodeRecord> records = new ArrayList<>();
            for (String code : codes) {
                List<Word> words = wordbook.words(code);
                records.add(new CodeRecord(code, words.isEmpty() ? new TreeMap<>() : causes.count(words), all));
            }
            return records;
        });
    }

    /** Lets the lock and the files go; a search under way ends in peace. Closing again does nothing. */
    @Override
    public synchronized void close() {
        uninterrupted(() -> {
            swap(null);
            holdings.close();
            return this;
        });
    }

    private void put(IndexWriter writer, CaseHistory history) throws IOException {
        Term key = Documents.key(HitKind.CASE, history.id());
        if (history.withdrawn()) {
            writer.deleteDocuments(key);
        } else {
            writer.updateDocument(key, documents.pastCase(drafts.of(history)));
        }
    }

    private synchronized void change(Runnable change) {
        if (current == null) {
            throw new ClosedIndexException(where);
        }
        uninterrupted(() -> {
            try {
                change.run();
            } finally {
                publish();
            }
            return this;
        });
    }

    private void publish() {
        try {
            swap(holdings.snapshot());
        } catch (IOException e) {
            throw new SearchIndexException(where, e);
        }
    }

    private void swap(@Nullable Snapshot next) {
        Snapshot before = current;
        current = next;
        if (before != null) {
            leave(before);
        }
    }

    private interface Question<T> {
        T ask(Snapshot snapshot) throws IOException;
    }

    private <T> T ask(Question<T> question) {
        Snapshot snapshot = enter();
        try {
            return question.ask(snapshot);
        } catch (IOException e) {
            throw new SearchIndexException(where, e);
        } catch (UncheckedIOException e) {
            throw new SearchIndexException(where, Objects.requireNonNull(e.getCause()));
        } finally {
            leave(snapshot);
        }
    }

    private Snapshot enter() {
        while (true) {
            Snapshot snapshot = current;
            if (snapshot == null) {
                throw new ClosedIndexException(where);
            }
            if (snapshot.enter()) { // else it was replaced and let go between the two lines
                return snapshot;
            }
        }
    }

    private void leave(Snapshot snapshot) {
        try {
            snapshot.leave();
        } catch (IOException e) {
            throw new SearchIndexException(where, e);
        }
    }

    private static void requireWithin(int limit, int most) {
        if (limit < 1 || limit > most) {
            throw new IllegalArgumentException("limit " + limit + " is outside 1 to " + most);
        }
    }

    /** Files are written through channels, which an interrupt would close for good; so it is put off until after. */
    private static <T> T uninterrupted(Supplier<T> work) {
        boolean interrupted = Thread.interrupted();
        try {
            return work.get();
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
