package org.benchlore.kb.ranking;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * In which past cases a log code stands that no pack knows. It speaks for the causes in whose cases it stands more often
 * than in all, as any finding does, and for none as long as no case with it was concluded.
 *
 * @param code as written
 * @param with per cause id, the concluded cases in which it stands
 * @param cases per cause id, all concluded cases of the same devices
 */
public record CodeRecord(String code, SortedMap<String, Long> with, SortedMap<String, Long> cases) {
    /** Cases that the share among all causes counts beside a cause's own (m-estimate, Cestnik 1990); from memory. */
    private static final double WORTH = 3;

    public CodeRecord {
        with = Collections.unmodifiableSortedMap(new TreeMap<>(with));
        cases = Collections.unmodifiableSortedMap(new TreeMap<>(cases));
    }

    /** Concluded cases in which the code stands. */
    public long seen() {
        return sum(with);
    }

    /** All concluded cases of the same devices. */
    public long all() {
        return sum(cases);
    }

    /** Share of all concluded cases in which the code stands. */
    private double usual() {
        return (seen() + 0.5) / (all() + 1);
    }

    /** ln of how much more often the code stands in cases of a cause than in all. */
    private double nats(String causeId, double usual) {
        double own = (with.getOrDefault(causeId, 0L) + WORTH * usual) / (cases.getOrDefault(causeId, 0L) + WORTH);
        return Math.log(own / usual);
    }

    /**
     * What codes of one unit say of a cause together, in nats by its id. One event writes several, so that they do not count as
     * if they knew nothing of each other: the one that says most in full, the next by half, then by a third.
     */
    static ToDoubleFunction<String> together(List<CodeRecord> codes) {
        double[] usual = codes.stream().mapToDouble(CodeRecord::usual).toArray();
        return causeId -> {
            double[] each = IntStream.range(0, usual.length)
                    .mapToObj(k -> codes.get(k).nats(causeId, usual[k]))
                    .sorted(Comparator.comparingDouble((Double nats) -> -Math.abs(nats)))
                    .mapToDouble(Double::doubleValue)
                    .toArray();
            double sum = 0;
            for (int k = 0; k < each.length; k++) {
                sum += each[k] / (k + 1);
            }
            return sum;
        };
    }

    private static long sum(Map<String, Long> counts) {
        return counts.values().stream().mapToLong(n -> n).sum();
    }
}
