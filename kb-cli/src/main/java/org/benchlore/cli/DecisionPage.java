package org.benchlore.cli;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.FixRecord;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.PowerHold;
import org.benchlore.kb.planning.Rate;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.planning.Worth;

/** Decisions as plain text. */
final class DecisionPage {
    private static final int SHIFTS = 2;

    /** A share that moves by less is not worth a line. */
    private static final double LEAST_SHIFT = 0.015;

    private final Page page;
    private final TestPage tests;
    private final Names names;
    private final PowerWords power;

    DecisionPage(Knowledge knowledge, Page page) {
        this.power = new PowerWords(knowledge, page);
        this.page = page;
        this.tests = new TestPage(knowledge, page);
        this.names = new Names(knowledge);
    }

    /** What to do now, and what it comes to without a further test. */
    void advice(NextStep next, double perMinute) {
        next.hold().ifPresent(power::full);
        if (!next.stopTesting()) {
            TestProposal first = next.tests().get(0);
            page.hanging(
                    0,
                    2,
                    say(
                            "%s: %s [%s] (%.0f min%s%s).",
                            safeFirst(next) ? "Do next, to make it safe" : "Do next",
                            first.test().name(),
                            first.test().id(),
                            first.minutes(),
                            TestPage.toOpen(first.openingMinutes()),
                            TestPage.saves(first)
                                    ? say("; saves about %.0f min of repair", first.savingMinutes())
                                    : ""));
        }
        next.repair()
                .ifPresentOrElse(
                        fix -> page.hanging(
                                0,
                                2,
                                say(
                                        "%s: %s (%.0f min%s, cures in %s of cases).%s",
                                        leading(next),
                                        names.fix(fix.fixId()),
                                        fix.minutes(),
                                        TestPage.toOpen(fix.openingMinutes()) + TestPage.parts(fix.priceMinutes()),
                                        Page.percent(fix.cures()),
                                        next.hold().isPresent() ? "" : untested(next, perMinute))),
                        () -> page.hanging(0, 2, withoutFix(next)));
        List<String> then = next.hold().map(PowerHold::fixesInOrder).orElse(List.of());
        if (then.size() > 1) {
            page.hanging(
                    0,
                    2,
                    "Then, for what keeps power off besides: "
                            + then.stream().skip(1).map(names::fix).collect(Collectors.joining("; then ")) + ".");
        }
        withheld(next.withheld());
    }

    /** What tools or accepted risk leave out, and what would let it in. */
    void withheld(List<NextStep.Withheld> fixes) {
        for (NextStep.Withheld fix : fixes) {
            page.hanging(
                    0,
                    2,
                    say(
                            "Left out %s, though it would cure in %s of cases: %s.",
                            fix.forRisk() ? "for its risk to the unit" + risk(fix.fixId()) : "for want of tools",
                            Page.percent(fix.cures()),
                            names.fix(fix.fixId())));
        }
    }

    private String risk(String fixId) {
        return names.knowledge()
                .fix(fixId)
                .map(fix -> " (--risk " + Page.words(fix.risk()) + " takes it in)")
                .orElse("");
    }

    private static String leading(NextStep next) {
        if (next.hold().isPresent()) {
            return next.stopTesting() ? "Do next, to make it safe" : "Without that look, what makes it safe";
        }
        if (next.testingGoesOn()) {
            return "Try first, since it is cheaper than any test, then test on";
        }
        return next.stopTesting()
                ? "Stop testing; trying the best fix is cheaper than any test"
                : "If you stop testing now, the best fix";
    }

    private static String untested(NextStep next, double perMinute) {
        return say(
                " Without a further test about %.0f min in all, parts counted%s.",
                next.minutesUntested(),
                perMinute == 1 ? "" : say(", a cost of %.0f", next.minutesUntested() * perMinute));
    }

    private static boolean safeFirst(NextStep next) {
        return next.hold()
                .filter(hold -> hold.firstTest().isPresent() || next.stopTesting())
                .isPresent();
    }

    private static String withoutFix(NextStep next) {
        if (next.hold().isPresent()) {
            return "No fix is tried while power is off: whether it helped, only power can tell."
                    + (next.stopTesting()
                            ? next.opening()
                                    .map(t -> " Without it this tells most per minute: "
                                            + t.test().name() + " [" + t.test().id() + "].")
                                    .orElse("")
                            : "");
        }
        if (!next.stopTesting()) {
            return "No fix is worth its time before that.";
        }
        return next.opening()
                .map(t -> "No single test or fix pays for itself yet. Begin with what tells most per minute: "
                        + t.test().name() + " [" + t.test().id() + "].")
                .orElse("No fix is worth its time as things stand.");
    }

    /** How to do a test. */
    void procedure(BenchTest test) {
        tests.full(test);
    }

    /** Says of a fix that nothing has failed yet that the plan goes on as if it had, and of a case that it is over. */
    void standing(CaseHistory history) {
        Outcome outcome = history.outcome();
        if (outcome != null && history.cure().isEmpty() && !history.unfinished()) {
            page.caution(
                    "This case has ended: " + Page.words(outcome) + ". What follows is for when it comes in again.");
        }
        if (outcome == Outcome.CAME_BACK) {
            page.caution("This unit came back: what was done before did not hold.");
        }
        history.cure()
                .ifPresent(f -> page.caution(
                        names.fix(f.fixId()) + " was done and nothing says yet that it failed. 'proof --case "
                                + history.id() + "' proves it; this here is for the case that it did not help."));
    }

    void results(TestProposal proposal) {
        if (TestPage.saves(proposal)) {
            page.text(
                    4,
                    say(
                            "saves about %.0f min of repair for its %.0f%s",
                            proposal.savingMinutes(), proposal.minutes(), TestPage.toOpen(proposal.openingMinutes())));
        }
        List<TestProposal.Result> telling =
                proposal.results().stream().filter(DecisionPage::tells).toList();
        for (TestProposal.Result result : telling) {
            page.hanging(
                    4,
                    8,
                    "- " + tests.state(result.symptomId(), result.stateId()) + " ("
                            + Page.percent(result.probability()) + "): "
                            + result.causes().stream()
                                    .limit(SHIFTS)
                                    .filter(s -> !Page.percent(s.before()).equals(Page.percent(s.after())))
                                    .map(s -> names.cause(s.causeId()) + " " + Page.percent(s.before()) + " -> "
                                            + Page.percent(s.after()))
                                    .collect(Collectors.joining("; ")));
        }
        int silent = proposal.results().size() - telling.size();
        if (silent > 0) {
            page.text(
                    4,
                    "- " + silent + (silent == 1 ? " other reading moves" : " other readings move") + " no cause much");
        }
    }

    /** Whether a reading moves one of the causes named with it by more than a point or so. */
    private static boolean tells(TestProposal.Result result) {
        return result.causes().stream().limit(SHIFTS).anyMatch(s -> Math.abs(s.after() - s.before()) > LEAST_SHIFT);
    }

    /**
     * @param aloneStated whether the value of the unit left alone was given; else it was taken to be 0
     */
    void worth(Worth worth, boolean aloneStated) {
        Worth.Choice best = worth.choices().get(0);
        page.heading("Best: " + words(best.action()));
        for (Worth.Choice choice : worth.choices()) {
            String low = say("%.0f", choice.low());
            String high = say("%.0f", choice.high());
            String range = low.equals(high) ? "" : " (" + low + " to " + high + ")";
            page.line(say("  %8.0f  %s%s", choice.expected(), words(choice.action()), range));
        }
        page.text(
                2,
                say(
                        "Reckoned with success %s and harm %s.",
                        Page.percent(worth.success()), Page.percent(worth.worse())));
        page.text(
                2,
                worth.flipsAt()
                        .filter(p -> p < 1)
                        .map(p -> say("The work pays above a success of %s.", Page.percent(p)))
                        .orElse("No chance of success changes that."));
        if (!aloneStated) {
            page.text(2, "Left alone it is taken to be worth 0; give --alone if it works as it is.");
        }
        double repaired = worth.sensitivity().get(0).now();
        String flips = worth.sensitivity().stream()
                .filter(s -> !s.input().equals("madeWorse") || s.flipsAt().orElse(0.0) <= repaired)
                .flatMap(s -> s.flipsAt().stream().map(at -> flip(s, at)))
                .collect(Collectors.joining("; "));
        if (!flips.isEmpty()) {
            page.hanging(2, 4, "It would turn over at: " + flips + ".");
        }
    }

    private static String flip(Worth.Sensitivity s, double at) {
        boolean share = s.input().equals("worse");
        String name = switch (s.input()) {
            case "repaired" -> "value repaired";
            case "leftAlone" -> "value left alone";
            case "madeWorse" -> "value made worse";
            case "worse" -> "chance of harm";
            default -> s.input();
        };
        return share
                ? say("%s %s (now %s)", name, Page.percent(at), Page.percent(s.now()))
                : say("%s %.0f (now %.0f)", name, at, s.now());
    }

    /** What is decided, as it follows "to". */
    static String words(Decision decision) {
        return switch (decision) {
            case WORK -> "do the work";
            case LEAVE -> "leave it as it is";
            case PARTS -> "take it for parts";
        };
    }

    void fixRecord(FixRecord r) {
        page.hanging(0, 2, names.fix(r.fixId()));
        page.line(say(
                "  tried %d, worked %d, came back %d, made worse %d",
                r.tried(), r.worked(), r.cameBack(), r.madeWorse()));
        if (r.tried() > 0) {
            page.text(
                    2,
                    say(
                            "held in %d of %d: works in %s to %s (90 %% sure); with the packs' opinion %s",
                            r.worked(),
                            r.tried(),
                            Page.percent(r.works().low()),
                            Page.percent(r.works().high()),
                            rate(r.believed())));
        } else {
            page.line("  with the packs' opinion it works in " + rate(r.believed()));
        }
        page.line(say(
                "  minutes: %s, packs say %.0f",
                r.medianMinutes().map(m -> say("median %.0f", m)).orElse("not kept"), r.packMinutes()));
    }

    private static String rate(Rate rate) {
        return say("%s (%s to %s)", Page.percent(rate.mean()), Page.percent(rate.low()), Page.percent(rate.high()));
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
