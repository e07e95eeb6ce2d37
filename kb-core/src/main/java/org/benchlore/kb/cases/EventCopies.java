package org.benchlore.kb.cases;

import org.benchlore.kb.cases.CaseEvent.Checked;
import org.benchlore.kb.cases.CaseEvent.Concluded;
import org.benchlore.kb.cases.CaseEvent.Corrected;
import org.benchlore.kb.cases.CaseEvent.Ended;
import org.benchlore.kb.cases.CaseEvent.FixApplied;
import org.benchlore.kb.cases.CaseEvent.Fold;
import org.benchlore.kb.cases.CaseEvent.Head;
import org.benchlore.kb.cases.CaseEvent.Noted;
import org.benchlore.kb.cases.CaseEvent.Opened;
import org.benchlore.kb.cases.CaseEvent.Tested;
import org.benchlore.kb.cases.CaseEvent.Weighed;
import org.benchlore.kb.cases.CaseEvent.Withdrawn;
import org.jspecify.annotations.Nullable;

/** Copies of events with something changed: the id, the origin, or everything that points to people left out. */
final class EventCopies {
    /** Stands in anonymised events for the name of another shop. */
    static final String ELSEWHERE = "elsewhere";

    /** Stands in anonymised events for the name of a step. */
    static final String STEP = "step";

    private EventCopies() {}

    static CaseEvent withId(CaseEvent event, String id) {
        return event.head().eventId().equals(id)
                ? event
                : event.fold(new Copy() {
                    @Override
                    Head head(Head of) {
                        return new Head(id, of.caseId(), of.at());
                    }

                    @Override
                    public CaseEvent corrected(Corrected e) {
                        return new Corrected(head(e.head()), e.targetEventId(), e.replacement());
                    }
                });
    }

    /** The same event as told by another bench: where it says "our own", it says {@code origin}. */
    static CaseEvent fromOrigin(CaseEvent event, String origin) {
        return event.fold(new Copy() {
            @Override
            String origin(String of) {
                return of.equals(CaseHistory.OWN) ? origin : of;
            }
        });
    }

    /** The event whatever its origin, for comparing: where a bench got an event from is its own affair. */
    static CaseEvent withoutOrigin(CaseEvent event) {
        return event.fold(new Copy() {
            @Override
            String origin(String of) {
                return ELSEWHERE;
            }
        });
    }

    /** Without free text, serial number, prices and the names of shops. Ids, times, scope, findings and figures stay. */
    static CaseEvent anonymous(CaseEvent event) {
        return event.fold(new Copy() {
            @Override
            String origin(String of) {
                return of.equals(CaseHistory.OWN) ? of : ELSEWHERE;
            }

            @Override
            String words(String of) {
                return "";
            }

            @Override
            String item(String of) {
                return of.isBlank() ? "" : STEP;
            }

            @Override
            @Nullable
            Stakes stakes(@Nullable Stakes of) {
                return null;
            }
        });
    }

    /** A copy as it is, but for what is overridden. */
    private abstract static class Copy implements Fold<CaseEvent> {
        Head head(Head of) {
            return of;
        }

        String origin(String of) {
            return of;
        }

        /** Free text, and what numbers the unit. */
        String words(String of) {
            return of;
        }

        /** A step of a proof; empty for a run. */
        String item(String of) {
            return of;
        }

        @Nullable
        Stakes stakes(@Nullable Stakes of) {
            return of;
        }

        @Override
        public CaseEvent opened(Opened e) {
            return new Opened(
                    head(e.head()),
                    e.scope(),
                    words(e.complaint()),
                    words(e.unit()),
                    origin(e.origin()),
                    e.workedOnBefore());
        }

        @Override
        public CaseEvent noted(Noted e) {
            return new Noted(head(e.head()), words(e.text()), e.source(), e.findings());
        }

        @Override
        public CaseEvent tested(Tested e) {
            return new Tested(head(e.head()), e.testId(), e.findings(), e.minutes(), words(e.note()));
        }

        @Override
        public CaseEvent concluded(Concluded e) {
            return new Concluded(head(e.head()), e.causeId(), e.certainty(), words(e.note()));
        }

        @Override
        public CaseEvent fixApplied(FixApplied e) {
            return new FixApplied(head(e.head()), e.fixId(), e.causeId(), e.minutes(), words(e.note()));
        }

        @Override
        public CaseEvent checked(Checked e) {
            return new Checked(
                    head(e.head()), item(e.item()), e.result(), e.seen(), e.hours(), e.conditions(), words(e.note()));
        }

        @Override
        public CaseEvent weighed(Weighed e) {
            return new Weighed(
                    head(e.head()),
                    e.fixId(),
                    stakes(e.stakes()),
                    e.success(),
                    e.worse(),
                    e.decided(),
                    words(e.note()));
        }

        @Override
        public CaseEvent ended(Ended e) {
            return new Ended(head(e.head()), e.outcome(), e.afterDays(), words(e.note()));
        }

        @Override
        public CaseEvent withdrawn(Withdrawn e) {
            return new Withdrawn(head(e.head()), e.targetEventId(), words(e.reason()));
        }

        @Override
        public CaseEvent corrected(Corrected e) {
            return new Corrected(
                    head(e.head()), e.targetEventId(), e.replacement().fold(this));
        }
    }
}
