package org.benchlore.kb.knowledge;

import java.util.Comparator;
import java.util.Map;

/** Words for how often, as packs write them. */
public final class HowOften {
    private HowOften() {}

    /**
     * The word of the packs' scale that is nearest in log odds, such as "nearly always" for 0.93.
     *
     * @param share in (0,1)
     */
    public static String word(double share) {
        return Values.SCALE.entrySet().stream()
                .min(Comparator.comparingDouble(
                                (Map.Entry<String, Double> word) -> Math.abs(logOdds(word.getValue()) - logOdds(share)))
                        .thenComparing(Map.Entry::getKey))
                .map(word -> word.getKey().replace('-', ' '))
                .orElseThrow();
    }

    private static double logOdds(double share) {
        return Math.log(share / (1 - share));
    }
}
