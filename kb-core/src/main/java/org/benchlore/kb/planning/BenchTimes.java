package org.benchlore.kb.planning;

import com.google.common.collect.Multiset;
import com.google.common.collect.TreeMultiset;
import java.util.Optional;
import java.util.function.Function;

/** What kept bench times come to. */
final class BenchTimes {
    /** Bench times kept before their median replaces the pack's figure. */
    static final int ENOUGH = 3;

    private BenchTimes() {}

    /** The median of the times above 0; empty where fewer than enough were kept. */
    static <T> Optional<Double> median(Multiset<T> done, Function<T, Optional<Double>> minutes, int enough) {
        Multiset<Double> kept = TreeMultiset.create();
        for (Multiset.Entry<T> e : done.entrySet()) {
            minutes.apply(e.getElement()).filter(m -> m > 0).ifPresent(m -> kept.add(m, e.getCount()));
        }
        if (kept.size() < enough) {
            return Optional.empty();
        }
        return Optional.of(kept.stream()
                .skip((kept.size() - 1) / 2)
                .limit(2 - kept.size() % 2)
                .mapToDouble(m -> m)
                .average()
                .orElseThrow());
    }
}
