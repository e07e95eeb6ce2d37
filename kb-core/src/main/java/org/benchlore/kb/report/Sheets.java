package org.benchlore.kb.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.BenchConditions;
import org.benchlore.kb.planning.BenchRecord;
import org.benchlore.kb.planning.PowerHold;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.planning.TestPlanner;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.planning.UnitQueries;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reader;

/**
 * Sheets about a case, for people: what was found, done, measured, proven and not proven. A pure function of packs, model
 * and case. Immutable and thread-safe.
 *
 * <p>An HTML sheet is one file that needs nothing else: style and pictures inside, no script, no link; it prints on A4,
 * fits a phone, and follows the reader's light or dark setting. Every text from packs and cases is escaped, in HTML and in
 * Markdown.
 */
public final class Sheets {
    /** Whom a sheet is for. */
    public enum Kind {
        /** The technician: all of the case, the ranking step by step and why, the cautions. */
        CASE,
        /** The owner, in plain words. */
        HANDOVER,
        /** A forum or a colleague; holds nothing that names a person, a unit or a shop. */
        QUESTION
    }

    /** How it is written. */
    public enum Format {
        /** CommonMark with pipe tables. */
        MARKDOWN,
        /** One self-contained page, HTML 5, UTF-8. */
        HTML
    }

    private final Knowledge knowledge;
    private final Reader reader;
    private final RankingModel model;
    private final BenchRecord record;
    private final UnitQueries queries;

    /**
     * Sheets over one snapshot.
     *
     * @param reader for the readings and log lines in the case's notes
     * @param model what ranks the findings; for an honest sheet it has not learnt from the case itself
     * @param record what cases teach of fixes and tests; likewise
     * @param queries over the same model and record
     */
    public Sheets(Knowledge knowledge, Reader reader, RankingModel model, BenchRecord record, UnitQueries queries) {
        this.knowledge = knowledge;
        this.reader = reader;
        this.model = model;
        this.record = record;
        this.queries = queries;
    }

    /** A sheet about a case, whole, ending in a line feed. */
    public String write(CaseHistory history, Kind kind, Format format) {
        Sheet sheet = sheet(history, kind);
        return format == Format.HTML ? HtmlSheet.write(sheet, kind(kind)) : MarkdownSheet.write(sheet);
    }

    private static String kind(Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    private Sheet sheet(CaseHistory history, Kind kind) {
        Terms terms = new Terms(knowledge);
        Readings readings = new Readings(reader, history);
        Course course = Course.of(history, model, queries, readings);
        Evidence evidence = new Evidence(terms, readings);
        return switch (kind) {
            case CASE ->
                CaseSheet.of(
                        history,
                        course,
                        terms,
                        evidence,
                        log(history, readings),
                        new DecisionWords(history, course, planner(), terms, readings).blocks(),
                        proof(history, terms));
            case HANDOVER ->
                HandoverSheet.of(
                        history, course, terms, evidence, proof(history, terms), held(history, course, readings));
            case QUESTION ->
                QuestionSheet.of(
                        history,
                        course,
                        terms,
                        evidence,
                        log(history, readings),
                        proof(history, terms),
                        next(history, course, readings));
        };
    }

    private TestPlanner planner() {
        return new TestPlanner(knowledge, model, record);
    }

    private ProofWords proof(CaseHistory history, Terms terms) {
        return new ProofWords(record.proof(ProofRecord.of(history), ProofWords.CONFIDENCE, Optional.empty()), terms);
    }

    private LogDigest log(CaseHistory history, Readings readings) {
        return LogDigest.of(history, readings, knowledge.devices());
    }

    /** What forbids power in the unit as it is now: what was seen after the work counts as well. */
    private List<PowerHold.Reason> held(CaseHistory history, Course course, Readings readings) {
        TestPlanner planner = planner();
        List<Finding> now = course.sinceWork().stream().filter(model::knows).toList();
        return planner.hold(
                        queries.of(history, now, readings::of),
                        BenchConditions.DEFAULT.madeSafe(planner.madeSafe(history.events(), readings::of)))
                .map(PowerHold::reasons)
                .orElse(List.of());
    }

    /** Tests worth doing with all that is known; fixes already done count as tried. */
    private List<TestProposal> next(CaseHistory history, Course course, Readings readings) {
        List<Course.Step> steps = course.steps();
        RankingQuery query = steps.stream()
                .flatMap(s -> s.query().stream())
                .reduce((a, b) -> b)
                .orElseGet(() -> new RankingQuery(List.of(), history.scope(), true)
                        .ofKinds(UnitQueries.kinds(history.scope(), List.of())));
        List<String> done =
                steps.isEmpty() ? List.of() : steps.get(steps.size() - 1).done();
        TestPlanner planner = planner();
        return planner.next(
                        query,
                        BenchConditions.DEFAULT
                                .afterFailing(done)
                                .opened(planner.opened(history.events()))
                                .madeSafe(planner.madeSafe(history.events(), readings::of)))
                .tests();
    }
}
