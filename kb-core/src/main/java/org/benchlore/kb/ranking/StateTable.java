package org.benchlore.kb.ranking;

/**
 * P(state | cause) of one symptom in one device scope, over all causes in order of id with the unlisted one last (as
 * {@link RankingModel#probabilities}). Immutable.
 */
public final class StateTable {
    private final double[][] p;

    StateTable(double[][] p) {
        this.p = p;
    }

    /** Number of states, in the symptom's order. */
    public int states() {
        return p.length;
    }

    /** Number of causes, the unlisted one included. */
    public int causes() {
        return p[0].length;
    }

    /** Probability, in (0,1), that the symptom is in the state when the cause is at work. */
    public double given(int state, int cause) {
        return p[state][cause];
    }
}
