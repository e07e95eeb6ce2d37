package org.benchlore.kb.planning;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Risk;

/**
 * What the bench has and accepts.
 *
 * @param tools tools at hand, by any part of their name; empty for every tool. A bench may own what no entry asks for; see
 *     {@link #unheardOf}
 * @param missing tools not at hand, by any part of their name, such as "oscilloscope"
 * @param accepted highest risk to the unit that is acceptable, for tests and for fixes
 * @param costPerMinute what a minute at the bench costs, in any currency, above 0
 * @param unsolvedCost what it costs to end without a repair, in the same currency, from 0
 * @param failedFixes ids of fixes that were tried on this unit and did not help; they are held against the causes they
 *     should have cured, in place of what the query says was tried. Ids that the packs do not have, such as a case of
 *     older packs may hold, are passed over
 * @param opened whether the unit lies open already, so that opening it costs nothing more
 * @param madeSafe ids of rules that forbade power ({@link org.benchlore.kb.knowledge.PowerOff}) until a fix was done on this
 *     unit, or was told of in words; {@link TestPlanner#madeSafe} tells them of a case or a note
 */
public record BenchConditions(
        List<String> tools,
        List<String> missing,
        Risk accepted,
        double costPerMinute,
        double unsolvedCost,
        List<String> failedFixes,
        boolean opened,
        List<String> madeSafe) {
    /** Every tool, medium risk, and four hours of bench time for a unit that stays unrepaired (our choice). */
    public static final BenchConditions DEFAULT =
            new BenchConditions(List.of(), List.of(), Risk.MEDIUM, 1, 240, List.of(), false, List.of());

    public BenchConditions {
        tools = List.copyOf(requireNonNull(tools, "tools"));
        missing = List.copyOf(requireNonNull(missing, "missing"));
        requireNonNull(accepted, "accepted");
        failedFixes = List.copyOf(requireNonNull(failedFixes, "failedFixes"));
        madeSafe = List.copyOf(requireNonNull(madeSafe, "madeSafe"));
        if (!(costPerMinute > 0 && costPerMinute < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a minute costs " + costPerMinute + "; give a number above 0");
        }
        if (!(unsolvedCost >= 0 && unsolvedCost < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "an unrepaired unit costs " + unsolvedCost + "; give a number from 0 up");
        }
    }

    /** These with another highest risk. */
    public BenchConditions accepting(Risk risk) {
        return new BenchConditions(tools, missing, risk, costPerMinute, unsolvedCost, failedFixes, opened, madeSafe);
    }

    /** These with other tools; see {@link #tools} and {@link #missing}. */
    public BenchConditions with(List<String> atHand, List<String> notAtHand) {
        return new BenchConditions(
                atHand, notAtHand, accepted, costPerMinute, unsolvedCost, failedFixes, opened, madeSafe);
    }

    /** These with other prices. */
    public BenchConditions costing(double perMinute, double unsolved) {
        return new BenchConditions(tools, missing, accepted, perMinute, unsolved, failedFixes, opened, madeSafe);
    }

    /** These with fixes that failed. */
    public BenchConditions afterFailing(List<String> fixIds) {
        return new BenchConditions(tools, missing, accepted, costPerMinute, unsolvedCost, fixIds, opened, madeSafe);
    }

    /** These with the unit open or closed. */
    public BenchConditions opened(boolean open) {
        return new BenchConditions(tools, missing, accepted, costPerMinute, unsolvedCost, failedFixes, open, madeSafe);
    }

    /** These with what was made safe. */
    public BenchConditions madeSafe(List<String> ruleIds) {
        return new BenchConditions(tools, missing, accepted, costPerMinute, unsolvedCost, failedFixes, opened, ruleIds);
    }

    /**
     * Names among {@link #tools} and {@link #missing} that fit no tool any entry asks for: such a one makes nothing
     * possible and rules nothing out, so that it is mostly a slip.
     */
    public List<String> unheardOf(Knowledge knowledge) {
        Set<String> asked = knowledge.tools();
        return Stream.concat(
                        tools.stream().filter(t -> asked.stream().noneMatch(tool -> names(t, tool))),
                        missing.stream().filter(m -> asked.stream().noneMatch(tool -> contains(tool, m))))
                .distinct()
                .toList();
    }

    /** Minutes of bench time that an unrepaired unit is worth. */
    double unsolvedMinutes() {
        return unsolvedCost / costPerMinute;
    }

    /** Whether every tool asked for is at hand; "A or B" needs one of them, and what is optional needs none. */
    boolean has(List<String> needed) {
        return (tools.isEmpty() && missing.isEmpty()) || needed.stream().allMatch(this::has);
    }

    private boolean has(String tool) {
        return tool.contains(" if ")
                || tool.contains(" where ")
                || List.of(tool.split(" or ", -1)).stream().anyMatch(this::hasOne);
    }

    private boolean hasOne(String tool) {
        return missing.stream().noneMatch(m -> contains(tool, m))
                && (tools.isEmpty() || tools.stream().anyMatch(t -> names(t, tool)));
    }

    private static boolean names(String given, String tool) {
        return contains(tool, given) || contains(given, tool, true);
    }

    private static boolean contains(String text, String part) {
        return contains(text, part, false);
    }

    /** @param inWords whether in whole words: "probe scope" holds "scope", the slip "osciloscope" does not */
    private static boolean contains(String text, String part, boolean inWords) {
        String wanted = part.strip();
        for (int at = 0; !wanted.isEmpty() && at + wanted.length() <= text.length(); at++) {
            boolean fits = !inWords || (ends(text, at) && ends(text, at + wanted.length()));
            if (fits && text.regionMatches(true, at, wanted, 0, wanted.length())) {
                return true;
            }
        }
        return false;
    }

    /** Whether no word goes on across a place. */
    private static boolean ends(String text, int at) {
        return at == 0
                || at == text.length()
                || !Character.isLetterOrDigit(text.charAt(at - 1))
                || !Character.isLetterOrDigit(text.charAt(at));
    }
}
