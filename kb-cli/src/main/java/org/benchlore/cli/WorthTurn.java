package org.benchlore.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Stakes;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.planning.Worth;

/** Weighs whether to do a fix, and keeps the decision. Enter leaves it at any question, and nothing is stored then. */
final class WorthTurn {
    private final WorkCase work;
    private final Lines lines;
    private final Page page;

    WorthTurn(WorkCase work, Lines lines, Page page) {
        this.work = work;
        this.lines = lines;
        this.page = page;
    }

    /** The decision; empty if it was left. */
    Optional<Decision> weigh(Fix fix) {
        page.text(0, "Weighing: " + fix.name() + ". Amounts in your own currency; Enter at the first leaves it.");
        Optional<Double> repaired = amount("worth if repaired> ", Optional.empty());
        if (repaired.isEmpty()) {
            return Optional.empty();
        }
        Stakes stakes = new Stakes(
                repaired.get(),
                or0("worth if left alone (Enter: 0)> "),
                or0("worth if made worse (Enter: 0)> "),
                or0("worth for parts (Enter: 0)> "),
                or0("cost of time and parts (Enter: 0)> "));
        Worth worth = work.kb().worth(work.query(), fix.id(), stakes);
        new DecisionPage(work.kb().knowledge(), page).worth(worth, true);
        page.text(0, "What is decided: work, leave or parts? Enter keeps nothing.");
        while (true) {
            String answer = lines.ask("decided> ", "work, leave or parts; Enter keeps nothing.")
                    .orElse("")
                    .toLowerCase(Locale.ROOT);
            if (answer.isEmpty()) {
                return Optional.empty();
            }
            Optional<Decision> decided = List.of(Decision.values()).stream()
                    .filter(d -> Page.words(d).equals(answer))
                    .findFirst();
            if (decided.isPresent()) {
                work.record(new CaseEvent.Weighed(
                        work.head(), fix.id(), stakes, worth.success(), worth.worse(), decided.get(), ""));
                page.text(
                        0,
                        "Stored: decided to " + DecisionPage.words(decided.get()) + "."
                                + (decided.get() == Decision.WORK ? "" : " 'end' finishes the case as not worth it."));
                return decided;
            }
            page.text(0, "work, leave or parts, please.");
        }
    }

    private double or0(String question) {
        return amount(question, Optional.of(0.0)).orElse(0.0);
    }

    private Optional<Double> amount(String question, Optional<Double> otherwise) {
        while (true) {
            String answer = lines.ask(
                            question, "An amount in your own currency, such as 120; Enter takes what stands there.")
                    .orElse("");
            if (answer.isEmpty()) {
                return otherwise;
            }
            Optional<Double> amount = Lines.number(answer);
            if (amount.isPresent()) {
                return amount;
            }
            page.text(0, "A number, please, such as 120.");
        }
    }
}
