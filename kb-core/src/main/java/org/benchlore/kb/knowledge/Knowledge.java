package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Everything the packs say, linked and checked. Immutable, so it is shared between threads freely. All listings are in
 * order of id.
 */
public final class Knowledge {
    private final List<Pack> packs;
    /** Minutes to open a unit and close it again where no pack says; from memory. */
    private static final double OPENING_MINUTES = 10;

    /** As many times as common as usual, 15 dB: a state all but names its cause; our choice. */
    private static final double NAMES = 30;

    /** A state that fewer units with the cause show does not name it. */
    private static final double MOSTLY = 0.5;

    private final SortedMap<String, Symptom> symptoms;
    private final SortedMap<String, Cause> causes;
    private final SortedMap<String, BenchTest> tests;
    private final SortedMap<String, Fix> fixes;
    private final SortedMap<String, Caution> cautions;
    private final List<Device> devices;
    private final SortedMap<String, PowerOff> powerOff;
    private final Map<String, List<BenchTest>> testsRevealing;
    private final Map<String, List<Cause>> causesConfirmedBy;
    private final Map<String, List<Cause>> causesShowing;
    private final Map<String, List<Cause>> causesFixedBy;
    private final Map<EntryKind, Map<String, Pack>> origins;
    /** What units of each class hold, by its id; a class whose pack does not say is left out. */
    private final Map<String, Set<String>> held;

    private final Set<String> parts;

    /**
     * Links up what was bound.
     *
     * @param origins by kind and id, the pack that brought an entry in or replaced it last
     */
    Knowledge(
            Collection<Pack> packs,
            Collection<Symptom> symptoms,
            Collection<Cause> causes,
            Collection<BenchTest> tests,
            Collection<Fix> fixes,
            Collection<Caution> cautions,
            Collection<Device> devices,
            Collection<PowerOff> powerOff,
            Map<EntryKind, Map<String, Pack>> origins) {
        this.packs = List.copyOf(packs);
        this.symptoms = byId(symptoms, Symptom::id);
        this.causes = byId(causes, Cause::id);
        this.tests = byId(tests, BenchTest::id);
        this.fixes = byId(fixes, Fix::id);
        this.cautions = byId(cautions, Caution::id);
        this.devices = devices.stream()
                .sorted(Comparator.comparingInt((Device d) -> d.scope().depth()).thenComparing(Device::scope))
                .toList();
        this.powerOff = byId(powerOff, PowerOff::id);
        this.testsRevealing = inverse(this.tests.values(), BenchTest::reveals);
        this.causesShowing = inverse(
                this.causes.values(),
                c -> c.shows().stream().map(Link::symptomId).toList());
        this.causesConfirmedBy = inverse(this.causes.values(), Cause::confirmedBy);
        this.causesFixedBy = inverse(
                this.causes.values(),
                c -> c.fixedBy().stream().map(Remedy::fixId).distinct().toList());
        this.origins = origins;
        this.held = this.devices.stream()
                .filter(d -> !d.has().isEmpty())
                .collect(Collectors.toMap(d -> d.scope().path().get(0), d -> Set.copyOf(d.has())));
        this.parts = held.values().stream()
                .flatMap(Set::stream)
                .collect(Collectors.collectingAndThen(
                        Collectors.toCollection(TreeSet::new), Collections::unmodifiableSortedSet));
    }

    /** Heads of the packs, in the order they were read. */
    public List<Pack> packs() {
        return packs;
    }

    public Collection<Symptom> symptoms() {
        return symptoms.values();
    }

    public Collection<Cause> causes() {
        return causes.values();
    }

    public Collection<BenchTest> tests() {
        return tests.values();
    }

    public Collection<Fix> fixes() {
        return fixes.values();
    }

    public Collection<Caution> cautions() {
        return cautions.values();
    }

    /** Device families, the wider scopes first. */
    public List<Device> devices() {
        return devices;
    }

    /** What forbids to power a unit. */
    public Collection<PowerOff> powerOff() {
        return powerOff.values();
    }

    /**
     * The pack that brought an entry in or replaced it last; packs that refined it are not told.
     *
     * @param id for a device its scope, as written
     */
    public Optional<Pack> packOf(EntryKind kind, String id) {
        return Optional.ofNullable(origins.getOrDefault(kind, Map.of()).get(id));
    }

    /** Minutes to open such a unit and close it again: the innermost device's that says so, else 10. */
    public double openingMinutes(DeviceScope scope) {
        return devices.stream()
                .filter(d -> d.scope().contains(scope) && d.openingMinutes().isPresent())
                .max(Comparator.comparingInt(d -> d.scope().depth()))
                .flatMap(Device::openingMinutes)
                .orElse(OPENING_MINUTES);
    }

    /** A class of devices that a pack tells of. */
    public Optional<Device> deviceClass(String id) {
        return devices.stream()
                .filter(d -> d.scope().depth() == 1 && d.scope().path().get(0).equals(id))
                .findFirst();
    }

    /** Every part that units of some class hold, in order. */
    public Set<String> parts() {
        return parts;
    }

    /**
     * Parts that a cause needs and no unit of these classes holds. Classes of which no pack says what they hold do not count,
     * nor do parts that no class is said to hold.
     *
     * @param classes ids; empty when the class is not known
     * @return in the order of {@link Cause#needs}; empty if such a unit may have the cause, or nothing is known of it
     */
    public List<String> lacking(Cause cause, Collection<String> classes) {
        return lacking(cause.needs(), classes);
    }

    /**
     * What makes a test idle on such a unit: the parts it needs itself and no unit of these classes holds. Where it lacks none
     * of its own but confirms causes, and such a unit can have none of them, what those lack: no tape is played on a kettle,
     * whatever else its answer would tell.
     *
     * @param classes ids, which count as for a cause
     * @return empty if the test may be of use
     */
    public List<String> lacking(BenchTest test, Collection<String> classes) {
        return lacking(test.needs(), causesConfirmedBy(test.id()), classes);
    }

    /** What makes a fix idle on such a unit, as for a test: the parts it lacks, or else what all causes lack that it cures. */
    public List<String> lacking(Fix fix, Collection<String> classes) {
        return lacking(fix.needs(), causesFixedBy(fix.id()), classes);
    }

    /** Parts without which such a unit cannot show a symptom, as for a cause. */
    public List<String> lacking(Symptom symptom, Collection<String> classes) {
        return lacking(symptom.needs(), classes);
    }

    private List<String> lacking(List<String> needs, List<Cause> serves, Collection<String> classes) {
        List<String> own = lacking(needs, classes);
        if (!own.isEmpty()) {
            return own;
        }
        Set<String> theirs = new LinkedHashSet<>();
        for (Cause cause : serves) {
            List<String> parts = lacking(cause, classes);
            if (parts.isEmpty()) {
                return List.of();
            }
            theirs.addAll(parts);
        }
        return List.copyOf(theirs);
    }

    private List<String> lacking(List<String> needs, Collection<String> classes) {
        if (classes.isEmpty() || needs.isEmpty()) {
            return List.of(); // asked of every cause in every ranking
        }
        List<Set<String>> known =
                classes.stream().filter(held::containsKey).map(held::get).toList();
        if (known.isEmpty()) {
            return List.of();
        }
        return needs.stream()
                .filter(part -> parts.contains(part) && known.stream().noneMatch(has -> has.contains(part)))
                .toList();
    }

    public Optional<Symptom> symptom(String id) {
        return Optional.ofNullable(symptoms.get(id));
    }

    /** Whether a sound unit shows this; false for what the packs do not know, so that nobody is lulled. */
    public boolean normal(String symptomId, String stateId) {
        return symptom(symptomId)
                .flatMap(symptom -> symptom.state(stateId))
                .filter(State::normal)
                .isPresent();
    }

    public Optional<Cause> cause(String id) {
        return Optional.ofNullable(causes.get(id));
    }

    public Optional<BenchTest> test(String id) {
        return Optional.ofNullable(tests.get(id));
    }

    public Optional<Fix> fix(String id) {
        return Optional.ofNullable(fixes.get(id));
    }

    public Optional<Caution> caution(String id) {
        return Optional.ofNullable(cautions.get(id));
    }

    /**
     * What to throw on an id that the packs do not have; it names the nearest they do have.
     *
     * @param kind what it should have been an id of: a symptom, cause, test, fix or caution
     */
    public IllegalArgumentException unknown(EntryKind kind, String id) {
        Set<String> ids = ids(kind);
        return new IllegalArgumentException("unknown " + kind.id() + " '" + id + "'; "
                + Nearest.id(id, ids)
                        .map(near -> "did you mean '" + near + "'?")
                        .orElse("use an id that the packs define"));
    }

    private Set<String> ids(EntryKind kind) {
        return switch (kind) {
            case SYMPTOM -> symptoms.keySet();
            case CAUSE -> causes.keySet();
            case TEST -> tests.keySet();
            case FIX -> fixes.keySet();
            case CAUTION -> cautions.keySet();
            case STATE_SET, DEVICE, POWER_OFF -> Set.of();
        };
    }

    /** Every tool that a test or a fix asks for, as the packs name it. */
    public SortedSet<String> tools() {
        SortedSet<String> tools = new TreeSet<>();
        tests.values().forEach(t -> tools.addAll(t.tools()));
        fixes.values().forEach(f -> tools.addAll(f.tools()));
        return Collections.unmodifiableSortedSet(tools);
    }

    /** Tests that reveal a symptom, by id; empty if none or unknown. */
    public List<BenchTest> testsRevealing(String symptomId) {
        return testsRevealing.getOrDefault(symptomId, List.of());
    }

    /** Causes with an opinion on a symptom, by id; empty if none or unknown. */
    public List<Cause> causesShowing(String symptomId) {
        return causesShowing.getOrDefault(symptomId, List.of());
    }

    /**
     * Causes that one state all but names: half of the units with the cause show it or more, and at least thirty times as
     * often as units usually do. What such a cause warns of holds as soon as the state was seen, wherever the cause ranks.
     *
     * @return by id; empty for the normal state, and if none or unknown
     */
    public List<Cause> causesNamedBy(String symptomId, String stateId) {
        double usual = symptom(symptomId)
                .flatMap(s -> s.state(stateId))
                .filter(s -> !s.normal())
                .map(State::usual)
                .orElse(Double.POSITIVE_INFINITY);
        return causesShowing(symptomId).stream()
                .filter(cause -> cause.link(symptomId)
                        .map(link -> link.states().getOrDefault(stateId, 0.0))
                        .filter(p -> p >= MOSTLY && p >= NAMES * usual)
                        .isPresent())
                .toList();
    }

    /** Causes that name a test to confirm them, by id; empty if none or unknown. */
    public List<Cause> causesConfirmedBy(String testId) {
        return causesConfirmedBy.getOrDefault(testId, List.of());
    }

    /** Causes that a fix is named for, by id; empty if none or unknown. */
    public List<Cause> causesFixedBy(String fixId) {
        return causesFixedBy.getOrDefault(fixId, List.of());
    }

    private static <T> SortedMap<String, T> byId(Collection<T> items, Function<T, String> id) {
        TreeMap<String, T> map = new TreeMap<>();
        for (T item : items) {
            map.put(id.apply(item), item);
        }
        return Collections.unmodifiableSortedMap(map);
    }

    private static <T> Map<String, List<T>> inverse(Collection<T> items, Function<T, List<String>> keys) {
        Map<String, List<T>> map = new LinkedHashMap<>();
        for (T item : items) {
            for (String key : keys.apply(item)) {
                map.computeIfAbsent(key, k -> new ArrayList<>()).add(item);
            }
        }
        map.replaceAll((k, v) -> List.copyOf(v));
        return map;
    }
}
