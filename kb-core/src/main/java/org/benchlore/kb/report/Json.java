package org.benchlore.kb.report;

import java.util.List;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.importing.ImportReview;
import org.benchlore.kb.knowledge.PackProblem;
import org.benchlore.kb.knowledge.QualityReport;
import org.benchlore.kb.planning.FixRecord;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.Plan;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.planning.Worth;
import org.benchlore.kb.ranking.Evaluation;
import org.benchlore.kb.ranking.Influence;
import org.benchlore.kb.ranking.PairRanking;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Turn;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.reading.UnknownPhrase;
import org.benchlore.kb.search.SearchHit;
import org.benchlore.kb.search.SearchResult;
import org.benchlore.kb.search.Suggestion;

/**
 * Writes answers as JSON, each one line with a {@code schema} name and version; the schema files lie beside this class's
 * module under {@code org/benchlore/kb/schema}. Thread-safe.
 */
public final class Json {
    private Json() {}

    /**
     * A ranking with what was read and what to test next ({@code benchlore/ranking/1}).
     *
     * @param reading what the findings were read from
     * @param most causes written at most, the likeliest; how many there are is written beside them
     * @param next what to do now: why power stays off, where it does, and the first tests
     */
    public static String ranking(Reading reading, Ranking ranking, int most, NextStep next) {
        return JsonNodes.write(RankingJson.ranking(reading, ranking, most, next));
    }

    /** A reading that led to no finding, as a ranking without causes ({@code benchlore/ranking/1}). */
    public static String nothingUnderstood(Reading reading) {
        return JsonNodes.write(RankingJson.nothingUnderstood(reading));
    }

    /**
     * What would change a ranking, and what moved it ({@code benchlore/reasons/1}).
     *
     * @param turns single findings that would change who leads
     * @param causeId the cause asked about
     * @param behind past cases that moved it most
     * @param pairs two faults at once
     */
    public static String reasons(List<Turn> turns, String causeId, List<Influence> behind, PairRanking pairs) {
        return JsonNodes.write(RankingJson.reasons(turns, causeId, behind, pairs));
    }

    /** How well the ranking would have done ({@code benchlore/evaluation/1}). */
    public static String evaluation(Evaluation evaluation) {
        return JsonNodes.write(EvaluationJson.evaluation(evaluation));
    }

    /** What to do now ({@code benchlore/next/1}). */
    public static String next(NextStep next) {
        return JsonNodes.write(DecisionJson.next(next));
    }

    /** The whole plan ({@code benchlore/plan/1}). */
    public static String plan(Plan plan) {
        return JsonNodes.write(DecisionJson.plan(plan));
    }

    /** The record of fixes ({@code benchlore/fixes/1}). */
    public static String fixes(List<FixRecord> fixes) {
        return JsonNodes.write(DecisionJson.fixes(fixes));
    }

    /** Whether to touch a unit ({@code benchlore/worth/1}). */
    public static String worth(Worth worth) {
        return JsonNodes.write(DecisionJson.worth(worth));
    }

    /** The proof of a fix ({@code benchlore/proof/1}). */
    public static String proof(ProofPlan proof) {
        return JsonNodes.write(DecisionJson.proof(proof));
    }

    /** What a search found, with counts to narrow it down by ({@code benchlore/search/1}). */
    public static String search(SearchResult result) {
        return JsonNodes.write(SearchJson.search(result));
    }

    /** Cases like a case, as hits without counts ({@code benchlore/search/1}). */
    public static String similar(List<SearchHit> hits) {
        return JsonNodes.write(SearchJson.similar(hits));
    }

    /** What somebody may be about to type ({@code benchlore/suggestions/1}). */
    public static String suggestions(List<Suggestion> suggestions) {
        return JsonNodes.write(SearchJson.suggestions(suggestions));
    }

    /** A knowledge entry, a device or power-off rule too, every field by its name ({@code benchlore/entry/1}). */
    public static String entry(Record entry) {
        return JsonNodes.write(KnowledgeJson.entry(entry));
    }

    /** Problems of packs, the first {@link PackProblem#MOST_SHOWN} and how many there are ({@code benchlore/check/1}). */
    public static String check(List<PackProblem> problems) {
        return JsonNodes.write(KnowledgeJson.check(problems));
    }

    /** How good the packs are ({@code benchlore/quality/1}). */
    public static String quality(QualityReport report) {
        return JsonNodes.write(KnowledgeJson.quality(report));
    }

    /** Phrases that notes use and the packs do not know ({@code benchlore/words/1}). */
    public static String words(List<UnknownPhrase> phrases) {
        return JsonNodes.write(KnowledgeJson.words(phrases));
    }

    /** What an import did ({@code benchlore/import/1}). */
    public static String imported(String source, ImportResult result) {
        return JsonNodes.write(ImportJson.imported(source, result));
    }

    /** What an import would bring ({@code benchlore/import-review/1}). */
    public static String importReview(ImportReview review) {
        return JsonNodes.write(ImportJson.importReview(review));
    }

    /** One case as it stands ({@code benchlore/case-state/1}). */
    public static String history(CaseHistory history) {
        return JsonNodes.write(HistoryJson.history(history));
    }

    /**
     * The same with what was taken back, so that it can be brought back.
     *
     * @param recorded everything recorded of the case
     */
    public static String history(CaseHistory history, List<CaseEvent> recorded) {
        return JsonNodes.write(HistoryJson.history(history, recorded));
    }

    /** Several cases ({@code benchlore/case-list/1}). */
    public static String histories(List<CaseHistory> histories) {
        return JsonNodes.write(HistoryJson.histories(histories));
    }

    /**
     * What recording an outcome did to the ranking of its cause for the same findings ({@code benchlore/outcome/1}).
     *
     * @param before probability of the cause before
     * @param after and after
     */
    public static String outcome(CaseHistory history, String causeId, double before, double after) {
        return JsonNodes.write(HistoryJson.outcome(history, causeId, before, after));
    }
}
