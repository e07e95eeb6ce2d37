package org.benchlore.kb.ranking;

import java.util.Arrays;

/**
 * How far beliefs are trusted against cases: factors on the number of cases they are worth. Packs' opinions share one factor;
 * where a cause is silent, its symptom's background has its own. Never changed once made.
 */
final class Trust {
    private final double opinions;
    private final double[] backgrounds;

    Trust(double opinions, double[] backgrounds) {
        this.opinions = opinions;
        this.backgrounds = backgrounds;
    }

    /** Beliefs as the packs state them. */
    static Trust asStated(int symptoms) {
        double[] ones = new double[symptoms];
        Arrays.fill(ones, 1);
        return new Trust(1, ones);
    }

    double factor(boolean opinion, int symptom) {
        return opinion ? opinions : backgrounds[symptom];
    }
}
