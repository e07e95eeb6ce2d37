package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.reading.Reading.Condition;

/** The proof of a fix as plain text. */
final class ProofPage {
    private final Knowledge knowledge;
    private final Page page;

    ProofPage(Knowledge knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
    }

    void print(ProofPlan proof) {
        ProofRecord known = proof.known();
        known.fixId().ifPresent(id -> page.heading("Proof of: " + new Names(knowledge).fix(id)));
        if (known.failed()) {
            page.caution("It did not cure: a check failed, or the case says so. 'next --case' goes on from there.");
        }
        checklist(proof);
        if (known.seen() > 0 && known.seenHours() > 0) {
            page.text(
                    2,
                    say(
                            "Fault seen %s in %s of run%s%s.",
                            known.seen() == 1 ? "once" : known.seen() + " times",
                            hours(known.seenHours()),
                            known.fixId().isPresent() ? " before the fix" : "",
                            known.conditions().isEmpty() ? "" : ", " + words(known.conditions())));
        }
        if (!known.failed()) {
            proof.run().ifPresent(run -> run(proof, run));
        }
    }

    void checklist(ProofPlan proof) {
        List<ProofPlan.Item> items = proof.checklist();
        for (int i = 0; i < items.size(); i++) {
            ProofPlan.Item item = items.get(i);
            page.hanging(
                    say("%3d. %-9s ", i + 1, item.result().map(Page::words).orElse("to do")),
                    15,
                    item.step() + details(item));
        }
    }

    private static String details(ProofPlan.Item item) {
        List<String> details = new ArrayList<>();
        if (item.failedBefore()) {
            details.add("failed before");
        }
        if (item.hours() > 0) {
            details.add(hours(item.hours()));
        }
        if (!item.conditions().isEmpty()) {
            details.add(words(item.conditions()));
        }
        return details.isEmpty() ? "" : " (" + String.join(", ", details) + ")";
    }

    private void run(ProofPlan proof, ProofPlan.Run run) {
        ProofRecord known = proof.known();
        page.text(
                2,
                say(
                        "In %.0f %% of cases an unrepaired unit would show it again within %s (within %s if that were its true rate).",
                        100 * proof.confidence(), hours(run.hours()), hours(run.hoursAtMeanRate())));
        page.text(
                2,
                known.cleanHours() > 0
                        ? say(
                                "%s run without fault: still there with a chance of %s (before the run %s).",
                                hours(known.cleanHours()),
                                Page.percent(run.stillThere()),
                                Page.percent(proof.priorNotCured()))
                        : say(
                                "Not run since; by what is known of the fix alone it is still there with a chance of %s.",
                                Page.percent(run.stillThere())));
        page.text(
                2,
                run.hoursLeft() > 0
                        ? say(
                                "%s %swithout fault prove it to %.0f %%.",
                                hours(run.hoursLeft()), known.cleanHours() > 0 ? "more " : "", 100 * proof.confidence())
                        : say("That is enough for %.0f %%.", 100 * proof.confidence()));
        if (known.otherHours() > 0) {
            page.text(
                    2,
                    say(
                            "%s more do not count: not known to be %s, as the fault was seen.",
                            hours(known.otherHours()), words(known.conditions())));
        }
    }

    static String words(List<Condition> conditions) {
        return conditions.stream().map(Page::words).collect(Collectors.joining(", "));
    }

    static String hours(double hours) {
        return say(hours < 10 && Math.abs(hours - Math.rint(hours)) > 0.05 ? "%.1f h" : "%.0f h", hours);
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
