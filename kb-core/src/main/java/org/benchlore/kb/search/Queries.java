package org.benchlore.kb.search;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.lucene.document.FeatureField;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.ConstantScoreQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermInSetQuery;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.util.BytesRef;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * Queries built from analysed words, never parsed: words as they are, other names through {@link Concepts}, findings
 * through {@link FindingWeights}. Entries and cases are asked apart, each by its own fields.
 */
final class Queries {
    // Set on the half of the graded queries that is for that (SearchMeasure), and rounded; halving one costs 0.01 at
    // most.

    // Together these two keep the clauses under Lucene's limit of 1024.
    private static final int MOST_WORDS = 30;
    private static final int MOST_STATES = 300;
    private static final float WORD = 3f;
    private static final float OF_A_NAME = 1f; // once more, by how much of the name the word is
    private static final float NAMED = 2f; // per word, where all stand in its name
    private static final float CONCEPT = 0.6f;
    private static final float FINDING = 2f;
    private static final float NEAR_SCOPE = 4.8f;
    private static final float MOST_WEIGHT = 64; // FeatureField takes no more

    private Queries() {}

    /** What entries the words fit. */
    static Query entries(List<Word> words) {
        BooleanQuery.Builder any = new BooleanQuery.Builder();
        Set<String> terms = distinct(words);
        addTerms(any, Fields.TEXT, WORD, terms);
        addTerms(any, Fields.NAME, OF_A_NAME, terms);
        if (!terms.isEmpty()) {
            BooleanQuery.Builder every = new BooleanQuery.Builder();
            terms.forEach(term -> every.add(new TermQuery(new Term(Fields.NAME, term)), Occur.FILTER));
            any.add(boosted(new ConstantScoreQuery(every.build()), NAMED * terms.size()), Occur.SHOULD);
        }
        Query name = new TermQuery(new Term(Fields.WHOLE_NAME, Word.join(words)));
        any.add(boosted(new ConstantScoreQuery(name), Relevance.ASKED), Occur.SHOULD);
        return any.build();
    }

    /** What entries speak of what the words name. */
    static Query speakingOf(Collection<String> concepts) {
        BooleanQuery.Builder any = new BooleanQuery.Builder();
        addTerms(any, Fields.CONCEPTS, CONCEPT, concepts);
        return any.build();
    }

    /** What cases the words and findings fit. */
    static BooleanQuery.Builder cases(List<Word> words, Collection<String> concepts, List<Finding> findings) {
        BooleanQuery.Builder any = new BooleanQuery.Builder();
        addTerms(any, Fields.STORY, WORD, distinct(words));
        addTerms(any, Fields.CASE_CONCEPTS, CONCEPT, concepts);
        addFindings(any, Fields.FINDINGS, FINDING, findings);
        return any;
    }

    private static void addTerms(BooleanQuery.Builder any, String field, float boost, Collection<String> terms) {
        for (String term : terms) {
            any.add(boosted(new TermQuery(new Term(field, term)), boost), Occur.SHOULD);
        }
    }

    /** Adds the case that is called for outright, by its id, and those whose unit's tag is just these words. */
    static void addAsked(BooleanQuery.Builder any, String id, List<Word> words) {
        Query tag = new TermQuery(new Term(Fields.TAG, Word.join(words)));
        any.add(boosted(new ConstantScoreQuery(tag), Relevance.ASKED), Occur.SHOULD);
        Query key = new TermQuery(Documents.key(HitKind.CASE, id));
        any.add(boosted(new ConstantScoreQuery(key), Relevance.ASKED), Occur.SHOULD);
    }

    /** Cases that share findings; the weight a case carries holds how rare each is. */
    static Query alike(List<Finding> findings) {
        BooleanQuery.Builder any = new BooleanQuery.Builder();
        addFindings(any, Fields.LIKENESS, 1, findings);
        return any.build();
    }

    private static void addFindings(BooleanQuery.Builder any, String field, float boost, List<Finding> findings) {
        findings.stream()
                .flatMap(finding -> finding.likelihoods().entrySet().stream()
                        .map(e -> FeatureField.newLinearQuery(
                                field,
                                FindingWeights.term(finding.symptomId(), e.getKey()),
                                weight(boost * e.getValue()))))
                .limit(MOST_STATES)
                .forEach(clause -> any.add(clause, Occur.SHOULD));
    }

    /** The scored part among what belongs to the scope, lies inside it or around it. */
    static Query within(Query scored, DeviceScope scope) {
        BooleanQuery.Builder all = new BooleanQuery.Builder().add(scored, Occur.MUST);
        if (scope.depth() > 0) {
            Query inside = new TermQuery(new Term(Fields.WITHIN, scope.toString()));
            List<String> around =
                    scope.lineage().stream().map(DeviceScope::toString).toList();
            BooleanQuery either = new BooleanQuery.Builder()
                    .add(inside, Occur.SHOULD)
                    .add(oneOf(Fields.SCOPE, around), Occur.SHOULD)
                    .build();
            all.add(either, Occur.FILTER);
        }
        return all.build();
    }

    /** Each step of the scope that a document shares counts, all of them together as much as given. */
    static void preferNear(BooleanQuery.Builder all, DeviceScope scope, float most) {
        for (DeviceScope step : scope.lineage()) {
            if (step.depth() > 0) {
                Query reaches = new TermQuery(new Term(Fields.WITHIN, step.toString()));
                all.add(boosted(new ConstantScoreQuery(reaches), most / scope.depth()), Occur.SHOULD);
            }
        }
    }

    /** What each step of the query's scope that something shares adds to its score. */
    static double nearness(DeviceScope scope, DeviceScope other) {
        int shared = 0;
        for (DeviceScope step : scope.lineage()) {
            if (step.depth() > 0 && step.contains(other)) {
                shared++;
            }
        }
        return shared == 0 ? 0 : NEAR_SCOPE * shared / scope.depth();
    }

    /** The words that are asked with. */
    static Set<String> distinct(List<Word> words) {
        Set<String> seen = new LinkedHashSet<>();
        for (Word word : words) {
            if (seen.size() < MOST_WORDS) {
                seen.add(word.term());
            }
        }
        return seen;
    }

    private static Query oneOf(String field, Collection<String> values) {
        return new TermInSetQuery(field, values.stream().map(BytesRef::new).toList());
    }

    private static Query boosted(Query query, float boost) {
        return new BoostQuery(query, boost);
    }

    private static float weight(double wanted) {
        return (float) Math.min(MOST_WEIGHT, Math.max(Float.MIN_NORMAL, wanted));
    }
}
