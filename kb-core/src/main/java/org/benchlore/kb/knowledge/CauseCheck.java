package org.benchlore.kb.knowledge;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Whether each cause can be recognised: enough findings for and against it, and a test that could confirm it. */
final class CauseCheck {
    /** A state speaks when the cause raises its odds over the background by half; about 1.8 decibans. */
    private static final double CLEARLY = 1.5;

    private static final int FINDINGS_FOR = 3;

    private final Binding binding;
    private final Knowledge knowledge;
    private final Problems problems;

    CauseCheck(Binding binding, Problems problems) {
        this.binding = binding;
        this.knowledge = binding.knowledge();
        this.problems = problems;
    }

    void run() {
        for (Cause cause : knowledge.causes()) {
            if (!binding.damaged(EntryKind.CAUSE, cause.id())) {
                checkFindings(cause);
                checkTests(cause);
            }
        }
    }

    private void checkFindings(Cause cause) {
        String subject = "cause " + Problems.quote(cause.id());
        Place place = binding.place(EntryKind.CAUSE, cause.id(), "shows");
        Set<String> speaking = symptomsFor(cause);
        if (speaking.size() < FINDINGS_FOR) {
            problems.warn(
                    place,
                    subject + " has " + speaking.size() + " finding" + (speaking.size() == 1 ? "" : "s")
                            + " that speak for it",
                    "link at least " + FINDINGS_FOR + " symptoms with an abnormal state clearly above its background");
        }
        boolean against = cause.shows().stream()
                .anyMatch(link -> knowledge
                        .symptom(link.symptomId())
                        .filter(symptom -> speaksAgainst(link, symptom))
                        .isPresent());
        if (!against) {
            problems.warn(
                    place,
                    subject + " has no finding that speaks against it",
                    "link a symptom whose normal state it leaves clearly above its background");
        }
    }

    private void checkTests(Cause cause) {
        String subject = "cause " + Problems.quote(cause.id());
        if (cause.confirmedBy().isEmpty()) {
            problems.warn(
                    binding.place(EntryKind.CAUSE, cause.id(), "confirmed-by"),
                    subject + " has no test that could confirm it",
                    "name one under 'confirmed-by'");
        }
        Set<String> speaking = symptomsRaised(cause);
        for (String testId : cause.confirmedBy()) {
            List<String> reveals =
                    knowledge.test(testId).map(BenchTest::reveals).orElse(List.of());
            boolean sound = !binding.damaged(EntryKind.TEST, testId);
            if (sound && !speaking.isEmpty() && reveals.stream().noneMatch(speaking::contains)) {
                problems.warn(
                        binding.textPlace(EntryKind.CAUSE, cause.id(), "confirmed-by", testId),
                        subject + ": test " + Problems.quote(testId) + " reveals no symptom that speaks for it ("
                                + String.join(", ", reveals) + ")",
                        "link one of those symptoms, or name another test");
            }
        }
    }

    private Set<String> symptomsFor(Cause cause) {
        return cause.shows().stream()
                .filter(link -> knowledge
                        .symptom(link.symptomId())
                        .filter(symptom -> speaksFor(link, symptom))
                        .isPresent())
                .map(Link::symptomId)
                .collect(Collectors.toCollection(HashSet::new));
    }

    /** A cause is also confirmed by what is found sound: main rails that come up when forced accuse the controller. */
    private Set<String> symptomsRaised(Cause cause) {
        Set<String> raised = symptomsFor(cause);
        cause.shows().stream()
                .filter(link -> knowledge
                        .symptom(link.symptomId())
                        .filter(symptom -> speaksAgainst(link, symptom))
                        .isPresent())
                .forEach(link -> raised.add(link.symptomId()));
        return raised;
    }

    /** Whether some abnormal state is clearly more likely under the cause than in general. */
    private static boolean speaksFor(Link link, Symptom symptom) {
        return symptom.states().stream().anyMatch(state -> !state.normal() && raised(link, state));
    }

    /** Whether the normal state is, so that an abnormal one argues against the cause. */
    private static boolean speaksAgainst(Link link, Symptom symptom) {
        return symptom.states().stream().anyMatch(state -> state.normal() && raised(link, state));
    }

    /** Whether the cause makes a state clearly more likely than it is in a unit at large. */
    static boolean raised(Link link, State state) {
        double share = link.states().getOrDefault(state.id(), state.usual());
        return odds(share) >= CLEARLY * odds(state.usual());
    }

    private static double odds(double share) {
        return share / (1 - share);
    }
}
