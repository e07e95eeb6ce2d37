package org.benchlore.kb.cases;

/**
 * What is at stake in a repair, in any one currency; a unit in use has a value if left alone, a dead one next to none.
 *
 * @param repaired value if the work succeeds; for a working unit, what it is worth once made more lasting
 * @param leftAlone value as it stands, future trouble reckoned in
 * @param madeWorse value if the work leaves it worse
 * @param forParts value as parts now
 * @param cost of the work: time and parts, whether it succeeds or not
 */
public record Stakes(double repaired, double leftAlone, double madeWorse, double forParts, double cost) {
    public Stakes {
        for (double value : new double[] {repaired, leftAlone, madeWorse, forParts, cost}) {
            if (!(Math.abs(value) < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("a stake of " + value + "; give finite numbers");
            }
        }
    }
}
