package org.benchlore.kb.knowledge;

import java.util.HashSet;
import java.util.Set;

/** Entries that no diagnosis can lead to. */
final class ReachCheck {
    private final Binding binding;
    private final Knowledge knowledge;
    private final Problems problems;

    ReachCheck(Binding binding, Problems problems) {
        this.binding = binding;
        this.knowledge = binding.knowledge();
        this.problems = problems;
    }

    void run() {
        for (Symptom symptom : knowledge.symptoms()) {
            if (knowledge.causesShowing(symptom.id()).isEmpty()) {
                warn(EntryKind.SYMPTOM, symptom.id(), "is explained by no cause", "link it under 'shows' of a cause");
            }
        }
        Set<String> confirming = new HashSet<>();
        knowledge.causes().forEach(cause -> confirming.addAll(cause.confirmedBy()));
        for (BenchTest test : knowledge.tests()) {
            boolean tells = test.reveals().stream()
                    .anyMatch(symptom -> !knowledge.causesShowing(symptom).isEmpty());
            if (!tells && !confirming.contains(test.id()) && !binding.damaged(EntryKind.TEST, test.id())) {
                warn(
                        EntryKind.TEST,
                        test.id(),
                        "is unreachable: no cause is confirmed by it or shows what it reveals",
                        "name it under 'confirmed-by' of a cause");
            }
        }
        for (Fix fix : knowledge.fixes()) {
            if (knowledge.causesFixedBy(fix.id()).isEmpty()) {
                warn(
                        EntryKind.FIX,
                        fix.id(),
                        "is unreachable: no cause is fixed by it",
                        "name it under 'fixed-by' of a cause");
            }
        }
    }

    private void warn(EntryKind kind, String id, String what, String remedy) {
        problems.warn(binding.place(kind, id, kind.idKey), kind.word + " " + Problems.quote(id) + " " + what, remedy);
    }
}
