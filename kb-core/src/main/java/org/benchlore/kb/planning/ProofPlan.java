package org.benchlore.kb.planning;

import java.util.List;
import java.util.Optional;

/**
 * A proof run after a fix: how long, what is believed by now, and what to check.
 *
 * @param seen times the fault was seen before the fix
 * @param seenHours in so many hours of run
 * @param confidence asked for
 * @param hoursAtMeanRate hours without fault, were the rate known to be seen / seenHours
 * @param hours hours without fault, the rate as uncertain as so few sightings leave it
 * @param priorNotCured probability, before the run, that the fix did not cure
 * @param cleanHours run so far without fault
 * @param stillThere probability now that the fault is still there
 * @param hoursLeft further hours until that is at most 1 − confidence
 * @param fixId the fix, where given
 * @param checklist the fix's own proof steps; empty without a fix
 */
public record ProofPlan(
        int seen,
        double seenHours,
        double confidence,
        double hoursAtMeanRate,
        double hours,
        double priorNotCured,
        double cleanHours,
        double stillThere,
        double hoursLeft,
        Optional<String> fixId,
        List<String> checklist) {
    public ProofPlan {
        checklist = List.copyOf(checklist);
    }

    /**
     * A plan.
     *
     * @throws IllegalArgumentException as {@link ProofRun}
     */
    public static ProofPlan of(
            int seen,
            double seenHours,
            double confidence,
            double priorNotCured,
            double cleanHours,
            Optional<String> fixId,
            List<String> checklist) {
        double hours = ProofRun.hours(seen, seenHours, confidence);
        double toBelieve = ProofRun.hoursToBelieve(priorNotCured, seen, seenHours, 1 - confidence);
        return new ProofPlan(
                seen,
                seenHours,
                confidence,
                ProofRun.hours(seenHours / seen, confidence),
                hours,
                priorNotCured,
                cleanHours,
                ProofRun.stillThere(priorNotCured, seen, seenHours, cleanHours),
                Math.max(0, toBelieve - cleanHours),
                fixId,
                checklist);
    }
}
