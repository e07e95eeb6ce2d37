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

    BaseMeasure(Catalogue catalogue, FindingCounts counts) {
        this.catalogue = catalogue;
        this.settings = catalogue.settings();
        this.counts = counts;
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
        return (worth * catalogue.background(symptom)[state] + counts.seen(symptom, state))
                / (worth + counts.looked(symptom));
    }

    /** How many cases the belief is worth; above 0. */
    double strength(int cause, int symptom, Worth worth) {
        return worth.factor(opinion(cause, symptom), symptom) * catalogue.worth(cause, symptom);
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
