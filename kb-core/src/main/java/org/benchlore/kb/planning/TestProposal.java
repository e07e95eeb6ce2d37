package org.benchlore.kb.planning;

import java.util.List;
import org.benchlore.kb.knowledge.BenchTest;

/**
 * A bench test worth doing now.
 *
 * @param test the test, with its steps, readings and cautions
 * @param minutes bench time: the record's median where there is one, else the pack's
 * @param openingMinutes what opening the unit adds, 0 if it is open already or need not be
 * @param bits expected information about the cause, 0 or more
 * @param bitsPerMinute the same per minute of bench time; opening counts as far as no fix would need it anyhow
 * @param savingMinutes by how much the test lowers the expected minutes of repair, its own time and opening not counted;
 *     0 or more
 * @param savingPerMinute the same per minute of the test, opening counted on both sides only as far as no fix would need
 *     it anyhow; what proposals are ordered by
 * @param results what each reading would do, per symptom not yet known
 */
public record TestProposal(
        BenchTest test,
        double minutes,
        double openingMinutes,
        double bits,
        double bitsPerMinute,
        double savingMinutes,
        double savingPerMinute,
        List<Result> results) {
    public TestProposal {
        results = List.copyOf(results);
    }

    /** What the test saves beyond its own time and opening, in minutes; below 0 when it costs more than it saves. */
    public double netMinutes() {
        return savingMinutes - minutes - openingMinutes;
    }

    /**
     * One reading.
     *
     * @param symptomId the symptom
     * @param stateId what the test reads, right or wrong
     * @param probability how likely it reads so
     * @param means what the test's author says it means, or empty
     * @param causes the likeliest causes after it, best first
     */
    public record Result(String symptomId, String stateId, double probability, String means, List<Shift> causes) {
        public Result {
            causes = List.copyOf(causes);
        }
    }

    /**
     * A cause before and after a reading.
     *
     * @param causeId the cause
     * @param before probability now
     * @param after probability if the test reads so and the reading counts in full; once it is recorded the ranking doubts
     *     it along with all other findings, and so says a little less
     */
    public record Shift(String causeId, double before, double after) {}
}
