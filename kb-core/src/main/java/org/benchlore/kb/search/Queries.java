package org.benchlore.kb.search;

import java.util.ArrayList;
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
import org.apache.lucene.search.DisjunctionMaxQuery;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.PhraseQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermInSetQuery;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.util.BytesRef;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * Queries built from analysed words, never parsed: each word counts where it matches best, neighbours that stay
 * neighbours count extra, other names count through {@link Concepts}, findings through {@link FindingWeights}.
 */
final class Queries {
    // The weights were set on the odd lines of the graded queries and checked on the even ones (SearchMeasure). They
    // lie
    // on a plateau: changing one of them by half moved nDCG@10 on the odd lines by 0.03 at most.

    // Together these two keep the clauses under Lucene's limit of 1024: 22 per word, one per state of a finding.
    private static final int MOST_WORDS = 30;
    private static final int MOST_STATES = 300;
    private static final float ELSEWHERE = 0.8f; // share of the fields that match less well
    private static final float ALL_WORDS = 0.5f; // per word, where none is missing
    private static final float NAMED = 2f; // per word, where all stand in its name
    private static final float NEIGHBOURS = 0.3f;
    private static final float CONCEPT = 0.8f;
    private static final float FINDING = 2.5f;
    private static final float NEAR_SCOPE = 0.8f;
    private static final float MOST_WEIGHT = 64; // FeatureField takes no more

    private Queries() {}

    /** What has to match, with the scores; empty if nothing can. */
    static Query scored(List<Word> words, Collection<String> concepts, List<Finding> findings) {
        BooleanQuery.Builder any = new BooleanQuery.Builder();
        List<Word> first = distinct(words);
        for (Word word : first) {
            any.add(word(word), Occur.SHOULD);
        }
        if (first.size() > 1) {
            BooleanQuery.Builder every = new BooleanQuery.Builder();
            first.forEach(word -> every.add(word(word), Occur.FILTER));
            any.add(boosted(new ConstantScoreQuery(every.build()), ALL_WORDS * first.size()), Occur.SHOULD);
        }
        if (!first.isEmpty()) {
            any.add(boosted(new ConstantScoreQuery(inName(first)), NAMED * first.size()), Occur.SHOULD);
        }
        for (int i = 0; i + 1 < first.size(); i++) {
            any.add(neighbours(first.get(i).term(), first.get(i + 1).term()), Occur.SHOULD);
        }
        for (String concept : concepts) {
            any.add(boosted(new TermQuery(new Term(Fields.CONCEPTS, concept)), CONCEPT), Occur.SHOULD);
        }
        addFindings(any, Fields.FINDINGS, FINDING, findings);
        return any.build();
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

    /** The scored part within its filters; nearer scopes score more. */
    static Query filtered(Query scored, SearchQuery query) {
        BooleanQuery.Builder all = new BooleanQuery.Builder().add(scored, Occur.MUST);
        if (!query.kinds().isEmpty()) {
            all.add(oneOf(Fields.KIND, query.kinds().stream().map(HitKind::id).toList()), Occur.FILTER);
        }
        if (!query.outcomes().isEmpty()) {
            all.add(
                    oneOf(
                            Fields.OUTCOME,
                            query.outcomes().stream().map(o -> o.id()).toList()),
                    Occur.FILTER);
        }
        related(all, query.scope());
        return all.build();
    }

    static Query everything() {
        return new BoostQuery(new MatchAllDocsQuery(), 0);
    }

    private static void related(BooleanQuery.Builder all, DeviceScope scope) {
        if (scope.depth() == 0) {
            return;
        }
        Query inside = new TermQuery(new Term(Fields.WITHIN, scope.toString()));
        List<String> around =
                scope.lineage().stream().map(DeviceScope::toString).toList();
        BooleanQuery either = new BooleanQuery.Builder()
                .add(inside, Occur.SHOULD)
                .add(oneOf(Fields.SCOPE, around), Occur.SHOULD)
                .build();
        all.add(either, Occur.FILTER);
        preferNear(all, scope);
    }

    /** Each step of the scope that a document shares counts. */
    static void preferNear(BooleanQuery.Builder all, DeviceScope scope) {
        for (DeviceScope step : scope.lineage()) {
            if (step.depth() > 0) {
                Query reaches = new TermQuery(new Term(Fields.WITHIN, step.toString()));
                all.add(boosted(new ConstantScoreQuery(reaches), NEAR_SCOPE / scope.depth()), Occur.SHOULD);
            }
        }
    }

    private static List<Word> distinct(List<Word> words) {
        List<Word> first = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (Word word : words) {
            if (seen.size() < MOST_WORDS && seen.add(word.term())) {
                first.add(word);
            }
        }
        return first;
    }

    private static Query word(Word word) {
        List<Query> places = new ArrayList<>();
        Fields.TEXTS.forEach((field, boost) -> places.add(boosted(new TermQuery(new Term(field, word.term())), boost)));
        return new DisjunctionMaxQuery(places, ELSEWHERE);
    }

    private static Query inName(List<Word> words) {
        BooleanQuery.Builder every = new BooleanQuery.Builder();
        words.forEach(word -> every.add(new TermQuery(new Term(Fields.NAME, word.term())), Occur.FILTER));
        return every.build();
    }

    private static Query neighbours(String left, String right) {
        List<Query> places = new ArrayList<>();
        Fields.TEXTS.forEach(
                (field, boost) -> places.add(boosted(new PhraseQuery(1, field, left, right), boost * NEIGHBOURS)));
        return new DisjunctionMaxQuery(places, 0);
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
