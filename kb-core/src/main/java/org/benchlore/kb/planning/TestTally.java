package org.benchlore.kb.planning;

import com.google.common.collect.HashMultiset;
import com.google.common.collect.Multiset;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;

/** The uses of one test, and what they come to. Immutable. */
final class TestTally {
    static final TestTally NONE = new TestTally(HashMultiset.create(), Optional.empty());
    /** Tests that the packs' figures for misses and false alarms are worth; our choice. */
    private static final double ERROR_CASES = 20;

    private final Multiset<CaseWork.Use> uses;
    private final Optional<TestErrors> errors;
    private final Optional<Double> minutes;

    private TestTally(Multiset<CaseWork.Use> uses, Optional<TestErrors> errors) {
        this.uses = uses;
        this.errors = errors;
        this.minutes = BenchTimes.median(uses, CaseWork.Use::minutes, BenchTimes.ENOUGH);
    }

    /** @param uses not touched any more */
    static TestTally of(String testId, Multiset<CaseWork.Use> uses, Knowledge knowledge) {
        return new TestTally(uses, knowledge.test(testId).map(test -> learn(test, uses, knowledge)));
    }

    /** A copy, to be changed. */
    Multiset<CaseWork.Use> uses() {
        return HashMultiset.create(uses);
    }

    /** Bench time, where enough times were kept. */
    Optional<Double> minutes() {
        return minutes;
    }

    /** How often it reads wrong; empty for a test that the packs do not have. */
    Optional<TestErrors> errors() {
        return errors;
    }

    /**
     * One step of expectation and maximisation (Dempster, Laird and Rubin, JRSS-B 39, 1977): each reading is shared out
     * between right and wrong by the packs' figures, given the cause that the case proved.
     */
    private static TestErrors learn(BenchTest test, Multiset<CaseWork.Use> uses, Knowledge knowledge) {
        TestErrors prior = TestErrors.of(test);
        double abnormal = 0;
        double missed = 0;
        double normal = 0;
        double alarms = 0;
        for (Map.Entry<Seen, Integer> e : counted(uses).entrySet()) {
            Seen seen = e.getKey();
            Optional<Symptom> symptom = knowledge.symptom(seen.symptomId());
            if (symptom.isEmpty() || symptom.get().indexOf(seen.state()) < 0) {
                continue;
            }
            Symptom s = symptom.get();
            int read = s.indexOf(seen.state());
            int sound = s.normalIndex();
            double[] given = given(seen.causeId(), s, knowledge);
            double right = given[read] * prior.reads(s, read, read);
            double wrong = 0;
            for (int is = 0; is < given.length; is++) {
                wrong += is == read ? 0 : given[is] * prior.reads(s, is, read);
            }
            double wrongly = e.getValue() * wrong / (right + wrong);
            double rightly = e.getValue() - wrongly;
            if (read == sound) {
                missed += wrongly;
                abnormal += wrongly;
                normal += rightly;
            } else {
                alarms += wrongly;
                normal += wrongly;
                abnormal += rightly;
            }
        }
        return new TestErrors(
                (prior.misses() * ERROR_CASES + missed) / (ERROR_CASES + abnormal),
                (prior.falseAlarms() * ERROR_CASES + alarms) / (ERROR_CASES + normal));
    }

    /** A reading in a case that proved a cause. */
    private record Seen(String causeId, String symptomId, String state) implements Comparable<Seen> {
        private static final Comparator<Seen> ORDER = Comparator.comparing(Seen::causeId)
                .thenComparing(Seen::symptomId)
                .thenComparing(Seen::state);

        @Override
        public int compareTo(Seen other) {
            return ORDER.compare(this, other);
        }
    }

    /** How often each reading came, sorted, so that sums over them do not depend on the order of the cases. */
    private static SortedMap<Seen, Integer> counted(Multiset<CaseWork.Use> uses) {
        SortedMap<Seen, Integer> counted = new TreeMap<>();
        for (CaseWork.Use use : uses.elementSet()) {
            use.causeId()
                    .ifPresent(causeId -> use.findings()
                            .forEach(f -> counted.merge(
                                    new Seen(causeId, f.symptomId(), f.state()), uses.count(use), Integer::sum)));
        }
        return counted;
    }

    private static double[] given(String causeId, Symptom symptom, Knowledge knowledge) {
        double[] usual = symptom.states().stream().mapToDouble(State::usual).toArray();
        return knowledge
                .cause(causeId)
                .flatMap(c -> c.link(symptom.id()))
                .map(link -> symptom.states().stream()
                        .mapToDouble(x -> link.states().getOrDefault(x.id(), 0.0))
                        .toArray())
                .orElse(usual);
    }
}
