package org.benchlore.kb;

import static java.util.Objects.requireNonNull;

import com.google.common.base.Suppliers;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseExport;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseIds;
import org.benchlore.kb.cases.CaseImport;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.cases.Stakes;
import org.benchlore.kb.importing.ImportReview;
import org.benchlore.kb.importing.ImportSettings;
import org.benchlore.kb.importing.Importer;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.QualityReport;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.planning.BenchConditions;
import org.benchlore.kb.planning.FixRecord;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.Plan;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.planning.TestErrors;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.planning.UnitQueries;
import org.benchlore.kb.planning.Worth;
import org.benchlore.kb.ranking.Evaluation;
import org.benchlore.kb.ranking.Influence;
import org.benchlore.kb.ranking.PairRanking;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
import org.benchlore.kb.ranking.Turn;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.reading.UnknownPhrase;
import org.benchlore.kb.report.KnowledgePages;
import org.benchlore.kb.report.Sheets;
import org.benchlore.kb.search.ClosedIndexException;
import org.benchlore.kb.search.SearchHit;
import org.benchlore.kb.search.SearchQuery;
import org.benchlore.kb.search.SearchResult;
import org.benchlore.kb.search.Suggestion;

/**
 * The memory of a repair bench: reads words into findings, ranks causes, proposes tests, records what happened, and ranks
 * better for it. Thread-safe; share one instance. Close it once; nothing else needs closing, and there are no background
 * threads.
 *
 * <p>Each answer comes from one snapshot of packs and cases. Several processes may open one home: each sees what the others
 * have recorded by its next call. What {@link #record} acknowledged is on disk.
 *
 * <p>An id that the packs do not have is refused with an {@link IllegalArgumentException} that names the nearest, be it asked
 * for or recorded. What a case holds is another matter: other benches have other packs, and packs drop entries, so imports
 * take every id, and what the packs do not know of a case is kept, shown and counted for nothing. A null is refused with a
 * {@link NullPointerException} that names the parameter.
 *
 * <p>Every method throws {@link ClosedKnowledgeBaseException} after {@link #close}, and
 * {@link org.benchlore.kb.cases.StoreException} when the home is in trouble.
 */
public final class KnowledgeBase implements AutoCloseable {
    private final Knowledge knowledge;
    private final org.benchlore.kb.reading.Reader reader;
    private final CaseStore store;
    private final Admission admission;
    private final Memory memory;
    private final IndexFollower index;
    private final CaseIds ids;
    private final Clock clock;
    private final Hindsight hindsight;
    private final Supplier<Importer> importer;
    private volatile boolean closed;

    KnowledgeBase(
            Knowledge knowledge,
            CaseStore store,
            RankingSettings settings,
            IndexFollower index,
            CaseIds ids,
            Clock clock) {
        this.knowledge = knowledge;
        this.reader = org.benchlore.kb.reading.Reader.of(knowledge);
        this.store = store;
        this.admission = new Admission(knowledge, store);
        this.memory = new Memory(store, knowledge, settings);
        this.index = index;
        this.ids = ids;
        this.clock = clock;
        this.hindsight = new Hindsight(knowledge, reader, store, settings);
        this.importer = Suppliers.memoize(() -> new Importer(knowledge, reader, store));
    }

    /** A builder, for one thread and one use. */
    public static KnowledgeBaseBuilder builder() {
        return new KnowledgeBaseBuilder();
    }

    /** Everything the packs say. */
    public Knowledge knowledge() {
        return answer(() -> knowledge);
    }

    /** How good the packs are: coverage, testability, information, origins, twins, readability, one-way links. */
    public QualityReport quality() {
        return answer(() -> QualityReport.of(knowledge));
    }

    /** Reads words about any device. @see #read(String, DeviceScope) */
    public Reading read(String text) {
        return read(text, DeviceScope.ANY);
    }

    /**
     * Reads words, values and log lines into findings, and says what it did not understand.
     *
     * @param text at most 1 MiB
     * @param scope whose net names, lamps and codes to use
     */
    public Reading read(String text, DeviceScope scope) {
        requireNonNull(text, "text");
        requireNonNull(scope, "scope");
        return answer(() -> reader.read(text, scope));
    }

    /** Likely causes for what was read. */
    public Ranking rank(Reading reading) {
        return rank(query(reading));
    }

    /** What a note says of a unit: its findings, its words, and codes that no pack knows. */
    public RankingQuery query(Reading reading) {
        requireNonNull(reading, "reading");
        return answer(() -> UnitQueries.of(reading, index::codes));
    }

    /** Whether anything in a query tells causes apart: a finding, a code of past cases, a word of an entry. */
    public boolean tells(RankingQuery query) {
        requireNonNull(query, "query");
        return answer(() -> memory.current().model().tells(query));
    }

    /** Likely causes for findings picked outright, in any device. */
    public Ranking rank(List<Finding> findings) {
        requireNonNull(findings, "findings");
        return rank(RankingQuery.of(findings));
    }

    /**
     * Likely causes.
     *
     * @throws IllegalArgumentException if a finding names an unknown symptom or state, or a symptom comes twice
     */
    public Ranking rank(RankingQuery query) {
        requireNonNull(query, "query");
        return answer(() -> memory.about(query).model().rank(query));
    }

    /**
     * What is known of a case's unit: the findings of its fault that the packs know, what its texts say beyond them, codes
     * that no pack knows, and the fixes that failed held against the causes they should have cured. The query is
     * {@linkplain RankingQuery#about about} the case, so that what the case itself taught is left out, as in its sheet.
     */
    public RankingQuery query(CaseHistory history) {
        return query(history, List.of());
    }

    /**
     * As {@link #query(CaseHistory)}, with what is found now on top. A look at what was told again since, such as clean boards
     * before another spill, no longer counts.
     *
     * @param now findings, at most one per symptom
     */
    public RankingQuery query(CaseHistory history, List<Finding> now) {
        requireNonNull(history, "history");
        requireNonNull(now, "now");
        return answer(() -> queries(memory.without(history.id())).of(history, now, text -> read(history, text)));
    }

    /**
     * What fixes that failed say of the causes they should have cured, for {@link RankingQuery#tried}. Ids that the packs do
     * not have, such as a case of older packs may hold, say nothing.
     */
    public SortedMap<String, Double> tried(List<String> failedFixes) {
        requireNonNull(failedFixes, "failedFixes");
        return answer(() -> memory.current().record().tried(failedFixes));
    }

    /** As {@link #tried(List)}, without what this very case says of its fixes. */
    public SortedMap<String, Double> tried(List<String> failedFixes, String caseId) {
        requireNonNull(failedFixes, "failedFixes");
        requireNonNull(caseId, "caseId");
        return answer(() -> memory.without(caseId).record().tried(failedFixes));
    }

    /**
     * Bench tests worth doing, best first by what they save per minute.
     *
     * @param accepted highest risk to the unit that is acceptable
     */
    public List<TestProposal> next(RankingQuery query, Risk accepted) {
        requireNonNull(query, "query");
        requireNonNull(accepted, "accepted");
        return next(query, BenchConditions.DEFAULT.accepting(accepted)).tests();
    }

    /** As {@link #next(RankingQuery, Risk)}, with tests of medium risk at most. */
    public List<TestProposal> next(RankingQuery query) {
        return next(query, Risk.MEDIUM);
    }

    /** What to do now: tests by what they save per minute, the fix to try otherwise, and whether to stop testing. */
    public NextStep next(RankingQuery query, BenchConditions conditions) {
        requireNonNull(query, "query");
        requireNonNull(conditions, "conditions");
        return answer(() -> memory.about(query).planner().next(query, conditions));
    }

    /** Whether the unit lies open, by the tests and fixes done in the case; for {@link BenchConditions#opened}. */
    public boolean opened(CaseHistory history) {
        requireNonNull(history, "history");
        return answer(() -> memory.current().planner().opened(history.events()));
    }

    /**
     * Rules that forbade power until a fix done in the case lifted them, or a note that tells of one; for
     * {@link BenchConditions#madeSafe}.
     */
    public List<String> madeSafe(CaseHistory history) {
        requireNonNull(history, "history");
        return answer(() -> memory.current().planner().madeSafe(history.events(), text -> read(history, text)));
    }

    /** As {@link #madeSafe(CaseHistory)}, of a note that tells what was done: "opened, washed it, dry now". */
    public List<String> madeSafe(Reading reading) {
        requireNonNull(reading, "reading");
        return answer(() -> memory.current().planner().madeSafe(reading));
    }

    /** The whole repair as a decision tree, with its expected minutes beside simpler ways. */
    public Plan plan(RankingQuery query, BenchConditions conditions) {
        requireNonNull(query, "query");
        requireNonNull(conditions, "conditions");
        return answer(() -> memory.about(query).planner().plan(query, conditions));
    }

    /**
     * How often a test reads wrong, learnt from the cases; {@link TestErrors#finding} makes a result a finding that allows
     * for it.
     */
    public TestErrors errors(BenchTest test) {
        requireNonNull(test, "test");
        return answer(() -> memory.current().record().errors(test));
    }

    /**
     * The record of each fix that was tried, the most tried first.
     *
     * @param scope only units within it
     * @param origin only cases of one bench, {@link CaseHistory#OWN} for one's own; empty for all
     */
    public List<FixRecord> fixes(DeviceScope scope, Optional<String> origin) {
        requireNonNull(scope, "scope");
        requireNonNull(origin, "origin");
        return answer(() -> memory.current().record().fixes(scope, origin));
    }

    /**
     * The record of one fix, tried or not.
     *
     * @throws IllegalArgumentException if the packs do not have it and no case tried it
     */
    public FixRecord fix(String fixId) {
        requireNonNull(fixId, "fixId");
        return answer(() -> {
            FixRecord record = memory.current().record().fix(fixId);
            if (record.tried() == 0 && knowledge.fix(fixId).isEmpty()) {
                throw knowledge.unknown(EntryKind.FIX, fixId);
            }
            return record;
        });
    }

    /**
     * Whether to touch a unit: with the chance of success and of harm out of the ranking and the fix's record.
     *
     * @param query what is known of the unit; without a finding it works, and the fix's record alone counts
     * @param fixId the work thought of
     * @throws IllegalArgumentException if the packs have no such fix
     */
    public Worth worth(RankingQuery query, String fixId, Stakes stakes) {
        requireNonNull(query, "query");
        requireNonNull(fixId, "fixId");
        requireNonNull(stakes, "stakes");
        return answer(() -> memory.about(query).planner().worth(query, fixId, stakes));
    }

    /**
     * The proof of a fix.
     *
     * @param known what it starts from: a case's checks ({@link ProofRecord#of(CaseHistory)}), or numbers
     * @param confidence asked for, in (0,1)
     * @param notCured probability before the run that the fix did not cure; empty for the fix's record, else ½
     * @throws IllegalArgumentException if a number is out of range
     */
    public ProofPlan proof(ProofRecord known, double confidence, Optional<Double> notCured) {
        requireNonNull(known, "known");
        requireNonNull(notCured, "notCured");
        return answer(() -> memory.current().record().proof(known, confidence, notCured));
    }

    /** As {@link #proof(ProofRecord, double, Optional)}, without what this very case says of its fix. */
    public ProofPlan proof(ProofRecord known, double confidence, Optional<Double> notCured, String caseId) {
        requireNonNull(known, "known");
        requireNonNull(notCured, "notCured");
        requireNonNull(caseId, "caseId");
        return answer(() -> memory.without(caseId).record().proof(known, confidence, notCured));
    }

    /**
     * Single findings not yet made that would most change who leads, the strongest first.
     *
     * @param limit most to return, from 1
     */
    public List<Turn> turns(RankingQuery query, int limit) {
        requireNonNull(query, "query");
        requireLimit(limit);
        return answer(() -> memory.about(query).model().turns(query, limit));
    }

    /**
     * Past cases concluded on a cause that moved its place in a ranking most, the strongest first. Of many, the 200 most like
     * the query are looked at. None for a cause that does not apply in the query's scope.
     *
     * @param limit most to return, from 1
     * @throws IllegalArgumentException if the packs have no such cause
     */
    public List<Influence> casesBehind(RankingQuery query, String causeId, int limit) {
        requireNonNull(query, "query");
        requireNonNull(causeId, "causeId");
        requireLimit(limit);
        return answer(() -> new PastCases(knowledge, memory, index).behind(query, causeId, limit));
    }

    /**
     * Two faults at once beside each fault alone.
     *
     * @param limit most pairs to return, from 1
     */
    public PairRanking pairs(RankingQuery query, int limit) {
        requireNonNull(query, "query");
        requireLimit(limit);
        return answer(() -> memory.about(query).model().pairs(query, limit));
    }

    /**
     * How well the ranking would have done on ended cases, each ranked before it was learnt.
     *
     * @param imported whether to score other benches' cases beside one's own
     */
    public Evaluation evaluate(boolean imported) {
        return answer(() -> hindsight.evaluate(imported));
    }

    /** Entries and cases for words. */
    public SearchResult search(SearchQuery query) {
        requireNonNull(query, "query");
        return answer(() -> index.search(query));
    }

    /** Names and phrases with a word that begins so, for use while typing; at most 100. */
    public List<Suggestion> suggest(String prefix, int limit) {
        requireNonNull(prefix, "prefix");
        requireLimit(limit);
        return answer(() -> index.suggest(prefix, limit));
    }

    /** Cases like this one, those that share its findings first, itself left out; at most 1000. */
    public List<SearchHit> similar(CaseHistory history, int limit) {
        requireNonNull(history, "history");
        requireLimit(limit);
        return answer(() -> index.similar(history, limit));
    }

    /**
     * Records events durably; they count from the next answer on. An event id recorded before changes nothing. What is
     * refused here and comes from elsewhere, such as a case that names another bench's entries, can be
     * {@linkplain #importCases imported}.
     *
     * @return those that were new
     * @throws IllegalArgumentException if an event names a symptom, state, cause, test or fix that neither the packs nor the
     *     case have, or corrects or withdraws an event the case does not have; if the case has no opening, or would have a
     *     second one; nothing is recorded then
     * @throws org.benchlore.kb.cases.EventConflictException if an id is known with another body; nothing is recorded then
     * @throws org.benchlore.kb.cases.ListenerException if a listener failed; the events are recorded all the same
     */
    public List<CaseEvent> record(List<CaseEvent> events) {
        requireNonNull(events, "events");
        return answer(() -> {
            admission.check(events);
            return store.append(events).stream().map(CaseStore.Recorded::event).toList();
        });
    }

    /** As {@link #record(List)}. */
    public List<CaseEvent> record(CaseEvent... events) {
        return record(Arrays.asList(requireNonNull(events, "events")));
    }

    /**
     * Calls a listener for each new event that this instance records or imports, on the recording thread, once the event is
     * on disk. Where one throws, the events stay, all listeners hear of all events, and whoever recorded gets a
     * {@link org.benchlore.kb.cases.ListenerException}.
     */
    public void onRecorded(Consumer<CaseEvent> listener) {
        requireNonNull(listener, "listener");
        open();
        store.onAppended(listener);
    }

    /** A new head for an event of a case, with a fresh id and the present time. */
    public CaseEvent.Head head(String caseId) {
        requireNonNull(caseId, "caseId");
        return answer(() -> new CaseEvent.Head(ids.eventId(), caseId, Instant.now(clock)));
    }

    /** A short case id that no case has yet, such as {@code 20261125-k7f3}. */
    public String newCaseId() {
        return answer(() -> ids.caseId(store::hasCase));
    }

    /** One case; empty if unknown. */
    public Optional<CaseHistory> history(String caseId) {
        requireNonNull(caseId, "caseId");
        return answer(() -> store.history(caseId));
    }

    /** Ids of entries that events name and no pack here has, such as those of another bench's own pack. */
    public SortedSet<String> unknownIds(Collection<CaseEvent> events) {
        requireNonNull(events, "events");
        return answer(() -> admission.unknown(events));
    }

    /** Everything recorded of a case, taken-back events too, in order of time and id; empty for an unknown case. */
    public List<CaseEvent> events(String caseId) {
        requireNonNull(caseId, "caseId");
        return answer(() -> store.eventsOf(caseId));
    }

    /**
     * A sheet about a case: for the technician, for the owner, or a question for others.
     *
     * <p>The ranking in it is by the packs and all other cases; what this case itself taught is left out.
     *
     * @return a whole document, ending in a line feed; empty if the case is unknown
     */
    public Optional<String> sheet(String caseId, Sheets.Kind kind, Sheets.Format format) {
        requireNonNull(caseId, "caseId");
        requireNonNull(kind, "kind");
        requireNonNull(format, "format");
        return answer(() -> {
            Lore others = memory.without(caseId);
            return memory.history(caseId, others)
                    .map(history -> new Sheets(knowledge, reader, others.model(), others.record(), queries(others))
                            .write(history, kind, format));
        });
    }

    /**
     * Cases, the newest first.
     *
     * @param limit most to return, from 1
     */
    public List<CaseHistory> cases(int limit) {
        requireLimit(limit);
        return answer(() -> store.caseIds(limit).stream()
                .flatMap(id -> store.history(id).stream())
                .toList());
    }

    /**
     * Phrases that the cases' complaints and notes use and the packs do not teach, the weightiest first, with the cause each
     * goes with and the states it may stand for. Reads every note, so it takes about as long as importing them did.
     *
     * @param atLeast cases a phrase must stand in, from 1
     */
    public List<UnknownPhrase> unknownPhrases(int atLeast) {
        return answer(() -> hindsight.unknownPhrases(atLeast));
    }

    /** Number of cases recorded. */
    public long caseCount() {
        return answer(() -> store.caseCount());
    }

    /**
     * Reads whole histories, diaries, tables or lines of JSON, into drafts of cases, for people to look at. Nothing is
     * stored.
     *
     * @param in text of at most 64 MiB: UTF-8, UTF-16 with a byte order mark, else windows-1252; not closed
     * @param source its name, usually the file's; case ids are made from it
     * @throws IOException if {@code in} throws it
     * @throws org.benchlore.kb.importing.BadImportException if the source cannot be used at all
     */
    public ImportReview reviewImport(InputStream in, String source, ImportSettings how) throws IOException {
        requireNonNull(in, "in");
        requireNonNull(source, "source");
        requireNonNull(how, "how");
        return answer(() -> importer.get().review(in, source, how));
    }

    /**
     * Stores the cases of a review. Importing the same source again changes nothing.
     *
     * @param origin {@link CaseHistory#OWN} for one's own cases, else a name for the other bench
     * @param duplicates whether to store cases, too, that are another one told again
     */
    public ImportResult importReviewed(ImportReview review, String origin, boolean duplicates) {
        requireNonNull(review, "review");
        requireNonNull(origin, "origin");
        return answer(() -> importer.get().store(review, origin, duplicates));
    }

    /**
     * Imports lines of JSON, events or whole cases, however many; a bad line stops nothing and is reported.
     *
     * @param lines not closed; for bytes see {@link org.benchlore.kb.importing.SourceText#reader}
     * @param source how problems name it, usually the file
     * @param origin {@link CaseHistory#OWN} for one's own cases, else a name for the other bench
     * @throws IOException if {@code lines} throws it
     * @throws org.benchlore.kb.cases.ListenerException if a listener failed; every good line is imported all the same
     */
    public ImportResult importCases(Reader lines, String source, String origin) throws IOException {
        requireNonNull(lines, "lines");
        requireNonNull(source, "source");
        requireNonNull(origin, "origin");
        return answer(() -> CaseImport.read(
                store,
                lines,
                source,
                origin,
                (text, scope) -> reader.read(text, scope).findings()));
    }

    /**
     * Exports every event as a line of JSON.
     *
     * @param to neither flushed nor closed
     * @param anonymised leave out free text, serial numbers, prices and the names of other shops
     * @return number of events
     * @throws IOException if {@code to} throws it
     */
    public long exportCases(Appendable to, boolean anonymised) throws IOException {
        requireNonNull(to, "to");
        return answer(() -> CaseExport.write(store, to, anonymised));
    }

    /**
     * Writes the packs as static pages to browse; no case goes into them. See {@link KnowledgePages} for the paths that other
     * tools can link to.
     *
     * @param folder new, empty, or written so before
     * @throws org.benchlore.kb.report.ForeignFilesException if that would overwrite what is not ours
     * @throws IOException if it cannot be written
     */
    public KnowledgePages.Written exportPages(Path folder) throws IOException {
        requireNonNull(folder, "folder");
        return answer(() -> new KnowledgePages(knowledge, memory.packs()).write(folder));
    }

    /**
     * Throws away what is derived from the events, statistics and search index, and derives it again.
     *
     * @throws org.benchlore.kb.cases.StoreException if opened for reading only
     */
    public void rebuild() {
        answer(() -> {
            store.requireWriting();
            memory.rebuild();
            index.rebuild();
            return store.position();
        });
    }

    private interface Question<T, E extends Exception> {
        T ask() throws E;
    }

    /** An answer, unless we are closed, be it while the answer was under way. */
    private <T, E extends Exception> T answer(Question<T, E> question) throws E {
        open();
        try {
            return question.ask();
        } catch (IllegalStateException | ClosedIndexException e) {
            if (closed) {
                throw new ClosedKnowledgeBaseException(e);
            }
            throw e;
        }
    }

    private static void requireLimit(int limit) {
        if (limit < 1) {
            throw new IllegalArgumentException("limit " + limit + "; ask for at least 1");
        }
    }

    private Optional<Reading> read(CaseHistory history, String text) {
        return org.benchlore.kb.reading.Reader.takes(text)
                ? Optional.of(reader.read(text, history.scope()))
                : Optional.empty();
    }

    private UnitQueries queries(Lore lore) {
        return new UnitQueries(knowledge, lore.model(), lore.record(), index::codes);
    }

    private void open() {
        if (closed) {
            throw new ClosedKnowledgeBaseException(null);
        }
    }

    /** Closes store and index; closing again does nothing. */
    @Override
    public void close() {
        if (!closed) {
            closed = true;
            try (store) {
                index.close();
            }
        }
    }
}
