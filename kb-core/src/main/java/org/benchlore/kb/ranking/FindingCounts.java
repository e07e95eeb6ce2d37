package org.benchlore.kb.ranking;

import java.util.Arrays;

/**
 * The sufficient statistics: n(c), n(c,s,x) and, sparsely, n(c,s,x,t,y), in millionths of a case. Adding and taking away
 * whole numbers commutes, so the order of cases is irrelevant and a withdrawal restores every count bit for bit.
 */
final class FindingCounts {

    static final double MICRO = 1e-6;
    private static final PairTables NONE = new PairTables(0, 0);

    private final Catalogue catalogue;
    private final int causes;
    private final int[] states;
    private final long[] perCause;
    private final long[][] seen; // [symptom][state], then looked at
    private final long[][]
            singles; // [symptom][cause * (states + 1) + state], the last of each row is n(c,s); empty until used
    private final PairTables[][] pairs; // [lower symptom][higher - lower - 1]; empty until used
    private long total;

    FindingCounts(Catalogue catalogue) {
        this.catalogue = catalogue;
        this.causes = catalogue.causes();
        this.states = new int[catalogue.symptoms()];
        for (int s = 0; s < states.length; s++) {
            states[s] = catalogue.symptom(s).states().size();
        }
        this.perCause = new long[causes];
        this.seen = new long[states.length][];
        this.singles = new long[states.length][];
        this.pairs = new PairTables[states.length][];
        for (int s = 0; s < states.length; s++) {
            seen[s] = new long[states[s] + 1];
            singles[s] = new long[0];
            pairs[s] = new PairTables[0];
        }
    }

    int causes() {
        return causes;
    }

    int symptoms() {
        return states.length;
    }

    int states(int symptom) {
        return states[symptom];
    }

    /** Counts the row {@code sign} times: +1 learns, -1 withdraws. */
    void add(CaseRow row, int sign) {
        addSingles(row, sign);
        long w = sign * row.weightMicro;
        for (int i = 1; i < row.symptoms.length; i++) {
            for (int j = 0; j < i; j++) {
                int s = row.symptoms[i];
                int t = row.symptoms[j];
                if (s < t) {
                    tables(s, t).add(row.cause, row.states[i], row.states[j], w);
                } else {
                    tables(t, s).add(row.cause, row.states[j], row.states[i], w);
                }
            }
        }
    }

    /** The part of {@link #add} that leaves pairs alone. */
    void addSingles(CaseRow row, int sign) {
        long w = sign * row.weightMicro;
        total += w;
        perCause[row.cause] += w;
        for (int i = 0; i < row.symptoms.length; i++) {
            int s = row.symptoms[i];
            int k = states[s];
            long[] own = singles[s];
            if (own.length == 0) {
                own = new long[causes * (k + 1)];
                singles[s] = own;
            }
            if (!catalogue.speaks(row.cause, s)) {
                seen[s][row.states[i]] += w;
                seen[s][k] += w;
            }
            own[row.cause * (k + 1) + row.states[i]] += w;
            own[row.cause * (k + 1) + k] += w;
        }
    }

    double cases(int cause) {
        return perCause[cause] * MICRO;
    }

    /** Cases of the listed causes that say nothing of the symptom. */
    double casesWithoutOpinion(int symptom) {
        long sum = total - perCause[catalogue.unlisted()];
        for (int c : catalogue.speaking(symptom)) {
            sum -= perCause[c];
        }
        return sum * MICRO;
    }

    /** n(s,x) over all causes without an opinion. */
    double seen(int symptom, int state) {
        return seen[symptom][state] * MICRO;
    }

    /** n(s) over all causes without an opinion. */
    double looked(int symptom) {
        return seen[symptom][states[symptom]] * MICRO;
    }

    /** n(c,s,x); with {@code state} equal to the number of states, n(c,s). */
    double single(int cause, int symptom, int state) {
        long[] own = singles[symptom];
        return own.length == 0 ? 0 : own[cause * (states[symptom] + 1) + state] * MICRO;
    }

    double looked(int cause, int symptom) {
        return single(cause, symptom, states[symptom]);
    }

    /** Tables of two symptoms, the lower one in the rows; without tables when no case has both. */
    PairTables pair(int lower, int higher) {
        PairTables[] own = pairs[lower];
        return own.length == 0 ? NONE : own[higher - lower - 1];
    }

    private PairTables tables(int lower, int higher) {
        PairTables[] own = pairs[lower];
        if (own.length == 0) {
            own = new PairTables[states.length - lower - 1];
            Arrays.fill(own, NONE);
            pairs[lower] = own;
        }
        PairTables tables = own[higher - lower - 1];
        if (tables == NONE) {
            tables = new PairTables(states[lower], states[higher]);
            own[higher - lower - 1] = tables;
        }
        return tables;
    }
}
