package org.benchlore.kb.ranking;

/**
 * One finding not yet made, and what it would do to the ranking.
 *
 * @param symptomId the symptom to look at
 * @param stateId the state that would turn things
 * @param chance how likely that state is by what is known so far
 * @param leaderId who leads now; "unlisted" for none of the causes known
 * @param before probability of that leader now
 * @param after its probability with the finding
 * @param nextId who would lead then; the same as {@code leaderId} when it stays first
 * @param next probability of that one then
 */
public record Turn(
        String symptomId,
        String stateId,
        double chance,
        String leaderId,
        double before,
        double after,
        String nextId,
        double next) {
    /** Whether another cause would lead. */
    public boolean overturns() {
        return !leaderId.equals(nextId);
    }
}
