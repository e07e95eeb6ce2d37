package org.benchlore.kb.importing;

import com.google.common.base.Splitter;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.regex.Pattern;
import org.benchlore.kb.reading.analysis.Token;

/**
 * Finds the entry that words name, though they seldom name it as the pack does: a name is recognised when the words hold
 * nearly all of it, rare words counting for more than common ones (by how few entries have them, as in Spärck Jones 1972).
 * Two entries that fit equally well are no answer.
 */
final class NameIndex {
    /** Share of a name, by weight, that the words must hold. Our choice: it lets one common word be left out. */
    private static final double HELD = 0.8;

    private static final Set<String> OWN = Set.of("its", "their");

    private static final Pattern LIST = Pattern.compile(", | and ");

    /** Weights that differ by less are equal: they are sums of a few logarithms. */
    private static final double EQUAL = 1e-9;

    /**
     * An entry that fits.
     *
     * @param id the entry
     * @param held share of its name that the words hold, by weight, in (0,1]
     * @param weight of the words that it explains
     * @param explains share of the words, by weight, that its name explains
     */
    record Fit(String id, double held, double weight, double explains) {}

    private final List<String> ids = new ArrayList<>();
    private final List<Double> sums = new ArrayList<>();

    /** Names, by place in {@link #ids}, that have a term. */
    private final Map<String, List<Integer>> byTerm = new HashMap<>();

    private final Map<String, Double> weights = new HashMap<>();

    /** Weight of a word that no name has. */
    private final double strange;

    /** @param names by id, each entry's names as sets of terms */
    NameIndex(Map<String, ? extends Collection<Set<String>>> names) {
        Map<String, Set<String>> entriesByTerm = new HashMap<>();
        names.forEach((id, sets) -> sets.forEach(terms -> terms.forEach(term ->
                entriesByTerm.computeIfAbsent(term, t -> new LinkedHashSet<>()).add(id))));
        entriesByTerm.forEach((term, having) -> weights.put(term, Math.log1p((double) names.size() / having.size())));
        strange = Math.log1p(names.size() / 4.0);
        names.forEach((id, sets) -> sets.forEach(terms -> add(id, terms)));
    }

    private void add(String id, Set<String> terms) {
        if (!terms.isEmpty()) {
            int place = ids.size();
            ids.add(id);
            sums.add(weight(terms));
            terms.forEach(
                    term -> byTerm.computeIfAbsent(term, t -> new ArrayList<>()).add(place));
        }
    }

    /** Whether any name has a word. */
    boolean knows(String term) {
        return weights.containsKey(term);
    }

    private double weight(Set<String> terms) {
        double sum = 0;
        for (String term : terms) {
            sum += weights.getOrDefault(term, strange);
        }
        return sum;
    }

    /**
     * The entry that words name; empty if none does, or two that hold for devices as widely.
     *
     * @param said the words' terms
     * @param allowed ids to choose from
     * @param depth of an entry's scope: of two that fit equally well the nearer one is meant
     */
    Optional<Fit> named(Set<String> said, Predicate<String> allowed, ToIntFunction<String> depth) {
        Fit best = null;
        boolean tie = false;
        for (Fit fit : fits(said, HELD)) {
            if (!allowed.test(fit.id())) {
                continue;
            }
            int ahead = best == null ? 1 : ahead(fit, best, depth);
            if (ahead > 0) {
                best = fit;
                tie = false;
            } else if (best != null && !best.id().equals(fit.id())) {
                tie |= ahead == 0;
            }
        }
        return tie ? Optional.empty() : Optional.ofNullable(best);
    }

    private static int ahead(Fit fit, Fit best, ToIntFunction<String> depth) {
        double more = fit.weight() - best.weight();
        if (Math.abs(more) > EQUAL) {
            return more > 0 ? 1 : -1;
        }
        return Integer.compare(depth.applyAsInt(fit.id()), depth.applyAsInt(best.id()));
    }

    /** Names of which the words hold at least a share, in the order in which they were given. */
    List<Fit> fits(Set<String> said, double held) {
        double[] found = new double[ids.size()];
        BitSet touched = new BitSet(ids.size());
        for (String term : said) {
            double weight = weights.getOrDefault(term, strange);
            for (int place : byTerm.getOrDefault(term, List.of())) {
                found[place] += weight;
                touched.set(place);
            }
        }
        double all = weight(said);
        List<Fit> fits = new ArrayList<>();
        for (int i = touched.nextSetBit(0); i >= 0; i = touched.nextSetBit(i + 1)) {
            if (found[i] > 0 && found[i] >= held * sums.get(i)) {
                fits.add(new Fit(ids.get(i), found[i] / sums.get(i), found[i], found[i] / all));
            }
        }
        return fits;
    }

    /**
     * The readings of a name that leaves a choice: "worn or stuck key" are two, each without the other word; of a list of
     * three or more, such as "fan, fins and vents", any one may be left out. The capacitor of "tweeter or its capacitor" is the
     * tweeter's, and none of another thing.
     *
     * @param name the name, or the part of it that counts
     */
    static List<Set<String>> readings(String name) {
        List<Token> words = PhraseTable.words(name);
        List<Set<String>> readings = new ArrayList<>();
        for (int i = 1; i + 1 < words.size(); i++) {
            if (words.get(i).surface().equals("or")
                    && OWN.contains(words.get(i + 1).surface())) {
                readings.add(NameWords.of(words.subList(0, i)));
                readings.add(NameWords.of(words));
            } else if (words.get(i).surface().equals("or")) {
                List<Token> first = new ArrayList<>(words);
                first.remove(i + 1);
                List<Token> second = new ArrayList<>(words);
                second.remove(i - 1);
                readings.add(NameWords.of(first));
                readings.add(NameWords.of(second));
            }
        }
        List<String> items = Splitter.on(LIST).splitToList(name);
        for (int i = 0; i < items.size() && items.size() > 2; i++) {
            List<String> others = new ArrayList<>(items);
            others.remove(i);
            readings.add(NameWords.of(PhraseTable.words(String.join(" ", others))));
        }
        if (readings.isEmpty()) {
            readings.add(NameWords.of(words));
        }
        return readings;
    }
}
