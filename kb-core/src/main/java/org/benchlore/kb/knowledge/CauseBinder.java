package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Causes with their links and remedies. */
final class CauseBinder {
    private static final Values.Span PER_THOUSAND = new Values.Span(0, 1000, true);
    private static final double FREQUENCY_CASES = 20;
    private static final double OPINION_CASES = 4;

    private final Catalogue catalogue;
    private final Map<String, Symptom> symptoms;
    private final Origins origins;
    private final Values values;
    private final Problems problems;

    /** By symptom. */
    private final Map<String, StateValues> tables = new HashMap<>();

    CauseBinder(Catalogue catalogue, Map<String, Symptom> symptoms, Origins origins, Values values, Problems problems) {
        this.catalogue = catalogue;
        this.symptoms = symptoms;
        this.origins = origins;
        this.values = values;
        this.problems = problems;
    }

    Cause bind(Entry entry) {
        Fields fields = new Fields(entry.table(), entry.subject(), values, problems);
        fields.find("id");
        fields.find("from");
        Cause cause = new Cause(
                entry.id(),
                fields.name("name"),
                fields.choice("kind", Cause.Kind.values()),
                fields.names("aliases"),
                fields.texts("told"),
                fields.text("about"),
                fields.scope(entry.base().scope()),
                fields.number("per-thousand", PER_THOUSAND),
                fields.number("cases", Values.Span.CASES, FREQUENCY_CASES),
                origins.of(entry, entry.place("per-thousand")),
                links(entry, fields),
                catalogue.referAll(EntryKind.TEST, fields, "confirmed-by"),
                remedies(entry, fields),
                catalogue.referAll(EntryKind.CAUTION, fields, "cautions"),
                fields.texts("fools"),
                fields.text("alike", ""),
                fields.has("needs") ? fields.ids("needs") : entry.base().needs());
        fields.finish();
        return cause;
    }

    private List<Link> links(Entry entry, Fields cause) {
        List<Link> links = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Fields fields : cause.tables("shows", "a link")) {
            Optional<String> id = fields.require("symptom")
                    .flatMap(node -> catalogue.refer(EntryKind.SYMPTOM, node, fields.what("symptom")));
            Place first = id.map(symptom -> seen.putIfAbsent(symptom, fields.place("symptom")))
                    .orElse(null);
            if (first != null) {
                problems.error(
                        fields.place("symptom"),
                        entry.subject() + " names the symptom " + Problems.quote(id.orElse(""))
                                + " twice, first on line " + first.line(),
                        "put its states into one link");
            }
            id.map(symptoms::get).ifPresent(symptom -> links.add(link(entry, fields, symptom)));
            fields.find("states");
            fields.find("cases");
            fields.find("from");
            fields.finish();
        }
        return links;
    }

    private Link link(Entry entry, Fields fields, Symptom symptom) {
        fields.require("states");
        Subject what = Subject.of(entry.subject(), ", symptom ", Subject.quoted(symptom.id()));
        StateValues table = tables.computeIfAbsent(symptom.id(), id -> new StateValues(symptom, values, problems));
        int before = problems.errors();
        Map<String, Double> named = table.read(fields.nested("states"), what);
        boolean unreadable = problems.errors() > before || symptom.states().isEmpty();
        Map<String, Double> shares =
                unreadable ? background(symptom) : spread(symptom, named, what, fields.place("states"));
        return new Link(
                symptom.id(),
                shares,
                fields.number("cases", Values.Span.CASES, OPINION_CASES),
                origins.of(entry, fields));
    }

    /** All states: those named as they are, the rest shared out in proportion to the symptom's background. */
    private Map<String, Double> spread(Symptom symptom, Map<String, Double> named, Object what, Place place) {
        double sum = named.values().stream().mapToDouble(Double::doubleValue).sum();
        List<State> rest = symptom.states().stream()
                .filter(state -> !named.containsKey(state.id()))
                .toList();
        if (named.isEmpty()) {
            problems.error(place, what + ": no state is named", "name at least one, or take the link out");
            return background(symptom);
        }
        if (rest.isEmpty() && Math.abs(sum - 1) > StateList.SUM_TOLERANCE) {
            problems.error(
                    place,
                    what + ": all states are named and sum to " + Problems.plain(sum),
                    "leave one out, it takes the rest, or make them sum to 1");
            return background(symptom);
        }
        if (!rest.isEmpty() && sum >= 1 - StateList.SUM_TOLERANCE) {
            problems.error(
                    place,
                    what + ": the states named sum to " + Problems.plain(sum) + " and leave nothing for "
                            + String.join(", ", rest.stream().map(State::id).toList()),
                    "lower them so that they sum to less than 1");
            return background(symptom);
        }
        double restUsual = rest.stream().mapToDouble(State::usual).sum();
        Map<String, Double> shares = new HashMap<>();
        named.forEach((state, share) -> shares.put(state, rest.isEmpty() ? share / sum : share));
        rest.forEach(state -> shares.put(state.id(), (1 - sum) * state.usual() / restUsual));
        return shares;
    }

    private static Map<String, Double> background(Symptom symptom) {
        Map<String, Double> shares = new HashMap<>();
        symptom.states().forEach(state -> shares.put(state.id(), state.usual()));
        return shares;
    }

    private List<Remedy> remedies(Entry entry, Fields cause) {
        List<Remedy> remedies = new ArrayList<>();
        for (Fields fields : cause.tables("fixed-by", "a remedy")) {
            Optional<String> fix =
                    fields.require("fix").flatMap(node -> catalogue.refer(EntryKind.FIX, node, fields.what("fix")));
            double works = fields.probability("works");
            double cases = fields.number("cases", Values.Span.CASES, OPINION_CASES);
            Provenance from = origins.of(entry, fields);
            fix.ifPresent(id -> {
                if (remedies.stream().anyMatch(other -> other.fixId().equals(id))) {
                    problems.error(
                            fields.place("fix"),
                            entry.subject() + " names the fix " + Problems.quote(id) + " twice",
                            "keep one of them");
                }
                remedies.add(new Remedy(id, works, cases, from));
            });
            fields.finish();
        }
        return remedies;
    }
}
