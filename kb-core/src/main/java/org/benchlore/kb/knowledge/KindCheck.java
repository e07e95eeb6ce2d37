package org.benchlore.kb.knowledge;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Whether entries need what some class of devices holds, classes hold what something needs, and no two are called alike. */
final class KindCheck {
    private final Binding binding;
    private final Knowledge knowledge;
    private final Problems problems;
    private final Set<String> needed = new TreeSet<>();
    private final Set<String> told = new HashSet<>();

    KindCheck(Binding binding, Problems problems) {
        this.binding = binding;
        this.knowledge = binding.knowledge();
        this.problems = problems;
    }

    void run() {
        if (knowledge.parts().isEmpty()) { // no pack tells of classes
            return;
        }
        knowledge.symptoms().forEach(symptom -> needs(EntryKind.SYMPTOM, symptom.id(), symptom.needs()));
        knowledge.causes().forEach(cause -> needs(EntryKind.CAUSE, cause.id(), cause.needs()));
        knowledge.tests().forEach(test -> needs(EntryKind.TEST, test.id(), test.needs()));
        knowledge.fixes().forEach(fix -> needs(EntryKind.FIX, fix.id(), fix.needs()));
        Map<String, String> called = new HashMap<>();
        for (Device device : knowledge.devices()) {
            String id = device.scope().toString();
            for (String part : device.has()) {
                if (!needed.contains(part)) {
                    problems.warn(
                            binding.textPlace(EntryKind.DEVICE, id, "has", part),
                            "device " + Problems.quote(id) + " has " + Problems.quote(part) + ", which nothing needs",
                            Nearest.remedy(part, needed, "take it out"));
                }
            }
            device.called().forEach(word -> called(called, id, "called", word));
            device.calledFirst().forEach(word -> called(called, id, "called-first", word));
        }
    }

    private void called(Map<String, String> called, String id, String key, String word) {
        String other = called.putIfAbsent(word, id);
        if (other != null) {
            problems.warn(
                    binding.textPlace(EntryKind.DEVICE, id, key, word),
                    "devices " + Problems.quote(id) + " and " + Problems.quote(other) + " are both called "
                            + Problems.quote(word),
                    "leave it with the more common one");
        }
    }

    private void needs(EntryKind kind, String id, List<String> parts) {
        needed.addAll(parts);
        for (String part : parts) {
            Place place = place(kind, id);
            if (!knowledge.parts().contains(part) && told.add(place + " " + part)) {
                problems.warn(
                        place,
                        kind.word + " " + Problems.quote(id) + " needs " + Problems.quote(part)
                                + ", which no class of devices has",
                        Nearest.remedy(part, knowledge.parts(), "name it under 'has' of the classes that hold it"));
            }
        }
    }

    /** Where the needs of an entry stand: with it, else at the top of its pack. */
    private Place place(EntryKind kind, String id) {
        return binding.catalogue()
                .find(kind, id)
                .filter(entry -> !entry.table().fields().containsKey("needs"))
                .map(entry -> entry.base().place())
                .orElseGet(() -> binding.place(kind, id, "needs"));
    }
}
