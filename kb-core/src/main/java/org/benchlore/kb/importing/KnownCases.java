package org.benchlore.kb.importing;

import com.google.common.collect.Lists;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.importing.ImportDraft.Likeness;

/**
 * Finds cases like a draft among those stored and those read before it. Follows the store: it knows the position it has
 * reached and catches up. For each stored case it keeps the pairs of its words and a sketch of them, some 600 bytes. Thread-safe by one lock.
 */
final class KnownCases {
    /** Share of the words from which a case is another one told again. Our choice; see docs/importing.md. */
    static final double ALIKE = 0.7;

    /** Share from which it is worth showing. */
    private static final double SHOWN = 0.5;

    /** Days by which the same case may be dated apart. */
    private static final long DAYS = 7;

    /** Pairs of words below which likeness says little: "no picture" is a fault, not a case. */
    private static final int ENOUGH_PAIRS = 5;

    private static final int MOST_SHOWN = 3;

    /** Cases of a band, or of a unit, that a draft is compared with by sketch. */
    private static final int MOST_MET = 16;

    /** Cases compared word for word. */
    private static final int MOST_LOOKED_AT = 8;

    /** Estimate below which texts are not compared: 0.2 less than what is shown, two standard errors. */
    private static final double WORTH_A_LOOK = 0.3;

    private static final int PAGE = 10_000;

    private final CaseStore store;
    private final List<Stored> cases = new ArrayList<>();
    private final Map<String, Stored> byId = new HashMap<>();
    private long position;

    /** @param store the cases to compare with */
    KnownCases(CaseStore store) {
        this.store = store;
    }

    /** What is compared of a case. */
    private static final class Told {
        final String caseId;
        final long line;
        final Instant at;
        final String unit;
        final int[] pairs;
        final WordSketch sketch;

        Told(String caseId, long line, Instant at, String unit, int[] pairs, WordSketch sketch) {
            this.caseId = caseId;
            this.line = line;
            this.at = at;
            this.unit = unit;
            this.pairs = pairs;
            this.sketch = sketch;
        }
    }

    /** What is kept of a stored case while its events come in. */
    private static final class Stored {
        final String id;
        final WordSketch sketch = new WordSketch();
        int[] pairs = new int[0];
        Instant at = Instant.MAX;
        String unit = "";

        /** Whether something says that the whole of it does not count; whether that stands is seen from all its events. */
        boolean takenBack;

        Stored(String id) {
            this.id = id;
        }
    }

    /** Cases that may be like a draft, the likeliest few, by their numbers. */
    private static final class Candidates {
        private final Map<Integer, Double> estimates = new HashMap<>();

        void add(int number, double estimate, boolean sameUnit) {
            if (sameUnit || estimate >= WORTH_A_LOOK) {
                estimates.merge(number, sameUnit ? 1 + estimate : estimate, Math::max);
            }
        }

        List<Integer> best() {
            return estimates.entrySet().stream()
                    .sorted(Map.Entry.<Integer, Double>comparingByValue()
                            .reversed()
                            .thenComparing(Map.Entry.comparingByKey()))
                    .limit(MOST_LOOKED_AT)
                    .map(Map.Entry::getKey)
                    .toList();
        }
    }

    /**
     * Says of each draft which cases are like it: of those stored, and of the drafts before it.
     *
     * @return the drafts in the same order; those stored already are not compared
     */
    synchronized List<ImportDraft> compare(List<ImportDraft> drafts) {
        catchUp();
        List<Told> told = new ArrayList<>();
        List<Candidates> stored = new ArrayList<>();
        List<Candidates> before = new ArrayList<>();
        Map<Integer, List<Integer>> byBand = new HashMap<>();
        Map<String, List<Integer>> byUnit = new HashMap<>();
        for (ImportDraft draft : drafts) {
            Told own = told(draft);
            int number = told.size();
            Candidates earlier = new Candidates();
            for (int band : own.sketch.bands()) {
                meet(byBand.computeIfAbsent(band, b -> new ArrayList<>(1)), number, own, told, earlier);
            }
            if (!own.unit.isEmpty()) {
                meet(byUnit.computeIfAbsent(own.unit, u -> new ArrayList<>(1)), number, own, told, earlier);
            }
            told.add(own);
            before.add(earlier);
            stored.add(new Candidates());
        }
        Map<Integer, List<Integer>> storedByBand = new HashMap<>();
        Map<String, List<Integer>> storedByUnit = new HashMap<>();
        for (int i = 0; i < cases.size(); i++) {
            for (int band : cases.get(i).sketch.bands()) {
                put(i, band, byBand, storedByBand);
            }
            put(i, cases.get(i).unit, byUnit, storedByUnit);
        }
        Comparator<Integer> byDate = Comparator.comparing(n -> cases.get(n).at);
        storedByBand.values().forEach(those -> those.sort(byDate));
        storedByUnit.values().forEach(those -> those.sort(byDate));
        for (int i = 0; i < told.size(); i++) {
            Told own = told.get(i);
            for (int band : own.sketch.bands()) {
                meet(storedByBand.getOrDefault(band, List.of()), own, stored.get(i));
            }
            meet(storedByUnit.getOrDefault(own.unit, List.of()), own, stored.get(i));
        }
        List<ImportDraft> compared = new ArrayList<>(drafts.size());
        for (int i = 0; i < drafts.size(); i++) {
            List<Likeness> likenesses = new ArrayList<>();
            Told own = told.get(i);
            before.get(i).best().forEach(n -> like(own, told.get(n)).ifPresent(likenesses::add));
            stored.get(i)
                    .best()
                    .forEach(n -> stored(cases.get(n))
                            .flatMap(other -> like(own, other))
                            .ifPresent(likenesses::add));
            compared.add(drafts.get(i).stored() ? drafts.get(i) : drafts.get(i).like(best(likenesses)));
        }
        return compared;
    }

    /** Compares a draft with the latest of those that share a band or a unit with it, and puts it among them. */
    private static void meet(List<Integer> those, int number, Told own, List<Told> told, Candidates earlier) {
        for (int other : those.subList(Math.max(0, those.size() - MOST_MET), those.size())) {
            Told before = told.get(other);
            earlier.add(other, own.sketch.estimate(before.sketch), sameUnit(own, before));
        }
        those.add(number);
    }

    private static <K> void put(int number, K key, Map<K, ?> asked, Map<K, List<Integer>> stored) {
        if (asked.containsKey(key)) {
            stored.computeIfAbsent(key, k -> new ArrayList<>(1)).add(number);
        }
    }

    /** Compares a draft with those stored that share a band or a unit with it: with so many, those of nearly its date. */
    private void meet(List<Integer> byDate, Told own, Candidates known) {
        int from = 0;
        if (byDate.size() > MOST_MET) {
            int place = Collections.binarySearch(Lists.transform(byDate, n -> cases.get(n).at), own.at);
            from = Math.max(0, Math.min(byDate.size() - MOST_MET, (place < 0 ? -place - 1 : place) - MOST_MET / 2));
        }
        for (int number : byDate.subList(from, Math.min(byDate.size(), from + MOST_MET))) {
            Stored other = cases.get(number);
            known.add(number, own.sketch.estimate(other.sketch), !own.unit.isEmpty() && own.unit.equals(other.unit));
        }
    }

    private static List<Likeness> best(List<Likeness> likenesses) {
        return likenesses.stream()
                .sorted(Comparator.comparing(Likeness::duplicate)
                        .thenComparing(Likeness::share)
                        .reversed()
                        .thenComparing(Likeness::caseId))
                .limit(MOST_SHOWN)
                .toList();
    }

    /** A stored case for comparing, unless it was taken back. */
    private Optional<Told> stored(Stored known) {
        boolean gone = known.takenBack
                && CaseHistory.fold(store.eventsOf(known.id))
                        .map(CaseHistory::withdrawn)
                        .orElse(true);
        return gone
                ? Optional.empty()
                : Optional.of(new Told(known.id, 0, known.at, known.unit, known.pairs, known.sketch));
    }

    private static Told told(ImportDraft draft) {
        List<CaseEvent> events = draft.events();
        int[] pairs = draft.stored() ? new int[0] : WordSketch.pairs(events);
        WordSketch sketch = new WordSketch();
        sketch.add(pairs);
        return new Told(
                draft.caseId(),
                draft.line(),
                day(draft, events.get(0)),
                unit(draft.unit().orElse("")),
                pairs,
                sketch);
    }

    private static boolean sameUnit(Told a, Told b) {
        return !a.unit.isEmpty() && a.unit.equals(b.unit);
    }

    private static Optional<Likeness> like(Told own, Told other) {
        if (own.caseId.equals(other.caseId)) {
            return Optional.empty();
        }
        double share = WordSketch.share(own.pairs, other.pairs);
        boolean sameUnit = sameUnit(own, other);
        boolean otherUnit = !own.unit.isEmpty() && !other.unit.isEmpty() && !sameUnit;
        boolean dated =
                own.at.isAfter(Instant.EPOCH) && other.at.isAfter(Instant.EPOCH) && other.at.isBefore(Instant.MAX);
        boolean near = !dated || Math.abs(ChronoUnit.DAYS.between(own.at, other.at)) <= DAYS;
        boolean enough = sameUnit || Math.min(own.pairs.length, other.pairs.length) >= ENOUGH_PAIRS;
        boolean duplicate = share >= ALIKE && !otherUnit && near && enough;
        return share >= SHOWN || sameUnit
                ? Optional.of(new Likeness(other.caseId, other.line, share, sameUnit, duplicate))
                : Optional.empty();
    }

    private static Instant day(ImportDraft draft, CaseEvent first) {
        return draft.date().isPresent() || draft.told().isEmpty() ? first.head().at() : Instant.EPOCH;
    }

    private static String unit(String given) {
        return given.strip().toUpperCase(Locale.ROOT);
    }

    private void catchUp() {
        List<CaseStore.Recorded> page = store.eventsAfter(position, PAGE);
        while (!page.isEmpty()) {
            for (CaseStore.Recorded recorded : page) {
                add(recorded.event());
                position = recorded.position();
            }
            page = store.eventsAfter(position, PAGE);
        }
    }

    private void add(CaseEvent event) {
        Stored known = byId.computeIfAbsent(event.head().caseId(), id -> {
            Stored fresh = new Stored(id);
            cases.add(fresh);
            return fresh;
        });
        CaseEvent told = event instanceof CaseEvent.Corrected corrected ? corrected.replacement() : event;
        int[] pairs = WordSketch.pairs(List.of(told));
        known.sketch.add(pairs);
        known.pairs = IntStream.concat(IntStream.of(known.pairs), IntStream.of(pairs))
                .sorted()
                .distinct()
                .toArray();
        known.takenBack |= told instanceof CaseEvent.Withdrawn;
        if (told instanceof CaseEvent.Opened opened) {
            known.unit = unit(opened.unit());
            known.at = opened.head().at();
        }
    }
}
