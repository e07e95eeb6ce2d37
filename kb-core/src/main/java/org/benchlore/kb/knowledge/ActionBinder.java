package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is done at the bench: tests, fixes, and the cautions they carry. */
final class ActionBinder {
    static final Values.Span MINUTES = new Values.Span(0, 100_000, true);

    private static final Values.Span PRICE = new Values.Span(0, 100_000, false);

    private final Catalogue catalogue;
    private final Map<String, Symptom> symptoms;
    private final Origins origins;
    private final Values values;
    private final Problems problems;

    ActionBinder(
            Catalogue catalogue, Map<String, Symptom> symptoms, Origins origins, Values values, Problems problems) {
        this.catalogue = catalogue;
        this.symptoms = symptoms;
        this.origins = origins;
        this.values = values;
        this.problems = problems;
    }

    Caution caution(Entry entry) {
        Fields fields = fields(entry);
        Caution caution = new Caution(
                entry.id(),
                fields.choice("hazard", Caution.Hazard.values()),
                fields.text("text"),
                origins.of(entry, entry.place("text")));
        fields.finish();
        return caution;
    }

    BenchTest test(Entry entry) {
        Fields fields = fields(entry);
        BenchTest test = new BenchTest(
                entry.id(),
                fields.name("name"),
                fields.scope(entry.base().scope()),
                fields.number("minutes", MINUTES),
                fields.flag("opens"),
                fields.flag("powers"),
                fields.names("tools"),
                fields.choice("risk", Risk.values()),
                fields.probability("misses"),
                fields.probability("false-alarms"),
                catalogue.referAll(EntryKind.CAUTION, fields, "cautions"),
                fields.text("setup"),
                fields.requireTexts("steps"),
                fields.text("expect"),
                readings(entry, fields),
                fields.texts("fools"),
                fields.text("stop-when", ""),
                fields.ids("needs"));
        fields.finish();
        return test;
    }

    private List<BenchTest.ReadingMeans> readings(Entry entry, Fields test) {
        List<BenchTest.ReadingMeans> readings = new ArrayList<>();
        test.requireItems("readings");
        for (Fields fields : test.tables("readings", "a reading")) {
            Optional<PowerOff.Sign> sign = sign(fields);
            String means = fields.text("means");
            sign.ifPresent(s -> readings.add(new BenchTest.ReadingMeans(s.symptomId(), s.stateId(), means)));
            fields.finish();
        }
        for (int i = 0; i < readings.size(); i++) {
            BenchTest.ReadingMeans reading = readings.get(i);
            boolean twice = readings.subList(0, i).stream()
                    .anyMatch(r -> r.symptomId().equals(reading.symptomId())
                            && r.stateId().equals(reading.stateId()));
            if (twice) {
                problems.error(
                        entry.place("readings"),
                        entry.subject() + " reads " + Problems.quote(reading.symptomId()) + " as "
                                + Problems.quote(reading.stateId()) + " twice",
                        "keep one of them");
            }
        }
        return readings;
    }

    Fix fix(Entry entry) {
        Fields fields = fields(entry);
        Fix fix = new Fix(
                entry.id(),
                fields.name("name"),
                fields.scope(entry.base().scope()),
                fields.number("minutes", MINUTES),
                fields.flag("opens"),
                fields.flag("powers"),
                fields.names("parts"),
                fields.number("price", PRICE, 0),
                fields.names("tools"),
                fields.choice("difficulty", Fix.Difficulty.values()),
                fields.choice("risk", Risk.values()),
                fields.probability("makes-worse"),
                catalogue.referAll(EntryKind.CAUTION, fields, "cautions"),
                fields.requireTexts("steps"),
                fields.requireTexts("verify"),
                fields.texts("fools"),
                fields.ids("needs"),
                fields.texts("done"));
        fields.finish();
        return fix;
    }

    PowerOff powerOff(Entry entry) {
        Fields fields = fields(entry);
        Optional<PowerOff.Sign> when = sign(fields);
        when.filter(this::normal)
                .ifPresent(sign -> problems.error(
                        fields.place("state"),
                        fields.what("state") + " is " + Problems.quote(sign.stateId()) + ", which a sound unit shows",
                        "name the state in which the unit must not be powered"));
        PowerOff rule = new PowerOff(
                entry.id(),
                when.map(PowerOff.Sign::symptomId).orElse(""),
                when.map(PowerOff.Sign::stateId).orElse(""),
                fields.text("why"),
                catalogue.referAll(EntryKind.SYMPTOM, fields, "until"),
                catalogue.referAll(EntryKind.FIX, fields, "fixes"));
        fields.finish();
        return rule;
    }

    private boolean normal(PowerOff.Sign sign) {
        Symptom symptom = symptoms.get(sign.symptomId());
        return symptom != null
                && symptom.states().get(symptom.requireState(sign.stateId())).normal();
    }

    /** A symptom and one of its states, both as written under the keys of that name. */
    private Optional<PowerOff.Sign> sign(Fields fields) {
        Optional<Symptom> symptom = fields.require("symptom")
                .flatMap(node -> catalogue.refer(EntryKind.SYMPTOM, node, fields.what("symptom")))
                .map(symptoms::get);
        String state = fields.require("state")
                .map(node -> values.text(node, fields.what("state"), Values.MAX_NAME))
                .orElse("");
        return symptom.filter(s ->
                        new StateValues(s, values, problems).known(state, fields.place("state"), fields.what("state")))
                .map(s -> new PowerOff.Sign(s.id(), state));
    }

    private Fields fields(Entry entry) {
        Fields fields = new Fields(entry.table(), entry.subject(), values, problems);
        fields.find("id");
        fields.find("from");
        return fields;
    }
}
