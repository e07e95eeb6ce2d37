package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * Figures about ageing and trends that the packs' and the documents' words lean on, by the printed formulas. The library
 * computes none of these itself; proof runs and their gamma posterior are in {@link ProofRunTest}.
 */
class ReliabilityRowsTest {
    private static final double BOLTZMANN = 8.617333262e-5; // eV/K, CODATA 2018
    private static final double KELVIN = 273.15;

    /** F09: capacitor makers' notes, life doubles for every 10 degC less; 2000 h at 105 degC. The power pack says so too. */
    @Test
    void an_electrolytic_lives_twice_as_long_for_ten_degrees_less() {
        double[] at = {95, 85, 65, 45};
        double[] hours = {4000, 8000, 32_000, 128_000};
        for (int i = 0; i < at.length; i++) {
            assertThat(2000 * Math.pow(2, (105 - at[i]) / 10)).isEqualTo(hours[i]);
        }
    }

    /** F10: Arrhenius: the ten-degree rule is no one activation energy. */
    @Test
    void acceleration_by_arrhenius() {
        assertThat(acceleration(.7, 55, 125)).isCloseTo(77.6454, within(1e-4));
        assertThat(acceleration(.7, 25, 50)).isCloseTo(8.22999, within(1e-5));
        assertThat(acceleration(.604442, 40, 50)).isCloseTo(2, within(1e-5));
        assertThat(acceleration(.831548, 95, 105)).isCloseTo(2, within(1e-5));
    }

    private static double acceleration(double energy, double from, double to) {
        return Math.exp(energy / BOLTZMANN * (1 / (from + KELVIN) - 1 / (to + KELVIN)));
    }

    /** F11: NIST/SEMATECH e-Handbook 8.2.2.3, 8.2.3.4, 8.4.5.2: ten repair times in 1500 h, read in NIST's own scripts. */
    @Test
    void repairs_that_come_ever_more_seldom() {
        double[] t = {5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478};
        double u = laplace(1500, t);
        assertThat(u).isCloseTo(-1.326949, within(1e-6));
        assertThat(NormalDistribution.of(0, 1).cumulativeProbability(u)).isCloseTo(.092263, within(1e-6));
        double[] gaps = IntStream.range(0, t.length)
                .mapToDouble(i -> t[i] - (i == 0 ? 0 : t[i - 1]))
                .toArray();
        long reversals = IntStream.range(0, gaps.length)
                .mapToLong(i -> IntStream.range(i + 1, gaps.length)
                        .filter(j -> gaps[i] < gaps[j])
                        .count())
                .sum();
        assertThat(reversals).isEqualTo(33);
        double logs = Arrays.stream(t).map(x -> Math.log(1500 / x)).sum();
        assertThat(2 * logs).isCloseTo(37.2281, within(5e-5));
        assertThat(ChiSquaredDistribution.of(20).survivalProbability(2 * logs)).isCloseTo(.010986, within(1e-6));
        double growth = 1 - (t.length - 1) / logs;
        assertThat(growth).isCloseTo(.516494, within(1e-6));
        assertThat(t.length / Math.pow(1500, 1 - growth)).isCloseTo(.2913003, within(1e-6));
    }

    /** F12: own numbers, the same statistic. */
    @Test
    void errors_that_crowd_late() {
        double five = laplace(60, 30, 40, 47, 55, 60);
        double eight = laplace(240, 100, 150, 185, 200, 220, 230, 236, 240);
        assertThat(five).isCloseTo(2.117231, within(1e-6));
        assertThat(eight).isCloseTo(3.066965, within(1e-6));
        assertThat(NormalDistribution.of(0, 1).survivalProbability(five)).isCloseTo(.017120, within(1e-6));
        assertThat(NormalDistribution.of(0, 1).survivalProbability(eight)).isCloseTo(.001081, within(1e-6));
    }

    private static double laplace(double whole, double... times) {
        return (Arrays.stream(times).average().orElseThrow() - whole / 2) / (whole / Math.sqrt(12.0 * times.length));
    }

    /** F13: von Bortkiewicz 1898 (counts read), dispersion index after Fisher; F14: own numbers, errors per hour. */
    @Test
    void chance_counts_scatter_and_bursts_scatter_more() {
        expectDispersion(counts(109, 65, 22, 3, 1), .61, 199.311475, .480450, 1e-6);
        expectDispersion(counts(144, 91, 32, 11, 2), .70, 304.0, .145415, 1e-6);
        expectDispersion(new double[] {0, 0, 9, 0, 1, 0, 8, 0}, 2.25, 46.888889, 5.868e-8, 1e-11);
    }

    private static double[] counts(int... of) {
        return IntStream.range(0, of.length)
                .boxed()
                .flatMap(x -> IntStream.range(0, of[x]).mapToObj(i -> (double) x))
                .mapToDouble(x -> x)
                .toArray();
    }

    private static void expectDispersion(double[] x, double mean, double d, double p, double tolerance) {
        double m = Arrays.stream(x).average().orElseThrow();
        double sum = Arrays.stream(x).map(v -> (v - m) * (v - m) / m).sum();
        assertThat(m).isCloseTo(mean, within(1e-12));
        assertThat(sum).isCloseTo(d, within(1e-6));
        assertThat(ChiSquaredDistribution.of(x.length - 1.0).survivalProbability(sum))
                .isCloseTo(p, within(tolerance));
    }

    /** F17: NIST/SEMATECH e-Handbook 8.2.5, 8.3.1.5, the 50/95 method; numbers read in NIST's own script. */
    @Test
    void a_gamma_prior_from_two_guesses_and_the_hours_it_asks_for() {
        double a = 2.863055;
        double b = 1522.506;
        assertThat(gamma(2.863, 1522.46).cumulativeProbability(.001667)).isCloseTo(.5001232, within(5e-6));
        assertThat(gamma(2.863, 1522.46).cumulativeProbability(1 / 250.0)).isCloseTo(.9499963, within(5e-6));
        double[] hours = {530.789, 1151.412, 1756.105};
        for (int r = 0; r < hours.length; r++) {
            double t = 500 * ChiSquaredDistribution.of(2 * (a + r)).inverseCumulativeProbability(.8) / 2 - b;
            assertThat(t).isCloseTo(hours[r], within(.05));
            // after r faults in t hours the rate is Gamma(a + r, b + t); that it is below 1/500 is then believed to 80
            // %
            assertThat(gamma(a + r, b + t).cumulativeProbability(1 / 500.0)).isCloseTo(.8, within(1e-9));
        }
    }

    private static GammaDistribution gamma(double shape, double hours) {
        return GammaDistribution.of(shape, 1 / hours);
    }
}
