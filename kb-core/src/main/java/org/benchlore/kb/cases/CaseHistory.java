package org.benchlore.kb.cases;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.jspecify.annotations.Nullable;

/**
 * One unit's history, folded from its events; a pure function of the set of events.
 *
 * @param id the case
 * @param openedAt when the unit came in
 * @param scope what it is
 * @param complaint the owner's words, or empty
 * @param unit serial number or tag, or empty
 * @param origin "bench" for one's own, else the import it came with
 * @param workedOnBefore whether somebody had been inside
 * @param events those that count, corrections applied, in order of time and id
 * @param findings the latest finding of each symptom, in order of symptom id
 * @param causeId the cause concluded last, or null
 * @param certainty how sure, or null when nothing was concluded
 * @param outcome the last ending, or null while the case is open; not fixed where a check failed after an ending as fixed
 * @param withdrawn whether the whole case was taken back
 */
public record CaseHistory(
        String id,
        Instant openedAt,
        DeviceScope scope,
        String complaint,
        String unit,
        String origin,
        boolean workedOnBefore,
        List<CaseEvent> events,
        List<Finding> findings,
        @Nullable String causeId,
        @Nullable Certainty certainty,
        @Nullable Outcome outcome,
        boolean withdrawn) {
    /** The origin of the bench's own cases. */
    public static final String OWN = "bench";

    public CaseHistory {
        events = List.copyOf(events);
        findings = List.copyOf(findings);
    }

    /** The fixes that were applied, in order, each with what the case says of it. */
    public List<TriedFix> fixes() {
        return TriedFix.of(events);
    }

    /** The last fix, unless the case says that it was {@linkplain TriedFix.Result#inVain in vain}; empty if there is none. */
    public Optional<CaseEvent.FixApplied> cure() {
        List<TriedFix> fixes = fixes();
        return fixes.subList(Math.max(0, fixes.size() - 1), fixes.size()).stream()
                .filter(tried -> !tried.result().inVain())
                .map(TriedFix::fix)
                .findFirst();
    }

    /** Whether there is still something to do: no ending yet, or one after which the fault is still there. */
    public boolean unfinished() {
        return !withdrawn && (outcome == null || outcome == Outcome.NOT_FIXED || outcome == Outcome.CAME_BACK);
    }

    /** The fixes that were in vain, in order. */
    public List<CaseEvent.FixApplied> failedFixes() {
        return fixes().stream()
                .filter(tried -> tried.result().inVain())
                .map(TriedFix::fix)
                .toList();
    }

    /**
     * Findings on the unit as it was faulty, in order of symptom id. What was seen after the {@link #cure} is left out: it
     * tells whether the fix helped, not what the cause was.
     */
    public List<Finding> findingsOfFault() {
        return CaseFold.findings(ofFault());
    }

    /**
     * What was said of the unit as it was faulty: the complaint and the notes before the {@link #cure}, each once, since the
     * first note mostly repeats the complaint.
     */
    public List<String> textsOfFault() {
        return texts(ofFault());
    }

    /**
     * The complaint and the notes before the first fix, each once. A later one is worded like the work, and so like the
     * cause that the work was for.
     */
    public List<String> textsBeforeWork() {
        return texts(events.stream()
                .takeWhile(event -> !(event instanceof CaseEvent.FixApplied))
                .toList());
    }

    /** What had been wrong and was found wrong again after the last fix, in order of symptom id; empty without a fix. */
    public List<Finding> stillThere(Knowledge knowledge) {
        List<TriedFix> fixes = fixes();
        int fixed = fixes.isEmpty()
                ? events.size()
                : events.indexOf(fixes.get(fixes.size() - 1).fix());
        Set<String> wrong = CaseFold.findings(events.subList(0, fixed)).stream()
                .filter(finding -> !knowledge.normal(finding.symptomId(), finding.state()))
                .map(Finding::symptomId)
                .collect(Collectors.toSet());
        return CaseFold.findings(events.subList(fixed, events.size())).stream()
                .filter(finding ->
                        wrong.contains(finding.symptomId()) && !knowledge.normal(finding.symptomId(), finding.state()))
                .toList();
    }

    private List<CaseEvent> ofFault() {
        return events.subList(0, cure().map(events::indexOf).orElse(events.size()));
    }

    /**
     * The case as it was told by some of its events, though what the opening says is known from the start.
     *
     * @param number how many, from the first on
     */
    public CaseHistory upTo(int number) {
        return CaseFold.history(this, events.subList(0, number));
    }

    /** The complaint and all notes, each once. */
    public List<String> texts() {
        return texts(events);
    }

    private List<String> texts(List<CaseEvent> told) {
        return Stream.concat(
                        Stream.of(complaint),
                        told.stream()
                                .filter(CaseEvent.Noted.class::isInstance)
                                .map(event -> ((CaseEvent.Noted) event).text()))
                .filter(text -> !text.isBlank())
                .distinct()
                .toList();
    }

    /**
     * Folds the events of one case, given in any order.
     *
     * @return empty if there is no opening event among them
     */
    public static Optional<CaseHistory> fold(List<CaseEvent> events) {
        return CaseFold.fold(events);
    }
}
