package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Phrasings.Phrasing;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * The words of one scope: what the symptoms and device packs that hold there are called, their states, the language's
 * cues. Immutable once built. Where two symptoms share a name, the nearer scope comes first, then the id.
 */
final class Lexicon {
    /** Stems that turn a thing's name into one of its quantities. */
    static final Words QUANTITIES = Words.terms("voltag temperatur resistanc current esr");

    private static final Words HARDLY = Words.of("hardly", "barely", "scarcely");

    /** Stems of what packs call a state between all and nothing. */
    private static final List<String> WEAK = List.of("weak", "low", "faint", "dim", "slow");

    /** Texts of a hazard that a word stands in, to be known with slips. */
    private static final int SEVERAL = 3;

    private static final String RIPPLE = "rippl";
    private static final Words RIPPLE_WORDS = Words.of(RIPPLE, "on", "of", "at", "the", "nois");

    private final Terms terms = new Terms();
    private final Trie trie = new Trie(terms);
    private final Map<Double, Symptom> railsByVolts = new HashMap<>();

    /** Symptom by "id unit": what a reading in that unit belongs to when the symptom named has another one. */
    private final Map<String, Symptom> paired = new HashMap<>();

    /** Symptom by the id of the rail whose ripple it is. */
    private final Map<String, Symptom> ripples = new HashMap<>();

    private final Map<String, Symptom> byId = new TreeMap<>();
    private final Map<String, Device.Code> codes = new HashMap<>();
    private final @Nullable Entry works;
    private final Bags bags;
    private final Referents referents;
    private final LogLines logLines;
    private final Spelling spelling;

    private Lexicon(List<Symptom> symptoms, List<Device> devices, Set<PowerOff.Sign> hazards) {
        List<Symptom> nearestFirst = symptoms.stream()
                .sorted((a, b) -> {
                    int nearer = Integer.compare(b.scope().depth(), a.scope().depth());
                    return nearer != 0 ? nearer : a.id().compareTo(b.id());
                })
                .toList();
        Phrasings phrasings = new Phrasings(trie, terms);
        List<Bags.Taught> phrases = new ArrayList<>();
        Map<Entry, int[]> longWords = new LinkedHashMap<>(); // of more than one term; symptoms share many
        for (Symptom symptom : nearestFirst) {
            byId.put(symptom.id(), symptom);
            addNames(symptom, phrasings);
            addStates(symptom, phrasings, longWords, phrases);
        }
        nearestFirst.forEach(symptom -> addOwnNames(symptom, phrasings));
        for (Device device : devices) {
            add(device, phrasings);
        }
        nearestFirst.forEach(symptom -> pair(symptom, phrasings));
        longWords.forEach(this::lend);
        for (Cue cue : Cue.values()) {
            for (String phrase : cue.phrases()) {
                for (Entry entry : phrasings.entries(phrase)) {
                    entry.cue = cue;
                }
            }
        }
        for (Polarity polarity : Polarity.values()) {
            for (String word : polarity.words()) {
                phrasings.entries(word).forEach(entry -> entry.polarity = polarity);
            }
        }
        this.referents = new Referents(nearestFirst, phrasings, trie, terms);
        this.works = trie.find(List.of("work")).orElse(null);
        this.bags = new Bags(phrases, terms);
        this.spelling = new Spelling(phrasings.surfaces(), hazardWords(hazards, phrasings));
        this.logLines = new LogLines(devices);
    }

    /** The part of {@code symptoms} and {@code devices} that holds for a case in {@code scope}. */
    static Lexicon of(List<Symptom> symptoms, List<Device> devices, Set<PowerOff.Sign> hazards, DeviceScope scope) {
        return new Lexicon(
                symptoms.stream().filter(s -> s.scope().contains(scope)).toList(),
                devices.stream().filter(d -> d.scope().contains(scope)).toList(),
                hazards);
    }

    /** Words of meaning that several texts have for a thing that must not be powered, or for its state. */
    private Set<String> hazardWords(Set<PowerOff.Sign> hazards, Phrasings phrasings) {
        Set<String> words = new HashSet<>();
        for (PowerOff.Sign sign : hazards) {
            Symptom symptom = byId.get(sign.symptomId());
            if (symptom != null) {
                State state = symptom.states().get(symptom.indexOf(sign.stateId()));
                Map<String, Integer> often = new HashMap<>();
                Stream.of(symptom.called(), state.words(), state.phrases())
                        .flatMap(List::stream)
                        .flatMap(text -> phrasings.tellingWords(text).stream())
                        .forEach(word -> often.merge(word, 1, Integer::sum));
                often.forEach((word, count) -> {
                    if (count >= SEVERAL) {
                        words.add(word);
                    }
                });
            }
        }
        return words;
    }

    Terms terms() {
        return terms;
    }

    Trie trie() {
        return trie;
    }

    Bags bags() {
        return bags;
    }

    /** Whether a phrase names what it is about, as "sound is fine" does and "nothing happens" does not. */
    boolean namesItself(Passage passage, Passage.Item phrase) {
        Symptom symptom = phrase.entry.phrases.get(0).symptom();
        for (int i = phrase.from; i < phrase.to && phrase.to - phrase.from > 1; i++) {
            Entry entry = trie.find(passage.term(i));
            if (entry != null && entry.names(symptom)) {
                return true;
            }
        }
        return false;
    }

    /** What "works" may mean, or null. */
    @Nullable
    Entry works() {
        return works;
    }

    Referents referents() {
        return referents;
    }

    LogLines logLines() {
        return logLines;
    }

    /** The device packs' code that is spelled so. */
    Optional<Device.Code> code(String spelled) {
        return Optional.ofNullable(codes.get(spelledOut(Phrasings.terms(Lexer.tokens(spelled)))));
    }

    Optional<Symptom> symptom(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    Spelling spelling() {
        return spelling;
    }

    /** The rail that a bare number such as "3.3" names. */
    Optional<Symptom> rail(double volts) {
        return Optional.ofNullable(railsByVolts.get(volts));
    }

    /** The rail whose nominal voltage is nearest, relatively, and within a share of it. */
    Optional<Symptom> railNear(double volts, double share) {
        return railsByVolts.entrySet().stream()
                .filter(e -> off(volts, e.getKey()) <= share)
                .min(Comparator.comparingDouble((Map.Entry<Double, Symptom> e) -> off(volts, e.getKey()))
                        .thenComparing(e -> e.getValue().id()))
                .map(Map.Entry::getValue);
    }

    private static double off(double volts, double nominal) {
        return Math.abs(volts - nominal) / Math.abs(nominal);
    }

    /** The symptom that a reading in another unit belongs to, "12 V to ground" for ohms on "12 V". */
    Optional<Symptom> paired(Symptom named, String unit) {
        return Optional.ofNullable(paired.get(named.id() + " " + unit));
    }

    /** The symptom of the ripple on a rail. */
    Optional<Symptom> ripple(Symptom rail) {
        return Optional.ofNullable(ripples.get(rail.id()));
    }

    private static String spelledOut(List<String> terms) {
        return String.join(" ", terms);
    }

    private void addNames(Symptom symptom, Phrasings phrasings) {
        Sense sense = new Sense(symptom, Sense.NAME);
        Quantity quantity = symptom.quantity();
        Double nominal = quantity == null || !quantity.unit().equals("V") ? null : quantity.nominal();
        for (Phrasing phrasing : phrasings.all(symptom.called())) {
            for (Entry entry : phrasing.entries) {
                entry.addName(sense);
            }
            Token only = phrasing.only;
            if (nominal != null && only != null && namesItsVolts(only, nominal)) {
                railsByVolts.putIfAbsent(nominal, symptom);
            }
        }
    }

    /**
     * What the pack calls a symptom and its states in headings, behind all that it teaches: "backlight feed" for
     * backlight-feed. A single word as a heading says too little to name anything.
     */
    private static void addOwnNames(Symptom symptom, Phrasings phrasings) {
        for (String name : List.of(symptom.name(), symptom.id().replace('-', ' '))) {
            Phrasing phrasing = phrasings.of(name);
            if (phrasing.numbers.length > 1) {
                phrasing.entries.forEach(entry -> entry.addName(new Sense(symptom, Sense.NAME)));
            }
        }
        for (int i = 0; i < symptom.states().size(); i++) {
            State state = symptom.states().get(i);
            Sense sense = new Sense(symptom, i);
            for (String word : List.of(state.name(), state.id().replace('-', ' '))) {
                if (!phrasings.tells(word)) {
                    continue;
                }
                for (Entry entry : phrasings.entries(word)) {
                    if (entry.saidOf(symptom.id()) == null) {
                        entry.addWord(sense);
                    }
                }
            }
        }
    }

    private static void addStates(
            Symptom symptom, Phrasings phrasings, Map<Entry, int[]> longWords, List<Bags.Taught> phrases) {
        for (int i = 0; i < symptom.states().size(); i++) {
            State state = symptom.states().get(i);
            Sense sense = new Sense(symptom, i);
            for (Phrasing phrasing : phrasings.all(state.words())) {
                int[] numbers = phrasing.numbers;
                if (numbers.length > 1) {
                    longWords.putIfAbsent(phrasing.entries.get(0), numbers);
                }
                if (phrasings.auxiliary(numbers)) {
                    longWords.putIfAbsent(phrasing.entries.get(1), Arrays.copyOfRange(numbers, 1, numbers.length));
                }
                for (Entry entry : phrasing.entries) {
                    entry.addWord(sense);
                }
            }
            for (Phrasing phrasing : phrasings.all(state.phrases())) {
                String participle = phrasing.participle;
                for (Entry entry : phrasing.entries) {
                    boolean first = entry.participle == null && entry.phrases.isEmpty();
                    entry.participle = first || participle.equals(entry.participle) ? participle : "";
                    entry.addPhrase(sense);
                }
                phrases.add(new Bags.Taught(phrasing, sense));
            }
        }
    }

    private static boolean namesItsVolts(Token token, double nominal) {
        return token.kind() == Kind.QUANTITY && token.unit().equals("V") && token.value() == nominal;
    }

    /**
     * The longest match hides shorter ones: "not responding" or "all present" may be one symptom's own words, and still
     * say something of others that know "responding" or "present". Those senses are lent to the longer entry, negated
     * where a negation is hidden.
     */
    private void lend(Entry whole, int[] numbers) {
        boolean negated = false;
        for (int i = 1; i < numbers.length; i++) {
            String before = terms.term(numbers[i - 1]);
            if (before.equals("no") || before.equals("never")) {
                return;
            }
            negated |= before.equals("not");
            Entry part = trie.find(numbers, i, numbers.length);
            if (part == null || (before.equals("for") && terms.term(numbers[i]).equals("good"))) {
                // "gone for good" is not good
                continue;
            }
            boolean hardly = HARDLY.contains(before);
            for (Sense sense : part.words) {
                if (whole.saidOf(sense.symptom().id()) != null) {
                    continue;
                }
                String state = hardly
                        ? weakened(sense)
                        : negated ? denied(sense) : sense.stateOf().id();
                if (state != null) {
                    whole.addWord(new Sense(sense.symptom(), sense.symptom().indexOf(state)));
                }
            }
        }
    }

    /** What a denied state means: its opposite, else that all is well; null where neither can be told. */
    private static @Nullable String denied(Sense sense) {
        State state = sense.stateOf();
        return state.opposite() != null || state.normal()
                ? state.opposite()
                : sense.symptom().normal().id();
    }

    /** What "hardly there" means where "there" is normal: the state that packs call weak or low; null for none. */
    private @Nullable String weakened(Sense sense) {
        for (String weak : WEAK) {
            Sense said = trie.find(List.of(weak))
                    .map(e -> e.saidOf(sense.symptom().id()))
                    .orElse(null);
            if (said != null && sense.stateOf().normal()) {
                return said.stateOf().id();
            }
        }
        return null;
    }

    private List<Sense> senses(List<String> terms, Function<Entry, List<Sense>> kind) {
        return trie.find(terms).map(kind).orElse(List.of());
    }

    private void add(Device device, Phrasings phrasings) {
        for (Device.Net net : device.nets()) {
            Symptom symptom = byId.get(net.symptomId());
            if (symptom != null) {
                for (Entry entry : phrasings.entries(net.net())) {
                    entry.addNameFirst(new Sense(symptom, Sense.NAME));
                }
            }
        }
        for (Device.Lamp lamp : device.lamps()) {
            Symptom symptom = byId.get(lamp.symptomId());
            int state = symptom == null ? -1 : symptom.indexOf(lamp.stateId());
            if (symptom != null && state >= 0) {
                for (String says : lamp.says()) {
                    for (Entry entry : phrasings.entries(says)) {
                        entry.addPhraseFirst(new Sense(symptom, state));
                    }
                }
            }
        }
        for (Device.Code code : device.codes()) {
            Stream.concat(Stream.of(code.code()), code.spelled().stream()).forEach(spelled -> {
                Phrasing phrasing = phrasings.of(spelled);
                codes.put(spelledOut(phrasings.terms(phrasing)), code);
                phrasing.entries.forEach(entry -> entry.code = code);
            });
        }
    }

    /** Joins a name to the symptom called "NAME to ground", "voltage on NAME" and the like, which has another unit. */
    private void pair(Symptom symptom, Phrasings phrasings) {
        Quantity quantity = symptom.quantity();
        if (quantity == null) {
            return;
        }
        for (Phrasing phrasing : phrasings.all(symptom.called())) {
            List<String> terms = phrasings.terms(phrasing);
            for (Sense other : senses(kernel(terms), e -> e.names)) {
                paired.putIfAbsent(other.symptom().id() + " " + quantity.unit(), symptom);
            }
            if (terms.contains(RIPPLE)) {
                List<String> thing =
                        terms.stream().filter(t -> !RIPPLE_WORDS.contains(t)).toList();
                for (Sense other : senses(thing, e -> e.names)) {
                    ripples.putIfAbsent(other.symptom().id(), symptom);
                }
            }
        }
    }

    /** The thing itself in the name of one of its quantities; the name unchanged when it is no such name. */
    private static List<String> kernel(List<String> terms) {
        int n = terms.size();
        if (n > 2 && terms.get(n - 2).equals("to") && terms.get(n - 1).equals("ground")) {
            return terms.subList(0, n - 2);
        }
        if (n > 2
                && terms.get(0).equals("voltag")
                && (terms.get(1).equals("on") || terms.get(1).equals("at"))) {
            return terms.subList(2, n);
        }
        boolean quantity = n > 1 && QUANTITIES.contains(terms.get(n - 1));
        return quantity ? terms.subList(0, n - 1) : terms;
    }
}
