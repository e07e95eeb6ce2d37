package org.benchlore.kb.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;

/** Entries of the packs as drafts, in order of kind and id. */
final class EntryDrafts {
    private final Knowledge knowledge;
    private final FindingWeights weights;
    private final List<Draft> drafts = new ArrayList<>();

    private EntryDrafts(Knowledge knowledge) {
        this.knowledge = knowledge;
        this.weights = new FindingWeights(knowledge);
    }

    static List<Draft> of(Knowledge knowledge) {
        EntryDrafts all = new EntryDrafts(knowledge);
        knowledge.symptoms().forEach(all::symptom);
        knowledge.causes().forEach(all::cause);
        knowledge.tests().forEach(all::test);
        knowledge.fixes().forEach(all::fix);
        return List.copyOf(all.drafts);
    }

    private void symptom(Symptom symptom) {
        List<String> called = new ArrayList<>(symptom.called());
        List<String> states = new ArrayList<>();
        for (State state : symptom.states()) {
            states.add(state.name());
            called.addAll(state.phrases());
            if (!state.normal()) {
                states.addAll(state.words());
            }
        }
        List<String> codes = new ArrayList<>();
        for (Device device : knowledge.devices()) {
            device.nets().stream()
                    .filter(net -> net.symptomId().equals(symptom.id()))
                    .forEach(net -> codes.add(net.net()));
            device.lamps().stream()
                    .filter(lamp -> lamp.symptomId().equals(symptom.id()))
                    .forEach(lamp -> called.addAll(lamp.says()));
            for (Device.Code code : device.codes()) {
                if (code.symptomId().equals(symptom.id())) {
                    codes.add(code.code());
                    codes.addAll(code.spelled());
                    called.add(code.means());
                }
            }
        }
        Map<String, List<String>> texts = new LinkedHashMap<>();
        texts.put(Fields.NAME, List.of(symptom.name()));
        texts.put(Fields.CALLED, called);
        texts.put(Fields.CODES, codes);
        texts.put(Fields.ABOUT, List.of(symptom.about()));
        texts.put(Fields.SAID, states);
        add(HitKind.SYMPTOM, symptom.id(), symptom.name(), symptom.scope(), texts, weights.of(symptom));
    }

    private void cause(Cause cause) {
        Map<String, List<String>> texts = new LinkedHashMap<>();
        texts.put(Fields.NAME, List.of(cause.name()));
        texts.put(Fields.CALLED, cause.aliases());
        texts.put(Fields.ABOUT, join(List.of(cause.about()), cause.fools()));
        texts.put(Fields.SAID, cause.told());
        texts.put(Fields.LINKED, linked(cause));
        add(HitKind.CAUSE, cause.id(), cause.name(), cause.scope(), texts, weights.of(cause));
    }

    private void test(BenchTest test) {
        Map<String, List<String>> texts = new LinkedHashMap<>();
        texts.put(Fields.NAME, List.of(test.name()));
        texts.put(
                Fields.ABOUT,
                join(
                        test.steps(),
                        List.of(test.expect(), test.setup(), test.stopWhen(), String.join(", ", test.tools())),
                        test.readings().stream()
                                .map(BenchTest.ReadingMeans::means)
                                .distinct()
                                .toList(),
                        test.fools()));
        texts.put(Fields.LINKED, linked(test));
        add(HitKind.TEST, test.id(), test.name(), test.scope(), texts, weights.of(test));
    }

    private void fix(Fix fix) {
        Map<String, List<String>> texts = new LinkedHashMap<>();
        texts.put(Fields.NAME, List.of(fix.name()));
        texts.put(
                Fields.ABOUT,
                join(
                        fix.steps(),
                        fix.verify(),
                        List.of(String.join(", ", fix.parts()), String.join(", ", fix.tools())),
                        fix.fools()));
        texts.put(Fields.LINKED, names(knowledge.causesFixedBy(fix.id())));
        add(HitKind.FIX, fix.id(), fix.name(), fix.scope(), texts, weights.of(fix));
    }

    private List<String> linked(Cause cause) {
        List<String> names = new ArrayList<>();
        cause.confirmedBy().forEach(id -> knowledge.test(id).ifPresent(test -> names.add(test.name())));
        cause.fixedBy().forEach(remedy -> knowledge.fix(remedy.fixId()).ifPresent(fix -> names.add(fix.name())));
        weights.of(cause).forEach((term, weight) -> {
            if (weight >= FindingWeights.SUBJECT) {
                names.add(shown(term));
            }
        });
        return names;
    }

    private List<String> linked(BenchTest test) {
        List<String> names = new ArrayList<>();
        test.reveals().forEach(id -> knowledge.symptom(id).ifPresent(symptom -> names.add(symptom.name())));
        names.addAll(names(knowledge.causesConfirmedBy(test.id())));
        return names;
    }

    /** A symptom and its state in words, "standby rail absent". */
    private String shown(String term) {
        int equals = term.indexOf('=');
        Symptom symptom = knowledge.symptom(term.substring(0, equals)).orElseThrow();
        State state = symptom.state(term.substring(equals + 1)).orElseThrow();
        return symptom.name() + " " + state.name();
    }

    private static List<String> names(List<Cause> causes) {
        List<String> names = new ArrayList<>();
        for (Cause cause : causes) {
            names.add(cause.name());
            names.addAll(cause.aliases());
        }
        return names;
    }

    private void add(
            HitKind kind,
            String id,
            String title,
            DeviceScope scope,
            Map<String, List<String>> texts,
            SortedMap<String, Double> findings) {
        drafts.add(new Draft(kind, id, title, scope, null, null, texts, findings));
    }

    @SafeVarargs
    private static List<String> join(List<String>... lists) {
        List<String> all = new ArrayList<>();
        for (List<String> list : lists) {
            all.addAll(list);
        }
        return all;
    }
}
