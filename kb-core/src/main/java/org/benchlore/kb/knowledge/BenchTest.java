package org.benchlore.kb.knowledge;

import java.util.List;

/**
 * A procedure that reveals the state of one or more symptoms.
 *
 * @param id stable, kebab-case
 * @param name as a technician calls it
 * @param scope where it applies
 * @param minutes bench time, more than 0
 * @param opens whether the unit has to be opened for it; opening is paid once a unit and is not in the minutes
 * @param powers whether the unit, its pack or its supply runs or is fed during it, and not only once it was made safe in it;
 *     see {@link PowerOff}
 * @param tools what must be at hand
 * @param risk to the unit
 * @param misses probability in (0,1) that an abnormal state reads normal
 * @param falseAlarms probability in (0,1) that the normal state reads abnormal
 * @param cautions ids
 * @param setup state of the unit before the first step
 * @param steps in order
 * @param expect reading of a sound unit, with tolerance
 * @param readings what each reading means; at least one
 * @param fools what commonly misleads
 * @param stopWhen when to break off
 * @param needs parts that a unit must hold for it to make sense, besides what its causes need; see {@link Knowledge#lacking(BenchTest,
 *     java.util.Collection)}
 */
public record BenchTest(
        String id,
        String name,
        DeviceScope scope,
        double minutes,
        boolean opens,
        boolean powers,
        List<String> tools,
        Risk risk,
        double misses,
        double falseAlarms,
        List<String> cautions,
        String setup,
        List<String> steps,
        String expect,
        List<ReadingMeans> readings,
        List<String> fools,
        String stopWhen,
        List<String> needs) {
    /**
     * What it means when the test shows a state.
     *
     * @param symptomId the symptom revealed
     * @param stateId the state read
     * @param means what to conclude or do next
     */
    public record ReadingMeans(String symptomId, String stateId, String means) {}

    public BenchTest {
        tools = List.copyOf(tools);
        cautions = List.copyOf(cautions);
        steps = List.copyOf(steps);
        readings = List.copyOf(readings);
        fools = List.copyOf(fools);
        needs = List.copyOf(needs);
    }

    /** Ids of the symptoms this test reveals, in order of first mention. */
    public List<String> reveals() {
        return readings.stream().map(ReadingMeans::symptomId).distinct().toList();
    }
}
