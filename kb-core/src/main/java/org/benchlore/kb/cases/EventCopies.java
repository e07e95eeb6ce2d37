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

/** Copies of events with something changed: the id, the origin, or everything that points to people left out. */
final class EventCopies {
    /** Stands in anonymised events for the name of another shop. */
    static final String ELSEWHERE = "elsewhere";

    private EventCopies() {}

    static CaseEvent withId(CaseEvent event, String id) {
        Head old = event.head();
        return old.eventId().equals(id) ? event : event.fold(new WithHead(new Head(id, old.caseId(), old.at())));
    }

    /** The same event as told by another bench: where it says "our own", it says {@code origin}. */
    static CaseEvent fromOrigin(CaseEvent event, String origin) {
        return event.fold(new Retold(false) {
            @Override
            String origin(String of) {
                return of.equals(CaseHistory.OWN) ? origin : of;
            }
        });
    }

    /** The event whatever its origin, for comparing: where a bench got an event from is its own affair. */
    static CaseEvent withoutOrigin(CaseEvent event) {
        return event.fold(new Retold(false) {
            @Override
            String origin(String of) {
                return ELSEWHERE;
            }
        });
    }

    /** Without free text, serial number, prices and the names of shops. Ids, times, scope, findings and figures stay. */
    static CaseEvent anonymous(CaseEvent event) {
        return event.fold(new Retold(true) {
            @Override
            String origin(String of) {
                return of.equals(CaseHistory.OWN) ? of : ELSEWHERE;
            }
        });
    }

    private record WithHead(Head head) implements Fold<CaseEvent> {
        @Override
        public CaseEvent opened(Opened e) {
            return new Opened(head, e.scope(), e.complaint(), e.unit(), e.origin(), e.workedOnBefore());
        }

        @Override
        public CaseEvent noted(Noted e) {
            return new Noted(head, e.text(), e.source(), e.findings());
        }

        @Override
        public CaseEvent tested(Tested e) {
            return new Tested(head, e.testId(), e.findings(), e.minutes(), e.note());
        }

        @Override
        public CaseEvent concluded(Concluded e) {
            return new Concluded(head, e.causeId(), e.certainty(), e.note());
        }

        @Override
        public CaseEvent fixApplied(FixApplied e) {
            return new FixApplied(head, e.fixId(), e.causeId(), e.minutes(), e.note());
        }

        @Override
        public CaseEvent checked(Checked e) {
            return new Checked(head, e.item(), e.result(), e.seen(), e.hours(), e.conditions(), e.note());
        }

        @Override
        public CaseEvent weighed(Weighed e) {
            return new Weighed(head, e.fixId(), e.stakes(), e.success(), e.worse(), e.decided(), e.note());
        }

        @Override
        public CaseEvent ended(Ended e) {
            return new Ended(head, e.outcome(), e.afterDays(), e.note());
        }

        @Override
        public CaseEvent withdrawn(Withdrawn e) {
            return new Withdrawn(head, e.targetEventId(), e.reason());
        }

        @Override
        public CaseEvent corrected(Corrected e) {
            return new Corrected(head, e.targetEventId(), e.replacement());
        }
    }

    private abstract static class Retold implements Fold<CaseEvent> {
        private final boolean wordless;

        Retold(boolean wordless) {
            this.wordless = wordless;
        }

        abstract String origin(String of);

        private String words(String of) {
            return wordless ? "" : of;
        }

        @Override
        public CaseEvent opened(Opened e) {
            return new Opened(
                    e.head(), e.scope(), words(e.complaint()), words(e.unit()), origin(e.origin()), e.workedOnBefore());
        }

        @Override
        public CaseEvent noted(Noted e) {
            return new Noted(e.head(), words(e.text()), e.source(), e.findings());
        }

        @Override
        public CaseEvent tested(Tested e) {
            return new Tested(e.head(), e.testId(), e.findings(), e.minutes(), words(e.note()));
        }

        @Override
        public CaseEvent concluded(Concluded e) {
            return new Concluded(e.head(), e.causeId(), e.certainty(), words(e.note()));
        }

        @Override
        public CaseEvent fixApplied(FixApplied e) {
            return new FixApplied(e.head(), e.fixId(), e.causeId(), e.minutes(), words(e.note()));
        }

        @Override
        public CaseEvent checked(Checked e) {
            return new Checked(
                    e.head(), words(e.item()), e.result(), e.seen(), e.hours(), e.conditions(), words(e.note()));
        }

        @Override
        public CaseEvent weighed(Weighed e) {
            return new Weighed(
                    e.head(),
                    e.fixId(),
                    wordless ? null : e.stakes(),
                    e.success(),
                    e.worse(),
                    e.decided(),
                    words(e.note()));
        }

        @Override
        public CaseEvent ended(Ended e) {
            return new Ended(e.head(), e.outcome(), e.afterDays(), words(e.note()));
        }

        @Override
        public CaseEvent withdrawn(Withdrawn e) {
            return new Withdrawn(e.head(), e.targetEventId(), words(e.reason()));
        }

        @Override
        public CaseEvent corrected(Corrected e) {
            return new Corrected(e.head(), e.targetEventId(), e.replacement().fold(this));
        }
    }
}
