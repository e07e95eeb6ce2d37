package org.benchlore.kb.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;

/** What was found, the best of it by itself and all of it by number; one part comes in after the other. */
final class Catch {
    private final List<Found> found = new ArrayList<>();
    private final Map<HitKind, Long> kinds = new EnumMap<>(HitKind.class);
    private final Map<DeviceScope, Long> scopes = new HashMap<>();
    private final Map<Outcome, Long> outcomes = new EnumMap<>(Outcome.class);

    void entry(Draft entry, int place, double score) {
        found.add(new Found((float) score, entry.id(), entry.kind(), place));
        kinds.merge(entry.kind(), 1L, Long::sum);
        countScope(entry.scope(), 1);
    }

    void cases(List<Found> best, long counted) {
        found.addAll(best);
        if (counted > 0) {
            kinds.merge(HitKind.CASE, counted, Long::sum);
        }
    }

    void countScope(DeviceScope scope, long n) {
        scopes.merge(scope, n, Long::sum);
    }

    void countOutcome(Outcome outcome, long n) {
        outcomes.merge(outcome, n, Long::sum);
    }

    List<Found> page(int offset, int limit) {
        found.sort(Found.BEST_FIRST);
        int from = Math.min(offset, found.size());
        return found.subList(from, Math.min(from + limit, found.size()));
    }

    Map<HitKind, Long> kinds() {
        return kinds;
    }

    Map<DeviceScope, Long> scopes() {
        return scopes;
    }

    Map<Outcome, Long> outcomes() {
        return outcomes;
    }

    long total() {
        return kinds.values().stream().mapToLong(n -> n).sum();
    }
}
