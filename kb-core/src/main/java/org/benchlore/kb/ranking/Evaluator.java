package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.BiFunction;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;

/**
 * Replays cases in the order in which they ended: rank, score, learn. Immutable and thread-safe; a pure function of packs,
 * settings and cases. A replay holds one model at a time and costs about one ranking and one lesson per case, for each of
 * three forecasters; a fourth, which only counts causes, costs next to nothing.
 */
public final class Evaluator {
    private static final int BINS = 10;
    private static final int FIRST_STRETCH = 10;

    private final Lessons lessons;
    private final RankingModel packs;
    private final RankingModel blank;
    private final BiFunction<RankingQuery, CaseHistory, RankingQuery> told;

    /** Evaluates over one set of packs, by findings alone. */
    public Evaluator(Knowledge knowledge, RankingSettings settings) {
        this(knowledge, settings, (query, history) -> query);
    }

    /**
     * Evaluates over one set of packs.
     *
     * @param told a query for a case's findings with what its complaint says beyond them: its words, the kind of unit
     */
    public Evaluator(
            Knowledge knowledge, RankingSettings settings, BiFunction<RankingQuery, CaseHistory, RankingQuery> told) {
        this.told = told;
        this.packs = RankingModel.of(knowledge, settings);
        this.blank = RankingModel.withoutOpinions(knowledge, settings);
        this.lessons = new Lessons(knowledge, packs);
    }

    private record Ended(CaseEvent end, CaseHistory history, Lesson lesson) {
        static final Comparator<Ended> ORDER = Comparator.comparing(Ended::end, CaseEvent.ORDER);

        /** Scored are cases that teach one cause at least half a case. */
        boolean scored(boolean imported) {
            return (imported || history.origin().equals(CaseHistory.OWN))
                    && lesson.likeliest().isPresent();
        }
    }

    /**
     * Replays.
     *
     * @param cases in any order; open, withdrawn and unsettled ones are left out
     * @param imported whether to score other benches' cases too; they teach in any case
     */
    public Evaluation replay(Iterable<CaseHistory> cases, boolean imported) {
        List<Ended> ended = new ArrayList<>();
        for (CaseHistory history : cases) {
            lessons.of(history).ifPresent(lesson -> ended.add(new Ended(end(history), history, lesson)));
        }
        ended.sort(Ended.ORDER);
        ScoreSheet byFrequency = new ScoreSheet(BINS);
        ScoreSheet byPacks = new ScoreSheet(BINS);
        ScoreSheet byCases = new ScoreSheet(BINS);
        ScoreSheet byBoth = new ScoreSheet(BINS);
        CauseFrequency frequency = new CauseFrequency(packs.number(RankingModel.UNLISTED) + 1);
        RankingModel alone = blank;
        RankingModel both = packs;
        List<Integer> firsts = new ArrayList<>();
        List<Lesson> learnt = new ArrayList<>();
        for (Ended one : ended) {
            if (one.scored(imported)) {
                RankingQuery query =
                        new RankingQuery(known(one.lesson()), one.lesson().scope(), true);
                int truth = packs.number(one.lesson().likeliest().orElseThrow());
                RankingQuery worded = told.apply(query, one.history());
                double[] opinion = packs.probabilities(worded);
                byFrequency.add(frequency.probabilities(opinion), truth);
                byPacks.add(opinion, truth);
                byCases.add(alone.probabilities(query), truth);
                byBoth.add(both.probabilities(worded), truth);
                firsts.add(byBoth.first());
            }
            learnt.add(one.lesson());
            one.lesson().weights().forEach((cause, weight) -> frequency.count(packs.number(cause), weight));
            alone = alone.learn(List.of(one.lesson()));
            both = both.learn(List.of(one.lesson()));
            if (dueToFit(learnt.size())) {
                alone = alone.fit(learnt);
                both = both.fit(learnt);
            }
        }
        return new Evaluation(
                byBoth.size(),
                learnt.size(),
                figures(byFrequency),
                figures(byPacks),
                figures(byCases),
                figures(byBoth),
                gain(byPacks, byBoth),
                byBoth.bins(),
                curve(byPacks, byCases, byBoth, firsts),
                both.reviews());
    }

    /** Renewed when the lessons pass a power of two, as at the bench. */
    private static boolean dueToFit(int cases) {
        return cases >= RankingModel.LEAST_TO_FIT && cases <= RankingModel.MOST_TO_FIT && Integer.bitCount(cases) == 1;
    }

    /** The last ending; a case that teaches has one. */
    private static CaseEvent end(CaseHistory history) {
        return history.events().stream()
                .filter(CaseEvent.Ended.class::isInstance)
                .max(CaseEvent.ORDER)
                .orElseThrow();
    }

    private List<Finding> known(Lesson lesson) {
        return lesson.findings().stream().filter(packs::knows).toList();
    }

    private static Evaluation.Figures figures(ScoreSheet sheet) {
        return new Evaluation.Figures(
                Estimate.share(sheet.first(), sheet.size()),
                Estimate.share(sheet.firstThree(), sheet.size()),
                Estimate.mean(sheet.logLosses()),
                Estimate.mean(sheet.briers()),
                sheet.calibrationError());
    }

    private static Estimate gain(ScoreSheet packs, ScoreSheet both) {
        List<Double> saved = new ArrayList<>();
        for (int i = 0; i < both.size(); i++) {
            saved.add(packs.logLosses().get(i) - both.logLosses().get(i));
        }
        return Estimate.mean(saved);
    }

    /** Stretches that double in length: 1 to 10, 11 to 30, 31 to 70, ... */
    private static List<Evaluation.Stretch> curve(
            ScoreSheet packs, ScoreSheet cases, ScoreSheet both, List<Integer> firsts) {
        List<Evaluation.Stretch> curve = new ArrayList<>();
        int length = FIRST_STRETCH;
        for (int from = 0; from < both.size(); from += length / 2) {
            int to = Math.min(both.size(), from + length);
            int hits = firsts.get(to - 1) - (from == 0 ? 0 : firsts.get(from - 1));
            curve.add(new Evaluation.Stretch(
                    from + 1,
                    to,
                    mean(packs, from, to),
                    mean(cases, from, to),
                    mean(both, from, to),
                    hits / (double) (to - from)));
            length *= 2;
        }
        return curve;
    }

    private static double mean(ScoreSheet sheet, int from, int to) {
        return sheet.logLosses().subList(from, to).stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(0);
    }
}
