package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Symptoms from their entries and the state sets they use. */
final class SymptomBinder {
    private static final List<String> UNITS = List.of("V", "A", "W", "ohm", "Hz", "degC", "h", "F", "s", "%", "1");
    private static final double WHOLE = 100;

    private final Catalogue catalogue;
    private final Map<String, StateList> sets;
    private final Origins origins;
    private final Values values;
    private final Problems problems;

    SymptomBinder(Catalogue catalogue, Map<String, StateList> sets, Origins origins, Values values, Problems problems) {
        this.catalogue = catalogue;
        this.sets = sets;
        this.origins = origins;
        this.values = values;
        this.problems = problems;
    }

    Symptom bind(Entry entry) {
        Subject subject = entry.subject();
        Fields fields = new Fields(entry.table(), subject, values, problems);
        fields.find("id");
        String name = fields.name("name");
        String about = fields.text("about");
        Symptom.Reported reported = fields.choice("reported", Symptom.Reported.values());
        Quantity quantity =
                fields.find("quantity").map(node -> quantity(node, entry)).orElse(null);
        fields.require("called");
        List<String> called = fields.names("called");
        StateList list = states(fields, subject);
        Map<String, Double> usual = usual(fields, list, subject);
        Map<String, List<String>> phrases = phrases(fields, list, subject);
        Map<String, Range> ranges = quantity == null
                ? noRanges(fields, list, subject)
                : new RangeBinder(subject, quantity, problems).bind(list, fields.place("states"));
        List<State> states = list.states().values().stream()
                .map(draft -> new State(
                        draft.id(),
                        draft.name(),
                        draft.normal(),
                        usual.getOrDefault(draft.id(), Values.STAND_IN),
                        ranges.get(draft.id()),
                        draft.words(),
                        phrases.getOrDefault(draft.id(), List.of()),
                        draft.opposite()))
                .toList();
        Symptom symptom = new Symptom(
                entry.id(),
                name,
                about,
                fields.scope(entry.base().scope()),
                reported,
                quantity,
                called,
                states,
                state(fields, "negated", list),
                state(fields, "bare", list),
                fields.flag("history"),
                fields.ids("needs"));
        fields.find("from");
        fields.finish();
        return symptom;
    }

    private @Nullable Quantity quantity(YamlNode node, Entry entry) {
        Optional<Fields> found = Fields.of(node, Subject.of("the quantity of ", entry.subject()), values, problems);
        if (found.isEmpty()) {
            return null;
        }
        Fields fields = found.get();
        String unit = fields.name("unit");
        if (!unit.isEmpty() && !UNITS.contains(unit)) {
            problems.error(
                    fields.place("unit"),
                    fields.what("unit") + " is " + Problems.quote(unit),
                    Nearest.remedy(unit, UNITS, "choose from " + String.join(", ", UNITS)));
        }
        Double nominal = fields.find("nominal")
                .map(n -> values.number(n, fields.what("nominal"), Values.Span.ANY, 1))
                .orElse(null);
        if (nominal != null && nominal == 0) {
            problems.error(
                    fields.place("nominal"), fields.what("nominal") + " is 0", "leave it out and write plain ranges");
            nominal = 1.0;
        }
        double tolerance = 0;
        if (nominal != null) {
            tolerance = fields.require("tolerance").map(n -> percent(n, fields)).orElse(0.0);
        } else if (fields.find("tolerance").isPresent()) {
            problems.error(
                    fields.place("tolerance"),
                    fields.subject() + " has a tolerance but no nominal value",
                    "add 'nominal', or take the tolerance out");
        }
        boolean written = fields.flag("written");
        Provenance from = origins.of(entry, fields);
        fields.finish();
        return new Quantity(unit, nominal, tolerance, written, from);
    }

    private double percent(YamlNode node, Fields fields) {
        String written = values.text(node, fields.what("tolerance"), Values.MAX_NAME);
        if (!written.endsWith("%")) {
            if (!written.isEmpty()) {
                problems.error(
                        node.place(),
                        fields.what("tolerance") + " is " + Problems.quote(written),
                        "write it in percent of nominal, as in 5%");
            }
            return 0;
        }
        String number = written.substring(0, written.length() - 1).strip();
        double percent = values.number(
                new YamlNode.Text(node.place(), number, true), fields.what("tolerance"), Values.Span.ANY, WHOLE);
        if (!(percent > 0 && percent < WHOLE)) {
            problems.error(
                    node.place(),
                    fields.what("tolerance") + " is " + Problems.quote(written),
                    "write more than 0% and less than 100%; for a quantity without a normal value leave 'nominal' and"
                            + " 'tolerance' out and write plain ranges");
            return 0;
        }
        return percent / WHOLE;
    }

    private StateList states(Fields fields, Object subject) {
        Optional<YamlNode> node = fields.require("states");
        if (node.isPresent() && node.get() instanceof YamlNode.Text) {
            return catalogue
                    .refer(EntryKind.STATE_SET, node.get(), fields.what("states"))
                    .flatMap(id -> Optional.ofNullable(sets.get(id)))
                    .orElse(StateList.NONE);
        }
        return node.map(list -> StateList.bind(list, subject, values, problems)).orElse(StateList.NONE);
    }

    /** Backgrounds, normalised; from the symptom's own {@code usual} if it has one, else from the states. */
    private Map<String, Double> usual(Fields fields, StateList list, Object subject) {
        Map<String, Double> usual = new LinkedHashMap<>();
        if (fields.has("usual")) {
            Map<String, YamlNode.Field> own = fields.nested("usual");
            new StateValues(list, values, problems)
                    .read(own, fields.what("usual"))
                    .forEach(usual::put);
            boolean whole = !list.states().isEmpty() && usual.size() == own.size();
            for (String state : list.states().keySet()) {
                if (whole && !own.containsKey(state)) {
                    problems.error(
                            fields.place("usual"),
                            fields.what("usual") + " leaves out the state " + Problems.quote(state),
                            "name every state, summing to 1");
                }
            }
            double sum = sum(usual);
            if (whole && usual.keySet().equals(list.states().keySet()) && Math.abs(sum - 1) > StateList.SUM_TOLERANCE) {
                problems.error(
                        fields.place("usual"),
                        fields.what("usual") + " sums to " + Problems.plain(sum),
                        "make it sum to 1");
            }
        } else {
            for (StateList.Draft draft : list.states().values()) {
                Double own = draft.usual();
                if (own == null) {
                    problems.error(
                            fields.place("states"),
                            subject + ": its state " + Problems.quote(draft.id()) + " has no 'usual'",
                            "say how often a unit shows it when nothing is known, there or under 'usual' here");
                } else {
                    usual.put(draft.id(), own);
                }
            }
        }
        return normalised(usual);
    }

    private static double sum(Map<String, Double> shares) {
        return shares.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    private static Map<String, Double> normalised(Map<String, Double> shares) {
        double sum = sum(shares);
        Map<String, Double> normalised = new HashMap<>();
        // One state alone, already reported, would get the whole, which no state can have.
        shares.forEach((state, share) -> normalised.put(state, shares.size() == 1 ? share : share / sum));
        return normalised;
    }

    private Map<String, List<String>> phrases(Fields fields, StateList list, Object subject) {
        Map<String, List<String>> phrases = new HashMap<>();
        fields.nested("phrases").forEach((state, field) -> {
            Subject what = Subject.of(subject, ": the phrases for ", Subject.quoted(state));
            if (new StateValues(list, values, problems).known(state, field.key(), fields.what("phrases"))) {
                phrases.put(state, values.texts(field.value(), what, Values.MAX_NAME));
            }
        });
        return phrases;
    }

    private Map<String, Range> noRanges(Fields fields, StateList list, Object subject) {
        List<String> ranged = new ArrayList<>();
        list.states().values().stream().filter(d -> d.range() != null).forEach(d -> ranged.add(d.id()));
        if (!ranged.isEmpty() && !fields.has("quantity")) {
            problems.error(
                    fields.place("states"),
                    subject + " has ranges (" + String.join(", ", ranged) + ") but no quantity",
                    "add 'quantity', or take the ranges out");
        }
        return Map.of();
    }

    private @Nullable String state(Fields fields, String key, StateList list) {
        Optional<YamlNode> node = fields.find(key);
        if (node.isEmpty()) {
            return null;
        }
        String id = values.text(node.get(), fields.what(key), Values.MAX_NAME);
        return new StateValues(list, values, problems).known(id, node.get().place(), fields.what(key)) ? id : null;
    }
}
