package org.benchlore.kb.knowledge;

import java.util.List;

/**
 * A repair action.
 *
 * @param id stable, kebab-case
 * @param name as a technician calls it
 * @param scope where it applies
 * @param minutes bench time, more than 0
 * @param opens whether the unit has to be opened for it; opening is paid once a unit and is not in the minutes
 * @param powers whether the unit, its pack or its supply runs or is fed during its steps, and not only once it was made safe in it;
 *     see {@link PowerOff}
 * @param parts what it uses up
 * @param price how many bench minutes the money for the parts would buy, from 0; 0 where it uses up none worth counting
 * @param tools what must be at hand
 * @param difficulty skill it takes
 * @param risk to the unit
 * @param makesWorse probability in (0,1) of leaving the unit worse
 * @param cautions ids
 * @param steps in order
 * @param verify how to prove it
 * @param fools what commonly misleads
 * @param needs parts that a unit must hold for it to make sense, besides what its causes need; see {@link Knowledge#lacking(Fix,
 *     java.util.Collection)}
 * @param done how people tell that it was done, where that makes a unit safe (see {@link PowerOff}): words in their order with a
 *     few others between them, each with its alternatives behind bars, such as "took|taken pack|battery out"
 */
public record Fix(
        String id,
        String name,
        DeviceScope scope,
        double minutes,
        boolean opens,
        boolean powers,
        List<String> parts,
        double price,
        List<String> tools,
        Difficulty difficulty,
        Risk risk,
        double makesWorse,
        List<String> cautions,
        List<String> steps,
        List<String> verify,
        List<String> fools,
        List<String> needs,
        List<String> done) {
    /** Skill a fix takes, in rising order. */
    public enum Difficulty {
        EASY,
        MODERATE,
        HARD,
        EXPERT
    }

    public Fix {
        parts = List.copyOf(parts);
        tools = List.copyOf(tools);
        cautions = List.copyOf(cautions);
        steps = List.copyOf(steps);
        verify = List.copyOf(verify);
        fools = List.copyOf(fools);
        needs = List.copyOf(needs);
        done = List.copyOf(done);
    }
}
