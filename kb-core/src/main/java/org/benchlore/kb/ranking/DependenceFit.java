package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Learns the {@link Powers} from cases that are already counted, by leave-one-out: a case is taken out of the counts,
 * its terms are worked out, it is put back. Nothing is held out for good, nothing outside these cases is looked at.
 *
 * <ol>
 *   <li>The scale of opinions: best leave-one-out likelihood of single findings, on a grid.
 *   <li>The gains: from all counts for use; while learning the powers, from the counts without a tenth of the cases for
 *       the cases of that tenth, since a structure that has seen a case flatters it.
 *   <li>rho, kappa, g, h, from the cases and thinned copies of them: least log-loss of the true cause plus log-normal
 *       priors (below), by L-BFGS; how far g and h may differ between symptoms by cross-validation.
 * </ol>
 */
final class DependenceFit {

    private static final double[] SCALES = {0.0125, 0.025, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.4};
    private static final int TENTHS = 10;

    /** Thinned copies of each case, together worth as much as the case: a note may say less than this one did. */
    private static final int COPIES = 3;

    /**
     * How far symptoms may differ in how much they count, as the standard deviation of the natural log. Some data need the
     * first, few or even ones the second; the cases themselves choose.
     */
    private static final double[] SYMPTOM_SPREADS = {0.4, 0.1};

    private static final int FOLDS = 4;

    /** Prior spread of the ln scale that all symptoms share: before any case an opinion is worth what it says. */
    private static final double COMMON_SPREAD = 1;

    /** Prior spread of ln scale between symptoms. A fixed default. */
    private static final double SCALE_SPREAD = 0.5;

    private final FindingCounts counts;
    private final BaseMeasure base;

    DependenceFit(FindingCounts counts, BaseMeasure base) {
        this.counts = counts;
        this.base = base;
    }

    Powers fit(List<CaseRow> rows) {
        double[] scale = scales(rows);
        List<LeftOut> cases = leaveOut(rows, scale);
        PowerLoss loss = new PowerLoss(cases, counts.symptoms(), symptomSpread(cases));
        double[] best = Minimiser.minimise(loss, loss.start());
        return loss.constants(best, scale, Gains.of(counts, base, scale));
    }

    /** The spread whose powers, learnt from three quarters of the cases, predict the other quarter best; ties to the first. */
    private double symptomSpread(List<LeftOut> cases) {
        double chosen = SYMPTOM_SPREADS[0];
        double least = Double.POSITIVE_INFINITY;
        for (double spread : SYMPTOM_SPREADS) {
            double loss = 0;
            for (int fold = 0; fold < FOLDS; fold++) {
                List<LeftOut> learning = new ArrayList<>();
                List<LeftOut> held = new ArrayList<>();
                for (int i = 0; i < cases.size(); i++) {
                    (i / (1 + COPIES) % FOLDS == fold ? held : learning).add(cases.get(i));
                }
                PowerLoss part = new PowerLoss(learning, counts.symptoms(), spread);
                loss += part.of(held, Minimiser.minimise(part, part.start()));
            }
            if (loss < least) {
                least = loss;
                chosen = spread;
            }
        }
        return chosen;
    }

    /** Per symptom, drawn to the common one by a log-normal prior. */
    private double[] scales(List<CaseRow> rows) {
        double[][] sum = new double[counts.symptoms()][SCALES.length];
        for (CaseRow row : rows) {
            counts.addSingles(row, -1);
            for (int i = 0; i < row.symptoms.length; i++) {
                int s = row.symptoms[i];
                double n = counts.single(row.cause, s, row.states[i]);
                double looked = counts.looked(row.cause, s);
                double strength = base.strength(row.cause, s);
                double belief = base.probability(row.cause, s, row.states[i]);
                for (int k = 0; k < SCALES.length; k++) {
                    sum[s][k] += row.weight() * Math.log(Smoothing.theta(n, looked, SCALES[k] * strength, belief));
                }
            }
            counts.addSingles(row, 1);
        }
        double[] total = new double[SCALES.length];
        for (double[] one : sum) {
            for (int k = 0; k < total.length; k++) {
                total[k] += one[k];
            }
        }
        for (int k = 0; k < total.length; k++) {
            double off = Math.log(SCALES[k]) / COMMON_SPREAD;
            total[k] -= off * off / 2;
        }
        int common = best(total);
        double[] scales = new double[sum.length];
        for (int s = 0; s < sum.length; s++) {
            for (int k = 0; k < SCALES.length; k++) {
                double off = Math.log(SCALES[k] / SCALES[common]) / SCALE_SPREAD;
                sum[s][k] -= off * off / 2;
            }
            scales[s] = SCALES[best(sum[s])];
        }
        return scales;
    }

    private static int best(double[] values) {
        int best = 0;
        for (int k = 1; k < values.length; k++) {
            best = values[k] > values[best] ? k : best;
        }
        return best;
    }

    private List<LeftOut> leaveOut(List<CaseRow> rows, double[] scale) {
        List<LeftOut> result = new ArrayList<>(rows.size() * (1 + COPIES));
        for (int tenth = 0; tenth < TENTHS; tenth++) {
            for (int r = tenth; r < rows.size(); r += TENTHS) {
                counts.add(rows.get(r), -1);
            }
            Gains gains = Gains.of(counts, base, scale);
            for (int r = tenth; r < rows.size(); r += TENTHS) {
                counts.add(rows.get(r), 1);
            }
            for (int r = tenth; r < rows.size(); r += TENTHS) {
                CaseRow row = rows.get(r);
                counts.add(row, -1);
                result.add(new LeftOut(row, counts, base, scale, gains, 1));
                for (int copy = 0; copy < COPIES; copy++) {
                    CaseRow thinned = thin(row, new Random(31L * r + copy));
                    result.add(new LeftOut(thinned, counts, base, scale, gains, 1.0 / COPIES));
                }
                counts.add(row, 1);
            }
        }
        return result;
    }

    /** The case as a terser note would have it: each finding stays with one chance, drawn for the case. */
    private static CaseRow thin(CaseRow row, Random random) {
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
