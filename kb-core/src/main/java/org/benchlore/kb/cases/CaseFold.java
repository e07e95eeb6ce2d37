package org.benchlore.kb.cases;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.reading.Finding;
import org.jspecify.annotations.Nullable;

/**
 * Folds the events of one case into its history: a pure function of the set of events.
 *
 * <p>Withdrawals and corrections act on the event they name, whatever the times say, since two benches' clocks differ.
 * Each acts on one event only, so they form chains, which are settled from the loose end inwards: the last link always
 * holds. A circle of them has no loose end and counts for nothing.
 */
final class CaseFold {
    private final Map<String, CaseEvent> byId = new HashMap<>();
    private final Map<String, List<CaseEvent>> actorsOn = new HashMap<>();
    /** What stands in the place of each settled event; a taken-back event has no entry. */
    private final Map<String, CaseEvent> standing = new HashMap<>();

    private CaseFold(List<CaseEvent> events) {
        for (CaseEvent event : events) {
            CaseEvent known = byId.putIfAbsent(event.head().eventId(), event);
            if (known != null && !known.equals(event)) {
                throw new IllegalArgumentException("event id '" + event.head().eventId()
                        + "' stands for two different events; give each event its own id");
            }
            if (!event.head().caseId().equals(events.get(0).head().caseId())) {
                throw new IllegalArgumentException(
                        "events of case '" + event.head().caseId() + "' and of case '"
                                + events.get(0).head().caseId() + "'; fold one case at a time");
            }
        }
        for (CaseEvent event : byId.values()) {
            String target = target(event);
            if (target != null && byId.containsKey(target)) {
                actorsOn.computeIfAbsent(target, id -> new ArrayList<>()).add(event);
            }
        }
    }

    static Optional<CaseHistory> fold(List<CaseEvent> events) {
        CaseFold fold = new CaseFold(events);
        fold.settle();
        return fold.history();
    }

    private static @Nullable String target(CaseEvent event) {
        if (event instanceof CaseEvent.Withdrawn withdrawn) {
            return withdrawn.targetEventId();
        }
        return event instanceof CaseEvent.Corrected corrected ? corrected.targetEventId() : null;
    }

    private void settle() {
        Map<String, Integer> unsettled = new HashMap<>();
        Deque<CaseEvent> loose = new ArrayDeque<>();
        for (CaseEvent event : byId.values()) {
            int actors = actorsOn(event).size();
            if (actors == 0) {
                loose.add(event);
            } else {
                unsettled.put(event.head().eventId(), actors);
            }
        }
        while (!loose.isEmpty()) {
            CaseEvent event = loose.remove();
            CaseEvent stands = inPlaceOf(event);
            if (stands != null) {
                standing.put(event.head().eventId(), stands);
            }
            String target = target(event);
            if (target != null && unsettled.containsKey(target) && unsettled.merge(target, -1, Integer::sum) == 0) {
                loose.add(targetOf(target));
            }
        }
    }

    private CaseEvent targetOf(String id) {
        CaseEvent event = byId.get(id);
        if (event == null) {
            throw new IllegalStateException("event '" + id + "' is acted on but absent");
        }
        return event;
    }

    private List<CaseEvent> actorsOn(CaseEvent event) {
        return actorsOn.getOrDefault(event.head().eventId(), List.of());
    }

    /** Needs everything that acts on the event to be settled; null when it was taken back. */
    private @Nullable CaseEvent inPlaceOf(CaseEvent event) {
        List<CaseEvent> actors = new ArrayList<>(actorsOn(event));
        actors.sort(CaseEvent.ORDER);
        CaseEvent stands = event instanceof CaseEvent.Corrected corrected ? corrected.replacement() : event;
        for (CaseEvent actor : actors) {
            CaseEvent effect = standing.get(actor.head().eventId());
            if (effect instanceof CaseEvent.Withdrawn) {
                return null;
            }
            if (actor instanceof CaseEvent.Corrected && effect != null) {
                stands = effect;
            }
        }
        return stands;
    }

    private Optional<CaseHistory> history() {
        List<CaseEvent> counting = new ArrayList<>();
        boolean withdrawn = false;
        for (CaseEvent event : byId.values()) {
            CaseEvent stands = standing.get(event.head().eventId());
            if (stands instanceof CaseEvent.Withdrawn taking) {
                withdrawn |= taking.targetEventId() == null;
            } else if (stands != null && !(event instanceof CaseEvent.Corrected)) {
                counting.add(EventCopies.withId(stands, event.head().eventId()));
            }
        }
        counting.sort(CaseEvent.ORDER);
        return history(counting, withdrawn);
    }

    private static Optional<CaseHistory> history(List<CaseEvent> counting, boolean withdrawn) {
        return counting.stream() // a unit comes in once; a second intake is a copy
                .filter(CaseEvent.Opened.class::isInstance)
                .findFirst()
                .map(CaseEvent.Opened.class::cast)
                .map(opened -> history(
                        new CaseHistory(
                                opened.head().caseId(),
                                opened.head().at(),
                                opened.scope(),
                                opened.complaint(),
                                opened.unit(),
                                opened.origin(),
                                opened.workedOnBefore(),
                                List.of(),
                                List.of(),
                                null,
                                null,
                                null,
                                withdrawn),
                        counting));
    }

    /** What events tell of a case; its opening is taken as it is. */
    static CaseHistory history(CaseHistory opened, List<CaseEvent> counting) {
        CaseEvent.Concluded concluded = null;
        Outcome ended = null;
        for (CaseEvent event : counting) {
            if (event instanceof CaseEvent.Concluded c) {
                concluded = c;
            } else if (event instanceof CaseEvent.Ended e) {
                ended = e.outcome();
            } else if (event instanceof CaseEvent.Checked checked
                    && checked.result() == CaseEvent.Checked.Result.FAILED
                    && ended != null
                    && ended.cured()) {
                ended = Outcome.NOT_FIXED;
            }
        }
        return new CaseHistory(
                opened.id(),
                opened.openedAt(),
                opened.scope(),
                opened.complaint(),
                opened.unit(),
                opened.origin(),
                opened.workedOnBefore(),
                counting,
                findings(counting),
                concluded == null ? null : concluded.causeId(),
                concluded == null ? null : concluded.certainty(),
                ended,
                opened.withdrawn());
    }

    /** The latest finding of each symptom, in order of symptom id. */
    static List<Finding> findings(List<CaseEvent> events) {
        SortedMap<String, Finding> findings = new TreeMap<>();
        for (CaseEvent event : events) {
            if (event instanceof CaseEvent.Noted noted) {
                noted.findings().forEach(f -> findings.put(f.symptomId(), f));
            } else if (event instanceof CaseEvent.Tested tested) {
                tested.findings().forEach(f -> findings.put(f.symptomId(), f));
            }
        }
        return List.copyOf(findings.values());
    }
}
