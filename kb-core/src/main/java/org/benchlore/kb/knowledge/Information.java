package org.benchlore.kb.knowledge;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.knowledge.QualityReport.Informative;

/**
 * What each symptom tells of the cause, by the packs' own model: the mutual information of state and cause,
 * I = Σ_c P(c) Σ_s P(s|c) log2 (P(s|c) / P(s)) bits (Shannon 1948), over the causes that apply in the symptom's scope, each as
 * often as its base frequency says and alone; P(s|c) is the link, or the background where there is none. An unlisted cause
 * does not count. The symptom is taken to be seen as it is, without errors of a test.
 */
final class Information {
    private Information() {}

    /** Every symptom, the most telling first. */
    static List<Informative> of(Knowledge knowledge) {
        Map<DeviceScope, Double> totals = new HashMap<>();
        return knowledge.symptoms().stream()
                .map(symptom -> {
                    double all = totals.computeIfAbsent(
                            symptom.scope(),
                            scope -> knowledge.causes().stream()
                                    .filter(cause -> cause.scope().contains(scope))
                                    .mapToDouble(Cause::perThousand)
                                    .sum());
                    List<Cause> speaking = knowledge.causesShowing(symptom.id()).stream()
                            .filter(cause -> cause.scope().contains(symptom.scope()))
                            .toList();
                    return new Informative(symptom.id(), bits(symptom, speaking, all), speaking.size());
                })
                .sorted(Comparator.comparingDouble((Informative i) -> -i.bits()).thenComparing(Informative::symptom))
                .toList();
    }

    /**
     * Causes that say nothing of the symptom go into one term, since they share one distribution.
     *
     * @param all sum of the base frequencies of all causes
     */
    private static double bits(Symptom symptom, List<Cause> speaking, double all) {
        if (speaking.isEmpty()) {
            return 0;
        }
        double silent = all - speaking.stream().mapToDouble(Cause::perThousand).sum();
        double bits = 0;
        for (State state : symptom.states()) {
            double marginal = silent / all * state.usual();
            for (Cause cause : speaking) {
                marginal += cause.perThousand() / all * share(cause, symptom, state);
            }
            bits += silent / all * state.usual() * log2(state.usual() / marginal);
            for (Cause cause : speaking) {
                double share = share(cause, symptom, state);
                bits += cause.perThousand() / all * share * log2(share / marginal);
            }
        }
        return Math.max(0, bits); // rounding may leave -1e-17
    }

    private static double share(Cause cause, Symptom symptom, State state) {
        return cause.link(symptom.id())
                .map(l -> l.states().getOrDefault(state.id(), state.usual()))
                .orElse(state.usual());
    }

    private static double log2(double x) {
        return Math.log(x) / Math.log(2);
    }
}
