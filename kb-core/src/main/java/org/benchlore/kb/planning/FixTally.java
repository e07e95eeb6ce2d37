package org.benchlore.kb.planning;

import com.google.common.collect.HashMultiset;
import com.google.common.collect.Multiset;
import java.util.Optional;
import java.util.function.Predicate;
import org.benchlore.kb.cases.TriedFix;

/** The trials of one fix, and what they come to. Immutable. */
final class FixTally {
    static final FixTally NONE = new FixTally(HashMultiset.create());

    private final Multiset<CaseWork.Trial> trials;
    private final Multiset<TriedFix.Result> results = HashMultiset.create();
    private final Multiset<String> stood = HashMultiset.create();
    private final Multiset<String> cured = HashMultiset.create();
    private final Optional<Double> minutes;

    /** @param trials not touched any more */
    FixTally(Multiset<CaseWork.Trial> trials) {
        this.trials = trials;
        for (CaseWork.Trial trial : trials.elementSet()) {
            int times = trials.count(trial);
            results.add(trial.result(), times);
            if (trial.causeStood()) {
                stood.add(trial.causeId(), times);
                cured.add(trial.causeId(), trial.result() == TriedFix.Result.HELPED ? times : 0);
            }
        }
        this.minutes = medianMinutes(BenchTimes.ENOUGH);
    }

    /** A copy, to be changed. */
    Multiset<CaseWork.Trial> trials() {
        return HashMultiset.create(trials);
    }

    FixTally only(Predicate<CaseWork.Trial> wanted) {
        Multiset<CaseWork.Trial> some = trials();
        some.removeIf(wanted.negate());
        return new FixTally(some);
    }

    int tried() {
        return trials.size();
    }

    int count(TriedFix.Result result) {
        return results.count(result);
    }

    /** Trials for a cause that was still the one concluded when the case ended. */
    int stood(String causeId) {
        return stood.count(causeId);
    }

    /** Those of them that helped. */
    int cured(String causeId) {
        return cured.count(causeId);
    }

    /** Bench time, where enough times were kept. */
    Optional<Double> minutes() {
        return minutes;
    }

    Optional<Double> medianMinutes(int enough) {
        return BenchTimes.median(trials, CaseWork.Trial::minutes, enough);
    }
}
