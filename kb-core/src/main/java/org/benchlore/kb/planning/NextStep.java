package org.benchlore.kb.planning;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What to do now.
 *
 * @param tests at most 24 tests that can still tell something, by saving per minute, then by bits per minute, then by id
 * @param repair the fix to try first if no further test is done; empty if none is worth its time. While power is off only a
 *     fix that makes the unit safe
 * @param minutesUntested expected minutes of repair without a further test, parts and an unrepaired unit counted at their cost
 * @param stopTesting whether trying the fix is cheaper than any one test; {@link #testingGoesOn} if it does not cure
 * @param withheld fixes that tools or accepted risk leave out and that might well cure, the likeliest first
 * @param hold why nothing is proposed that powers the unit, nor a fix that only power can show to have helped; empty where it
 *     may be powered
 */
public record NextStep(
        List<TestProposal> tests,
        Optional<FixChoice> repair,
        double minutesUntested,
        boolean stopTesting,
        List<Withheld> withheld,
        Optional<PowerHold> hold) {
    private static final double EVEN = 0.5;

    public NextStep {
        tests = List.copyOf(tests);
        withheld = List.copyOf(withheld);
    }

    /** The same with these tests only. */
    public NextStep showing(List<TestProposal> some) {
        return new NextStep(some, repair, minutesUntested, stopTesting, withheld, hold);
    }

    /**
     * Whether the fix to try first likelier leaves the fault than cures it: it is tried since it is quick, and testing goes on
     * behind it.
     */
    public boolean testingGoesOn() {
        return stopTesting && repair.filter(fix -> fix.cures() < EVEN).isPresent();
    }

    /** The test to do now: the best one, or the {@link #opening} one; empty when it is time to try the fix, or to stop. */
    public Optional<TestProposal> first() {
        return stopTesting ? opening() : tests.stream().findFirst();
    }

    /**
     * The tests as one would do them: the {@link #first} one in front, the others as they are.
     *
     * @param limit most to return, from 0
     */
    public List<TestProposal> inOrder(int limit) {
        Optional<TestProposal> first = first();
        return Stream.concat(first.stream(), tests.stream().filter(t -> !first.equals(Optional.of(t))))
                .limit(limit)
                .toList();
    }

    /**
     * The test that tells most per minute, where none pays for itself and no fix does: one test may bring no repair nearer by
     * itself, and still one has to begin somewhere. Empty otherwise.
     */
    public Optional<TestProposal> opening() {
        return stopTesting && repair.isEmpty()
                ? tests.stream()
                        .max(Comparator.comparingDouble(TestProposal::bitsPerMinute)
                                .thenComparing(p -> p.test().id(), Comparator.reverseOrder()))
                : Optional.empty();
    }

    /**
     * A fix worth trying.
     *
     * @param fixId the fix
     * @param causeId the cause it is most likely to cure
     * @param minutes bench time: the record's median where there is one, else the pack's
     * @param openingMinutes what opening the unit adds, 0 if it is open by then or need not be
     * @param priceMinutes what its parts cost, in minutes that the money would buy; not in the minutes
     * @param cures probability that it cures the unit
     */
    public record FixChoice(
            String fixId, String causeId, double minutes, double openingMinutes, double priceMinutes, double cures) {}

    /**
     * A fix left out for its tools or its risk.
     *
     * @param fixId the fix
     * @param cures probability that it would cure the unit
     * @param forRisk whether its risk to the unit is higher than accepted; else a tool is missing
     */
    public record Withheld(String fixId, double cures, boolean forRisk) {}
}
