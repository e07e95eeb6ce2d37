package org.benchlore.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.Plan;
import org.benchlore.kb.planning.PowerHold;
import org.benchlore.kb.reading.Finding;

/** A plan as an indented tree, with what it costs beside simpler ways. */
final class PlanPage {
    private final Knowledge knowledge;
    private final Page page;
    private final TestPage tests;
    private final Names names;

    PlanPage(Knowledge knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
        this.tests = new TestPage(knowledge, page);
        this.names = new Names(knowledge);
    }

    /**
     * @param findings what is known of the unit
     */
    void print(Plan plan, List<Finding> findings) {
        plan.hold().ifPresentOrElse(hold -> unpowered(plan.root(), hold), () -> whole(plan));
        new DecisionPage(knowledge, page).withheld(plan.withheld());
        new Cautions(knowledge).plan(plan, findings).print(page);
    }

    /** The one step that comes before all others while power is off. */
    private void unpowered(Plan.Step first, PowerHold hold) {
        page.heading("Plan while power stays off");
        new PowerWords(knowledge, page).full(hold);
        switch (first.action()) {
            case TEST -> page.hanging(0, 2, test(first));
            case FIX -> page.hanging(0, 2, fix(first, ""));
            case STOP, ASK_AGAIN -> page.text(0, "Nothing known here can be done without power.");
        }
        page.text(0, "The rest is planned once power may come on.");
    }

    private void whole(Plan plan) {
        page.heading(say(
                "Plan: about %.0f min in all, parts counted; ends repaired in %s of cases",
                plan.minutes(), Page.percent(plan.solved())));
        step(plan.root(), 0);
        page.blank();
        page.heading("Expected minutes, parts and an unrepaired unit counted at their cost");
        page.line(say("  %5.0f  this plan", plan.minutes()));
        page.line(say("  %5.0f  swapping by likelihood, no test", plan.swapByLikelihood()));
        page.line(say("  %5.0f  testing suspect by suspect in fixed order", plan.fixedOrderTesting()));
        page.line(say("  %5.0f  the best order of fixes, no test", plan.repairsOnly()));
        page.text(
                2,
                plan.orderIsOptimal()
                        ? "That order is the best there is: each of these fixes is for one cause, and nothing is"
                                + " shared between them."
                        : "Fixes share causes or the opening of the unit, so that order is good but not proven best.");
    }

    private String test(Plan.Step step) {
        return say(
                "TEST %s [%s], %.0f min%s",
                knowledge.test(step.id()).map(BenchTest::name).orElse(step.id()),
                step.id(),
                step.minutes(),
                TestPage.toOpen(step.openingMinutes()));
    }

    private String fix(Plan.Step step, String here) {
        return say(
                "FIX %s, %.0f min%s, cures in %s of cases%s",
                names.fix(step.id()),
                step.minutes(),
                TestPage.toOpen(step.openingMinutes()) + TestPage.parts(step.priceMinutes()),
                Page.percent(step.cures().orElse(0.0)),
                here);
    }

    private void step(Plan.Step step, int indent) {
        String here = say(" (now: %s %s)", names.cause(step.leadingCause()), Page.percent(step.leading()));
        switch (step.action()) {
            case STOP -> page.hanging(indent, indent + 2, "STOP: what is left is not worth its minutes");
            case ASK_AGAIN -> page.hanging(indent, indent + 2, "ask again with what is known by then" + here);
            case FIX -> page.hanging(indent, indent + 2, fix(step, here));
            case TEST -> page.hanging(indent, indent + 2, test(step));
        }
        if (step.action() == Plan.Action.TEST
                && step.branches().stream().allMatch(b -> b.step().action() == Plan.Action.ASK_AGAIN)) {
            page.text(indent + 2, "then ask again with what it shows");
            return;
        }
        List<Plan.Branch> branches = new ArrayList<>(step.branches());
        Optional<Plan.Branch> rest = remainder(branches);
        rest.ifPresent(branch -> {
            branches.remove(branch);
            branches.add(branch);
        });
        for (Plan.Branch branch : branches) {
            if (branch.readings().isEmpty()) {
                page.hanging(indent, indent + 2, say("still there (%s):", Page.percent(branch.probability())));
                step(branch.step(), indent);
            } else {
                page.hanging(
                        indent + 2,
                        indent + 4,
                        say(
                                "- %s (%s):",
                                rest.filter(branch::equals).isPresent() ? "anything else" : readings(branch),
                                Page.percent(branch.probability())));
                step(branch.step(), indent + 4);
            }
        }
    }

    /** The branch of the most readings, where they are too many to tell and others come before it. */
    private static Optional<Plan.Branch> remainder(List<Plan.Branch> branches) {
        return branches.stream()
                .max(Comparator.comparingInt(b -> b.readings().size()))
                .filter(b -> branches.size() > 1
                        && b.readings().size() > 1
                        && together(b).isEmpty());
    }

    /** Per symptom its states, where the readings are all combinations of them; else empty. */
    private static Map<String, Set<String>> together(Plan.Branch branch) {
        Map<String, Set<String>> states = new LinkedHashMap<>();
        branch.readings().stream()
                .flatMap(r -> r.states().stream())
                .forEach(s -> states.computeIfAbsent(s.symptomId(), id -> new LinkedHashSet<>())
                        .add(s.stateId()));
        long combinations = states.values().stream().mapToLong(Set::size).reduce(1, (a, b) -> a * b);
        return combinations == branch.readings().size() ? states : Map.of();
    }

    private String readings(Plan.Branch branch) {
        Map<String, Set<String>> together = together(branch);
        if (!together.isEmpty()) {
            return together.entrySet().stream()
                    .map(e -> tests.states(e.getKey(), e.getValue()))
                    .collect(Collectors.joining(", and "));
        }
        List<String> readings = branch.readings().stream()
                .map(r -> r.states().stream()
                        .map(s -> tests.state(s.symptomId(), s.stateId()))
                        .collect(Collectors.joining(" and ")))
                .toList();
        return readings.size() > 3
                ? String.join("; or ", readings.subList(0, 2)) + "; or " + (readings.size() - 2) + " other readings"
                : String.join("; or ", readings);
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
