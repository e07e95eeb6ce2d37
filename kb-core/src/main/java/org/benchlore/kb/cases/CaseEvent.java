package org.benchlore.kb.cases;

import static java.util.Objects.requireNonNull;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;

/**
 * One immutable event in a case's stream. Events are the only truth; everything else is derived from them. Within a
 * case they count in order of time, then of event id, whatever the order in which they were recorded.
 */
public sealed interface CaseEvent {
    /** The order in which events of a case count: by time, then by event id. */
    Comparator<CaseEvent> ORDER = Comparator.comparing(
                    (CaseEvent event) -> event.head().at())
            .thenComparing(event -> event.head().eventId());

    /** Identity of the event. */
    Head head();

    /** Applies the branch for this kind of event. */
    <T> T fold(Fold<T> by);

    /** One branch per kind of event: Java 17 has no pattern switch, and a fold keeps it exhaustive. */
    interface Fold<T> {
        T opened(Opened event);

        T noted(Noted event);

        T tested(Tested event);

        T concluded(Concluded event);

        T fixApplied(FixApplied event);

        T checked(Checked event);

        T weighed(Weighed event);

        T ended(Ended event);

        T withdrawn(Withdrawn event);

        T corrected(Corrected event);
    }

    /**
     * Identity of an event.
     *
     * @param eventId unique for ever; recording the same id again changes nothing
     * @param caseId the case
     * @param at when it happened at the bench, between the years 1 and 9999
     */
    record Head(String eventId, String caseId, Instant at) {
        /** Longest id accepted, in UTF-16 units. */
        public static final int MAX_ID = 80;

        private static final Instant EARLIEST = Instant.parse("0001-01-01T00:00:00Z");
        private static final Instant LATEST = Instant.parse("9999-12-31T23:59:59.999999999Z");

        public Head {
            requireId(eventId, "eventId");
            requireId(caseId, "caseId");
            requireNonNull(at, "at");
            if (at.isBefore(EARLIEST) || at.isAfter(LATEST)) {
                throw new IllegalArgumentException(
                        "event '" + eventId + "' has the time " + at + "; give a time between the years 1 and 9999");
            }
        }

        private static void requireId(String id, String name) {
            requireNonNull(id, name);
            if (id.isEmpty() || id.length() > MAX_ID || !allowed(id)) {
                throw new IllegalArgumentException("id '" + (id.length() > MAX_ID ? id.substring(0, MAX_ID) : id)
                        + "' cannot be used; write 1 to " + MAX_ID + " letters, digits, '-', '_', '.' or ':'");
            }
        }

        private static boolean allowed(String id) {
            for (int i = 0; i < id.length(); i++) {
                if (!allowed(id.charAt(i))) {
                    return false;
                }
            }
            return true;
        }

        private static void requireMinutes(@Nullable Double minutes) {
            if (minutes != null && !(minutes >= 0 && minutes < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("bench time of " + minutes + " minutes; give a number from 0 up");
            }
        }

        private static void requireHours(@Nullable Double hours) {
            if (hours != null && !(hours >= 0 && hours < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("a run of " + hours + " hours; give a number from 0 up");
            }
        }

        private static List<Finding> requireIds(List<Finding> findings) {
            List<Finding> all = List.copyOf(requireNonNull(findings, "findings"));
            for (Finding finding : all) {
                requireId(finding.symptomId(), "symptomId");
                finding.likelihoods().forEach((state, likelihood) -> {
                    requireId(state, "stateId");
                    if (likelihood == 0) { // beside the largest it was too small for a double
                        throw new IllegalArgumentException("finding " + finding.symptomId() + "=" + state
                                + " is next to impossible beside the others; leave it out");
                    }
                });
            }
            return all;
        }

        private static boolean allowed(int c) {
            return (c >= 'a' && c <= 'z')
                    || (c >= 'A' && c <= 'Z')
                    || (c >= '0' && c <= '9')
                    || c == '-'
                    || c == '_'
                    || c == '.'
                    || c == ':';
        }
    }

    /**
     * A unit came in.
     *
     * @param scope what it is; a store takes none that is written longer than {@link #MAX_UNIT}
     * @param complaint the owner's words, or empty
     * @param unit serial number or tag, or empty; left out of anonymised exports. A store takes none longer than
     *     {@link #MAX_UNIT}
     * @param origin whose case it is: "bench" for one's own, else the name of the import it came with
     * @param workedOnBefore whether somebody had been inside
     */
    record Opened(Head head, DeviceScope scope, String complaint, String unit, String origin, boolean workedOnBefore)
            implements CaseEvent {
        /** Longest tag or scope that is recorded, in UTF-16 units; not asked for here, since older stores hold longer ones. */
        public static final int MAX_UNIT = 200;

        public Opened {
            requireNonNull(head, "head");
            requireNonNull(scope, "scope");
            requireNonNull(complaint, "complaint");
            requireNonNull(unit, "unit");
            requireNonNull(origin, "origin");
            if (origin.isBlank() || origin.length() > Head.MAX_ID) {
                throw new IllegalArgumentException("origin of case '" + head.caseId() + "' is blank or longer than "
                        + Head.MAX_ID + "; name it, such as '" + CaseHistory.OWN + "'");
            }
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.opened(this);
        }
    }

    /**
     * Something was noticed, told or measured.
     *
     * @param text the words, or empty when only findings were given
     * @param source who says it
     * @param findings what was read from the words or given outright
     */
    record Noted(Head head, String text, Reading.Source source, List<Finding> findings) implements CaseEvent {
        public Noted {
            requireNonNull(head, "head");
            requireNonNull(text, "text");
            requireNonNull(source, "source");
            findings = Head.requireIds(findings);
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.noted(this);
        }
    }

    /**
     * A bench test was done.
     *
     * @param testId the test
     * @param findings its result
     * @param minutes bench time it took, or null when not kept
     * @param note free words, or empty
     */
    record Tested(
            Head head,
            String testId,
            List<Finding> findings,
            @Nullable Double minutes,
            String note) implements CaseEvent {
        public Tested {
            requireNonNull(head, "head");
            Head.requireId(testId, "testId");
            findings = Head.requireIds(findings);
            Head.requireMinutes(minutes);
            requireNonNull(note, "note");
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.tested(this);
        }
    }

    /**
     * The bench named a cause. A later one replaces it.
     *
     * @param causeId a cause, or {@link #UNLISTED} when it is none of those known
     * @param certainty how sure
     * @param note free words, or empty
     */
    record Concluded(Head head, String causeId, Certainty certainty, String note) implements CaseEvent {
        /** Stands for "none of the causes known here". */
        public static final String UNLISTED = "unlisted";

        public Concluded {
            requireNonNull(head, "head");
            Head.requireId(causeId, "causeId");
            requireNonNull(certainty, "certainty");
            requireNonNull(note, "note");
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.concluded(this);
        }
    }

    /**
     * A fix was applied.
     *
     * @param fixId the fix, or {@link #UNLISTED} for work that no pack knows, which the note tells
     * @param causeId the cause it was meant for, or {@link #UNKNOWN_CAUSE}
     * @param minutes bench time it took, or null when not kept
     * @param note free words, or empty
     */
    record FixApplied(
            Head head,
            String fixId,
            String causeId,
            @Nullable Double minutes,
            String note) implements CaseEvent {
        /** Stands for work that no pack knows; it teaches nothing of any fix. */
        public static final String UNLISTED = "unlisted";

        /** Stands for "nobody said": of an old case often only the work is known. */
        public static final String UNKNOWN_CAUSE = "unknown";

        public FixApplied {
            requireNonNull(head, "head");
            Head.requireId(fixId, "fixId");
            Head.requireId(causeId, "causeId");
            Head.requireMinutes(minutes);
            requireNonNull(note, "note");
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.fixApplied(this);
        }
    }

    /**
     * The unit was checked for its fault: a step of a fix's proof, or a run. After a fix, one that failed speaks against
     * the fix; before, it says how often the fault is seen.
     *
     * @param item the step, in the fix's words or one's own; empty for a run
     * @param result how it went
     * @param seen for {@link Result#FAILED}, times the fault showed, 1 to a million, or null when not counted; else null
     * @param hours it ran, or null when not kept or not done
     * @param conditions how it ran, each once, in their own order; empty when not kept
     * @param note free words, or empty
     */
    record Checked(
            Head head,
            String item,
            Result result,
            @Nullable Integer seen,
            @Nullable Double hours,
            List<Reading.Condition> conditions,
            String note)
            implements CaseEvent {
        /** How a check went. */
        public enum Result {
            /** As it should be; in a run, the fault did not show. */
            PASSED,
            /** Not as it should be; in a run, the fault showed. */
            FAILED,
            /** Left out, and said so. */
            NOT_DONE
        }

        private static final int MOST_SEEN = 1_000_000;

        public Checked {
            requireNonNull(head, "head");
            requireNonNull(item, "item");
            requireNonNull(result, "result");
            requireNonNull(note, "note");
            conditions = requireNonNull(conditions, "conditions").stream()
                    .distinct()
                    .sorted()
                    .toList();
            Head.requireHours(hours);
            if (seen != null && (result != Result.FAILED || seen < 1 || seen > MOST_SEEN)) {
                throw new IllegalArgumentException("fault seen " + seen + " times in a check; give 1 to " + MOST_SEEN
                        + " times, with 'failed' only");
            }
            if (hours != null && result == Result.NOT_DONE) {
                throw new IllegalArgumentException("hours of a check that was not done; leave them out");
            }
            if (conditions.contains(Reading.Condition.INTERMITTENT)) {
                throw new IllegalArgumentException(
                        "a check under the condition 'intermittent'; that is how often, not how: leave it out");
            }
        }

        /** Whether this is a run and not a step with a name. */
        public boolean isRun() {
            return item.isBlank();
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.checked(this);
        }
    }

    /**
     * It was weighed whether to do the work, and decided.
     *
     * @param fixId the work
     * @param stakes what was at stake, or null when that is not told
     * @param success probability of success that was reckoned with, in [0,1]
     * @param worse probability of harm likewise; with {@code success} at most 1
     * @param decided what was decided
     * @param note free words, or empty
     */
    record Weighed(
            Head head,
            String fixId,
            @Nullable Stakes stakes,
            double success,
            double worse,
            Decision decided,
            String note)
            implements CaseEvent {
        private static final double ROUNDING = 1e-9;

        public Weighed {
            requireNonNull(head, "head");
            Head.requireId(fixId, "fixId");
            requireNonNull(decided, "decided");
            requireNonNull(note, "note");
            if (!(success >= 0 && worse >= 0 && success + worse <= 1 + ROUNDING)) {
                throw new IllegalArgumentException("weighed with success " + success + " and harm " + worse
                        + "; give probabilities that sum to 1 at most");
            }
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.weighed(this);
        }
    }

    /**
     * How it ended. A later one adds to it: fixed, then came back.
     *
     * @param outcome the ending
     * @param afterDays for {@link Outcome#CAME_BACK}, days since hand-over, from 0, or null when not kept; else null
     * @param note free words, or empty
     */
    record Ended(Head head, Outcome outcome, @Nullable Integer afterDays, String note) implements CaseEvent {
        public Ended {
            requireNonNull(head, "head");
            requireNonNull(outcome, "outcome");
            requireNonNull(note, "note");
            if (afterDays != null && (outcome != Outcome.CAME_BACK || afterDays < 0)) {
                throw new IllegalArgumentException("outcome " + outcome.id() + " after " + afterDays
                        + " days; days from 0 up go with " + Outcome.CAME_BACK.id() + " only");
            }
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.ended(this);
        }
    }

    /**
     * Takes back one event, or the whole case. What is taken back stays in the log but counts for nothing. Taking back
     * a withdrawal restores what it took.
     *
     * @param targetEventId the event taken back, or null for the whole case
     * @param reason free words, or empty
     */
    record Withdrawn(Head head, @Nullable String targetEventId, String reason) implements CaseEvent {
        public Withdrawn {
            requireNonNull(head, "head");
            requireNonNull(reason, "reason");
            if (targetEventId != null) {
                Head.requireId(targetEventId, "targetEventId");
            }
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.withdrawn(this);
        }
    }

    /**
     * Replaces an event of the same case. Of several corrections of one event the latest that was not taken back stands.
     *
     * @param targetEventId the event that was wrong
     * @param replacement what stands in its place; its head carries the same case id, and its time decides the order.
     *     In the folded history it bears the id of the event it replaces, so that it can be corrected again
     */
    record Corrected(Head head, String targetEventId, CaseEvent replacement) implements CaseEvent {
        public Corrected {
            requireNonNull(head, "head");
            Head.requireId(targetEventId, "targetEventId");
            requireNonNull(replacement, "replacement");
            if (!replacement.head().caseId().equals(head.caseId())) {
                throw new IllegalArgumentException("event '" + head.eventId() + "' corrects case '" + head.caseId()
                        + "' with an event of case '" + replacement.head().caseId() + "'; use the same case");
            }
            if (replacement instanceof Corrected || replacement instanceof Withdrawn) {
                throw new IllegalArgumentException("event '" + head.eventId()
                        + "' replaces an event with a correction; give the event as it should have been");
            }
        }

        @Override
        public <T> T fold(Fold<T> by) {
            return by.corrected(this);
        }
    }
}
