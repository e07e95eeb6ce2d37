package org.benchlore.kb.ranking;

import java.util.List;

/**
 * How well the ranking would have done on the bench's own cases: each was ranked by what the cases ended before it had
 * taught, then learnt (Dawid, JRSS-A 147, 1984).
 *
 * @param scored ended cases whose cause is known well enough to score
 * @param learnt cases that taught something, other benches' among them
 * @param baseline whatever was the cause most often, with no look at the findings: what the others have to beat
 * @param packs the packs' opinion alone
 * @param cases what the cases teach alone, without any opinion
 * @param both together, as {@code rank} answers
 * @param gain mean nats of log-loss that the cases save beside the packs alone, case by case; above 0 they help
 * @param calibration of both: in each band of the first cause's probability, how often it was right
 * @param curve how packs, cases and both did as cases came in, from the first stretch on
 * @param reviews where opinion and experience disagree most, worst first
 */
public record Evaluation(
        int scored,
        int learnt,
        Figures baseline,
        Figures packs,
        Figures cases,
        Figures both,
        Estimate gain,
        List<Bin> calibration,
        List<Stretch> curve,
        List<Review> reviews) {
    /** Scored cases below which no figure tells much: the interval of a share is then wider than 30 points. */
    public static final int FEW = 30;

    public Evaluation {
        calibration = List.copyOf(calibration);
        curve = List.copyOf(curve);
        reviews = List.copyOf(reviews);
    }

    /** Whether there are too few cases for the figures to mean much. */
    public boolean tooFew() {
        return scored < FEW;
    }

    /** Whether the cases are enough to tell that learning from them helps, or harms. */
    public boolean tells() {
        return !tooFew() && gain.excludes(0);
    }

    /**
     * One forecaster's figures.
     *
     * @param top1 share of cases whose cause came first
     * @param top3 share whose cause was among the first three
     * @param logLoss mean of -ln of the probability given to the true cause, in nats, floored at 1e-6
     * @param brier mean squared error over all causes, 0 to 2
     * @param calibrationError expected calibration error over ten bands of the first cause's probability
     */
    public record Figures(Estimate top1, Estimate top3, Estimate logLoss, Estimate brier, double calibrationError) {}

    /**
     * Cases whose first cause had a probability in one band.
     *
     * @param from lower end of the band, within it
     * @param to upper end, outside it save for 1
     * @param cases how many
     * @param said their mean probability
     * @param right share where that cause was the true one
     */
    public record Bin(double from, double to, int cases, double said, Estimate right) {}

    /**
     * A stretch of the scored cases.
     *
     * @param from number of the first, from 1
     * @param to number of the last
     * @param packs mean log-loss of the packs alone over the stretch
     * @param cases and of the cases alone
     * @param both and of both
     * @param top1 share of cases whose cause both put first
     */
    public record Stretch(int from, int to, double packs, double cases, double both, double top1) {}

    /**
     * A number in the packs that the cases speak against.
     *
     * @param causeId the cause
     * @param symptomId the symptom, or empty where its base frequency is meant
     * @param stateId the state that is furthest off, or empty
     * @param linked whether the packs have an opinion of this cause on this symptom; false where they are silent
     * @param opinion what the packs say: P(state | cause), or the cause's share of all units
     * @param experience the same by the cases alone
     * @param cases how many cases of the cause, weighted
     * @param decibans how strongly the cases speak for another number, 10 log10 of the Bayes factor
     */
    public record Review(
            String causeId,
            String symptomId,
            String stateId,
            boolean linked,
            double opinion,
            double experience,
            double cases,
            double decibans) {}
}
