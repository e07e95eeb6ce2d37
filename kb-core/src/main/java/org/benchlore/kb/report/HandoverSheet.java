package org.benchlore.kb.report;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.cases.TriedFix;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.planning.PowerHold;
import org.benchlore.kb.reading.Reading;

/**
 * The owner's sheet, in plain words: no shares, no decibans, no abbreviations of ours. Names of parts and of checks are the
 * workshop's and are said to be so.
 */
final class HandoverSheet {
    private static final int MOST_WORDS = 800;

    private final CaseHistory history;
    private final Course course;
    private final Terms terms;
    private final Evidence evidence;
    private final Sightings sightings;
    private final OwnerProof proof;
    private final List<Sheet.Block> blocks = new ArrayList<>();
    private final List<CaseEvent.FixApplied> fixes;
    /** What forbids power in the unit as it goes home. */
    private final List<PowerHold.Reason> held;

    private HandoverSheet(
            CaseHistory history,
            Course course,
            Terms terms,
            Evidence evidence,
            ProofWords proof,
            List<PowerHold.Reason> held) {
        this.history = history;
        this.course = course;
        this.terms = terms;
        this.evidence = evidence;
        this.sightings = new Sightings(history, course, terms, evidence);
        this.proof = new OwnerProof(history, course, terms, proof, sightings);
        this.fixes = List.copyOf(course.all(CaseEvent.FixApplied.class).values());
        this.held = held.stream().filter(reason -> !answered(reason)).toList();
    }

    static Sheet of(
            CaseHistory history,
            Course course,
            Terms terms,
            Evidence evidence,
            ProofWords proof,
            List<PowerHold.Reason> held) {
        HandoverSheet sheet = new HandoverSheet(history, course, terms, evidence, proof, held);
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

    /** Whether the ending says that the unit ran since, and what was feared is of the kind that a look can clear. */
    private boolean answered(PowerHold.Reason reason) {
        Outcome outcome = history.outcome();
        return outcome != null
                && (outcome.cured() || outcome == Outcome.NO_FAULT_FOUND)
                && !sightings.seenSince(reason.symptomId())
                && terms.knowledge().powerOff().stream()
                        .anyMatch(rule -> rule.id().equals(reason.ruleId())
                                && !rule.until().isEmpty());
    }

    private void unit() {
        List<Sheet.Fact> facts = new ArrayList<>();
        facts.add(new Sheet.Fact("Device", terms.device(history.scope(), course.kinds())));
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

    private String inShort() {
        Outcome outcome = history.outcome();
        if (outcome == null) {
            return "The work on your unit is not finished yet.";
        }
        return switch (outcome) {
            case FIXED_AND_PROVEN, FIXED ->
                proof.stillThere()
                        ? "The work on your unit is done, but something that was wrong still showed after it: see below."
                        : proof.repaired(outcome);
            case NOT_FIXED -> "The repair we tried did not help. The fault is still there.";
            case CAME_BACK ->
                "The fault came back" + (fixes.isEmpty() ? "" : " after the repair") + ". The work is not finished.";
            case RECOVERED_BY_ITSELF -> "The fault went away without a repair. It may come back.";
            case NO_FAULT_FOUND -> "We found nothing broken in the unit.";
            case MADE_WORSE -> "The work did not go well: the unit is in a worse state than when it came in.";
            case NOT_WORTH_IT ->
                switch (proof.decided()) {
                    case LEAVE -> "The work was weighed, and it was decided to leave the unit as it is.";
                    case PARTS -> "The work was weighed, and it was decided to use the unit for parts.";
                    case WORK -> "A repair would cost more than it is worth. We did not go on.";
                };
            case GIVEN_UP -> "We stopped without finding the reason for the fault.";
        };
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
            String words = course.all(CaseEvent.Concluded.class).values().stream()
                    .map(CaseEvent.Concluded::note)
                    .reduce("", (earlier, last) -> last);
            blocks.add(new Sheet.Words("The cause is none of those that our collection knows"
                    + (words.isBlank() ? "." : ". In our words: " + Escape.clip(words.strip(), MOST_WORDS) + ".")));
            return;
        }
        boolean innocent = terms.knowledge()
                .cause(causeId)
                .map(c -> c.kind() == Cause.Kind.INNOCENT)
                .orElse(false);
        String kind = innocent ? "Nothing was broken. The explanation: " : "The fault: ";
        blocks.add(new Sheet.Words(kind + terms.cause(causeId) + ". " + proof.sure()));
    }

    private void done() {
        List<String> done = new ArrayList<>();
        Set<String> tests = new LinkedHashSet<>();
        course.all(CaseEvent.Tested.class).values().forEach(t -> tests.add(terms.test(t.testId())));
        if (!tests.isEmpty()) {
            done.add("Checks: " + String.join("; ", tests) + ".");
        }
        if (proof.ranClean() > 0) {
            done.add("Trial run: " + Terms.hours(proof.ranClean()) + ".");
        }
        course.all(CaseEvent.Weighed.class)
                .values()
                .forEach(w -> done.add(
                        "Thought over: " + terms.fix(w.fixId()) + ". It was decided to " + words(w.decided()) + "."));
        history.fixes().forEach(tried -> done.add(did(tried)));
        if (fixes.isEmpty()) {
            Outcome outcome = history.outcome();
            boolean repaired = outcome != null && outcome.cured();
            done.add(
                    repaired ? "Repaired: ask us how, it is not written down by name." : "We did not repair anything.");
        }
        section("What we did", done);
    }

    private String did(TriedFix tried) {
        String fix = Escape.clip(terms.work(tried.fix()), MOST_WORDS) + ".";
        return switch (tried.result()) {
            case HELPED, UNTOLD -> "Done: " + fix;
            case FAILED -> "Tried: " + fix + " By itself it did not put it right.";
            case CAME_BACK -> "Done: " + fix + " The fault came back" + after(tried.fix()) + ".";
            case MADE_WORSE -> "Tried: " + fix + " It made things worse.";
        };
    }

    /** " after 20 days", where that was kept. */
    private String after(CaseEvent.FixApplied fix) {
        String after = "";
        for (CaseEvent event : history.events()
                .subList(history.events().indexOf(fix) + 1, history.events().size())) {
            if (event instanceof CaseEvent.FixApplied) {
                break;
            }
            if (event instanceof CaseEvent.Ended ended && ended.afterDays() != null) {
                after = " after " + Terms.count(ended.afterDays(), "day", "days");
            }
        }
        return after;
    }

    private static String words(Decision decision) {
        return switch (decision) {
            case WORK -> "do it";
            case LEAVE -> "leave the unit as it is";
            case PARTS -> "use the unit for parts";
        };
    }

    private void measured() {
        sightings.table().ifPresent(table -> {
            blocks.add(new Sheet.Section("What we saw and measured"));
            blocks.add(table);
            blocks.add(new Sheet.Words("The names are the workshop's. Ask us about any of them."));
        });
    }

    private void proven() {
        List<String> proven = proof.proven();
        List<String> open = proof.open();
        section("What is proven", proven.isEmpty() ? List.of("Nothing yet.") : proven);
        section("What is not proven", open.isEmpty() ? List.of("Nothing that we know of.") : open);
    }

    private void section(String heading, List<String> items) {
        blocks.add(new Sheet.Section(heading));
        blocks.add(new Sheet.Bullets(items));
    }

    private void watch() {
        List<String> watch = new ArrayList<>();
        if (!held.isEmpty()) {
            watch.add("Do not try it out: see “For your safety”.");
        } else if (!history.complaint().isBlank()) {
            watch.add(
                    "If what you told us happens again, stop using the unit and call us. Note the day, what it was doing,"
                            + " and what its lamps and display showed.");
        }
        if (history.outcome() == Outcome.NO_FAULT_FOUND) {
            watch.add(
                    "A short film of it helps, and so does a list of what else was plugged in or switched on. Bring the"
                            + " leads, and the adapter if it has one, along with the unit.");
        }
        sightings
                .wrong(fixes.isEmpty() && proof.decided() == Decision.LEAVE)
                .forEach(wrong -> watch.add("Keep an eye on: " + wrong + "."));
        if (watch.isEmpty()) {
            watch.add("Nothing in particular. If anything seems wrong, call us.");
        }
        section("What to watch", watch);
    }

    private void safety() {
        List<String> safety = Hazards.forOwner(history, terms, sightings.standing(), held);
        if (!safety.isEmpty()) {
            blocks.add(new Sheet.Section("For your safety"));
            blocks.add(new Sheet.Warnings(safety));
        }
    }
}
