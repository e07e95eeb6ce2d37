package org.benchlore.kb.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;
import org.jspecify.annotations.Nullable;

/** What was seen before the last fix and what after it, in words for the owner. */
final class Sightings {
    private final CaseHistory history;
    private final Terms terms;
    private final List<CaseEvent.FixApplied> fixes;
    /** Latest findings from before the last fix, and from after it; all are "before" where nothing was fixed. */
    private final Map<String, Seen> before = new LinkedHashMap<>();

    private final Map<String, Seen> after = new LinkedHashMap<>();

    /** A finding with the reading behind it, or an empty one. */
    private record Seen(Finding finding, String value) {}

    Sightings(CaseHistory history, Course course, Terms terms, Evidence evidence) {
        this.history = history;
        this.terms = terms;
        this.fixes = List.copyOf(course.all(CaseEvent.FixApplied.class).values());
        boolean fixed = false;
        for (Course.Step step : course.steps()) {
            if (step.event() instanceof CaseEvent.FixApplied) {
                before.putAll(after); // what an earlier fix left is "before" for this one
                after.clear();
                fixed = true;
            }
            Map<String, Seen> side = fixed ? after : before;
            Map<String, String> notes = evidence.values(step.event());
            for (Finding finding : step.findings()) {
                String note = notes.getOrDefault(finding.symptomId(), "");
                side.put(finding.symptomId(), new Seen(finding, value(note)));
            }
        }
    }

    /** "4.52 V on 5 V ±5 %: low, >99.9 %" as "4.52 V, should be 5 V ±5 %"; empty where there is no value to keep to. */
    private static String value(String note) {
        int on = note.indexOf(" on ");
        int colon = note.indexOf(':');
        return on < 0 || colon < on ? "" : note.substring(0, on) + ", should be " + note.substring(on + 4, colon);
    }

    private boolean normal(Seen seen) {
        return terms.normal(seen.finding());
    }

    /** All of it side by side; empty where nothing was seen. */
    Optional<Sheet.Table> table() {
        Map<String, Seen> all = new LinkedHashMap<>(before);
        after.forEach(all::putIfAbsent);
        if (all.isEmpty()) {
            return Optional.empty();
        }
        List<List<String>> rows = all.keySet().stream()
                .map(id -> fixes.isEmpty()
                        ? List.of(terms.symptom(id), plain(before.get(id)))
                        : List.of(terms.symptom(id), plain(before.get(id)), plain(after.get(id))))
                .toList();
        return Optional.of(new Sheet.Table(
                fixes.isEmpty() ? List.of("What", "How it was") : List.of("What", "Before the work", "After the work"),
                rows));
    }

    private String plain(@Nullable Seen seen) {
        if (seen == null) {
            return "not looked at";
        }
        return yesOrNo(seen.finding())
                + (seen.value().isEmpty() ? "" : ", read " + seen.value())
                + (normal(seen) ? " (as it should be)" : " (not as it should be)");
    }

    /** What is either there or not reads better as yes or no. */
    private String yesOrNo(Finding finding) {
        boolean thereOrNot = terms.knowledge()
                .symptom(finding.symptomId())
                .map(s -> s.states().size() == 2 && s.indexOf("present") >= 0 && s.indexOf("absent") >= 0)
                .orElse(false);
        return !thereOrNot || !finding.certain()
                ? terms.state(finding)
                : finding.state().equals("present") ? "yes" : "no";
    }

    /** Names of what was wrong before the work and as it should be after it. */
    List<String> putRight() {
        return compared(true);
    }

    /** Names of what was wrong before the work and still is. */
    List<String> stillWrong() {
        return compared(false);
    }

    private List<String> compared(boolean right) {
        return wrongBefore()
                .filter(id -> Optional.ofNullable(after.get(id))
                        .filter(is -> normal(is) == right)
                        .isPresent())
                .map(terms::symptom)
                .toList();
    }

    /** Names of what was wrong before the work and was not looked at again. */
    List<String> notSeenAgain() {
        return wrongBefore()
                .filter(id -> !after.containsKey(id))
                .map(terms::symptom)
                .toList();
    }

    private Stream<String> wrongBefore() {
        return fixes.isEmpty()
                ? Stream.empty()
                : before.entrySet().stream().filter(e -> !normal(e.getValue())).map(Map.Entry::getKey);
    }

    /** Names of what was as it should be when it was last looked at, where nothing was repaired. */
    List<String> sound() {
        return fixes.isEmpty()
                ? before.entrySet().stream()
                        .filter(e -> normal(e.getValue()))
                        .map(e -> terms.symptom(e.getKey()))
                        .toList()
                : List.of();
    }

    /** What is not as it should be in the unit as it goes home, in words. */
    List<String> wrong(boolean leftAsItWas) {
        return (leftAsItWas ? before : after)
                .values().stream()
                        .filter(seen -> !normal(seen))
                        .map(seen -> terms.finding(seen.finding()))
                        .toList();
    }

    /** What is not as it should be and nothing put right: still so after the work, or not looked at since. */
    List<Finding> standing() {
        Map<String, Seen> last = new LinkedHashMap<>(before);
        last.putAll(after);
        return last.values().stream()
                .filter(seen -> !normal(seen) && !over(seen.finding()))
                .map(Seen::finding)
                .filter(finding -> seenSince(finding.symptomId()) || !cured(finding))
                .toList();
    }

    /** Whether it was looked at after the last fix. */
    boolean seenSince(String symptomId) {
        return after.containsKey(symptomId);
    }

    /** Whether it tells of what happened once, and the work, or finding nothing, has answered that. */
    private boolean over(Finding finding) {
        boolean answered = history.outcome() == Outcome.NO_FAULT_FOUND
                || !history.failedFixes().containsAll(fixes);
        return answered
                && terms.knowledge()
                        .symptom(finding.symptomId())
                        .map(Symptom::history)
                        .orElse(false);
    }

    /** Whether a fix that did not fail is one for a cause that the finding all but names. */
    private boolean cured(Finding finding) {
        Set<Cause> named = Set.copyOf(terms.knowledge().causesNamedBy(finding.symptomId(), finding.state()));
        List<CaseEvent.FixApplied> failed = history.failedFixes();
        return fixes.stream()
                .filter(fix -> !failed.contains(fix))
                .flatMap(fix -> terms.knowledge().causesFixedBy(fix.fixId()).stream())
                .anyMatch(named::contains);
    }
}
