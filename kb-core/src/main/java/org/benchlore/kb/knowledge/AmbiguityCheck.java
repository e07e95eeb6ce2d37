package org.benchlore.kb.knowledge;

import java.util.List;
import java.util.Map;

/** Ambiguity groups of the {@link DependencyMatrix}, but for causes that say themselves why no test tells them apart. */
final class AmbiguityCheck {
    private final Binding binding;
    private final Knowledge knowledge;
    private final Problems problems;

    AmbiguityCheck(Binding binding, Problems problems) {
        this.binding = binding;
        this.knowledge = binding.knowledge();
        this.problems = problems;
    }

    void run() {
        DependencyMatrix matrix = new DependencyMatrix(knowledge);
        List<Cause> open = knowledge.causes().stream()
                .filter(cause -> cause.alike().isEmpty() && !binding.damaged(EntryKind.CAUSE, cause.id()))
                .toList();
        matrix.ambiguityGroups(open).forEach(group -> report(matrix.row(group.get(0)), group));
    }

    private void report(Map<String, String> row, List<Cause> group) {
        String ids = String.join(", ", group.stream().map(Cause::id).toList());
        String shown = row.isEmpty() ? "nothing unusual" : String.join(", ", row.keySet());
        problems.warn(
                binding.place(EntryKind.CAUSE, group.get(0).id(), "id"),
                "no test tells these " + group.size() + " causes apart: " + ids + " (all show " + shown + ")",
                "add a test, or a link to a tested symptom in which they differ");
    }
}
