package org.benchlore.kb.ranking;

import java.util.ArrayDeque;
import java.util.Iterator;

/**
 * Limited-memory BFGS (Nocedal &amp; Wright, Numerical Optimization, 2nd ed. 2006, ch. 7, from memory) with backtracking to
 * sufficient decrease. Deterministic; for smooth functions of a few hundred variables.
 */
final class Minimiser {

    interface Function {
        /** The value at a point; overwrites {@code gradient}. */
        double value(double[] at, double[] gradient);
    }

    private static final class Pair {
        private final double[] step;
        private final double[] change;
        private final double product;

        Pair(double[] step, double[] change, double product) {
            this.step = step;
            this.change = change;
            this.product = product;
        }
    }

    private static final int MEMORY = 10;
    private static final int MOST_STEPS = 80;
    private static final double LONGEST_MOVE = 1.5; // per variable and step; variables are logs of powers
    private static final double ENOUGH = 1e-4; // nats over all cases: far below what a figure shows

    private Minimiser() {}

    static double[] minimise(Function function, double[] start) {
        double[] at = start.clone();
        double[] gradient = new double[at.length];
        double value = function.value(at, gradient);
        ArrayDeque<Pair> memory = new ArrayDeque<>();
        for (int i = 0; i < MOST_STEPS; i++) {
            double[] direction = direction(gradient, memory);
            double slope = dot(direction, gradient);
            double length = Math.min(1, LONGEST_MOVE / Math.max(1e-300, largest(direction)));
            double[] next = new double[at.length];
            double[] nextGradient = new double[at.length];
            double nextValue = Double.POSITIVE_INFINITY;
            for (int half = 0; half < 20 && !(nextValue <= value - 1e-4 * length * slope); half++) {
                length = half == 0 ? length : length / 2;
                for (int k = 0; k < at.length; k++) {
                    next[k] = at[k] - length * direction[k];
                }
                nextValue = function.value(next, nextGradient);
            }
            if (!(nextValue < value)) {
                break;
            }
            remember(memory, at, next, gradient, nextGradient);
            double fall = value - nextValue;
            at = next;
            gradient = nextGradient;
            value = nextValue;
            if (fall < ENOUGH) {
                break;
            }
        }
        return at;
    }

    private static double[] direction(double[] gradient, ArrayDeque<Pair> memory) {
        double[] d = gradient.clone();
        double[] alpha = new double[memory.size()];
        int i = memory.size();
        for (Iterator<Pair> newest = memory.descendingIterator(); newest.hasNext(); ) {
            Pair p = newest.next();
            alpha[--i] = dot(p.step, d) / p.product;
            addTo(d, -alpha[i], p.change);
        }
        double factor = 0.5 / Math.max(1, Math.sqrt(dot(gradient, gradient)));
        if (!memory.isEmpty()) {
            Pair last = memory.getLast();
            factor = last.product / dot(last.change, last.change);
        }
        for (int k = 0; k < d.length; k++) {
            d[k] *= factor;
        }
        for (Pair p : memory) {
            addTo(d, alpha[i++] - dot(p.change, d) / p.product, p.step);
        }
        return d;
    }

    private static void remember(ArrayDeque<Pair> memory, double[] at, double[] next, double[] from, double[] to) {
        double[] step = next.clone();
        addTo(step, -1, at);
        double[] change = to.clone();
        addTo(change, -1, from);
        double product = dot(step, change);
        if (product > 1e-10) { // curvature; else the pair would spoil the direction
            memory.addLast(new Pair(step, change, product));
            if (memory.size() > MEMORY) {
                memory.removeFirst();
            }
        }
    }

    private static void addTo(double[] a, double factor, double[] b) {
        for (int k = 0; k < a.length; k++) {
            a[k] += factor * b[k];
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += a[k] * b[k];
        }
        return sum;
    }

    private static double largest(double[] a) {
        double most = 0;
        for (double v : a) {
            most = Math.max(most, Math.abs(v));
        }
        return most;
    }
}
