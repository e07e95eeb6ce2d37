package org.benchlore.kb.knowledge;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Whether causes need what some class of devices holds, classes hold what some cause needs, and no two are called alike. */
final class KindCheck {
    private final Binding binding;
    private final Knowledge knowledge;
    private final Problems problems;

    KindCheck(Binding binding, Problems problems) {
        this.binding = binding;
        this.knowledge = binding.knowledge();
        this.problems = problems;
    }

    void run() {
        if (knowledge.parts().isEmpty()) { // no pack tells of classes
            return;
        }
        Set<String> needed = new TreeSet<>();
        Set<String> told = new HashSet<>();
        for (Cause cause : knowledge.causes()) {
            needed.addAll(cause.needs());
            for (String part : cause.needs()) {
                Place place = place(cause);
                if (!knowledge.parts().contains(part) && told.add(place + " " + part)) {
                    problems.warn(
                            place,
                            "cause " + Problems.quote(cause.id()) + " needs " + Problems.quote(part)
                                    + ", which no class of devices has",
                            Nearest.remedy(part, knowledge.parts(), "name it under 'has' of the classes that hold it"));
                }
            }
        }
        Map<String, String> called = new HashMap<>();
        for (Device device : knowledge.devices()) {
            String id = device.scope().toString();
            for (String part : device.has()) {
                if (!needed.contains(part)) {
                    problems.warn(
                            binding.textPlace(EntryKind.DEVICE, id, "has", part),
                            "device " + Problems.quote(id) + " has " + Problems.quote(part) + ", which no cause needs",
                            Nearest.remedy(part, needed, "take it out"));
                }
            }
            for (String word : device.called()) {
                String other = called.putIfAbsent(word, id);
                if (other != null) {
                    problems.warn(
                            binding.textPlace(EntryKind.DEVICE, id, "called", word),
                            "devices " + Problems.quote(id) + " and " + Problems.quote(other) + " are both called "
                                    + Problems.quote(word),
                            "leave it with the more common one");
                }
            }
        }
    }

    /** Where the needs of a cause stand: with it, else at the top of its pack. */
    private Place place(Cause cause) {
        return binding.catalogue()
                .find(EntryKind.CAUSE, cause.id())
                .filter(entry -> !entry.table().fields().containsKey("needs"))
                .map(entry -> entry.base().place())
                .orElseGet(() -> binding.place(EntryKind.CAUSE, cause.id(), "needs"));
    }
}
