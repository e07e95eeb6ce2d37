package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.Cause;

/** What the owner's sheet may claim: what is proven, what is not, and how sure the cause is. */
record OwnerProof(CaseHistory history, Course course, Terms terms, ProofWords proof, Sightings sightings) {
    /** Outcomes after which nobody claims that a fault is gone. */
    private static final Set<Outcome> NO_CLAIM = Set.of(Outcome.NO_FAULT_FOUND, Outcome.NOT_WORTH_IT);

    /** Share from which the figures, too, call a cause certain; our choice. */
    private static final double SURE = 0.95;

    String repaired(Outcome outcome) {
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

    /** How sure the bench is of the cause. */
    String sure() {
        if (history.certainty() != Certainty.PROVEN && history.certainty() != Certainty.LIKELY) {
            return "This is our best guess so far.";
        }
        return certain() ? "We are sure of this." : "This fits what we saw, but it has not been shown for certain.";
    }

    /** Whether the bench is sure and what is written down bears it out. */
    private boolean certain() {
        String causeId = history.causeId();
        return causeId != null
                && history.certainty() == Certainty.PROVEN
                && shown(causeId)
                && !stillThere()
                && course.last()
                        .flatMap(ranking -> Course.find(ranking, causeId))
                        .filter(cause -> cause.probability() >= SURE)
                        .isPresent();
    }

    /** Whether a test that the packs trust to confirm this cause, or a check after the work, is written down. */
    private boolean shown(String causeId) {
        List<String> confirming =
                terms.knowledge().cause(causeId).map(Cause::confirmedBy).orElse(List.of());
        return checked()
                || course.all(CaseEvent.Tested.class).values().stream()
                        .anyMatch(test -> confirming.contains(test.testId()));
    }

    /** Whether something written down after the last fix went well: a step, a run, or what had been wrong. */
    private boolean checked() {
        return proof.somethingPassed() || !sightings.putRight().isEmpty();
    }

    boolean stillThere() {
        return !history.stillThere(terms.knowledge()).isEmpty();
    }

    /** Hours of run in which the fault never showed, where nothing was repaired; 0 if it showed once. */
    double ranClean() {
        List<CaseEvent.Checked> runs = course.all(CaseEvent.Checked.class).values().stream()
                .filter(CaseEvent.Checked::isRun)
                .toList();
        boolean clean =
                history.fixes().isEmpty() && runs.stream().allMatch(r -> r.result() == CaseEvent.Checked.Result.PASSED);
        double hours = 0;
        for (CaseEvent.Checked run : runs) {
            hours += clean && run.hours() != null ? run.hours() : 0;
        }
        return hours;
    }

    /** What was decided last, where the work was weighed. */
    Decision decided() {
        return course.all(CaseEvent.Weighed.class).values().stream()
                .map(CaseEvent.Weighed::decided)
                .reduce(Decision.WORK, (a, b) -> b);
    }

    List<String> proven() {
        List<String> proven = new ArrayList<>(proof.provenForOwner());
        if (certain()) {
            proven.add("The cause was shown by a check or by the cure.");
        }
        if (ranClean() > 0) {
            proven.add("It ran " + Terms.hours(ranClean()) + " here without the fault.");
        }
        sightings.sound().forEach(what -> proven.add(what + ": as it should be when we last looked."));
        sightings.putRight().forEach(what -> proven.add(what + ": put right, and checked after the work."));
        return proven;
    }

    List<String> open() {
        List<String> open = new ArrayList<>();
        Outcome outcome = history.outcome();
        if (outcome == Outcome.FIXED_AND_PROVEN) {
            if (!checked()) {
                open.add("That the repair holds. It was handed over as proven on the bench's word; no check and no run"
                        + " after the work was written down.");
            }
        } else if (outcome == Outcome.FIXED) {
            open.add(
                    proof.ran()
                            ? "That the repair lasts longer than we ran it."
                            : "That the repair lasts. The unit has not been through a longer check yet.");
        }
        open.addAll(proof.openForOwner(history.fixes().size() > 1));
        if (outcome == null || !(outcome.cured() || NO_CLAIM.contains(outcome))) {
            open.add("That the fault is gone.");
        }
        if (!certain()) {
            open.add(cause());
        }
        sightings.stillWrong().forEach(what -> open.add(what + ": still not as it should be after the work."));
        List<String> unseen = sightings.notSeenAgain();
        if (!unseen.isEmpty()) {
            open.add("Not written down again after the work: " + String.join("; ", unseen) + ".");
        }
        return open;
    }

    /** What is not known of the cause. */
    private String cause() {
        if (CaseEvent.Concluded.UNLISTED.equals(history.causeId())) {
            return "The cause: none that we know fits.";
        }
        if (history.certainty() == Certainty.PROVEN) {
            return "The cause. The bench took it as shown, but what is written down does not show it.";
        }
        if (history.causeId() != null) {
            return "The cause. It fits, but another one could look the same.";
        }
        return history.outcome() == Outcome.NO_FAULT_FOUND
                ? "Why it did what you told us. It may do so again."
                : decided() == Decision.LEAVE ? "What it comes from." : "What caused the fault.";
    }
}
