package org.benchlore.kb.ranking;

/**
 * What is believed about a finding before the cases of its cause are counted: the pack's opinion where it has one, else
 * the background, learnt from the cases as a whole. Reads live counts, so it follows a case being left out.
 */
final class BaseMeasure {
    private static final double PRIOR_CASES = 5;

    private final Catalogue catalogue;
    private final double backgroundCases;
    private final FindingCounts counts;

    BaseMeasure(Catalogue catalogue, RankingSettings settings, FindingCounts counts) {
        this.catalogue = catalogue;
        this.backgroundCases = settings.backgroundCases();
        this.counts = counts;
    }

    /** P0(state | cause); in (0, 1), and summing to 1 over the states of the symptom. */
    double probability(int cause, int symptom, int state) {
        if (catalogue.speaks(cause, symptom)) {
            return catalogue.opinion(cause, symptom)[state];
        }
        return (backgroundCases * catalogue.background(symptom)[state] + counts.seen(symptom, state))
                / (backgroundCases + counts.looked(symptom));
    }

    /** How many cases the belief is worth; above 0. */
    double strength(int cause, int symptom, Worth worth) {
        return worth.factor(opinion(cause, symptom), symptom) * catalogue.worth(cause, symptom);
    }

    /** Whether the belief is a pack's opinion on this very cause. */
    boolean opinion(int cause, int symptom) {
        return catalogue.speaks(cause, symptom);
    }

    /** ln of how often each cause occurs, the packs' frequencies worth a few cases. */
    double[] logPrior() {
        double[] logs = new double[counts.causes()];
        for (int c = 0; c < logs.length; c++) {
            logs[c] = Math.log((counts.cases(c) + PRIOR_CASES * catalogue.share(c)) / (counts.total() + PRIOR_CASES));
        }
        return logs;
    }
}
