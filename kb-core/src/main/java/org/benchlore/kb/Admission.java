package org.benchlore.kb;

import static java.util.Objects.requireNonNull;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Nearest;
import org.benchlore.kb.reading.Finding;

/**
 * Looks at events before they are recorded: what names nothing, or could never show in a case, is a slip of the program that
 * records, and once in the log it stays. Events that are recorded already are let pass, as are ids that the case holds: packs
 * drop entries, and a case begun with them must be gone on with. Imports do not come here, since other benches have other
 * packs, and their lines come in any order.
 */
final class Admission {
    private static final CaseEvent.Fold<Stream<Named>> NAMES = new CaseEvent.Fold<>() {
        @Override
        public Stream<Named> opened(CaseEvent.Opened event) {
            return Stream.empty();
        }

        @Override
        public Stream<Named> noted(CaseEvent.Noted event) {
            return states(event.findings());
        }

        @Override
        public Stream<Named> tested(CaseEvent.Tested event) {
            return Stream.concat(Stream.of(new Named(EntryKind.TEST, event.testId())), states(event.findings()));
        }

        @Override
        public Stream<Named> concluded(CaseEvent.Concluded event) {
            return cause(event.causeId());
        }

        @Override
        public Stream<Named> fixApplied(CaseEvent.FixApplied event) {
            Stream<Named> fix = event.fixId().equals(CaseEvent.FixApplied.UNLISTED)
                    ? Stream.empty()
                    : Stream.of(new Named(EntryKind.FIX, event.fixId()));
            return event.causeId().equals(CaseEvent.FixApplied.UNKNOWN_CAUSE)
                    ? fix
                    : Stream.concat(fix, cause(event.causeId()));
        }

        @Override
        public Stream<Named> checked(CaseEvent.Checked event) {
            return Stream.empty();
        }

        @Override
        public Stream<Named> weighed(CaseEvent.Weighed event) {
            return Stream.of(new Named(EntryKind.FIX, event.fixId()));
        }

        @Override
        public Stream<Named> ended(CaseEvent.Ended event) {
            return Stream.empty();
        }

        @Override
        public Stream<Named> withdrawn(CaseEvent.Withdrawn event) {
            return Stream.empty();
        }

        @Override
        public Stream<Named> corrected(CaseEvent.Corrected event) {
            return event.replacement().fold(this);
        }
    };

    private final Knowledge knowledge;
    private final CaseStore store;

    /**
     * What an event names.
     *
     * @param state of a symptom, else empty
     */
    private record Named(EntryKind kind, String id, String state) {
        Named(EntryKind kind, String id) {
            this(kind, id, "");
        }
    }

    Admission(Knowledge knowledge, CaseStore store) {
        this.knowledge = knowledge;
        this.store = store;
    }

    /** @throws IllegalArgumentException as {@link KnowledgeBase#record(List)} */
    void check(List<CaseEvent> events) {
        Map<String, Map<String, CaseEvent>> byCase = new LinkedHashMap<>();
        for (CaseEvent event : events) {
            CaseEvent.Head head = requireNonNull(event, "event in events").head();
            byCase.computeIfAbsent(head.caseId(), id -> new LinkedHashMap<>()).putIfAbsent(head.eventId(), event);
        }
        byCase.forEach(this::check);
    }

    private void check(String caseId, Map<String, CaseEvent> given) {
        Map<String, CaseEvent> all = new LinkedHashMap<>();
        List<CaseEvent> held = store.eventsOf(caseId);
        held.forEach(event -> all.put(event.head().eventId(), event));
        List<CaseEvent> fresh = given.values().stream()
                .filter(event -> !all.containsKey(event.head().eventId()))
                .toList();
        fresh.forEach(event -> all.put(event.head().eventId(), event));
        if (fresh.isEmpty()) {
            return;
        }
        openings(caseId, held, fresh, List.copyOf(all.values()));
        Set<Named> known = held.stream().flatMap(Admission::names).collect(Collectors.toSet());
        for (CaseEvent event : fresh) {
            target(event, all.keySet());
            names(event).filter(named -> !known.contains(named)).forEach(this::require);
        }
    }

    private static void openings(String caseId, List<CaseEvent> held, List<CaseEvent> fresh, List<CaseEvent> all) {
        if (all.stream().noneMatch(CaseEvent.Opened.class::isInstance)) {
            throw new IllegalArgumentException(
                    "case '" + caseId
                            + "' was never opened, so that nothing of it would be seen; record its opening first, or with this");
        }
        if (fresh.stream().noneMatch(e -> e instanceof CaseEvent.Opened || e instanceof CaseEvent.Withdrawn)) {
            return;
        }
        List<String> standing = openings(all);
        if (standing.size() > Math.max(1, openings(held).size())) {
            throw new IllegalArgumentException(
                    "case '" + caseId + "' is opened by " + standing
                            + ", and a second opening would not be seen; correct the first, or give the unit a case of its own");
        }
    }

    private static List<String> openings(List<CaseEvent> events) {
        return CaseHistory.fold(events).stream()
                .flatMap(history -> history.events().stream())
                .filter(CaseEvent.Opened.class::isInstance)
                .map(event -> event.head().eventId())
                .toList();
    }

    private static void target(CaseEvent event, Set<String> ids) {
        String target = event instanceof CaseEvent.Corrected corrected
                ? corrected.targetEventId()
                : event instanceof CaseEvent.Withdrawn withdrawn ? withdrawn.targetEventId() : null;
        if (target != null && !ids.contains(target)) {
            throw new IllegalArgumentException("case '" + event.head().caseId() + "' has no event '" + target + "'; "
                    + Nearest.remedy(target, ids, "give the id of one that is recorded"));
        }
    }

    /** Ids of entries that events name and no pack here has, such as those of another bench's own pack. */
    SortedSet<String> unknown(Collection<CaseEvent> events) {
        return events.stream()
                .flatMap(Admission::names)
                .filter(named -> !known(named))
                .map(Named::id)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private boolean known(Named named) {
        String id = named.id();
        return switch (named.kind()) {
            case CAUSE -> knowledge.cause(id).isPresent();
            case FIX -> knowledge.fix(id).isPresent();
            case TEST -> knowledge.test(id).isPresent();
            default -> knowledge.symptom(id).isPresent();
        };
    }

    private void require(Named named) {
        String id = named.id();
        if (!known(named)) {
            throw knowledge.unknown(named.kind(), id);
        }
        knowledge
                .symptom(id)
                .filter(s -> named.kind() == EntryKind.SYMPTOM)
                .ifPresent(s -> s.requireState(named.state()));
    }

    private static Stream<Named> names(CaseEvent event) {
        return event.fold(NAMES);
    }

    private static Stream<Named> states(List<Finding> findings) {
        return findings.stream()
                .flatMap(f -> f.likelihoods().keySet().stream()
                        .map(state -> new Named(EntryKind.SYMPTOM, f.symptomId(), state)));
    }

    private static Stream<Named> cause(String id) {
        return id.equals(CaseEvent.Concluded.UNLISTED) ? Stream.empty() : Stream.of(new Named(EntryKind.CAUSE, id));
    }
}
