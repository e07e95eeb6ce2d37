package org.benchlore.kb.planning;

import java.util.HashMap;
import java.util.Map;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;

/**
 * How often a test reads wrong.
 *
 * @param misses probability in (0,1) that an abnormal state reads normal
 * @param falseAlarms probability in (0,1) that the normal state reads abnormal, each abnormal state as likely
 */
public record TestErrors(double misses, double falseAlarms) {
    /** The pack's opinion. */
    public static TestErrors of(BenchTest test) {
        return new TestErrors(test.misses(), test.falseAlarms());
    }

    /** P(reads state {@code read} | the unit is in state {@code is}), states by their place in the symptom. */
    double reads(Symptom symptom, int is, int read) {
        int normal = symptom.normalIndex();
        if (is == normal) {
            return read == normal
                    ? 1 - falseAlarms
                    : falseAlarms / (symptom.states().size() - 1);
        }
        return read == is ? 1 - misses : read == normal ? misses : 0;
    }

    /**
     * A test's result as a finding that allows for the test's errors.
     *
     * @param stateId what the test read
     * @throws IllegalArgumentException if the symptom has no such state
     */
    public Finding finding(Symptom symptom, String stateId) {
        int read = symptom.indexOf(stateId);
        if (read < 0) {
            throw new IllegalArgumentException(
                    "symptom '" + symptom.id() + "' has no state '" + stateId + "'; use one that the packs define");
        }
        Map<String, Double> likelihoods = new HashMap<>();
        for (int is = 0; is < symptom.states().size(); is++) {
            double p = reads(symptom, is, read);
            if (p > 0) {
                likelihoods.put(symptom.states().get(is).id(), p);
            }
        }
        return Finding.soft(symptom.id(), likelihoods);
    }
}
