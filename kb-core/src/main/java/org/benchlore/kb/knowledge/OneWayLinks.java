package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.knowledge.QualityReport.OneWayLink;

/**
 * Places where one entry speaks of another that does not answer: symptoms that no test reads or no cause shows, states that
 * no cause brings about or no test explains, tests that confirm a cause and are silent on the state it shows, entries that
 * nothing names. The normal state needs no cause, and no explanation.
 */
final class OneWayLinks {
    private final Knowledge knowledge;
    private final List<OneWayLink> links = new ArrayList<>();

    OneWayLinks(Knowledge knowledge) {
        this.knowledge = knowledge;
    }

    List<OneWayLink> find() {
        knowledge.symptoms().forEach(this::symptom);
        knowledge.causes().forEach(this::cause);
        unnamed();
        return links;
    }

    private void symptom(Symptom symptom) {
        List<BenchTest> tests = knowledge.testsRevealing(symptom.id());
        List<Cause> causes = knowledge.causesShowing(symptom.id());
        if (tests.isEmpty()) {
            add(EntryKind.SYMPTOM, symptom.id(), "is read by no test");
        }
        if (causes.isEmpty()) {
            add(EntryKind.SYMPTOM, symptom.id(), "is explained by no cause");
        }
        for (State state : symptom.states()) {
            if (!state.normal() && !causes.isEmpty() && causes.stream().noneMatch(c -> raises(c, symptom, state))) {
                add(EntryKind.SYMPTOM, symptom.id(), "has the state '" + state.id() + "', which no cause brings about");
            }
            if (!state.normal()
                    && !tests.isEmpty()
                    && tests.stream().noneMatch(t -> explains(t, symptom, state.id()))) {
                add(EntryKind.SYMPTOM, symptom.id(), "has the state '" + state.id() + "', which no test explains");
            }
        }
    }

    private static boolean raises(Cause cause, Symptom symptom, State state) {
        return cause.link(symptom.id())
                .filter(link -> CauseCheck.raised(link, state))
                .isPresent();
    }

    private static boolean explains(BenchTest test, Symptom symptom, String stateId) {
        return test.readings().stream()
                .anyMatch(r -> r.symptomId().equals(symptom.id()) && r.stateId().equals(stateId));
    }

    /** What a confirming test reads under the cause is what it should speak of first. */
    private void cause(Cause cause) {
        for (String testId : cause.confirmedBy()) {
            knowledge
                    .test(testId)
                    .ifPresent(test -> cause.shows().stream()
                            .filter(link -> test.reveals().contains(link.symptomId()))
                            .forEach(link -> knowledge.symptom(link.symptomId()).ifPresent(symptom -> {
                                String expected = DependencyMatrix.likeliest(symptom, link.states());
                                if (!symptom.normal().id().equals(expected) && !explains(test, symptom, expected)) {
                                    add(
                                            EntryKind.TEST,
                                            test.id(),
                                            "does not say what '" + symptom.id() + " " + expected
                                                    + "' means, which cause '" + cause.id() + "' is to be known by");
                                }
                            })));
        }
    }

    private void unnamed() {
        Set<String> cautions = new HashSet<>();
        Set<String> confirming = new HashSet<>();
        knowledge.causes().forEach(cause -> {
            cautions.addAll(cause.cautions());
            confirming.addAll(cause.confirmedBy());
        });
        knowledge.fixes().forEach(fix -> cautions.addAll(fix.cautions()));
        for (BenchTest test : knowledge.tests()) {
            cautions.addAll(test.cautions());
            boolean tells = test.reveals().stream()
                    .anyMatch(symptom -> !knowledge.causesShowing(symptom).isEmpty());
            if (!tells && !confirming.contains(test.id())) {
                add(EntryKind.TEST, test.id(), "reads nothing that a cause shows");
            }
        }
        for (Fix fix : knowledge.fixes()) {
            if (knowledge.causesFixedBy(fix.id()).isEmpty()) {
                add(EntryKind.FIX, fix.id(), "fixes no cause");
            }
        }
        for (Caution caution : knowledge.cautions()) {
            if (!cautions.contains(caution.id())) {
                add(EntryKind.CAUTION, caution.id(), "is named by no entry");
            }
        }
    }

    private void add(EntryKind kind, String id, String what) {
        links.add(new OneWayLink(kind, id, what));
    }
}
