package org.benchlore.kb.knowledge;

import java.util.List;

/**
 * What forbids to power a unit: while a symptom shows this state, no test or fix is proposed that runs or feeds it.
 *
 * @param id stable, kebab-case
 * @param symptomId the symptom
 * @param stateId its state that forbids power, not the normal one
 * @param why for people, one clause without a full stop: what may happen and what comes first
 * @param until ids of symptoms that lift it once all of them are found as on a sound unit, such as clean boards after a spill.
 *     Those that a kind of unit cannot show are not asked of it. Once one is found otherwise no look lifts it: a burnt place
 *     is not undone by sound capacitors
 * @param fixes ids of fixes that lift it, noted or told of ({@link Fix#done}), whether they mend the unit or not
 */
public record PowerOff(
        String id, String symptomId, String stateId, String why, List<String> until, List<String> fixes) {
    /** A symptom seen in a state. */
    public record Sign(String symptomId, String stateId) {}

    public PowerOff {
        until = List.copyOf(until);
        fixes = List.copyOf(fixes);
    }

    /** The same with other looks to be made. */
    public PowerOff awaiting(List<String> looks) {
        return new PowerOff(id, symptomId, stateId, why, looks, fixes);
    }

    /** Whether a test looks at something that has to be found sound. */
    public boolean liftedBy(BenchTest test) {
        return until.stream().anyMatch(test.reveals()::contains);
    }
}
