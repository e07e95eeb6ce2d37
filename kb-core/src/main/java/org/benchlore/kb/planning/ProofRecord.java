package org.benchlore.kb.planning;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseEvent.Checked;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.reading.Reading.Condition;

/**
 * What a proof starts from: how often the fault was seen before the fix, and what was checked since.
 *
 * <p>Where the fault was seen under some condition every time that says how, only hours under that condition count, before
 * the fix and after it: a unit that drops out when warm proves nothing on a cold bench. A run of an hour or more, which is
 * one without a stop, is one after a while, whether it says so or not; nothing else is taken for granted.
 *
 * @param fixId the last fix; empty if there was none
 * @param failed whether anything after that fix says that it did not cure
 * @param seen times the fault was seen before the fix, from 0
 * @param seenHours in so many hours of run, from 0
 * @param conditions under which it was seen; empty for any
 * @param cleanHours run since the fix without fault, under those conditions
 * @param otherHours run since the fix without fault, not known to be under those conditions
 * @param checks since the fix, in order; all of them if there was none
 */
public record ProofRecord(
        Optional<String> fixId,
        boolean failed,
        int seen,
        double seenHours,
        List<Condition> conditions,
        double cleanHours,
        double otherHours,
        List<Checked> checks) {
    /** Hours from which a run holds the condition "after a while"; our choice. */
    private static final double A_WHILE = 1;

    public ProofRecord {
        requireNonNull(fixId, "fixId");
        conditions = List.copyOf(requireNonNull(conditions, "conditions"));
        checks = List.copyOf(requireNonNull(checks, "checks"));
    }

    /** Numbers without a case. */
    public static ProofRecord of(Optional<String> fixId, int seen, double seenHours, double cleanHours) {
        return new ProofRecord(fixId, false, seen, seenHours, List.of(), cleanHours, 0, List.of());
    }

    /** As the case's checks tell it. */
    public static ProofRecord of(CaseHistory history) {
        Optional<CaseEvent.FixApplied> fix = Optional.empty();
        List<Checked> before = new ArrayList<>();
        List<Checked> since = new ArrayList<>();
        for (CaseEvent event : history.events()) {
            if (event instanceof CaseEvent.FixApplied applied) {
                fix = Optional.of(applied);
                before.addAll(since);
                since.clear();
            } else if (event instanceof Checked checked) {
                since.add(checked);
            }
        }
        if (fix.isEmpty()) {
            before.addAll(since);
        }
        List<Condition> conditions = conditions(before);
        int seen = 0;
        double seenHours = 0;
        for (Checked check : before) {
            if (check.result() == Checked.Result.FAILED) {
                seen += times(check);
                seenHours += hours(check);
            } else if (holds(check, conditions)) {
                seenHours += hours(check);
            }
        }
        double clean = 0;
        double other = 0;
        for (Checked check : fix.isEmpty() ? List.<Checked>of() : since) {
            if (check.result() == Checked.Result.PASSED) {
                boolean counts = holds(check, conditions);
                clean += counts ? hours(check) : 0;
                other += counts ? 0 : hours(check);
            }
        }
        return new ProofRecord(
                fix.map(CaseEvent.FixApplied::fixId),
                fix.isPresent() && history.cure().isEmpty(),
                seen,
                seenHours,
                conditions,
                clean,
                other,
                since);
    }

    /** The same with sightings told otherwise, under any condition. */
    public ProofRecord seen(int times, double hours) {
        return new ProofRecord(fixId, failed, times, hours, List.of(), cleanHours + otherHours, 0, checks);
    }

    /** Whether a check or a run since the fix went well. */
    public boolean somethingPassed() {
        return checks.stream().anyMatch(check -> check.result() == Checked.Result.PASSED);
    }

    private static List<Condition> conditions(List<Checked> before) {
        Set<Condition> common = EnumSet.allOf(Condition.class);
        boolean told = false;
        for (Checked check : before) {
            if (check.result() == Checked.Result.FAILED && !check.conditions().isEmpty()) {
                common.retainAll(check.conditions());
                told = true;
            }
        }
        return told ? List.copyOf(common) : List.of();
    }

    private static boolean holds(Checked check, List<Condition> conditions) {
        return conditions.stream()
                .allMatch(condition -> check.conditions().contains(condition)
                        || (condition == Condition.AFTER_A_WHILE && hours(check) >= A_WHILE));
    }

    private static int times(Checked check) {
        Integer seen = check.seen();
        return seen == null ? 1 : seen;
    }

    private static double hours(Checked check) {
        Double hours = check.hours();
        return hours == null ? 0 : hours;
    }
}
