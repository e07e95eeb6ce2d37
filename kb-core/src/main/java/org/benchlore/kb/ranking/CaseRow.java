package org.benchlore.kb.ranking;

import java.util.Arrays;
import java.util.Comparator;

/** One concluded case as the estimator sees it. Symptoms are distinct; those not looked at are left out. */
final class CaseRow {

    /** A total order by content, so that a fit does not depend on the order in which cases came in. */
    static final Comparator<CaseRow> BY_CONTENT = Comparator.<CaseRow>comparingInt(r -> r.cause)
            .thenComparing(r -> r.symptoms, Arrays::compare)
            .thenComparing(r -> r.states, Arrays::compare)
            .thenComparingLong(r -> r.weightMicro);

    final long weightMicro;
    final int cause;
    final int[] symptoms;
    final int[] states;

    CaseRow(long weightMicro, int cause, int[] symptoms, int[] states) {
        if (symptoms.length != states.length) {
            throw new IllegalArgumentException(symptoms.length + " symptoms but " + states.length + " states");
        }
        this.weightMicro = weightMicro;
        this.cause = cause;
        this.symptoms = symptoms;
        this.states = states;
    }

    double weight() {
        return weightMicro * FindingCounts.MICRO;
    }
}
