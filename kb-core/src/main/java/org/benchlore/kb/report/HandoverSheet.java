package org.benchlore.kb.report;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;

/**
 * The owner's sheet, in plain words: no shares, no decibans, no abbreviations of ours. Names of parts and of checks are the
 * workshop's and are said to be so.
 */
final class HandoverSheet {
    private static final int MOST_WORDS = 800;

    /** Outcomes after which nobody claims that a fault is gone. */
    private static final Set<Outcome> NO_CLAIM = Set.of(Outcome.NO_FAULT_FOUND, Outcome.NOT_WORTH_IT);

    /** Share from which the figures, too, call a cause certain; our choice. */
    private static final double SURE = 0.95;

    private final CaseHistory history;
    private final Course course;
    private final Terms terms;
    private final Evidence evidence;
    private final ProofWords proof;
    private final List<Sheet.Block> blocks = new ArrayList<>();
    private final List<CaseEvent.FixApplied> fixes;
    /** Latest findings from before the first fix, and from after the last one. */
    private final Map<String, Seen> before = new LinkedHashMap<>();

    private final Map<String, Seen> after = new LinkedHashMap<>();

    /** A finding with the reading behind it, or an empty one. */
    private record Seen(Finding finding, String value) {}

    private HandoverSheet(CaseHistory history, Course course, Terms terms, Evidence evidence, ProofWords proof) {
        this.history = history;
        this.course = course;
        this.terms = terms;
        this.evidence = evidence;
        this.proof = proof;
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

    static Sheet of(CaseHistory history, Course course, Terms terms, Evidence evidence, ProofWords proof) {
        HandoverSheet sheet = new HandoverSheet(history, course, terms, evidence, proof);
        sheet.unit();
        sheet.found();
        sheet.done();
        sheet.measured();
        sheet.proven();
        sheet.watch();
        sheet.safety();
        return new Sheet(
                "Hand-over sheet",
                "For the owner of the unit",
                sheet.blocks,
                "Case " + history.id() + ". Bring this sheet if the unit comes in again.");
    }

    private void unit() {
        List<Sheet.Fact> facts = new ArrayList<>();
        facts.add(new Sheet.Fact("Device", terms.device(history.scope())));
        if (!history.unit().isBlank()) {
            facts.add(new Sheet.Fact("Marked", history.unit()));
        }
        facts.add(new Sheet.Fact("Came in", Terms.day(history.openedAt())));
        List<CaseEvent.Ended> endings =
                List.copyOf(course.all(CaseEvent.Ended.class).values());
        if (!endings.isEmpty()) {
            Instant at = endings.get(endings.size() - 1).head().at();
            facts.add(new Sheet.Fact(history.unfinished() ? "Last entry" : "Finished", Terms.day(at)));
        }
        blocks.add(new Sheet.Facts(facts));
        blocks.add(new Sheet.Verdict(inShort()));
        if (!history.complaint().isBlank()) {
            blocks.add(new Sheet.Section(told() ? "What you told us" : "How it came in, in our words"));
            blocks.add(new Sheet.Quote(Escape.clip(history.complaint(), MOST_WORDS)));
        }
    }

    /** Whether the complaint is the owner's: no meter read it, and nobody at the bench is noted to have said it. */
    private boolean told() {
        return !evidence.measured(history.complaint())
                && course.all(CaseEvent.Noted.class).values().stream()
                        .filter(note -> note.text().equals(history.complaint()))
                        .allMatch(note -> note.source() == Reading.Source.OWNER);
    }

    /** What was decided last, where the work was weighed. */
    private Decision decided() {
        return course.all(CaseEvent.Weighed.class).values().stream()
                .map(CaseEvent.Weighed::decided)
                .reduce(Decision.WORK, (a, b) -> b);
    }

    private String inShort() {
        Outcome outcome = history.outcome();
        if (outcome == null) {
            return "The work on your unit is not finished yet.";
        }
        return switch (outcome) {
            case FIXED_AND_PROVEN, FIXED ->
                stillThere()
                        ? "The work on your unit is done, but something that was wrong still showed after it: see below."
                        : repaired(outcome);
            case NOT_FIXED -> "The repair we tried did not help. The fault is still there.";
            case CAME_BACK ->
                "The fault came back" + (fixes.isEmpty() ? "" : " after the repair") + ". The work is not finished.";
            case RECOVERED_BY_ITSELF -> "The fault went away without a repair. It may come back.";
            case NO_FAULT_FOUND -> "We found nothing broken in the unit.";
            case MADE_WORSE -> "The work did not go well: the unit is in a worse state than when it came in.";
            case NOT_WORTH_IT ->
                switch (decided()) {
                    case LEAVE -> "The work was weighed, and it was decided to leave the unit as it is.";
                    case PARTS -> "The work was weighed, and it was decided to use the unit for parts.";
                    case WORK -> "A repair would cost more than it is worth. We did not go on.";
                };
            case GIVEN_UP -> "We stopped without finding the reason for the fault.";
        };
    }

    private String repaired(Outcome outcome) {
        if (outcome == Outcome.FIXED) {
            return proof.somethingPassed()
                    ? "Your unit is repaired. What we have checked so far is listed below."
                    : "Your unit is repaired. A longer check has not been done yet.";
        }
        return proof.allPassed()
                ? "Your unit is repaired, and it passed our checks afterwards."
                : checked()
                        ? "Your unit is repaired. What we have checked, and what not, is listed below."
                        : "Your unit is repaired, on the bench's word: no check after the work was written down.";
    }

    private void found() {
        blocks.add(new Sheet.Section("What we found"));
        String causeId = history.causeId();
        if (causeId == null) {
            blocks.add(new Sheet.Words(
                    history.outcome() == Outcome.NO_FAULT_FOUND
                            ? "What you told us did not show while the unit was with us."
                            : "We have not settled on a cause."));
            return;
        }
        if (causeId.equals(CaseEvent.Concluded.UNLISTED)) {
            blocks.add(new Sheet.Words("The cause is none of those we have met before."));
            return;
        }
        boolean innocent = terms.knowledge()
                .cause(causeId)
                .map(c -> c.kind() == Cause.Kind.INNOCENT)
                .orElse(false);
        String kind = innocent ? "Nothing was broken. The explanation: " : "The fault: ";
        blocks.add(new Sheet.Words(kind + terms.cause(causeId) + ". " + sure(causeId)));
    }

    private String sure(String causeId) {
        if (history.certainty() != Certainty.PROVEN && history.certainty() != Certainty.LIKELY) {
            return "This is our best guess so far.";
        }
        return certain(causeId)
                ? "We are sure of this."
                : "This fits what we saw, but it has not been shown for certain.";
    }

    /** Whether the bench is sure and what is written down bears it out. */
    private boolean certain(@Nullable String causeId) {
        return causeId != null
                && history.certainty() == Certainty.PROVEN
                && shown()
                && !stillThere()
                && course.last()
                        .flatMap(ranking -> Course.find(ranking, causeId))
                        .filter(cause -> cause.probability() >= SURE)
                        .isPresent();
    }

    /** Whether a test, or a check after the work, is written down that can have shown the cause. */
    private boolean shown() {
        return checked() || !course.all(CaseEvent.Tested.class).isEmpty();
    }

    /** Whether something written down after the last fix went well: a step, a run, or what had been wrong. */
    private boolean checked() {
        return proof.somethingPassed()
                || after.values().stream()
                        .anyMatch(is -> normal(is)
                                && Optional.ofNullable(before.get(is.finding().symptomId()))
                                        .filter(was -> !normal(was))
                                        .isPresent());
    }

    private boolean stillThere() {
        return !history.stillThere(terms.knowledge()).isEmpty();
    }

    private void done() {
        List<String> done = new ArrayList<>();
        Set<String> tests = new LinkedHashSet<>();
        course.all(CaseEvent.Tested.class).values().forEach(t -> tests.add(terms.test(t.testId())));
        if (!tests.isEmpty()) {
            done.add("Checks: " + String.join("; ", tests) + ".");
        }
        if (ranClean() > 0) {
            done.add("Trial run: " + Terms.hours(ranClean()) + ".");
        }
        course.all(CaseEvent.Weighed.class)
                .values()
                .forEach(w -> done.add(
                        "Thought over: " + terms.fix(w.fixId()) + ". It was decided to " + words(w.decided()) + "."));
        fixes.forEach(f -> done.add("Done: " + terms.fix(f.fixId()) + "."));
        if (fixes.isEmpty()) {
            Outcome outcome = history.outcome();
            boolean repaired = outcome != null && outcome.cured();
            done.add(
                    repaired ? "Repaired: ask us how, it is not written down by name." : "We did not repair anything.");
        }
        blocks.add(new Sheet.Section("What we did"));
        blocks.add(new Sheet.Bullets(done));
    }

    private static String words(Decision decision) {
        return switch (decision) {
            case WORK -> "do it";
            case LEAVE -> "leave the unit as it is";
            case PARTS -> "use the unit for parts";
        };
    }

    /** Hours of run in which the fault never showed, where nothing was repaired; 0 if it showed once. */
    private double ranClean() {
        List<CaseEvent.Checked> runs = course.all(CaseEvent.Checked.class).values().stream()
                .filter(CaseEvent.Checked::isRun)
                .toList();
        boolean clean = fixes.isEmpty() && runs.stream().allMatch(r -> r.result() == CaseEvent.Checked.Result.PASSED);
        double hours = 0;
        for (CaseEvent.Checked run : runs) {
            hours += clean && run.hours() != null ? run.hours() : 0;
        }
        return hours;
    }

    private void measured() {
        if (before.isEmpty() && after.isEmpty()) {
            return;
        }
        blocks.add(new Sheet.Section("What we saw and measured"));
        Map<String, Seen> all = new LinkedHashMap<>(before);
        after.forEach(all::putIfAbsent);
        List<List<String>> rows = all.keySet().stream()
                .map(id -> fixes.isEmpty()
                        ? List.of(terms.symptom(id), plain(before.get(id)))
                        : List.of(terms.symptom(id), plain(before.get(id)), plain(after.get(id))))
                .toList();
        blocks.add(new Sheet.Table(
                fixes.isEmpty() ? List.of("What", "How it was") : List.of("What", "Before the work", "After the work"),
                rows));
        blocks.add(new Sheet.Words("The names are the workshop's. Ask us about any of them."));
    }

    private String plain(@Nullable Seen seen) {
        if (seen == null) {
            return "not looked at";
        }
        return yesOrNo(seen.finding())
                + (seen.value().isEmpty() ? "" : ", read " + seen.value())
                + (normal(seen) ? " (as it should be)" : " (not as it should be)");
    }

    private boolean normal(Seen seen) {
        return terms.normal(seen.finding());
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

    /** "4.52 V on 5 V ±5 %: low, >99.9 %" as "4.52 V, should be 5 V ±5 %"; empty where there is no value to keep to. */
    private static String value(String note) {
        int on = note.indexOf(" on ");
        int colon = note.indexOf(':');
        return on < 0 || colon < on ? "" : note.substring(0, on) + ", should be " + note.substring(on + 4, colon);
    }

    private void proven() {
        List<String> proven = new ArrayList<>();
        List<String> open = new ArrayList<>();
        Outcome outcome = history.outcome();
        proven.addAll(proof.provenForOwner());
        open.addAll(proof.openForOwner());
        if (outcome == Outcome.FIXED_AND_PROVEN) {
            if (!checked()) {
                open.add(
                        0,
                        "That the repair holds. It was handed over as proven on the bench's word; no check and no run"
                                + " after the work was written down.");
            }
        } else if (outcome == Outcome.FIXED) {
            open.add(
                    0,
                    proof.ran()
                            ? "That the repair lasts longer than we ran it."
                            : "That the repair lasts. The unit has not been through a longer check yet.");
        } else if (outcome == null || !NO_CLAIM.contains(outcome)) {
            open.add("That the fault is gone.");
        }
        if (certain(history.causeId())) {
            proven.add("The cause was shown by a check or by the cure.");
        } else if (history.certainty() == Certainty.PROVEN) {
            open.add("The cause. The bench took it as shown, but what is written down does not show it.");
        } else if (history.causeId() != null) {
            open.add("The cause. It fits, but another one could look the same.");
        } else {
            open.add(
                    outcome == Outcome.NO_FAULT_FOUND
                            ? "Why it did what you told us. It may do so again."
                            : decided() == Decision.LEAVE ? "What it comes from." : "What caused the fault.");
        }
        if (ranClean() > 0) {
            proven.add("It ran " + Terms.hours(ranClean()) + " here without the fault.");
        }
        List<String> unseen = new ArrayList<>();
        before.forEach((id, was) -> {
            Seen is = after.get(id);
            if (!normal(was) && !fixes.isEmpty()) {
                if (is == null) {
                    unseen.add(terms.symptom(id));
                } else if (normal(is)) {
                    proven.add(terms.symptom(id) + ": put right, and checked after the work.");
                } else {
                    open.add(terms.symptom(id) + ": still not as it should be after the work.");
                }
            }
        });
        if (!unseen.isEmpty()) {
            open.add("Not written down again after the work: " + String.join("; ", unseen) + ".");
        }
        section("What is proven", proven.isEmpty() ? List.of("Nothing yet.") : proven);
        section("What is not proven", open.isEmpty() ? List.of("Nothing that we know of.") : open);
    }

    private void section(String heading, List<String> items) {
        blocks.add(new Sheet.Section(heading));
        blocks.add(new Sheet.Bullets(items));
    }

    private void watch() {
        List<String> watch = new ArrayList<>();
        if (!history.complaint().isBlank()) {
            watch.add(
                    "If what you told us happens again, stop using the unit and call us. Note the day, what it was doing,"
                            + " and what its lamps and display showed.");
        }
        if (history.outcome() == Outcome.NO_FAULT_FOUND) {
            watch.add(
                    "A short film of it helps, and so does a list of what else was plugged in or switched on. Bring the"
                            + " leads, and the adapter if it has one, along with the unit.");
        }
        boolean left = fixes.isEmpty() && decided() == Decision.LEAVE;
        (left ? before : after)
                .values().stream()
                        .filter(seen -> !normal(seen))
                        .forEach(seen -> watch.add("Keep an eye on: " + terms.finding(seen.finding()) + "."));
        if (watch.isEmpty()) {
            watch.add("Nothing in particular. If anything seems wrong, call us.");
        }
        section("What to watch", watch);
    }

    private void safety() {
        List<String> safety = Hazards.forOwner(history, terms, standing());
        if (!safety.isEmpty()) {
            blocks.add(new Sheet.Section("For your safety"));
            blocks.add(new Sheet.Warnings(safety));
        }
    }

    /** What is not as it should be and nothing put right: still so after the work, or not looked at since. */
    private List<Finding> standing() {
        Map<String, Seen> last = new LinkedHashMap<>(before);
        last.putAll(after);
        return last.values().stream()
                .filter(seen -> !normal(seen) && !over(seen.finding()))
                .map(Seen::finding)
                .filter(finding -> after.containsKey(finding.symptomId()) || !cured(finding))
                .toList();
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
