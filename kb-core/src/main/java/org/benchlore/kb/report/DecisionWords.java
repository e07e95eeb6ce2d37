package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Stakes;
import org.benchlore.kb.planning.BenchConditions;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.Plan;
import org.benchlore.kb.planning.TestPlanner;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.planning.Worth;

/**
 * What there was to decide at each step, as the figures say it: which test, or to stop testing and which fix, what was
 * weighed, and for an unfinished case the plan from here.
 */
record DecisionWords(CaseHistory history, Course course, TestPlanner planner, Terms terms, Readings readings) {
    /** Steps whose advice is worked out; of a longer case the last ones. */
    private static final int MOST_STEPS = 12;

    private static final int MOST_ACTIONS = 6;

    /** A section, or nothing where nothing was known or weighed. */
    List<Sheet.Block> blocks() {
        List<Sheet.Block> blocks = new ArrayList<>();
        List<List<String>> advice = advice();
        if (!advice.isEmpty()) {
            blocks.add(new Sheet.Table(List.of("After step", "What the figures advised", "Minutes to go"), advice));
        }
        List<String> said = new ArrayList<>();
        course.all(CaseEvent.Weighed.class).forEach((n, e) -> said.add("Step " + n + ", weighed: " + weighed(e)));
        if (history.unfinished()) {
            last().ifPresent(step -> said.addAll(plan(step)));
        }
        if (!said.isEmpty()) {
            blocks.add(new Sheet.Bullets(said));
        }
        if (!blocks.isEmpty()) {
            blocks.add(0, new Sheet.Section("Decisions"));
            blocks.add(new Sheet.Words(
                    "Reckoned with every tool at hand, medium risk to the unit at most, parts counted in"
                            + " minutes of their price, and a unit that stays unrepaired worth "
                            + Math.round(BenchConditions.DEFAULT.unsolvedCost())
                            + " minutes."));
        }
        return blocks;
    }

    private List<Course.Step> asked() {
        List<Course.Step> asked =
                course.steps().stream().filter(s -> s.query().isPresent()).toList();
        return asked.subList(Math.max(0, asked.size() - MOST_STEPS), asked.size());
    }

    private Optional<Course.Step> last() {
        return asked().stream().reduce((a, b) -> b);
    }

    private List<List<String>> advice() {
        List<List<String>> rows = new ArrayList<>();
        String before = "";
        for (Course.Step step : asked()) {
            NextStep next = planner.next(step.query().orElseThrow(), conditions(step));
            String advice = (next.hold().isPresent() ? "Power off. " : "") + advice(next);
            if (!advice.equals(before)) {
                double minutes = next.stopTesting()
                        ? next.minutesUntested()
                        : next.minutesUntested() - next.tests().get(0).netMinutes();
                rows.add(List.of(Integer.toString(step.number()), advice, Long.toString(Math.round(minutes))));
            }
            before = advice;
        }
        return rows;
    }

    private BenchConditions conditions(Course.Step step) {
        List<CaseEvent> soFar = course.steps().stream()
                .limit(step.number())
                .map(Course.Step::event)
                .toList();
        return BenchConditions.DEFAULT
                .afterFailing(step.done())
                .opened(planner.opened(soFar))
                .madeSafe(planner.madeSafe(soFar, readings::of));
    }

    private static String toOpen(double minutes) {
        return minutes == 0 ? "" : String.format(Locale.ROOT, " and %.0f to open it", minutes);
    }

    private static String parts(double minutes) {
        return minutes == 0 ? "" : String.format(Locale.ROOT, ", parts worth %.0f", minutes);
    }

    private String advice(NextStep next) {
        boolean held = next.hold().isPresent();
        if (!next.stopTesting()) {
            TestProposal test = next.tests().get(0);
            return String.format(
                    Locale.ROOT,
                    "Test: %s (%.0f minutes%s, saves %.0f minutes)",
                    test.test().name(),
                    test.minutes(),
                    toOpen(test.openingMinutes()),
                    test.savingMinutes());
        }
        return next.repair()
                .map(fix -> String.format(
                        Locale.ROOT,
                        (held
                                        ? "To make it safe"
                                        : next.testingGoesOn() ? "Try first, then test on" : "Stop testing and try")
                                + ": %s (%.0f minutes%s, cures in %s of cases)",
                        terms.fix(fix.fixId()),
                        fix.minutes(),
                        toOpen(fix.openingMinutes()) + parts(fix.priceMinutes()),
                        Terms.share(fix.cures())))
                .or(() -> next.opening()
                        .map(t -> (held ? "No fix without power" : "No single test or fix pays yet")
                                + "; tells most per minute: "
                                + t.test().name()))
                .orElse(
                        held
                                ? "Nothing known here can be done without power"
                                : "Stop: no test or fix known here is worth its minutes");
    }

    /** "New fuse: work 51, parts 15, leave 0 (success 62 %, harm 3 %); decided to do the work". */
    private String weighed(CaseEvent.Weighed event) {
        Stakes stakes = event.stakes();
        String choices = stakes == null
                ? ""
                : Worth.of(stakes, event.success(), event.worse()).choices().stream()
                        .map(c -> Terms.words(c.action()) + String.format(Locale.ROOT, " %.0f", c.expected()))
                        .collect(Collectors.joining(", ", ": ", ""));
        String decided = switch (event.decided()) {
            case WORK -> "decided to do the work";
            case LEAVE -> "decided to leave it as it is";
            case PARTS -> "decided to take it for parts";
        };
        return terms.fix(event.fixId()) + choices + " (success " + Terms.share(event.success()) + ", harm "
                + Terms.share(event.worse()) + "); " + decided
                + (event.note().isBlank()
                        ? "."
                        : ": " + Escape.clip(event.note().strip(), 300));
    }

    private List<String> plan(Course.Step step) {
        Plan plan = planner.plan(step.query().orElseThrow(), conditions(step));
        List<String> said = new ArrayList<>();
        if (plan.hold().isPresent()) {
            said.add("Power stays off: " + plan.hold().get().why() + ".");
            said.add("The plan from here: " + (end(plan.root()) ? "" : "first " + action(plan.root()) + "; ")
                    + "the rest is planned once power may come on.");
            return said;
        }
        said.add(String.format(
                Locale.ROOT,
                "The plan from here: about %.0f minutes, ends repaired in %s of cases; swapping by likelihood without"
                        + " a test %.0f, testing suspect by suspect %.0f.",
                plan.minutes(),
                Terms.share(plan.solved()),
                plan.swapByLikelihood(),
                plan.fixedOrderTesting()));
        List<String> course = new ArrayList<>();
        Optional<Plan.Step> at = Optional.of(plan.root());
        while (at.isPresent() && course.size() < MOST_ACTIONS && !end(at.get())) {
            Optional<Plan.Branch> branch =
                    at.get().branches().stream().max(Comparator.comparingDouble(Plan.Branch::probability));
            course.add(action(at.get()) + branch.map(this::reads).orElse(""));
            at = branch.map(Plan.Branch::step);
        }
        if (!course.isEmpty()) {
            said.add("Its likeliest course: " + String.join("; then ", course) + ".");
        }
        return said;
    }

    private static boolean end(Plan.Step step) {
        return step.action() == Plan.Action.STOP || step.action() == Plan.Action.ASK_AGAIN;
    }

    private String action(Plan.Step step) {
        return step.action() == Plan.Action.TEST ? "test: " + terms.test(step.id()) : "fix: " + terms.fix(step.id());
    }

    private String reads(Plan.Branch branch) {
        return branch.readings().stream()
                .limit(1)
                .map(r -> r.states().stream()
                        .map(s -> terms.symptom(s.symptomId()) + " " + terms.state(s.symptomId(), s.stateId()))
                        .collect(Collectors.joining(" and ", " (likeliest: ", ")")))
                .findFirst()
                .orElse(" (if it did not help)");
    }
}
