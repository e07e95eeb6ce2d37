package org.benchlore.kb.ranking;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.knowledge.Symptom.Reported;

/**
 * How readily notes mention a symptom, unasked, in its normal state and in any other; and so what silence says. Before any
 * case it is what the symptom's kind says (always reported, usually, only if tested). Cases move it, symptom by symptom,
 * each drawn to the common rate of its kind: the mentions there were beside the occurrences that the packs expect under the
 * concluded causes (a Poisson rate with a gamma prior; Gelman and others, Bayesian Data Analysis, section 2.6, from memory).
 * A symptom reported only if tested stays at 0: that nobody looked says nothing. Immutable.
 */
final class Reporting {
    /** Expected occurrences that the kind's default is worth, and those that the kind's rate is worth to a symptom. */
    private static final double WORTH = 20;

    /** However often it was mentioned, the next note may leave it out. */
    private static final double MOST = 0.95;

    private final int[] normalState;
    private final double[] normal;
    private final double[] abnormal;

    private Reporting(int[] normalState, double[] normal, double[] abnormal) {
        this.normalState = normalState;
        this.normal = normal;
        this.abnormal = abnormal;
    }

    /** What the symptoms' kinds say. */
    static Reporting stated(List<Symptom> symptoms, RankingSettings settings) {
        int[] normalState = symptoms.stream().mapToInt(Symptom::normalIndex).toArray();
        double[] abnormal = symptoms.stream()
                .mapToDouble(s -> switch (s.reported()) {
                    case ALWAYS -> settings.mentionAlways();
                    case USUALLY -> settings.mentionUsually();
                    case IF_TESTED -> 0;
                })
                .toArray();
        double[] normal = new double[abnormal.length];
        for (int s = 0; s < normal.length; s++) {
            normal[s] = abnormal[s] * RankingSettings.MENTION_NORMAL;
        }
        return new Reporting(normalState, normal, abnormal);
    }

    /** Mentions there were, and occurrences there must have been. */
    private static final class Tally {
        double mentions;
        double occurrences;

        void add(double mentioned, double occurred) {
            mentions += mentioned;
            occurrences += occurred;
        }

        double rate(double around) {
            return Math.min(MOST, (WORTH * around + mentions) / (WORTH + occurrences));
        }
    }

    /** Of one symptom, or of all of one kind. */
    private static final class Tallies {
        final Tally normal = new Tally();
        final Tally abnormal = new Tally();
    }

    /** Learns from cases; of each, the symptoms that its cause speaks of. */
    static Reporting learn(Catalogue catalogue, List<CaseRow> rows) {
        Reporting stated = catalogue.reporting();
        Tallies[] bySymptom = new Tallies[catalogue.symptoms()];
        Map<Reported, Tallies> byKind = new EnumMap<>(Reported.class);
        for (int s = 0; s < bySymptom.length; s++) {
            bySymptom[s] = new Tallies();
            byKind.putIfAbsent(catalogue.symptom(s).reported(), new Tallies());
        }
        for (CaseRow row : rows) {
            stated.count(catalogue, row, bySymptom);
        }
        for (int s = 0; s < bySymptom.length; s++) {
            Tallies kind =
                    Objects.requireNonNull(byKind.get(catalogue.symptom(s).reported()));
            Tallies own = bySymptom[s];
            kind.normal.add(own.normal.mentions, own.normal.occurrences);
            kind.abnormal.add(own.abnormal.mentions, own.abnormal.occurrences);
        }
        double[] normal = new double[bySymptom.length];
        double[] abnormal = new double[bySymptom.length];
        for (int s = 0; s < bySymptom.length; s++) {
            if (stated.tells(s)) {
                Tallies kind =
                        Objects.requireNonNull(byKind.get(catalogue.symptom(s).reported()));
                normal[s] = bySymptom[s].normal.rate(kind.normal.rate(stated.normal[s]));
                abnormal[s] = bySymptom[s].abnormal.rate(kind.abnormal.rate(stated.abnormal[s]));
            }
        }
        return new Reporting(stated.normalState, normal, abnormal);
    }

    private void count(Catalogue catalogue, CaseRow row, Tallies[] bySymptom) {
        if (row.cause == catalogue.unlisted()) {
            return;
        }
        double w = row.weight();
        for (int s : catalogue.linked(row.cause)) {
            double share = catalogue.opinion(row.cause, s)[normalState[s]];
            bySymptom[s].normal.add(0, w * share);
            bySymptom[s].abnormal.add(0, w * (1 - share));
        }
        for (int i = 0; i < row.symptoms.length; i++) {
            int s = row.symptoms[i];
            if (catalogue.speaks(row.cause, s)) {
                boolean fine = row.states[i] == normalState[s];
                (fine ? bySymptom[s].normal : bySymptom[s].abnormal).add(w, 0);
            }
        }
    }

    /** Whether silence about the symptom says anything. */
    boolean tells(int symptom) {
        return abnormal[symptom] > 0;
    }

    /** Chance that a note mentions the symptom unasked when it is in this state. */
    double mention(int symptom, int state) {
        return state == normalState[symptom] ? normal[symptom] : abnormal[symptom];
    }

    /** P(a note does not mention the symptom), given P(state). */
    double unsaid(int symptom, double[] p) {
        return unsaid(symptom, p[normalState[symptom]]);
    }

    private double unsaid(int symptom, double pNormal) {
        return 1 - normal[symptom] * pNormal - abnormal[symptom] * (1 - pNormal);
    }

    int normalState(int symptom) {
        return normalState[symptom];
    }

    /**
     * How much of a case a case counts that does not mention the symptom: nothing where mention does not depend on the
     * state. Without it the share of abnormal states would drift to 1, since they are what notes tell.
     */
    double silentWeight(int symptom) {
        return Math.abs(abnormal[symptom] - normal[symptom]);
    }

    /** P(state | not mentioned), given P(state) and P(the normal state). */
    double givenSilence(int symptom, int state, double p, double pNormal) {
        return p * (1 - mention(symptom, state)) / unsaid(symptom, pNormal);
    }

    /**
     * Adds the silent cases to counts of states, each as whatever state it most likely kept silent about.
     *
     * @param n counts per state, changed in place
     * @param p P(state) as believed so far
     * @return what was added in all
     */
    double addSilent(int symptom, double[] n, double silentCases, double[] p) {
        double weight = silentCases * silentWeight(symptom);
        if (weight <= 0) {
            return 0;
        }
        for (int x = 0; x < n.length; x++) {
            n[x] += weight * givenSilence(symptom, x, p[x], p[normalState[symptom]]);
        }
        return weight;
    }
}
