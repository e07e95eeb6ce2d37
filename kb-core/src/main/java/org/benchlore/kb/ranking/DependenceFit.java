package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Learns the {@link Powers} from cases that are already counted, by leave-one-out: a case is taken out of the counts,
 * its terms are worked out, it is put back. Nothing is held out for good, nothing outside these cases is looked at.
 *
 * <ol>
 *   <li>How many cases opinions and backgrounds are worth: best leave-one-out likelihood of single findings, on a grid.
 *   <li>The gains: from all counts for use; while learning the powers, from the counts without a tenth of the cases for
 *       the cases of that tenth, since a structure that has seen a case flatters it.
 *   <li>rho, kappa, g, h, from the cases and thinned copies of them: least log-loss of the true cause plus log-normal
 *       priors (below), by L-BFGS.
 * </ol>
 */
final class DependenceFit {

    private static final double[] OPINION_FACTORS = {0.5, 1, 2, 4, 8};
    private static final double[] BACKGROUND_FACTORS = {0.0125, 0.025, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.4, 12.8};
    private static final int TENTHS = 10;

    /** Thinned copies of all cases, together worth as much as the cases: a note may say less than these did. */
    private static final int THINNED = 6000;

    private static final int MOST_COPIES = 12;
    private static final int LEAST_COPIES = 3;

    /** Prior spread of the ln factor of one symptom's background about the common one. A fixed default. */
    private static final double BACKGROUND_SPREAD = 0.5;

    /** Prior spread of that common ln factor about 1: before any case a background is worth what it says. A fixed default. */
    private static final double COMMON_SPREAD = 1;

    /** Prior spread of the ln factor of opinions about 1: as stated. A fixed default. */
    private static final double OPINION_SPREAD = 0.7;

    private final FindingCounts counts;
    private final BaseMeasure base;

    DependenceFit(FindingCounts counts, BaseMeasure base) {
        this.counts = counts;
        this.base = base;
    }

    Powers fit(List<CaseRow> rows) {
        Trust trust = trust(rows);
        PowerLoss loss = new PowerLoss(leaveOut(rows, trust), counts.symptoms());
        double[] best = Minimiser.minimise(loss, loss.start());
        return loss.constants(best, trust, Gains.of(counts, base, trust));
    }

    /** One factor for all opinions; one per symptom for backgrounds, drawn to the common one by a log-normal prior. */
    private Trust trust(List<CaseRow> rows) {
        double[] opinions = new double[OPINION_FACTORS.length];
        double[][] backgrounds = new double[counts.symptoms()][BACKGROUND_FACTORS.length];
        Trust stated = Trust.asStated(counts.symptoms());
        for (CaseRow row : rows) {
            counts.addSingles(row, -1);
            for (int i = 0; i < row.symptoms.length; i++) {
                int s = row.symptoms[i];
                boolean opinion = base.opinion(row.cause, s);
                double[] factors = opinion ? OPINION_FACTORS : BACKGROUND_FACTORS;
                double[] sum = opinion ? opinions : backgrounds[s];
                double strength = base.strength(row.cause, s, stated);
                for (int k = 0; k < factors.length; k++) {
                    sum[k] += row.weight() * Math.log(base.theta(row.cause, s, row.states[i], factors[k] * strength));
                }
            }
            counts.addSingles(row, 1);
        }
        double[] total = new double[BACKGROUND_FACTORS.length];
        for (double[] one : backgrounds) {
            for (int k = 0; k < total.length; k++) {
                total[k] += one[k];
            }
        }
        draw(total, BACKGROUND_FACTORS, 1, COMMON_SPREAD);
        double common = BACKGROUND_FACTORS[best(total)];
        double[] factors = new double[backgrounds.length];
        for (int s = 0; s < factors.length; s++) {
            draw(backgrounds[s], BACKGROUND_FACTORS, common, BACKGROUND_SPREAD);
            factors[s] = BACKGROUND_FACTORS[best(backgrounds[s])];
        }
        draw(opinions, OPINION_FACTORS, 1, OPINION_SPREAD);
        return new Trust(OPINION_FACTORS[best(opinions)], factors);
    }

    private static void draw(double[] logLikelihood, double[] factors, double centre, double spread) {
        for (int k = 0; k < factors.length; k++) {
            double off = Math.log(factors[k] / centre) / spread;
            logLikelihood[k] -= off * off / 2;
        }
    }

    private static int best(double[] values) {
        int best = 0;
        for (int k = 1; k < values.length; k++) {
            best = values[k] > values[best] ? k : best;
        }
        return best;
    }

    private List<LeftOut> leaveOut(List<CaseRow> rows, Trust trust) {
        int copies = Math.min(MOST_COPIES, Math.max(LEAST_COPIES, THINNED / rows.size()));
        List<LeftOut> result = new ArrayList<>(rows.size() * (1 + copies));
        for (int tenth = 0; tenth < TENTHS; tenth++) {
            for (int r = tenth; r < rows.size(); r += TENTHS) {
                counts.add(rows.get(r), -1);
            }
            Gains gains = Gains.of(counts, base, trust);
            for (int r = tenth; r < rows.size(); r += TENTHS) {
                counts.add(rows.get(r), 1);
            }
            for (int r = tenth; r < rows.size(); r += TENTHS) {
                CaseRow row = rows.get(r);
                counts.add(row, -1);
                result.add(new LeftOut(row, counts, base, trust, gains, 1));
                for (int copy = 0; copy < copies; copy++) {
                    CaseRow thinned = thin(row, new SplittableRandom((long) r * MOST_COPIES + copy));
                    result.add(new LeftOut(thinned, counts, base, trust, gains, 1.0 / copies));
                }
                counts.add(row, 1);
            }
        }
        return result;
    }

    /** The case as a terser note would have it: each finding stays with one chance, drawn for the case. */
    private static CaseRow thin(CaseRow row, SplittableRandom random) {
        double gone = random.nextDouble();
        int[] keep = IntStream.range(0, row.symptoms.length)
                .filter(i -> random.nextDouble() >= gone)
                .toArray();
        return new CaseRow(
                row.weightMicro,
                row.cause,
                Arrays.stream(keep).map(i -> row.symptoms[i]).toArray(),
                Arrays.stream(keep).map(i -> row.states[i]).toArray());
    }
}
