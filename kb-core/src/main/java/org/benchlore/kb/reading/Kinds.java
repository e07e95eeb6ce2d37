package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Synonyms;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * What kind of unit a text speaks of: words that name a class of devices, the longest first, so that a laptop charger is a
 * charger. They stand beside the lexicon and change nothing that it reads. Immutable.
 *
 * <p>Which unit is on the bench and which is only told of is guessed from the words in front: one that is worked with or
 * likened to ("with his laptop", "another radio") never counts, one that something else is joined to ("into the amp") only
 * as long as no other was named. Words that mostly name a part ("fan") may name the unit where a note begins with them and no
 * other does.
 */
final class Kinds {
    /** Words in front of a name that are looked at. */
    private static final int REACH = 5;

    /** Words in front of "in my laptop" in which it is said to be fine there. */
    private static final int FINE_REACH = 3;

    static final Words POINTING = Words.terms("the a an my our your his her their this that its some");

    private static final Words DESCRIBING =
            Words.terms("old new big small little same own good broken dead cheap second portable");

    /** Somebody else's may be on the bench, too, but hardly beside one that was named before. */
    private static final Words OTHERS_OWN = Words.terms("neighbour neighbor friend mate");

    /** Not the one on the bench, or no such thing: "op amp", "thermal camera", "serial console". */
    private static final Words OTHER = Words.terms("another other different spare op thermal infrared serial");

    private static final Words JOINED_BY =
            Words.terms("on in into onto to from of for via through at between off inside");
    private static final Words BESIDE =
            Words.terms("with use by near behind under beside beneath above like than as unlike");

    /** "Next to the microwave". */
    private static final Words NEXT = Words.terms("next close similar compared");

    /** "Fine in my laptop": where it does what it should, it was only tried. */
    private static final Words FINE = Words.terms("fine good ok okay perfect work play read happily");

    /** "Trouble with the printer". */
    private static final Words WRONG_WITH = Words.terms("problem trouble wrong issue fault matter happen");

    /** Behind a name, what comes from it or leads to it: the unit may be something else. */
    private static final Words JOINING =
            Words.terms("channel programme program station signal lead line output input port jack socket app "
                    + "module chip hotspot clock charger");

    /** Amperes and headphones rather than two units; neither does what was "drilled" name a drill. */
    private static final Words OTHERWISE = Words.of("amps", "phones");

    /** The unit itself, whatever it is. */
    private static final Words UNITS = Words.terms("player machine box gadget appliance apparatus contraption recorder "
            + "receiver vacuum turntable dryer deck stereo");

    /** How a name stands in the text, the surer first. */
    private enum Place {
        PLAIN,
        JOINED,
        BESIDE
    }

    /** @param first whether it names the unit only as the first words of a note */
    record Name(List<String> keys, String id, boolean first) {
        Name {
            keys = List.copyOf(keys);
        }
    }

    /** By first key, the longest names first. */
    private final Map<String, List<Name>> names = new HashMap<>();

    Kinds(List<Device> devices) {
        for (Device device : devices) {
            device.called().forEach(called -> add(called, device, false));
            device.calledFirst().forEach(called -> add(called, device, true));
        }
        names.values()
                .forEach(list -> list.sort(
                        Comparator.comparingInt((Name name) -> -name.keys().size())
                                .thenComparing(Name::id)));
    }

    private void add(String called, Device device, boolean first) {
        List<String> keys = Lexer.tokens(called).stream().map(Kinds::key).toList();
        if (!keys.isEmpty()) {
            names.computeIfAbsent(keys.get(0), key -> new ArrayList<>())
                    .add(new Name(keys, device.scope().toString(), first));
        }
    }

    /**
     * The classes named.
     *
     * @param ids in order of id
     * @param spoken tokens that name a class, whether or not it counts
     * @param unit those of them that name the unit itself
     */
    record Named(List<String> ids, BitSet spoken, BitSet unit) {
        Named {
            ids = List.copyOf(ids);
        }
    }

    /** The longest name that starts at each token, null for none. */
    @Nullable
    Name[] names(List<Token> tokens) {
        List<String> keys = tokens.stream().map(Kinds::key).toList();
        @Nullable Name[] starts = new Name[keys.size()];
        boolean first = true;
        for (int i = 0; i < starts.length; i++) {
            starts[i] = at(keys, i, first);
            first &= introduces(tokens.get(i));
        }
        return starts;
    }

    /** Whether a note has not begun yet: "my old …". */
    private static boolean introduces(Token token) {
        return POINTING.contains(token.term()) || DESCRIBING.contains(token.term());
    }

    /** Whether what stands behind a name makes something else of it: "phone jack". */
    static boolean leadsOn(Token next) {
        return JOINING.contains(Synonyms.of(next.term()));
    }

    /** @param starts of the passage's tokens */
    static Named in(Passage passage, @Nullable Name[] starts) {
        int n = passage.size();
        BitSet spoken = new BitSet(n);
        BitSet unit = new BitSet(n);
        TreeSet<String> ids = new TreeSet<>();
        boolean named = false;
        int i = 0;
        while (i < n) {
            Name name = starts[i];
            if (name == null) {
                if (pointedAt(passage, i)) {
                    unit.set(i);
                }
                i++;
                continue;
            }
            int to = i + name.keys().size();
            if (name.first() && (partOfName(passage, i, to) || leadsToPart(passage, to) || othersNamed(starts, to))) {
                i++;
                continue;
            }
            Place place = partOfName(passage, i, to) ? Place.BESIDE : place(passage, i, to);
            if (place == Place.PLAIN || (place == Place.JOINED && !named)) {
                ids.add(name.id());
            }
            named |= place == Place.PLAIN;
            unit.set(i, to, place == Place.PLAIN);
            spoken.set(i, to);
            i = to;
        }
        return new Named(List.copyOf(ids), spoken, unit);
    }

    /** "Lamp socket loose" is no lamp. */
    private static boolean leadsToPart(Passage passage, int i) {
        Passage.Item item = i < passage.size() ? passage.itemAt(i) : null;
        return i < passage.size() && (leadsOn(passage.token(i)) || (item != null && !item.entry.names.isEmpty()));
    }

    private static boolean othersNamed(@Nullable Name[] starts, int from) {
        for (int i = from; i < starts.length; i++) {
            if (starts[i] != null) {
                return true;
            }
        }
        return false;
    }

    /** "The machine", "my player". */
    private static boolean pointedAt(Passage passage, int i) {
        return i > 0
                && UNITS.contains(passage.token(i).term())
                && POINTING.contains(passage.token(i - 1).term())
                && !partOfName(passage, i, i + 1)
                && place(passage, i, i + 1) == Place.PLAIN;
    }

    /** The longest name from a token on, or null. */
    private @Nullable Name at(List<String> keys, int from, boolean first) {
        List<Name> starting = names.get(keys.get(from));
        if (starting == null) {
            return null;
        }
        for (Name name : starting) {
            int to = from + name.keys().size();
            boolean here = first || !name.first();
            if (here && to <= keys.size() && name.keys().equals(keys.subList(from, to))) {
                return name;
            }
        }
        return null;
    }

    /** Whether the words stand in a longer name of something that the packs know: "monitor switch". */
    private static boolean partOfName(Passage passage, int from, int to) {
        Passage.Item item = passage.itemAt(from);
        if (item == null || item.entry.names.isEmpty() || !item.entry.phrases.isEmpty() || item.to < to) {
            return false;
        }
        for (int i = item.from; i < item.to; i++) {
            if ((i < from || i >= to) && passage.content(i)) {
                return true;
            }
        }
        return false;
    }

    private static Place place(Passage passage, int from, int to) {
        if (to < passage.size() && leadsOn(passage.token(to))) {
            return Place.BESIDE;
        }
        boolean strange = false; // a word that may be the make or the room
        String behind = ""; // what was looked at last
        for (int i = from - 1; i >= 0 && i >= from - REACH; i--) {
            Token token = passage.token(i);
            String term = token.term();
            if (token.kind() == Kind.PUNCTUATION) {
                break;
            }
            if (OTHER.contains(term)) {
                return Place.BESIDE;
            }
            if (OTHERS_OWN.contains(term)) {
                return Place.JOINED;
            }
            boolean before = !strange || POINTING.contains(behind);
            if (before && (BESIDE.contains(term) || JOINED_BY.contains(term))) {
                return joined(passage, i, term);
            }
            boolean expected = POINTING.contains(term) || DESCRIBING.contains(term);
            if (!expected && strange) {
                break;
            }
            strange |= !expected;
            behind = term;
        }
        return Place.PLAIN;
    }

    private static Place joined(Passage passage, int at, String term) {
        String before = at > 0 ? passage.token(at - 1).term() : "";
        if (term.equals("with") && WRONG_WITH.contains(before)) {
            return Place.PLAIN;
        }
        boolean beside = BESIDE.contains(term) || NEXT.contains(before);
        for (int i = at - 1; i >= 0 && i >= at - FINE_REACH && passage.sameSegment(i, at); i--) {
            beside |= FINE.contains(passage.token(i).term());
        }
        return beside ? Place.BESIDE : Place.JOINED;
    }

    /** What words of one meaning share; as they are written where their stem means something else. */
    private static String key(Token token) {
        String surface = token.surface();
        boolean own = token.kind() != Kind.WORD
                || surface.endsWith("ed")
                || surface.endsWith("ing")
                || OTHERWISE.contains(surface);
        return own ? surface : Synonyms.of(token.term());
    }
}
