package org.benchlore.kb.ranking;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was learnt from a fixed set of cases beside plain counts: how far to trust the packs' opinions, what notes leave
 * unsaid, the power with which each finding counts, and, per cause, how one finding changes the probability of another. Immutable;
 * without cases it changes nothing, and the ranking is the exact posterior under independence.
 *
 * <pre>
 *   ln L(c) = sum over findings j of   own_j ln p(x_j | c)
 *                                    + dep_j sum over parents i of share_ij ln ratio(x_j | c, x_i)
 * </pre>
 * ratio: {@link Smoothing}; parents: {@link Structure}; own and dep: {@link Powers}. Related work: averaged one-dependence
 * (Webb, Boughton and Wang, Machine Learning 58, 2005), hierarchical smoothing of network classifiers (Petitjean, Buntine,
 * Webb and Zaidi, Machine Learning 107, 2018), discriminative weights on generative terms (Zaidi, Cerquides, Carman and
 * Webb, JMLR 14, 2013); all from memory.
 */
final class Dependence {
    /** Nothing learnt. */
    static final Dependence NONE = new Dependence(null, null, null);

    private final @Nullable Powers powers;
    private final @Nullable LogTerms terms;
    private final @Nullable Reporting reporting;

    private Dependence(@Nullable Powers powers, @Nullable LogTerms terms, @Nullable Reporting reporting) {
        this.powers = powers;
        this.terms = terms;
        this.reporting = reporting;
    }

    /**
     * Learns from cases by leaving each out in turn; their order is of no consequence.
     *
     * @param rows cases with one known cause
     */
    static Dependence fit(Catalogue catalogue, List<CaseRow> rows) {
        if (rows.isEmpty()) {
            return NONE;
        }
        List<CaseRow> ordered = rows.stream().sorted(CaseRow.BY_CONTENT).toList();
        FindingCounts counts = new FindingCounts(catalogue);
        ordered.forEach(row -> counts.add(row, 1));
        Reporting reporting = Reporting.learn(catalogue, ordered);
        BaseMeasure base = new BaseMeasure(catalogue, counts, reporting);
        Powers powers = new DependenceFit(counts, base).fit(ordered);
        return new Dependence(powers, new LogTerms(counts, base, powers.trust()), reporting);
    }

    /** Factor on how many cases a belief is worth, a pack's opinion or the background. */
    double worth(boolean opinion, int symptom) {
        return powers == null ? 1 : powers.trust().factor(opinion, symptom);
    }

    /** How readily notes mention each symptom. */
    Reporting reporting(Catalogue catalogue) {
        return reporting == null ? catalogue.reporting() : reporting;
    }

    /** The findings of one query taken together; null when nothing is learnt and each counts in full by itself. */
    @Nullable
    Together together(List<Catalogue.Observation> observations, ScopeView view) {
        return powers == null || terms == null ? null : new Together(powers, terms, observations, view);
    }

    /** Powers and links for the findings of one query. */
    static final class Together {
        private final Powers powers;
        private final LogTerms terms;
        private final List<Catalogue.Observation> observations;
        private final double temper;
        /** Positions of the certain findings; only they have parents or are one. */
        private final int[] certain;

        private final Structure structure;

        private Together(Powers powers, LogTerms terms, List<Catalogue.Observation> observations, ScopeView view) {
            this.powers = powers;
            this.terms = terms;
            this.observations = observations;
            double effective = 0;
            int n = 0;
            int[] positions = new int[observations.size()];
            for (int i = 0; i < positions.length; i++) {
                Catalogue.Observation o = observations.get(i);
                effective += view.column(o.symptom).spread[o.likeliestState()];
                if (o.certainState() >= 0) {
                    positions[n++] = i;
                }
            }
            this.temper = powers.temper(effective);
            this.certain = Arrays.copyOf(positions, n);
            int[] symptoms = new int[n];
            for (int i = 0; i < n; i++) {
                symptoms[i] = observations.get(certain[i]).symptom;
            }
            this.structure = Structure.among(symptoms, powers.gains());
        }

        /** The power of finding i's own part. */
        double power(int i) {
            return temper * powers.own(observations.get(i).symptom);
        }

        /** Adds the dependence parts of all findings to the score of each cause. */
        void addLinks(double[] score) {
            for (int j = 0; j < certain.length; j++) {
                Catalogue.Observation child = observations.get(certain[j]);
                Structure.Leaning leaning = structure.leaning(j);
                for (int k = 0; k < leaning.parents().length; k++) {
                    Catalogue.Observation parent = observations.get(certain[leaning.parents()[k]]);
                    double power = temper * powers.dependence(child.symptom) * leaning.shares()[k];
                    LogTerms.Link link =
                            terms.link(parent.symptom, parent.certainState(), child.symptom, child.certainState());
                    for (int i = 0; i < link.causes().length; i++) {
                        score[link.causes()[i]] += power * link.logs()[i];
                    }
                }
            }
        }
    }
}
