package org.benchlore.kb.planning;

import java.util.Optional;

/**
 * How a fix went on this bench and others.
 *
 * @param fixId the fix
 * @param tried times its result is known
 * @param worked times it worked and lasted, as far as known
 * @param cameBack times the fault returned after hand-over
 * @param madeWorse times the unit left worse than it came
 * @param works share that worked and lasted: x of n with its 90 % Jeffreys interval, from the record alone
 * @param returns share of the units handed over as fixed that came back, the same way
 * @param worsens share made worse, the same way
 * @param opinion the packs' opinion that it works, the mean over the causes it is named for; empty if none names it
 * @param believed opinion and record together, with its 90 % interval: what the plan reckons with
 * @param believedWorsens the same for making it worse
 * @param packMinutes bench time as the pack has it
 * @param medianMinutes bench time really needed, where it was kept
 */
public record FixRecord(
        String fixId,
        int tried,
        int worked,
        int cameBack,
        int madeWorse,
        Rate works,
        Rate returns,
        Rate worsens,
        Optional<Double> opinion,
        Rate believed,
        Rate believedWorsens,
        double packMinutes,
        Optional<Double> medianMinutes) {
    /** Cases that an opinion on "works" is worth where no pack says. */
    static final double OPINION_CASES = 4;
}
