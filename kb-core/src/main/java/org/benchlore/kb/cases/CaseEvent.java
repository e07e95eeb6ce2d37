package org.benchlore.kb.cases;

import java.time.Instant;
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
    /** Identity of the event. */
    Head head();

    /**
     * Identity of an event.
     *
     * @param eventId unique for ever; recording the same id again changes nothing
     * @param caseId the case
     * @param at when it happened at the bench
     */
    record Head(String eventId, String caseId, Instant at) {
        /** Longest id accepted, in UTF-16 units. */
        public static final int MAX_ID = 80;

        public Head {
            for (String id : List.of(eventId, caseId)) {
                if (id.isBlank() || id.length() > MAX_ID || !id.chars().allMatch(Head::allowed)) {
                    throw new IllegalArgumentException("id '" + (id.length() > MAX_ID ? id.substring(0, MAX_ID) : id)
                            + "' cannot be used; write 1 to " + MAX_ID + " letters, digits, '-', '_', '.' or ':'");
                }
            }
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
     * @param scope what it is
     * @param complaint the owner's words, or empty
     * @param unit serial number or tag, or empty; left out of anonymised exports
     * @param origin whose case it is: "bench" for one's own, else the name of the import it came with
     * @param workedOnBefore whether somebody had been inside
     */
    record Opened(Head head, DeviceScope scope, String complaint, String unit, String origin, boolean workedOnBefore)
            implements CaseEvent {}

    /**
     * Something was noticed, told or measured.
     *
     * @param text the words, or empty when only findings were given
     * @param source who says it
     * @param findings what was read from the words or given outright
     */
    record Noted(Head head, String text, Reading.Source source, List<Finding> findings) implements CaseEvent {
        public Noted {
            findings = List.copyOf(findings);
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
            findings = List.copyOf(findings);
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
    }

    /**
     * A fix was applied.
     *
     * @param fixId the fix
     * @param causeId the cause it was meant for
     * @param minutes bench time it took, or null when not kept
     * @param note free words, or empty
     */
    record FixApplied(
            Head head,
            String fixId,
            String causeId,
            @Nullable Double minutes,
            String note) implements CaseEvent {}

    /**
     * How it ended. A later one adds to it: fixed, then came back.
     *
     * @param outcome the ending
     * @param afterDays for {@link Outcome#CAME_BACK}, days since hand-over, else null
     * @param note free words, or empty
     */
    record Ended(Head head, Outcome outcome, @Nullable Integer afterDays, String note) implements CaseEvent {}

    /**
     * Takes back one event, or the whole case. What is taken back stays in the log but counts for nothing.
     *
     * @param targetEventId the event taken back, or null for the whole case
     * @param reason free words, or empty
     */
    record Withdrawn(Head head, @Nullable String targetEventId, String reason) implements CaseEvent {}

    /**
     * Replaces an earlier event of the same case.
     *
     * @param targetEventId the event that was wrong
     * @param replacement what stands in its place; its head carries the same case id, and its time decides the order
     */
    record Corrected(Head head, String targetEventId, CaseEvent replacement) implements CaseEvent {
        public Corrected {
            if (!replacement.head().caseId().equals(head.caseId())) {
                throw new IllegalArgumentException("event '" + head.eventId() + "' corrects case '" + head.caseId()
                        + "' with an event of case '" + replacement.head().caseId() + "'; use the same case");
            }
            if (replacement instanceof Corrected || replacement instanceof Withdrawn) {
                throw new IllegalArgumentException("event '" + head.eventId()
                        + "' replaces an event with a correction; give the event as it should have been");
            }
        }
    }
}
