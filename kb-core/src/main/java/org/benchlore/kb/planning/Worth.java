package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Stakes;

/**
 * Whether to touch a unit at all: expected result of each choice, in the currency of the stakes.
 *
 * @param choices the best first
 * @param success probability that the work succeeds, as reckoned with
 * @param worse probability that it leaves the unit worse
 * @param flipsAt probability of success at which the best choice and the best of the others change places, the chance of
 *     harm as a share of what is left kept; empty if they never do
 * @param sensitivity by how much each input must change for the choice to change
 */
public record Worth(
        List<Choice> choices, double success, double worse, Optional<Double> flipsAt, List<Sensitivity> sensitivity) {
    public Worth {
        choices = List.copyOf(choices);
        sensitivity = List.copyOf(sensitivity);
    }

    /**
     * A choice.
     *
     * @param expected its expected result
     * @param low the same at the pessimistic end of the 90 % interval of success; equal where success plays no part
     * @param high at the optimistic end
     */
    public record Choice(Decision action, double expected, double low, double high) {}

    /**
     * How firm the choice is against one input.
     *
     * @param input its name, as in {@link Stakes}
     * @param now its value
     * @param flipsAt value at which the choice changes, others kept; empty if none from 0 up does
     */
    public record Sensitivity(String input, double now, Optional<Double> flipsAt) {}

    /** After work that neither cured nor harmed one still chooses between keeping it and parting it out. */
    static double unchanged(Stakes stakes) {
        return Math.max(stakes.leftAlone(), stakes.forParts());
    }

    /** Expected result of the work. */
    static double work(Stakes stakes, double success, double worse) {
        return success * stakes.repaired()
                + worse * stakes.madeWorse()
                + (1 - success - worse) * unchanged(stakes)
                - stakes.cost();
    }

    /** Weighs the choices with chances known outright, such as those that were reckoned with when it was decided. */
    public static Worth of(Stakes stakes, double success, double worse) {
        return of(stakes, new Rate(success, success, success), worse);
    }

    /**
     * Weighs the choices. The work ends in success, in harm, or leaves the unit as it was.
     *
     * @param success probability of success with its 90 % interval
     * @param worse probability of harm; at most what success leaves
     */
    public static Worth of(Stakes stakes, Rate success, double worse) {
        if (!(success.mean() >= 0 && worse >= 0 && success.mean() + worse <= 1 + 1e-9)) {
            throw new IllegalArgumentException(
                    "success " + success.mean() + " and harm " + worse + "; give probabilities that sum to 1 at most");
        }
        double p = success.mean();
        // Of the cases without success, this share ends in harm.
        double harm = p < 1 ? Math.min(1, worse / (1 - p)) : 0;
        List<Choice> choices = new ArrayList<>();
        choices.add(new Choice(
                Decision.WORK,
                work(stakes, p, worse),
                work(stakes, success.low(), harm * (1 - success.low())),
                work(stakes, success.high(), harm * (1 - success.high()))));
        choices.add(new Choice(Decision.LEAVE, stakes.leftAlone(), stakes.leftAlone(), stakes.leftAlone()));
        choices.add(new Choice(Decision.PARTS, stakes.forParts(), stakes.forParts(), stakes.forParts()));
        choices.sort(Comparator.comparingDouble(Choice::expected).reversed().thenComparing(Choice::action));
        double failed = harm * stakes.madeWorse() + (1 - harm) * unchanged(stakes);
        double rise = stakes.repaired() - failed;
        double flip = (unchanged(stakes) + stakes.cost() - failed) / rise;
        return new Worth(
                choices,
                p,
                worse,
                rise > 0 && flip >= 0 && flip <= 1 ? Optional.of(flip) : Optional.empty(),
                sensitivity(stakes, p, worse));
    }

    /** The work's advantage over the best alternative is linear in these, so the break-even is exact. */
    private static List<Sensitivity> sensitivity(Stakes s, double p, double worse) {
        double margin = work(s, p, worse) - unchanged(s);
        double kept = p + worse;
        double flipLeft = kept > 0 ? unchanged(s) + margin / kept : Double.NaN;
        return List.of(
                flip("repaired", s.repaired(), s.repaired() - margin / p),
                // What is left alone only counts where it is the better alternative.
                flip("leftAlone", s.leftAlone(), flipLeft >= s.forParts() ? flipLeft : Double.NaN),
                flip("madeWorse", s.madeWorse(), s.madeWorse() - margin / worse),
                flip("cost", s.cost(), s.cost() + margin),
                flip("worse", worse, worse + margin / (unchanged(s) - s.madeWorse())));
    }

    private static Sensitivity flip(String input, double now, double at) {
        boolean there = at >= 0 && at < Double.POSITIVE_INFINITY && !(input.equals("worse") && at > 1);
        return new Sensitivity(input, now, there ? Optional.of(at) : Optional.empty());
    }
}
