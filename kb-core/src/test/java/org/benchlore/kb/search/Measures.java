package org.benchlore.kb.search;

import java.util.List;

/** How good a ranked list is. */
final class Measures {
    private Measures() {}

    /** Discounted cumulative gain over the first {@code depth} with log2(rank + 1), as Burges et al. 2005 discount. */
    static double dcg(List<Double> gains, int depth) {
        double sum = 0;
        for (int i = 0; i < Math.min(depth, gains.size()); i++) {
            sum += gains.get(i) * Math.log(2) / Math.log(i + 2);
        }
        return sum;
    }

    /** The same with the first two undiscounted, log2(rank) from there on: Jarvelin and Kekalainen 2002, base 2. */
    static double dcg2002(List<Double> gains, int depth) {
        double sum = 0;
        for (int i = 0; i < Math.min(depth, gains.size()); i++) {
            sum += gains.get(i) / Math.max(1, Math.log(i + 1) / Math.log(2));
        }
        return sum;
    }

    /**
     * {@link #dcg} as a share of the best that could be had.
     *
     * @param judged every grade there is, in any order
     */
    static double ndcg(List<Double> gains, List<Double> judged, int depth) {
        List<Double> ideal =
                judged.stream().sorted((a, b) -> Double.compare(b, a)).toList();
        return dcg(gains, depth) / dcg(ideal, depth);
    }

    /** One over the rank of the first gain above 0; 0 if there is none. */
    static double reciprocalRank(List<Double> gains) {
        for (int i = 0; i < gains.size(); i++) {
            if (gains.get(i) > 0) {
                return 1.0 / (i + 1);
            }
        }
        return 0;
    }
}
