package org.benchlore.cli;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.Plan;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.reading.Finding;

/**
 * The cautions under an answer, each once: in full those of what is to be done now and of what was found, by id those of what
 * may come later, so that a long answer stays one that is read.
 */
final class Cautions {
    private final Knowledge knowledge;
    private final Set<String> printed = new LinkedHashSet<>();
    private final Set<String> now = new LinkedHashSet<>();
    private final Set<String> later = new LinkedHashSet<>();

    Cautions(Knowledge knowledge) {
        this.knowledge = knowledge;
    }

    /**
     * Of what a step tells to do, then of what was found. A test printed in full has its own beside it.
     *
     * @param shown tests listed; of any, the first step's is printed in full
     */
    Cautions step(NextStep next, List<TestProposal> shown, List<Finding> findings) {
        next.first()
                .ifPresent(
                        p -> (shown.isEmpty() ? now : printed).addAll(p.test().cautions()));
        next.repair().ifPresent(fix -> (next.stopTesting() ? now : later).addAll(ofFix(fix.fixId())));
        shown.forEach(p -> later.addAll(p.test().cautions()));
        return found(findings);
    }

    /** Of the first step of a plan, then of what was found; those of its other steps come later. */
    Cautions plan(Plan plan, List<Finding> findings) {
        now.addAll(of(plan.root()));
        found(findings);
        plan.root().branches().forEach(b -> after(b.step()));
        return this;
    }

    private void after(Plan.Step step) {
        later.addAll(of(step));
        step.branches().forEach(b -> after(b.step()));
    }

    private List<String> of(Plan.Step step) {
        return switch (step.action()) {
            case TEST -> knowledge.test(step.id()).map(BenchTest::cautions).orElse(List.of());
            case FIX -> ofFix(step.id());
            case STOP, ASK_AGAIN -> List.of();
        };
    }

    private List<String> ofFix(String id) {
        return knowledge.fix(id).map(Fix::cautions).orElse(List.of());
    }

    /** Of the causes that a finding all but names, wherever they rank. */
    Cautions found(List<Finding> findings) {
        findings.stream()
                .flatMap(f -> f.likely().stream().flatMap(s -> knowledge.causesNamedBy(f.symptomId(), s).stream()))
                .forEach(c -> now.addAll(c.cautions()));
        return this;
    }

    Cautions cause(String id) {
        knowledge.cause(id).ifPresent(c -> now.addAll(c.cautions()));
        return this;
    }

    void print(Page page) {
        now.removeAll(printed);
        later.removeAll(printed);
        later.removeAll(now);
        if (now.isEmpty() && later.isEmpty()) {
            return;
        }
        page.blank();
        page.heading("Mind");
        now.stream().flatMap(id -> knowledge.caution(id).stream()).forEach(c -> page.caution(c.text()));
        Optional.of(String.join(", ", later))
                .filter(ids -> !ids.isEmpty())
                .ifPresent(ids -> page.hanging(2, 4, "Further cautions for what may follow, by 'show ID': " + ids));
    }
}
