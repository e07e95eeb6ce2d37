package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.StateTable;
import org.benchlore.kb.reading.Finding;

/**
 * Takes a second look at a ranking: what speaks against its leader, what would overturn it, and whether two faults explain
 * more than one. Immutable and thread-safe.
 *
 * <p>Two faults combine as a leaky noisy-OR (Pearl, Probabilistic Reasoning in Intelligent Systems, 1988; Henrion, UAI 1989,
 * for the leak; both from memory): the symptom stays normal if neither disturbs it, P(normal | a, b) = P(normal | a) · P(normal
 * | b) / the largest of P(normal usually) and the two, and the abnormal states are shared as the two faults have them. The pair's prior is the product of
 * theirs.
 */
public final class Doubts {
    /** An observation less likely than this is far-fetched; our choice. */
    private static final double FAR_FETCHED = 0.02;
    /** A weight below this is no contradiction, in decibans; our choice. */
    private static final double LEAST_DECIBANS = 1;
    /** Pairs are formed of so many causes, those that explain any finding best. */
    private static final int PAIR_CAUSES = 40;

    private static final int PAIRS = 3;
    /** A pair below these odds to the best single cause is not worth a word, when that cause fits. */
    private static final double LEAST_ODDS = 1;
    /** A finding belongs to one of the two if that makes it so many times likelier than the other does. */
    private static final double MINE = 2;

    private final Knowledge knowledge;
    private final RankingModel model;
    private final List<Cause> causes;

    /** Doubts over one snapshot. */
    public Doubts(Knowledge knowledge, RankingModel model) {
        this.knowledge = knowledge;
        this.model = model;
        this.causes = List.copyOf(knowledge.causes());
    }

    /** A second look at the ranking for a query. */
    public SecondLook of(RankingQuery query) {
        Ranking ranking = model.rank(query);
        Ranking.RankedCause first = ranking.causes().isEmpty()
                        || ranking.unlisted().probability()
                                > ranking.causes().get(0).probability()
                ? ranking.unlisted()
                : ranking.causes().get(0);
        double[] posterior = model.probabilities(query);
        List<double[]> given = new ArrayList<>();
        query.findings().forEach(f -> given.add(given(f, query)));
        boolean fits = fits(query, posterior, given);
        return new SecondLook(
                first.id(),
                first.probability(),
                against(first, query, posterior, given),
                overturning(number(first.id()), posterior, query),
                fits,
                pairs(query, given, fits));
    }

    private int number(String causeId) {
        return IntStream.range(0, causes.size())
                .filter(c -> causes.get(c).id().equals(causeId))
                .findFirst()
                .orElse(causes.size());
    }

    private String id(int c) {
        return c < causes.size() ? causes.get(c).id() : RankingModel.UNLISTED;
    }

    /** P(finding | cause) per cause. */
    private double[] given(Finding finding, RankingQuery query) {
        StateTable table = model.states(finding.symptomId(), query.scope());
        double[] likelihood = likelihood(finding);
        double[] given = new double[table.causes()];
        for (int c = 0; c < given.length; c++) {
            for (int x = 0; x < likelihood.length; x++) {
                given[c] += likelihood[x] * table.given(x, c);
            }
        }
        return given;
    }

    private Symptom symptom(String id) {
        return knowledge.symptom(id).orElseThrow();
    }

    private double[] likelihood(Finding finding) {
        return symptom(finding.symptomId()).states().stream()
                .mapToDouble(x -> finding.likelihoods().getOrDefault(x.id(), 0.0))
                .toArray();
    }

    private List<SecondLook.Against> against(
            Ranking.RankedCause leader, RankingQuery query, double[] posterior, List<double[]> given) {
        List<SecondLook.Against> against = new ArrayList<>();
        for (Ranking.Evidence e : leader.evidence()) {
            if (e.decibans() <= -LEAST_DECIBANS) {
                int at = IntStream.range(0, query.findings().size())
                        .filter(i -> query.findings().get(i).symptomId().equals(e.symptomId()))
                        .findFirst()
                        .orElseThrow();
                int better = IntStream.range(0, posterior.length)
                        .boxed()
                        .max(Comparator.comparingDouble(
                                c -> posterior[c] * given.get(at)[c] * (id(c).equals(leader.id()) ? 0 : 1)))
                        .orElseThrow();
                against.add(new SecondLook.Against(e.symptomId(), e.stateId(), e.decibans(), id(better)));
            }
        }
        against.sort(
                Comparator.comparingDouble(SecondLook.Against::decibans).thenComparing(SecondLook.Against::symptomId));
        return against;
    }

    private Optional<SecondLook.Overturning> overturning(int leader, double[] posterior, RankingQuery query) {
        Set<String> known = new HashSet<>();
        query.findings().forEach(f -> known.add(f.symptomId()));
        SecondLook.Overturning worst = null;
        for (Symptom symptom : knowledge.symptoms()) {
            if (known.contains(symptom.id()) || !symptom.scope().contains(query.scope())) {
                continue;
            }
            StateTable table = model.states(symptom.id(), query.scope());
            for (int x = 0; x < table.states(); x++) {
                double expected = 0;
                int top = 0;
                for (int c = 0; c < posterior.length; c++) {
                    expected += posterior[c] * table.given(x, c);
                    top = posterior[c] * table.given(x, c) > posterior[top] * table.given(x, top) ? c : top;
                }
                double after = posterior[leader] * table.given(x, leader) / expected;
                if (expected >= FAR_FETCHED && (worst == null || after < worst.leaderAfter())) {
                    worst = new SecondLook.Overturning(
                            symptom.id(),
                            symptom.states().get(x).id(),
                            knowledge.testsRevealing(symptom.id()).stream()
                                    .map(BenchTest::id)
                                    .toList(),
                            expected,
                            after,
                            id(top),
                            posterior[top] * table.given(x, top) / expected);
                }
            }
        }
        return Optional.ofNullable(worst).filter(w -> w.leaderAfter() < posterior[leader]);
    }

    /** The likeliest listed cause against a unit of which nothing is known. */
    private boolean fits(RankingQuery query, double[] posterior, List<double[]> given) {
        int best = 0;
        for (int c = 0; c < causes.size(); c++) {
            best = posterior[c] > posterior[best] ? c : best;
        }
        double log = 0;
        for (int f = 0; f < given.size(); f++) {
            Finding finding = query.findings().get(f);
            double[] likelihood = likelihood(finding);
            double usual = 0;
            for (int x = 0; x < likelihood.length; x++) {
                usual += likelihood[x]
                        * symptom(finding.symptomId()).states().get(x).usual();
            }
            log += Math.log(given.get(f)[best] / usual);
        }
        return log >= 0;
    }

    private List<SecondLook.Pair> pairs(RankingQuery query, List<double[]> given, boolean fits) {
        double[] prior = model.probabilities(new RankingQuery(List.of(), query.scope(), false));
        int[] candidates = IntStream.range(0, causes.size())
                .filter(c -> prior[c] > 0)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer c) -> -explains(c, prior, given)))
                .limit(PAIR_CAUSES)
                .mapToInt(c -> c)
                .sorted()
                .toArray();
        double bestSingle = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < causes.size(); c++) {
            double log = Math.log(prior[c]);
            for (double[] g : given) {
                log += Math.log(g[c]);
            }
            bestSingle = Math.max(bestSingle, log);
        }
        List<SecondLook.Pair> pairs = new ArrayList<>();
        for (int a : candidates) {
            for (int b : candidates) {
                if (a < b) {
                    double log = Math.log(prior[a]) + Math.log(prior[b]);
                    for (Finding finding : query.findings()) {
                        log += Math.log(both(finding, a, b, query));
                    }
                    double odds = Math.exp(log - bestSingle);
                    List<String> first = mine(a, b, query, given);
                    List<String> second = mine(b, a, query, given);
                    if (!first.isEmpty() && !second.isEmpty() && odds >= (fits ? LEAST_ODDS : LEAST_ODDS / 10)) {
                        pairs.add(new SecondLook.Pair(id(a), id(b), odds, first, second));
                    }
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(SecondLook.Pair::oddsOverBestSingle)
                .reversed()
                .thenComparing(SecondLook.Pair::firstId)
                .thenComparing(SecondLook.Pair::secondId));
        return pairs.subList(0, Math.min(PAIRS, pairs.size()));
    }

    /** How well a cause explains the findings that it explains at all. */
    private static double explains(int c, double[] prior, List<double[]> given) {
        double score = Math.log(prior[c]);
        for (double[] g : given) {
            score += Math.max(0, Math.log(g[c] * prior.length / Trouble.sum(g)));
        }
        return score;
    }

    private double both(Finding finding, int a, int b, RankingQuery query) {
        Symptom symptom = symptom(finding.symptomId());
        StateTable table = model.states(symptom.id(), query.scope());
        double[] likelihood = likelihood(finding);
        int normal = symptom.indexOf(symptom.normal().id());
        double still = table.given(normal, a)
                * table.given(normal, b)
                / Math.max(symptom.normal().usual(), Math.max(table.given(normal, a), table.given(normal, b)));
        double disturbed = 2 - table.given(normal, a) - table.given(normal, b);
        double p = likelihood[normal] * still;
        for (int x = 0; x < likelihood.length; x++) {
            if (x != normal) {
                p += likelihood[x] * (1 - still) * (table.given(x, a) + table.given(x, b)) / disturbed;
            }
        }
        return p;
    }

    private static List<String> mine(int own, int other, RankingQuery query, List<double[]> given) {
        return IntStream.range(0, given.size())
                .filter(f -> given.get(f)[own] > MINE * given.get(f)[other])
                .mapToObj(f -> query.findings().get(f).symptomId())
                .toList();
    }
}
