package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.CaseEvent.Checked;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.reading.Reading.Condition;

/** What was proven after the last fix and what was not, in words for the technician and for the owner. */
record ProofWords(ProofPlan proof, Terms terms) {
    /** What sheets ask of a run. */
    static final double CONFIDENCE = 0.9;

    private static final int MOST_ITEM = 300;

    /** Within a sentence. */
    static String item(Checked check) {
        String step = item(check.item());
        return check.isRun() ? "run" : step.endsWith(".") ? step.substring(0, step.length() - 1) : step;
    }

    private static String item(String step) {
        return Escape.clip(step.strip(), MOST_ITEM);
    }

    /** "failed, fault seen 2 times, 3 hours warm". */
    static String how(Checked check) {
        return how(check, check.note());
    }

    private static String how(Checked check, String note) {
        Double hours = check.hours();
        Integer seen = check.seen();
        return Terms.words(check.result())
                + (seen == null ? "" : ", fault seen " + times(seen))
                + (hours == null ? "" : ", " + Terms.hours(hours))
                + (check.conditions().isEmpty() ? "" : ", " + words(check.conditions()))
                + (note.isBlank() ? "" : ": " + item(note));
    }

    private static String times(int n) {
        return n == 1 ? "once" : n == 2 ? "twice" : n + " times";
    }

    private static String words(List<Condition> conditions) {
        return conditions.stream().map(Terms::words).collect(Collectors.joining(", "));
    }

    /** Whether hours without the fault were written down after the fix. */
    boolean ran() {
        return proof.known().cleanHours() + proof.known().otherHours() > 0;
    }

    boolean somethingPassed() {
        return ran() || proof.checklist().stream().anyMatch(ProofWords::passed);
    }

    /** Whether something passed, no step is open and none stands as failed. */
    boolean allPassed() {
        return somethingPassed()
                && proof.open().isEmpty()
                && proof.checklist().stream().noneMatch(ProofWords::failed);
    }

    private static boolean passed(ProofPlan.Item item) {
        return item.result().filter(r -> r == Checked.Result.PASSED).isPresent();
    }

    private static boolean failed(ProofPlan.Item item) {
        return item.result().filter(r -> r == Checked.Result.FAILED).isPresent();
    }

    /** A section, or nothing where nothing was fixed or checked. */
    List<Sheet.Block> forTechnician(Course course) {
        List<List<String>> rows = new ArrayList<>();
        course.all(Checked.class)
                .forEach((n, e) -> rows.add(List.of(
                        Integer.toString(n),
                        e.isRun() ? "Run" : item(e.item()),
                        Terms.words(e.result()),
                        e.seen() == null ? "–" : Integer.toString(e.seen()),
                        e.hours() == null ? "–" : Terms.number(e.hours()),
                        e.conditions().isEmpty() ? "–" : words(e.conditions()),
                        e.note().isBlank() ? "–" : item(e.note()))));
        ProofRecord known = proof.known();
        if (rows.isEmpty() && known.fixId().isEmpty()) {
            return List.of();
        }
        List<Sheet.Block> blocks = new ArrayList<>();
        blocks.add(new Sheet.Section("Proof"));
        List<String> said = new ArrayList<>();
        known.fixId()
                .ifPresent(id -> said.add(
                        "Of the last fix: " + terms.fix(id) + "." + (known.failed() ? " It did not cure." : "")));
        if (known.seen() > 0 && known.seenHours() > 0) {
            said.add("Fault seen " + times(known.seen()) + " in " + Terms.hours(known.seenHours()) + " of run before"
                    + (known.conditions().isEmpty() ? "." : ", " + words(known.conditions()) + "."));
        }
        if (ran()) {
            said.add("Run since without fault: " + Terms.hours(known.cleanHours())
                    + (known.otherHours() > 0
                            ? "; " + Terms.hours(known.otherHours()) + " not known to be as the fault was seen"
                            : "")
                    + ".");
        }
        proof.run()
                .filter(r -> !known.failed() && known.fixId().isPresent())
                .ifPresent(run -> said.add(String.format(
                        Locale.ROOT,
                        "Still there with a chance of %s (before the run %s); %s",
                        Terms.share(run.stillThere()),
                        Terms.share(proof.priorNotCured()),
                        run.hoursLeft() > 0
                                ? Terms.hours(run.hoursLeft()) + " more to prove it to "
                                        + Terms.share(proof.confidence()) + "."
                                : "no more hours needed for " + Terms.share(proof.confidence()) + ".")));
        if (!known.failed() && known.fixId().isPresent()) {
            proof.open().forEach(i -> said.add("Not done: " + item(i.step())));
        }
        blocks.add(new Sheet.Bullets(said));
        if (!rows.isEmpty()) {
            blocks.add(new Sheet.Table(
                    List.of("Step", "Check", "Result", "Fault seen", "Hours", "How it ran", "Note"), rows));
        }
        return blocks;
    }

    /** Without anybody's own words: the fix's own steps, and runs. */
    List<String> forOthers() {
        List<String> said = new ArrayList<>();
        for (Checked check : proof.known().checks()) {
            boolean own = proof.checklist().stream()
                    .anyMatch(i -> i.ofFix() && i.step().equals(check.item()));
            if (own || check.isRun()) {
                said.add("Checked after it: " + item(check) + ", " + how(check, ""));
            }
        }
        return proof.known().fixId().isEmpty() ? List.of() : said;
    }

    List<String> provenForOwner() {
        List<String> proven = new ArrayList<>();
        ProofRecord known = proof.known();
        if (known.fixId().isEmpty() || known.failed()) {
            return proven;
        }
        if (ran()) {
            proven.add("After the repair the unit ran " + Terms.hours(known.cleanHours() + known.otherHours())
                    + " without the fault.");
        }
        proof.checklist().stream()
                .filter(ProofWords::passed)
                .map(i -> "Checked and passed: " + item(i.step()))
                .forEach(proven::add);
        return proven;
    }

    /** @param again whether the unit was repaired more than once */
    List<String> openForOwner(boolean again) {
        List<String> open = new ArrayList<>();
        ProofRecord known = proof.known();
        proof.checklist().stream()
                .filter(ProofWords::failed)
                .map(i -> "Checked and failed: " + item(i.step()))
                .forEach(open::add);
        if (known.fixId().isEmpty() || known.failed()) {
            return open;
        }
        proof.run()
                .filter(r -> r.hoursLeft() > 0)
                .ifPresent(r -> open.add("That the fault is gone for good. It showed " + times(known.seen()) + " in "
                        + Terms.hours(known.seenHours())
                        + (again ? " before the last repair, so it takes " : " before the repair, so it takes ")
                        + (ran()
                                ? "about " + Terms.hours(r.hoursLeft()) + " more"
                                : "about " + Terms.hours(r.hoursLeft()))
                        + " without it to be fairly sure."));
        // what the bench has to do is no reading for whoever takes the unit home, and some of it is dangerous
        int left = proof.open().size();
        if (left > 0) {
            open.add("Of the checks that belong to this repair ("
                    + proof.checklist().size() + "), " + left + " not written down as done.");
        }
        return open;
    }
}
