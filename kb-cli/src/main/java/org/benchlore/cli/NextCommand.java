package org.benchlore.cli;

import java.util.List;
import java.util.Optional;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.report.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Bench tests by what they save per minute, and when to stop testing. */
@Command(
        name = "next",
        description = "List the bench tests worth doing next, by minutes saved per minute, or say to stop testing.",
        mixinStandardHelpOptions = true)
final class NextCommand extends BenchCommand {
    @Mixin
    UnitOptions unit = new UnitOptions();

    @Mixin
    ConditionOptions conditions = new ConditionOptions();

    @Option(
            names = "--top",
            paramLabel = "N",
            defaultValue = "5",
            description = "Tests shown (default ${DEFAULT-VALUE}).")
    int top;

    NextCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        unit.require("next for");
        if (top < 1) {
            throw new UsageException("--top " + top + " shows nothing; give 1 or more");
        }
        try (KnowledgeBase kb = open()) {
            UnitOptions.Unit known = unit.unit(kb, this);
            NextStep next = kb.next(known.query(), conditions.conditions(kb, known));
            List<TestProposal> shown = next.inOrder(top);
            if (json) {
                bench.out().println(Json.next(next.showing(shown)));
            } else {
                print(kb, known, next, shown);
            }
            return shown.isEmpty() && next.repair().isEmpty() ? ExitCode.NOTHING_FOUND : ExitCode.DONE;
        }
    }

    private void print(KnowledgeBase kb, UnitOptions.Unit known, NextStep next, List<TestProposal> shown) {
        Page page = bench.page();
        DecisionPage decisions = new DecisionPage(kb.knowledge(), page);
        known.history().ifPresent(decisions::standing);
        decisions.advice(next, conditions.perMinute);
        if (next.first().isPresent() && !shown.isEmpty()) {
            page.blank();
            decisions.procedure(shown.get(0).test());
        }
        TestPage tests = new TestPage(kb.knowledge(), page);
        List<TestProposal> listed = shown.stream()
                .filter(t -> next.first().equals(Optional.of(t)) || TestPage.saves(t))
                .toList();
        int place = 1;
        for (TestProposal proposal : listed) {
            page.blank();
            tests.summary(place++, proposal);
            decisions.results(proposal);
        }
        if (listed.size() < shown.size()) {
            page.blank();
            page.text(0, listed.isEmpty() ? "Nothing more is worth testing." : "Further tests would save no repair.");
        }
        if (next.tests().isEmpty()) {
            page.text(0, "No test within these tools and this risk can tell more.");
        }
        new Cautions(kb.knowledge()).step(next, shown, known.query().findings()).print(page);
    }
}
