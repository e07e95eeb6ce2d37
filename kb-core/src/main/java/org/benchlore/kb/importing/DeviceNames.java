package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.analysis.Token;

/**
 * Finds devices by the names that the packs give them: the name of a device pack, or the last step of a scope ("corvane-300"
 * is found as "Corvane 300"). The first name in a text counts; later ones only when they narrow it down, so that
 * "rev C" behind it does and a second device does not. Words for a kind of unit ("printer") name none: they are the reader's.
 */
final class DeviceNames {
    /**
     * A device named in a text.
     *
     * @param scope as narrow as it is named
     * @param places the words it was named by, in order
     */
    record Found(DeviceScope scope, List<Stretch> places) {}

    private final PhraseTable<List<DeviceScope>> names = new PhraseTable<>();

    /** Single words that are classes of devices; "display" in a sentence is mostly no device. */
    private final PhraseTable<DeviceScope> classes = new PhraseTable<>();

    DeviceNames(Knowledge knowledge) {
        List<Device> devices =
                knowledge.devices().stream().filter(d -> !d.onlyKind()).toList();
        TreeSet<DeviceScope> scopes = new TreeSet<>();
        devices.forEach(d -> scopes.addAll(d.scope().lineage()));
        knowledge.symptoms().forEach(s -> scopes.addAll(s.scope().lineage()));
        knowledge.causes().forEach(c -> scopes.addAll(c.scope().lineage()));
        scopes.remove(DeviceScope.ANY);
        Map<String, List<DeviceScope>> byName = new LinkedHashMap<>();
        for (Device device : devices) {
            String name = device.name().replaceAll("\\([^()]*\\)", " ").strip();
            byName.computeIfAbsent(name, n -> new ArrayList<>()).add(device.scope());
        }
        for (DeviceScope scope : scopes) {
            String step = scope.path().get(scope.depth() - 1).replace('-', ' ');
            if (scope.depth() == 1 && step.indexOf(' ') < 0) {
                classes.add(step, scope);
            } else {
                byName.computeIfAbsent(step, n -> new ArrayList<>()).add(scope);
            }
        }
        byName.forEach(names::add);
    }

    /**
     * The device that words name.
     *
     * @param words of the text, without punctuation
     * @param label whether the text is there to name the device, so that the word for a class of them counts too
     */
    Optional<Found> find(List<Token> words, boolean label) {
        DeviceScope scope = DeviceScope.ANY;
        List<Stretch> places = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            Optional<PhraseTable.Match<List<DeviceScope>>> match = names.longest(words, i);
            if (match.isEmpty()) {
                Optional<PhraseTable.Match<DeviceScope>> wide = classes.longest(words, i);
                if (label && scope.depth() == 0 && wide.isPresent()) {
                    scope = wide.get().value();
                }
                continue;
            }
            Optional<DeviceScope> narrower = narrower(match.get().value(), scope);
            if (narrower.isPresent()) {
                scope = narrower.get();
                places.add(new Stretch(
                        words.get(i).start(), words.get(match.get().to() - 1).end()));
            }
            i = match.get().to() - 1;
        }
        return scope.depth() == 0 ? Optional.empty() : Optional.of(new Found(scope, List.copyOf(places)));
    }

    /** The one scope of those given that lies within another; a revision needs its model named before. */
    private static Optional<DeviceScope> narrower(List<DeviceScope> given, DeviceScope within) {
        List<DeviceScope> fitting = given.stream()
                .filter(s -> within.contains(s) && !s.equals(within))
                .filter(s -> s.depth() < 4 || s.depth() == within.depth() + 1)
                .toList();
        return fitting.size() == 1 ? Optional.of(fitting.get(0)) : Optional.empty();
    }
}
