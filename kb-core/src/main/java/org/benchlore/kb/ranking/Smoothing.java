package org.benchlore.kb.ranking;

/**
 * From counts to probabilities.
 *
 * <p>One finding (m-estimate, Cestnik 1990; MacKay &amp; Peto 1995): with n = n(c,s,x), N = n(c,s), base P0 worth a cases,
 * <pre>  theta = (n + a P0) / (N + a)</pre>
 *
 * <p>A child finding y given a parent finding x, both of cause c. Among the cases of c with both symptoms looked at (N of
 * them, n_x with x, n_y with y, n_xy with both), the cases without x are lent to those with x, at a discount that grows
 * as the two groups can be told apart (a power prior, Ibrahim &amp; Chen, Statistical Science 15, 2000, from memory; the
 * discount is ours):
 * <pre>
 *   h     = n_x (N - n_x) / N                       effective size of the comparison
 *   delta = m / (m + h)
 *   P     = (n_xy + delta (n_y - n_xy) + a P0) / (n_x + delta (N - n_x) + a)
 *   ratio = P / ((n_y + a P0) / (N + a))
 * </pre>
 * The ratio is exactly 1 when no case or every case of the cause shows x: then nothing can be said about dependence, and
 * the estimate is naive Bayes. The usual back-off (n_xy + m theta) / (n_x + m) counts the same zeros at both levels and
 * is over-confident on causes with few cases (see the notes for figures).
 */
final class Smoothing {

    /** m: how strongly the rest of a cause's cases speak for those that share the parent finding. A fixed default. */
    static final double LENDING = 0.5;

    private Smoothing() {}

    static double theta(double n, double looked, double strength, double base) {
        return looked <= 0 ? base : (n + strength * base) / (looked + strength);
    }

    static double ratio(double both, double withParent, double child, double looked, double strength, double base) {
        double without = looked - withParent;
        if (withParent <= 0 || without <= 0) {
            return 1;
        }
        double delta = LENDING / (LENDING + withParent * without / looked);
        double opinion = strength * base;
        double given = (both + delta * (child - both) + opinion) / (withParent + delta * without + strength);
        return given * (looked + strength) / (child + opinion);
    }
}
