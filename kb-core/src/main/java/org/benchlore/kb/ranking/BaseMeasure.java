package org.benchlore.kb.ranking;

/**
 * What is believed about a finding before the cases of its cause are counted: the pack's opinion where it has one, else
 * the background, learnt from the cases of all causes without one. Reads live counts, so it follows a case being left out,
 * and is what {@link ScopeView} has for the scope any.
 */
final class BaseMeasure {
    private final Catalogue catalogue;
    private final RankingSettings settings;
    private final FindingCounts counts;
    private final Reporting reporting;

    BaseMeasure(Catalogue catalogue, FindingCounts counts, Reporting reporting) {
        this.catalogue = catalogue;
        this.settings = catalogue.settings();
        this.counts = counts;
        this.reporting = reporting;
    }

    /** P0(state | cause); in (0, 1), and summing to 1 over the states of the symptom. */
    double probability(int cause, int symptom, int state) {
        if (cause == catalogue.unlisted()) {
            double spread = catalogue.unlistedSpread(symptom);
            return (1 - spread) * background(symptom, state) + spread / counts.states(symptom);
        }
        return catalogue.speaks(cause, symptom) ? catalogue.opinion(cause, symptom)[state] : background(symptom, state);
    }

    private double background(int symptom, int state) {
        double worth = settings.backgroundCases();
        double[] packs = catalogue.background(symptom);
        double looked = counts.looked(symptom);
        double silent = looked > 0 ? silentCases(symptom, counts.casesWithoutOpinion(symptom) - looked) : 0;
        double unsaid = silent > 0 ? silent * givenSilence(symptom, state, packs[state], packs[normal(symptom)]) : 0;
        return (worth * packs[state] + counts.seen(symptom, state) + unsaid) / (worth + looked + silent);
    }

    /**
     * P(state | cause) with the cause's own cases counted, those among them that kept silent.
     *
     * @param strength cases that the belief is worth
     */
    double theta(int cause, int symptom, int state, double strength) {
        double p = probability(cause, symptom, state);
        double looked = counts.looked(cause, symptom);
        if (looked <= 0 && !(opinion(cause, symptom) && reporting.tells(symptom))) {
            return p;
        }
        double silent = silentCases(symptom, counts.cases(cause) - looked);
        double unsaid =
                silent > 0 ? silent * givenSilence(symptom, state, p, probability(cause, symptom, normal(symptom))) : 0;
        return Smoothing.theta(counts.single(cause, symptom, state) + unsaid, looked + silent, strength, p);
    }

    private double silentCases(int symptom, double cases) {
        return Math.max(0, cases) * reporting.silentWeight(symptom);
    }

    private double givenSilence(int symptom, int state, double p, double pNormal) {
        return reporting.givenSilence(symptom, state, p, pNormal);
    }

    private int normal(int symptom) {
        return reporting.normalState(symptom);
    }

    /** How many cases the belief is worth; above 0. */
    double strength(int cause, int symptom, Trust trust) {
        return trust.factor(opinion(cause, symptom), symptom) * catalogue.worth(cause, symptom);
    }

    /** Whether the belief is a pack's opinion on this very cause. */
    boolean opinion(int cause, int symptom) {
        return catalogue.speaks(cause, symptom);
    }

    /** ln of how often each cause occurs, by the packs' frequencies and the counts. */
    double[] logPrior() {
        double[] packs = new double[counts.causes()];
        double[] n = new double[packs.length];
        for (int c = 0; c < packs.length; c++) {
            packs[c] = catalogue.share(c);
            n[c] = counts.cases(c);
        }
        double[] shares = Shrinkage.shrink(packs, n);
        double[] logs = new double[shares.length];
        for (int c = 0; c < logs.length; c++) {
            logs[c] = Math.log(shares[c]);
        }
        return logs;
    }
}
