package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * Packs turned into knowledge. Also holds what checks need to be fair: where each entry stands, and which entries had
 * errors of their own, so that one slip is not reported twice.
 */
final class Binding {
    private final Catalogue catalogue;
    private final Problems problems;
    private final Origins origins;
    /** By identity: the hash of an entry would walk its whole pack. */
    private final Set<Entry> damaged = Collections.newSetFromMap(new IdentityHashMap<>());

    private final Knowledge knowledge;

    static Binding of(List<PackSource> sources, ParsedPacks parsed, Problems problems) {
        Values values = new Values(problems);
        List<PackFile> files = new ArrayList<>();
        Set<String> names = new HashSet<>();
        boolean complete = true;
        for (PackSource source : sources) {
            if (!names.add(source.name())) {
                problems.error(new Place(source.name(), 1, 1), "this file is given twice", "give each file once");
                continue;
            }
            int before = files.size();
            parsed.parse(source, problems)
                    .flatMap(root -> PackFile.bind(root, values, problems))
                    .ifPresent(files::add);
            complete &= files.size() > before;
        }
        Catalogue catalogue = new Catalogue(values, problems, complete);
        files.forEach(catalogue::add);
        return new Binding(catalogue, values, problems);
    }

    private Binding(Catalogue catalogue, Values values, Problems problems) {
        this.catalogue = catalogue;
        this.problems = problems;
        this.origins = new Origins(catalogue, values, problems);
        catalogue.packs().forEach(origins::ofPack);

        Map<String, StateList> sets = new HashMap<>();
        bind(EntryKind.STATE_SET, entry -> stateSet(entry, values)).forEach(sets::put);
        SymptomBinder symptomBinder = new SymptomBinder(catalogue, sets, origins, values, problems);
        Map<String, Symptom> symptoms = bind(EntryKind.SYMPTOM, symptomBinder::bind);
        ActionBinder actions = new ActionBinder(catalogue, symptoms, origins, values, problems);
        CauseBinder causes = new CauseBinder(catalogue, symptoms, origins, values, problems);
        DeviceBinder devices = new DeviceBinder(catalogue, symptoms, values, problems);
        this.knowledge = new Knowledge(
                catalogue.packs().stream().map(PackFile::head).toList(),
                symptoms.values(),
                bind(EntryKind.CAUSE, causes::bind).values(),
                bind(EntryKind.TEST, actions::test).values(),
                bind(EntryKind.FIX, actions::fix).values(),
                bind(EntryKind.CAUTION, actions::caution).values(),
                bind(EntryKind.DEVICE, devices::bind).values(),
                bind(EntryKind.POWER_OFF, actions::powerOff).values(),
                origins());
    }

    private Map<EntryKind, Map<String, Pack>> origins() {
        Map<EntryKind, Map<String, Pack>> packs = new EnumMap<>(EntryKind.class);
        for (EntryKind kind : EntryKind.values()) {
            Map<String, Pack> ofKind = new HashMap<>();
            catalogue
                    .all(kind)
                    .forEach(entry -> ofKind.put(entry.id(), entry.base().head()));
            packs.put(kind, ofKind);
        }
        return packs;
    }

    private StateList stateSet(Entry entry, Values values) {
        Fields fields = new Fields(entry.table(), entry.subject(), values, problems);
        fields.find("id");
        fields.find("from");
        StateList list = fields.require("states")
                .map(node -> StateList.bind(node, entry.subject(), values, problems))
                .orElse(StateList.NONE);
        fields.finish();
        return list;
    }

    private <T> Map<String, T> bind(EntryKind kind, Function<Entry, T> binder) {
        Map<String, T> bound = new LinkedHashMap<>();
        for (Entry entry : catalogue.all(kind)) {
            int before = problems.errors();
            if (entry.table().fields().containsKey("from")) {
                origins.of(entry, entry.place("from")); // judged even where no number of the entry asks for it
            }
            bound.put(entry.id(), binder.apply(entry));
            if (problems.errors() > before) {
                damaged.add(entry);
            }
        }
        return bound;
    }

    /** Looks for what is sound entry by entry, but weak or missing in the whole. */
    void check(Problems found) {
        new CautionCheck(this, found).run();
        new WordingCheck(this, found).run();
        if (catalogue.complete()) { // else what seems to be missing may stand in the file that cannot be read
            new CauseCheck(this, found).run();
            new KindCheck(this, found).run();
            new PowerCheck(this, found).run();
            new ReachCheck(this, found).run();
            new AmbiguityCheck(this, found).run();
        }
    }

    Knowledge knowledge() {
        return knowledge;
    }

    Catalogue catalogue() {
        return catalogue;
    }

    /** Whether an entry had errors of its own. */
    boolean damaged(EntryKind kind, String id) {
        return catalogue.find(kind, id).filter(damaged::contains).isPresent();
    }

    /** Where the value of an entry's key stands, else where its id does. */
    Place place(EntryKind kind, String id, String key) {
        return catalogue
                .find(kind, id)
                .map(entry -> entry.place(key))
                .orElseThrow(() -> new IllegalStateException("no " + kind.word + " '" + id + "'"));
    }

    /** Where a text stands under an entry's key, else the key's value; under the id key, anywhere in the entry. */
    Place textPlace(EntryKind kind, String id, String key, String text) {
        return catalogue
                .find(kind, id)
                .flatMap(entry -> entry.find(key.equals(kind.idKey) ? "" : key, text))
                .orElseGet(() -> place(kind, id, key));
    }
}
