package org.benchlore.cli;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.PowerHold;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;

/** What the guided run shows between questions. */
final class WorkPage {
    private static final int TOP = 3;

    /** A finding this much against a cause that led this clearly is worth a second look. */
    private static final double AGAINST = -3;

    private static final double LED = 0.15;

    private final Knowledge knowledge;
    private final Page page;
    private final TestPage tests;
    /** Rules that forbid power, as they were last told at length. */
    private Set<String> told = Set.of();

    WorkPage(Knowledge knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
        this.tests = new TestPage(knowledge, page);
    }

    /** What the words were taken to mean, and what was not understood. */
    void understood(Reading reading) {
        ReadPage read = new ReadPage(knowledge, page);
        read.understood(reading, this::state);
        read.rest(reading);
    }

    void findings(List<Finding> findings) {
        findings.forEach(f -> page.hanging(2, 6, state(f)));
    }

    private String state(Finding finding) {
        return tests.finding(finding);
    }

    /** The leaders and where they came from. */
    void move(Ranking before, Ranking after) {
        for (int i = 0; i < Math.min(TOP, after.causes().size()); i++) {
            RankedCause cause = after.causes().get(i);
            line(String.format(Locale.ROOT, "%2d. ", i + 1), cause, share(before, cause.id()));
        }
        line("    ", after.unlisted(), before.unlisted().probability());
    }

    /** Says so where the cause that led has lost ground to what was found. */
    void against(Ranking before, Ranking after) {
        if (before.findings().isEmpty()) {
            return;
        }
        RankedCause leader = before.causes().get(0);
        double now = share(after, leader.id());
        Optional<Ranking.Evidence> worst = after.causes().stream()
                .filter(c -> c.id().equals(leader.id()))
                .flatMap(c -> c.evidence().stream())
                .filter(e -> e.decibans() <= AGAINST && !before.findings().contains(found(after, e)))
                .min(Comparator.comparingDouble(Ranking.Evidence::decibans));
        if (leader.probability() >= LED && now < leader.probability() && worst.isPresent()) {
            page.text(
                    0,
                    tests.state(worst.get().symptomId(), worst.get().stateId()) + " speaks against "
                            + leader.name() + " (" + Page.decibans(worst.get().decibans())
                            + "). 'doubt' takes a second look.");
        }
    }

    private static Finding found(Ranking ranking, Ranking.Evidence evidence) {
        return ranking.findings().stream()
                .filter(f -> f.symptomId().equals(evidence.symptomId()))
                .findFirst()
                .orElseThrow();
    }

    /** What the figures advise, in a sentence. */
    void advice(NextStep next) {
        next.hold().ifPresentOrElse(this::held, () -> told = Set.of());
        Optional<TestProposal> test =
                next.stopTesting() ? Optional.empty() : next.tests().stream().findFirst();
        String said = test.map(t -> String.format(
                        Locale.ROOT,
                        "Next: 'test' - %s, %.0f min%s%s.",
                        t.test().name(),
                        t.minutes(),
                        TestPage.toOpen(t.openingMinutes()),
                        TestPage.saves(t)
                                ? String.format(Locale.ROOT, ", saves about %.0f min", t.savingMinutes())
                                : ""))
                .or(() -> next.repair()
                        .map(r -> String.format(
                                Locale.ROOT,
                                fixFirst(next),
                                fix(r.fixId()),
                                r.minutes(),
                                TestPage.toOpen(r.openingMinutes()) + TestPage.parts(r.priceMinutes()),
                                Page.percent(r.cures()))))
                .or(() -> next.opening()
                        .map(t -> String.format(
                                Locale.ROOT,
                                next.hold().isPresent()
                                        ? "No fix is tried while power is off. 'test' - %s, %.0f min%s, tells most"
                                                + " without it."
                                        : "No single test or fix pays for itself yet. 'test' - %s, %.0f min%s, tells"
                                                + " most per minute.",
                                t.test().name(),
                                t.minutes(),
                                TestPage.toOpen(t.openingMinutes()))))
                .orElse(
                        next.hold().isPresent()
                                ? "Nothing known here can be done without power. 'doubt', or 'end'."
                                : "By the figures neither a test nor a fix known here is worth its time. 'doubt', or"
                                        + " 'end'.");
        page.hanging(0, 2, said);
    }

    private static String fixFirst(NextStep next) {
        String what = "'fix' - %s, %.0f min%s, cures in %s of cases";
        if (next.hold().isPresent()) {
            return "To make it safe: " + what + ". 'worth' weighs it.";
        }
        return next.testingGoesOn()
                ? "Try first: " + what
                        + "; no test is as cheap. If it does not help, 'proof' says so, and testing goes on."
                : "Stop testing: " + what + "; no test is worth its time. 'worth' weighs it.";
    }

    /** At length once, and in short as long as it stands. */
    private void held(PowerHold hold) {
        PowerWords power = new PowerWords(knowledge, page);
        Set<String> rules =
                hold.reasons().stream().map(PowerHold.Reason::ruleId).collect(Collectors.toSet());
        if (rules.equals(told)) {
            power.still(hold);
        } else {
            power.full(hold);
        }
        told = rules;
    }

    void standing(String fixId) {
        page.hanging(0, 2, "Done: " + fix(fixId) + ". 'proof' goes through what proves it, 'end' finishes the case.");
    }

    private String fix(String id) {
        return knowledge.fix(id).map(Fix::name).orElse(id);
    }

    private void line(String lead, RankedCause cause, double before) {
        String was = Page.percent(before);
        String is = Page.percent(cause.probability());
        page.hanging(
                lead + String.format(Locale.ROOT, "%5s  %s  ", is, Page.bar(cause.probability())),
                29,
                cause.name() + (was.equals(is) ? "" : " (was " + was + ")"));
    }

    private static double share(Ranking ranking, String causeId) {
        return ranking.causes().stream()
                .filter(c -> c.id().equals(causeId))
                .mapToDouble(RankedCause::probability)
                .findFirst()
                .orElse(0);
    }

    void numbered(List<String> items) {
        for (int i = 0; i < items.size(); i++) {
            page.hanging(String.format(Locale.ROOT, "%4d  ", i + 1), 6, items.get(i));
        }
    }
}
