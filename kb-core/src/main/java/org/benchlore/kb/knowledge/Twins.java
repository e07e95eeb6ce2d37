package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.knowledge.QualityReport.Alike;
import org.benchlore.kb.knowledge.QualityReport.Twin;

/**
 * Entries of one kind that say nearly the same: the Jaccard index |A ∩ B| / |A ∪ B| of their sets of shingles, runs of
 * {@value #SHINGLE} words of the whole entry, is {@link #SAME_TEXT} or more (Broder, On the resemblance and containment of
 * documents, 1997), or that of the words of two names is {@link #SAME_NAME} or more. The thresholds are ours.
 *
 * <p>Two sets that reach a threshold t share one of the n - ⌈t·n⌉ + 1 rarest members of each (Chaudhuri, Ganti and Kaushik,
 * ICDE 2006), so only entries that share a rare shingle are compared.
 */
final class Twins {
    static final double SAME_TEXT = 0.5;
    static final double SAME_NAME = 0.8;
    static final int SHINGLE = 3;
    /** So that a pack full of copies does not make an endless list. */
    static final int MOST = 200;

    private static final Set<String> FILLERS =
            Set.of("a", "an", "and", "at", "by", "for", "from", "in", "is", "it", "its", "of", "on", "or", "the", "to");

    private final EntryKind kind;
    private final Alike by;
    private final double threshold;
    private final Map<String, Set<String>> sets = new LinkedHashMap<>();

    private Twins(EntryKind kind, Alike by, double threshold) {
        this.kind = kind;
        this.by = by;
        this.threshold = threshold;
    }

    /** The most alike first, {@value #MOST} at most. */
    static List<Twin> find(Knowledge knowledge) {
        List<Twin> twins = new ArrayList<>();
        for (Alike by : Alike.values()) {
            Twins symptoms = new Twins(EntryKind.SYMPTOM, by, threshold(by));
            knowledge.symptoms().forEach(e -> symptoms.add(e.id(), e.name(), List.of(e.about())));
            Twins causes = new Twins(EntryKind.CAUSE, by, threshold(by));
            knowledge.causes().forEach(e -> causes.add(e.id(), e.name(), with(e.fools(), e.about())));
            Twins tests = new Twins(EntryKind.TEST, by, threshold(by));
            knowledge.tests().forEach(e -> tests.add(e.id(), e.name(), Lix.texts(e)));
            Twins fixes = new Twins(EntryKind.FIX, by, threshold(by));
            knowledge.fixes().forEach(e -> fixes.add(e.id(), e.name(), Lix.texts(e)));
            List.of(symptoms, causes, tests, fixes).forEach(all -> twins.addAll(all.pairs()));
        }
        twins.sort(Comparator.comparingDouble((Twin twin) -> -twin.resemblance())
                .thenComparing(Twin::kind)
                .thenComparing(Twin::first)
                .thenComparing(Twin::second));
        return twins.subList(0, Math.min(MOST, twins.size()));
    }

    private static double threshold(Alike by) {
        return by == Alike.NAME ? SAME_NAME : SAME_TEXT;
    }

    private static List<String> with(List<String> texts, String first) {
        List<String> all = new ArrayList<>(List.of(first));
        all.addAll(texts);
        return all;
    }

    private void add(String id, String name, List<String> texts) {
        Set<String> set = by == Alike.NAME ? words(name) : shingles(texts);
        if (!set.isEmpty()) {
            sets.put(id, set);
        }
    }

    private static Set<String> words(String name) {
        Set<String> words =
                new LinkedHashSet<>(Arrays.asList(WordingCheck.folded(name).split(" ", -1)));
        words.removeAll(FILLERS);
        words.remove("");
        return words;
    }

    /** Runs of words; a shorter text is one run. */
    private static Set<String> shingles(List<String> texts) {
        Set<String> shingles = new LinkedHashSet<>();
        for (String text : texts) {
            String[] words = WordingCheck.folded(text).split(" ", -1);
            for (int i = 0; i + SHINGLE <= Math.max(words.length, SHINGLE); i++) {
                String run = String.join(" ", Arrays.copyOfRange(words, i, Math.min(i + SHINGLE, words.length)));
                if (!run.isEmpty()) {
                    shingles.add(run);
                }
            }
        }
        return shingles;
    }

    private List<Twin> pairs() {
        Map<String, Integer> counts = new HashMap<>();
        sets.values().forEach(set -> set.forEach(member -> counts.merge(member, 1, Integer::sum)));
        Comparator<String> rarestFirst = Comparator.comparingInt((String member) -> counts.getOrDefault(member, 0))
                .thenComparing(Comparator.naturalOrder());
        Map<String, List<String>> seen = new HashMap<>();
        List<Twin> twins = new ArrayList<>();
        for (Map.Entry<String, Set<String>> entry : sets.entrySet()) {
            Set<String> set = entry.getValue();
            int prefix = set.size() - (int) Math.ceil(threshold * set.size()) + 1;
            Set<String> others = new LinkedHashSet<>();
            set.stream().sorted(rarestFirst).limit(prefix).forEach(member -> {
                List<String> holders = seen.computeIfAbsent(member, m -> new ArrayList<>());
                others.addAll(holders);
                holders.add(entry.getKey());
            });
            for (String other : others) {
                double resemblance = jaccard(sets.getOrDefault(other, Set.of()), set);
                if (resemblance >= threshold) {
                    twins.add(new Twin(kind, other, entry.getKey(), by, resemblance));
                    if (twins.size() == MOST) {
                        return twins;
                    }
                }
            }
        }
        return twins;
    }

    static double jaccard(Set<String> a, Set<String> b) {
        Set<String> both = new HashSet<>(a);
        both.retainAll(b);
        int union = a.size() + b.size() - both.size();
        return union == 0 ? 0 : (double) both.size() / union;
    }
}
