package org.benchlore.kb.ranking;

import java.util.Arrays;
import java.util.List;

/**
 * Leave-one-out log-loss of the true cause as a function of the powers, with its gradient. Parameters are logs, so
 * powers stay positive: [0] ln rho (N - 1), N the mean effective number of findings; [1] ln kappa; then ln g and
 * ln h per symptom; last the ln power that all share. Each has a normal prior: a penalty (value - centre)^2 / (2 spread^2).
 */
final class PowerLoss implements Minimiser.Function {

    /** Prior spread of ln g and ln h: how far symptoms may differ in how much they count. A fixed default. */
    static final double SYMPTOM_SPREAD = 0.4;

    /**
     * Prior spread of the ln power that all findings share. Without it a bench whose symptoms differ little cannot undo the
     * tempering that rho starts from. A fixed default.
     */
    private static final double SHARED_SPREAD = 0.4;

    /** Prior spread of ln kappa and of ln rho (N - 1): a factor of 2.7. A fixed default. */
    static final double COMMON_SPREAD = 1;

    /** Prior centre of ln rho (N - 1). */
    static final double RHO_CENTRE = 0;

    private final List<LeftOut> cases;
    private final int symptoms;
    private final double others; // N - 1

    /**
     * The loss over some cases.
     */
    PowerLoss(List<LeftOut> cases, int symptoms) {
        this.cases = cases;
        this.symptoms = symptoms;
        double sum = 0;
        double weight = 0;
        for (LeftOut one : cases) {
            sum += one.weight * one.effective;
            weight += one.weight;
        }
        this.others = Math.max(1, weight > 0 ? sum / weight - 1 : 0);
    }

    double[] start() {
        double[] start = new double[3 + 2 * symptoms];
        start[0] = RHO_CENTRE;
        return start;
    }

    Powers constants(double[] at, Trust trust, Gains gains) {
        double kappa = Math.exp(at[1]);
        double shared = Math.exp(at[2 + 2 * symptoms]);
        double[] own = new double[symptoms];
        double[] dependence = new double[symptoms];
        for (int s = 0; s < symptoms; s++) {
            own[s] = shared * Math.exp(at[2 + s]);
            dependence[s] = shared * kappa * Math.exp(at[2 + symptoms + s]);
        }
        return new Powers(trust, Math.exp(at[0]) / others, own, dependence, gains);
    }

    @Override
    public double value(double[] at, double[] gradient) {
        Powers now = constants(at, Trust.asStated(0), Gains.none(0));
        Arrays.fill(gradient, 0);
        double loss = 0;
        for (LeftOut one : cases) {
            loss += one.weight * addCase(one, now, gradient);
        }
        for (int k = 0; k < at.length; k++) {
            double spread = k < 2 ? COMMON_SPREAD : k == 2 + 2 * symptoms ? SHARED_SPREAD : SYMPTOM_SPREAD;
            double off = (at[k] - (k == 0 ? RHO_CENTRE : 0)) / spread;
            loss += off * off / 2;
            gradient[k] += off / spread;
        }
        return loss;
    }

    private double addCase(LeftOut one, Powers now, double[] gradient) {
        double temper = now.temper(one.effective);
        double[] z = one.logPrior.clone();
        for (int j = 0; j < one.symptoms.length; j++) {
            double g = temper * now.own(one.symptoms[j]);
            double h = temper * now.dependence(one.symptoms[j]);
            double[] own = one.own[j];
            double[] dependence = one.dependence[j];
            for (int c = 0; c < z.length; c++) {
                z[c] += g * own[c] + h * dependence[c];
            }
        }
        double logTruth = z[one.truth];
        double loss = normalise(z) - logTruth;
        z[one.truth] -= 1; // now the gradient of the loss by each score
        double all = 0;
        for (int j = 0; j < one.symptoms.length; j++) {
            int s = one.symptoms[j];
            double g = one.weight * temper * now.own(s) * dot(z, one.own[j]);
            double h = one.weight * temper * now.dependence(s) * dot(z, one.dependence[j]);
            gradient[2 + s] += g;
            gradient[2 + symptoms + s] += h;
            gradient[1] += h;
            all += g + h;
        }
        gradient[2 + 2 * symptoms] += all;
        gradient[0] -= all * temper * Math.max(0, one.effective - 1) * now.rho();
        return loss;
    }

    /** Turns log scores into shares that sum to 1; returns the log of the sum of the scores. */
    private static double normalise(double[] z) {
        double most = Double.NEGATIVE_INFINITY;
        for (double v : z) {
            most = Math.max(most, v);
        }
        double sum = 0;
        for (int c = 0; c < z.length; c++) {
            z[c] = Math.exp(z[c] - most);
            sum += z[c];
        }
        for (int c = 0; c < z.length; c++) {
            z[c] /= sum;
        }
        return most + Math.log(sum);
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int c = 0; c < a.length; c++) {
            sum += a[c] * b[c];
        }
        return sum;
    }
}
