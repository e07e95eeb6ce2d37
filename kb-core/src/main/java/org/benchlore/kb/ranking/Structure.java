package org.benchlore.kb.ranking;

import java.util.Arrays;

/**
 * Who depends on whom among the findings of one query. Symptoms join one by one, each time the one that gains most from
 * those already in (Prim), and lean on at most {@link #PARENTS} of them, weighted by gain. Chosen for the findings at
 * hand, so a symptom that was not looked at is never a missing link. For a fixed order this is the averaged form of a
 * k-dependence classifier (Sahami, KDD 1996; Dash &amp; Cooper, JMLR 5, 2004; both from memory), pooled in logs.
 */
final class Structure {

    static final int PARENTS = 2;

    /** Positions of the findings a child leans on, and the share of each; shares sum to 1 unless there is none. */
    static final class Leaning {
        private final int[] parents;
        private final double[] shares;

        Leaning(int[] parents, double[] shares) {
            this.parents = parents;
            this.shares = shares;
        }

        int[] parents() {
            return parents;
        }

        double[] shares() {
            return shares;
        }
    }

    private final Leaning[] leanings;

    private Structure(Leaning[] leanings) {
        this.leanings = leanings;
    }

    /** @param symptoms in ascending order, so that the order in which findings were noted is irrelevant */
    static Structure among(int[] symptoms, Gains gains) {
        int n = symptoms.length;
        Leaning[] leanings = new Leaning[n];
        boolean[] in = new boolean[n];
        double[] best = new double[n];
        int[] order = new int[n];
        for (int step = 0; step < n; step++) {
            int next = step == 0 ? root(symptoms, gains) : nearest(best, in);
            leanings[next] = pick(symptoms[next], order, step, symptoms, gains);
            in[next] = true;
            order[step] = next;
            for (int v = 0; v < n; v++) {
                double g = v == next ? 0 : gains.gain(symptoms[next], symptoms[v]);
                best[v] = step == 0 ? g : Math.max(best[v], g);
            }
        }
        return new Structure(leanings);
    }

    Leaning leaning(int child) {
        return leanings[child];
    }

    private static int root(int[] symptoms, Gains gains) {
        int root = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int v = 0; v < symptoms.length; v++) {
            double sum = 0;
            for (int w = 0; w < symptoms.length; w++) {
                if (w != v) {
                    sum += Math.max(0, gains.gain(symptoms[v], symptoms[w]));
                }
            }
            if (sum > most) {
                most = sum;
                root = v;
            }
        }
        return root;
    }

    private static int nearest(double[] best, boolean[] in) {
        int next = -1;
        for (int v = 0; v < best.length; v++) {
            if (!in[v] && (next < 0 || best[v] > best[next])) {
                next = v;
            }
        }
        return next;
    }

    private static Leaning pick(int child, int[] order, int size, int[] symptoms, Gains gains) {
        int[] who = new int[PARENTS];
        double[] gain = new double[PARENTS];
        int k = 0;
        for (int z = 0; z < size; z++) {
            double g = gains.gain(symptoms[order[z]], child);
            if (g <= 0 || (k == PARENTS && g <= gain[k - 1])) {
                continue;
            }
            int at = k < PARENTS ? k++ : k - 1;
            for (; at > 0 && gain[at - 1] < g; at--) {
                gain[at] = gain[at - 1];
                who[at] = who[at - 1];
            }
            gain[at] = g;
            who[at] = order[z];
        }
        double sum = 0;
        for (int i = 0; i < k; i++) {
            sum += gain[i];
        }
        double[] shares = Arrays.copyOf(gain, k);
        for (int i = 0; i < k; i++) {
            shares[i] /= sum;
        }
        return new Leaning(Arrays.copyOf(who, k), shares);
    }
}
