package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Device families: their names for generic symptoms, and their log lines. */
final class DeviceBinder {
    /** What the reader needs of a symptom that a log code stands for. */
    private static final List<String> CODE_STATES = List.of("absent", "once", "recurring");

    private final Catalogue catalogue;
    private final Map<String, Symptom> symptoms;
    private final Values values;
    private final Problems problems;

    DeviceBinder(Catalogue catalogue, Map<String, Symptom> symptoms, Values values, Problems problems) {
        this.catalogue = catalogue;
        this.symptoms = symptoms;
        this.values = values;
        this.problems = problems;
    }

    Device bind(Entry entry) {
        Fields fields = new Fields(entry.table(), entry.subject(), values, problems);
        fields.find("scope"); // judged when the entry was filed: its id is the scope
        DeviceScope scope = fields.has("scope") ? DeviceScope.parse(entry.id()) : DeviceScope.ANY;
        Device device = new Device(
                scope,
                fields.name("name"),
                entry.base().head().invented(),
                fields.find("opening").isPresent()
                        ? Optional.of(fields.number("opening", ActionBinder.MINUTES))
                        : Optional.empty(),
                ofClass(fields, "called", scope) ? fields.names("called") : List.of(),
                ofClass(fields, "called-first", scope) ? fields.names("called-first") : List.of(),
                ofClass(fields, "has", scope) ? fields.ids("has") : List.of(),
                nets(fields),
                lamps(fields),
                codes(fields),
                new LogLineBinder(values, problems).bind(fields),
                counters(fields));
        fields.find("from");
        fields.finish();
        return device;
    }

    /** Whether a key stands there and may. */
    private boolean ofClass(Fields fields, String key, DeviceScope scope) {
        boolean given = fields.find(key).isPresent();
        if (given && scope.depth() != 1) {
            problems.error(
                    fields.place(key),
                    fields.subject() + " is no class of devices, so it has no '" + key + "'",
                    "write it under a class, such as 'scope: tv'");
            return false;
        }
        return given;
    }

    private List<Device.Net> nets(Fields device) {
        List<Device.Net> nets = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Fields fields : device.tables("nets", "a net")) {
            String net = fields.name("net");
            once(seen, net, fields.place("net"), "net", device.subject());
            symptom(fields).ifPresent(symptom -> nets.add(new Device.Net(net, symptom.id())));
            fields.finish();
        }
        return nets;
    }

    private List<Device.Lamp> lamps(Fields device) {
        List<Device.Lamp> lamps = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Fields fields : device.tables("lamps", "a lamp")) {
            List<String> says = fields.requireTexts("says");
            says.forEach(phrase -> once(seen, phrase, fields.place("says"), "lamp phrase", device.subject()));
            Optional<Symptom> symptom = symptom(fields);
            String state = fields.name("state");
            symptom.filter(s -> stateOf(s, state, fields))
                    .ifPresent(s -> lamps.add(new Device.Lamp(says, s.id(), state)));
            fields.finish();
        }
        return lamps;
    }

    private boolean stateOf(Symptom symptom, String state, Fields fields) {
        return new StateValues(symptom, values, problems).known(state, fields.place("state"), fields.what("state"));
    }

    private List<Device.Code> codes(Fields device) {
        List<Device.Code> codes = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Fields fields : device.tables("codes", "a code")) {
            String code = fields.name("code");
            once(seen, code, fields.place("code"), "code", device.subject());
            List<String> spelled = fields.names("spelled");
            spelled.stream()
                    .filter(other -> !other.equals(code))
                    .forEach(other -> once(seen, other, fields.place("spelled"), "code", device.subject()));
            Optional<Symptom> symptom = symptom(fields);
            String means = fields.text("means");
            String innocent = fields.text("innocent", "");
            symptom.ifPresent(s -> {
                List<String> missing = CODE_STATES.stream()
                        .filter(state -> !s.states().isEmpty() && s.indexOf(state) < 0)
                        .toList();
                if (!missing.isEmpty()) {
                    problems.error(
                            fields.place("symptom"),
                            fields.what("symptom") + ": " + Problems.quote(s.id()) + " lacks the state"
                                    + (missing.size() > 1 ? "s " : " ") + String.join(", ", missing),
                            "use a symptom with the states absent, once, recurring");
                }
                codes.add(new Device.Code(code, spelled, s.id(), means, innocent));
            });
            fields.finish();
        }
        return codes;
    }

    private List<Device.Counter> counters(Fields device) {
        List<Device.Counter> counters = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Fields fields : device.tables("counters", "a counter")) {
            String counter = fields.name("counter");
            once(seen, counter, fields.place("counter"), "counter", device.subject());
            counters.add(new Device.Counter(counter, fields.choice("means", Device.Counter.Meaning.values())));
            fields.finish();
        }
        return counters;
    }

    private Optional<Symptom> symptom(Fields fields) {
        return fields.require("symptom")
                .flatMap(node -> catalogue.refer(EntryKind.SYMPTOM, node, fields.what("symptom")))
                .flatMap(id -> Optional.ofNullable(symptoms.get(id)));
    }

    private void once(Map<String, Place> seen, String name, Place place, String word, Object subject) {
        @Nullable Place first = name.isEmpty() ? null : seen.putIfAbsent(name, place);
        if (first != null) {
            problems.error(
                    place,
                    subject + " has the " + word + " " + Problems.quote(name) + " twice, first on line " + first.line(),
                    "keep one of them");
        }
    }
}
