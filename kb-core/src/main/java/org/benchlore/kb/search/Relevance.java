package org.benchlore.kb.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;

/**
 * How much each entry has to do with one query, in the unit of word scores. Words and findings make entries relevant;
 * from there relevance passes along the {@link Ties}: from symptoms and from past cases to the causes behind them, from
 * causes to their symptoms, tests, fixes and past cases. So what helps is found although no word of it was said, as
 * spreading activation does in semantic networks (Collins and Loftus, Psychological Review 82, 1975).
 *
 * <p>Relevance passes as {@code top * (score / top)^2.5}, {@code top} being the most relevant of all: what leads gives most of
 * itself, the also-rans next to nothing. The weights were set with {@code SearchMeasure} on the half of the graded
 * queries that is for that, and rounded; each lies on a plateau, halving one costs 0.02 of nDCG@10 at most there.
 */
final class Relevance {
    /** A past case and how well it fits the query. */
    record Precedent(String causeId, double score) {}

    /** What stands before everything else: an entry or a case by its id. */
    static final float ASKED = 60;

    private static final double MISREAD = 0.1; // chance that a finding was read wrongly and says nothing
    private static final double RAREST = 0.001;
    private static final double PER_NAT = 4;
    private static final double AGAINST = 0.2; // of what speaks against a cause, what holds against hearsay too
    private static final double NAMED_SYMPTOM = 4;
    private static final double CALLED = 2.5;
    private static final double SYMPTOM_TO_TEST = 0.25;
    private static final double CASE_TO_CAUSE = 1.3;
    private static final double SYMPTOM_TO_CAUSE = 0.9;
    private static final double CAUSE_TO_SYMPTOM = 0.27;
    private static final double CAUSE_TO_OTHERS = 0.5;
    private static final double OTHER_FAMILY = 0.75; // an entry of one family, where the query does not say which
    private static final double LEAST_PASSED = 0.05; // of the top; less does not make an entry found

    private static final List<HitKind> NAMED_KINDS = List.of(HitKind.SYMPTOM, HitKind.CAUSE);

    private final Ties ties;
    private final DeviceScope scope;
    private final double[] scores;
    private final double[] against; // in nats, 0 and below
    private final Set<Integer> read = new HashSet<>();
    private final Map<String, Double> causes = new HashMap<>();

    Relevance(Ties ties, DeviceScope scope) {
        this.ties = ties;
        this.scope = scope;
        this.scores = new double[ties.size()];
        this.against = new double[ties.size()];
    }

    /** What words or names give an entry. */
    void add(int place, double score) {
        scores[place] += score;
    }

    /** The entries that are called for outright, by their id. */
    void asked(String id) {
        for (HitKind kind : HitKind.values()) {
            int place = ties.place(kind, id);
            if (place >= 0) {
                scores[place] += ASKED;
            }
        }
    }

    /** What the words call by one of its names. */
    void named(String id) {
        for (HitKind kind : NAMED_KINDS) {
            int place = ties.place(kind, id);
            if (place >= 0) {
                scores[place] += CALLED;
            }
        }
    }

    /** What the findings give symptoms and causes; what speaks against a cause takes from what its words gave. */
    void findings(List<Finding> findings) {
        Map<Integer, Double> nats = new HashMap<>();
        for (Finding finding : findings) {
            ties.knowledge().symptom(finding.symptomId()).ifPresent(symptom -> {
                double usual = usual(symptom, finding);
                int place = ties.place(HitKind.SYMPTOM, symptom.id());
                if (read.add(place)) {
                    scores[place] += NAMED_SYMPTOM - StrictMath.log(Math.min(1, usual));
                }
                for (Cause cause : ties.knowledge().causesShowing(symptom.id())) {
                    int at = ties.place(HitKind.CAUSE, cause.id());
                    double speaks = nats(cause, finding, usual);
                    nats.merge(at, speaks, Double::sum);
                    against[at] += Math.min(0, speaks);
                }
            });
        }
        nats.forEach((place, sum) -> scores[place] = Math.max(0, scores[place] + PER_NAT * sum));
    }

    private static double usual(Symptom symptom, Finding finding) {
        double usual = 0;
        for (State state : symptom.states()) {
            usual += finding.likelihoods().getOrDefault(state.id(), 0.0) * state.usual();
        }
        return Math.max(RAREST, usual);
    }

    /** ln of how much likelier the cause makes the finding than it is on the bench at large. */
    private static double nats(Cause cause, Finding finding, double usual) {
        double given = 0;
        for (Link link : cause.shows()) {
            if (link.symptomId().equals(finding.symptomId())) {
                for (Map.Entry<String, Double> state : link.states().entrySet()) {
                    given += finding.likelihoods().getOrDefault(state.getKey(), 0.0) * state.getValue();
                }
            }
        }
        return StrictMath.log((1 - MISREAD) * given / usual + MISREAD);
    }

    /** Passes relevance on. */
    void spread(List<Precedent> precedents) {
        double top = keepRelated();
        for (Precedent precedent : precedents) {
            top = Math.max(top, precedent.score);
        }
        if (top <= 0) {
            return;
        }
        double[] toCauses = new double[scores.length];
        for (Precedent precedent : precedents) {
            int cause = ties.place(HitKind.CAUSE, precedent.causeId);
            if (cause >= 0) {
                toCauses[cause] = Math.max(toCauses[cause], CASE_TO_CAUSE * passed(precedent.score, top));
            }
        }
        double[] passed = passed(top);
        double[] fromSymptoms = new double[scores.length];
        for (Ties.Tie tie : ties.symptoms()) {
            if (!read.contains(tie.to())) { // else what was found there has spoken, in its favour or not
                fromSymptoms[tie.from()] =
                        Math.max(fromSymptoms[tie.from()], SYMPTOM_TO_CAUSE * tie.strength() * passed[tie.to()]);
            }
        }
        for (int i = 0; i < scores.length; i++) {
            if (related(i)) {
                scores[i] = (scores[i] + toCauses[i] + fromSymptoms[i]) * Math.exp(AGAINST * against[i]);
                top = Math.max(top, scores[i]);
            }
        }
        spreadFurther(top);
    }

    /** From causes to what belongs to them, and from symptoms to the tests that reveal them. */
    private void spreadFurther(double top) {
        double[] passed = passed(top);
        double[] bonus = new double[scores.length];
        pass(ties.remedies(), CAUSE_TO_OTHERS, passed, bonus);
        pass(ties.symptoms(), CAUSE_TO_SYMPTOM, passed, bonus);
        pass(ties.tests(), SYMPTOM_TO_TEST, passed, bonus);
        double least = LEAST_PASSED * top;
        for (Cause cause : ties.knowledge().causes()) {
            double given = CAUSE_TO_OTHERS * passed[ties.place(HitKind.CAUSE, cause.id())];
            if (given >= least) {
                causes.put(cause.id(), given);
            }
        }
        for (int i = 0; i < scores.length; i++) {
            if ((scores[i] > 0 || bonus[i] >= least) && related(i)) {
                scores[i] += bonus[i];
            }
        }
    }

    private static void pass(List<Ties.Tie> along, double share, double[] passed, double[] to) {
        for (Ties.Tie tie : along) {
            to[tie.to()] = Math.max(to[tie.to()], share * tie.strength() * passed[tie.from()]);
        }
    }

    /** What each entry passes on, where {@code top} is the most. */
    private double[] passed(double top) {
        double[] passed = new double[scores.length];
        for (int i = 0; i < passed.length; i++) {
            passed[i] = scores[i] > 0 ? passed(scores[i], top) : 0;
        }
        return passed;
    }

    private static double passed(double score, double top) {
        double share = score / top;
        return score * share * Math.sqrt(share);
    }

    /** Takes out what belongs to other devices, and returns the highest score. */
    private double keepRelated() {
        double top = 0;
        for (int i = 0; i < scores.length; i++) {
            if (!related(i)) {
                scores[i] = 0;
            } else if (ties.scope(i).depth() > Math.max(1, scope.depth())) {
                scores[i] *= OTHER_FAMILY;
            }
            top = Math.max(top, scores[i]);
        }
        return top;
    }

    private boolean related(int place) {
        return ties.scope(place).relatedTo(scope);
    }

    /** What the cases of each cause gain by it, by id of the cause; causes that give next to nothing are left out. */
    Map<String, Double> causes() {
        return causes;
    }

    /** Places of the entries found, in order. */
    List<Integer> found() {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < scores.length; i++) {
            if (scores[i] > 0) {
                found.add(i);
            }
        }
        return found;
    }

    /** The relevance of one entry. */
    double of(int place) {
        return scores[place];
    }
}
