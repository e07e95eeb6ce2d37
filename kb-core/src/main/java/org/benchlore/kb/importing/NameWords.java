package org.benchlore.kb.importing;

import com.google.common.base.Splitter;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;

/**
 * Words as names are compared by: stemmed, bench shorthand spelled out, small words dropped. "Dead", "faulty" and "gone"
 * say the same of a part; "open", "shorted" and "leaky" each say something of its own.
 */
final class NameWords {
    /** Stands for every word that says only that a part is bad. */
    static final String BAD = "bad";

    private static final Map<String, String> SAME = new HashMap<>();
    private static final Set<String> DROPPED = stems(
            "the a an of or and in at on to from with its it by for is be was were "
                    + "are been has have had that this up as into behind beside under over between through own itself them they "
                    + "when while without so all both very too also there here again then now completely totally found being one anew both");

    static {
        same(
                BAD,
                "dead faulty failed fails failing defective gone kaput broken blown defect duff fault toast destroyed "
                        + "finished damaged");
        same("capacitor", "cap caps capacitors elco elcos elko elkos condenser electrolytic electrolytics condensator");
        same("chip", "ic ics integrated chips");
        same("supply", "psu smps");
        same("loudspeaker", "speaker speakers loudspeakers");
        same("controller", "micro microcontroller mcu cpu syscon");
        same("short", "shorted shorting shorts shortcircuit shortcut");
        same("open", "opened interrupted interruption");
        same("dry", "dried dried-out");
        same("crack", "cracked cracks hairline");
        same("oxidised", "oxidized oxydised oxidation tarnished dirty");
        same("corrode", "corroded corrosion");
        same("leak", "leaky leaking leaked leakage");
        same("regulator", "ldo reg");
        same("transistor", "fet mosfet transistors");
        same("optocoupler", "opto optocouplers photocoupler");
        same("potentiometer", "pot pots poti potis");
        same("pick-up", "pickup laser");
        same("connector", "plug plugs connectors");
        same("socket", "jack jacks sockets");
        same("lead", "cable cables leads cord");
        same("ribbon", "flex ffc flatcable flat-cable");
        same("key", "button buttons keys");
        same("battery", "batteries accu akku");
        same("firmware", "software");
        same("board", "pcb pcbs boards");
        same("wear", "worn tired aged");
    }

    /** Words that say of a part that it is at fault, and how. */
    private static final Set<String> FAULTS = new HashSet<>();

    static {
        stems(
                        "bad open short leak dry wear crack corrode oxidised dirty loose stuck burnt melted slack slipping drifted "
                                + "hard stretched swollen weak missing empty flat blocked jammed burst rotten rotted perished bent torn "
                                + "lost corrupt seized frozen dead wrong packed full broken cracked leaky shorted worn dried sticky "
                                + "noisy low high clogged dusty wet split eaten charred scorched tar")
                .forEach(word -> FAULTS.add(SAME.getOrDefault(word, word)));
    }

    private NameWords() {}

    /** Whether a term says that something is at fault. */
    static boolean fault(String term) {
        return FAULTS.contains(term);
    }

    /** The term of a word; empty for small words. */
    static Optional<String> of(Token word) {
        String term = word.term();
        if (DROPPED.contains(term)) {
            return Optional.empty();
        }
        return Optional.of(SAME.getOrDefault(term, term));
    }

    /** The terms of words, each once, in order of first mention. */
    static Set<String> of(List<Token> words) {
        Set<String> terms = new LinkedHashSet<>();
        for (Token word : words) {
            of(word).ifPresent(terms::add);
        }
        return terms;
    }

    private static void same(String word, String others) {
        String term = SAME.getOrDefault(stem(word), stem(word));
        SAME.put(stem(word), term);
        stems(others).forEach(other -> SAME.putIfAbsent(other, term));
    }

    private static Set<String> stems(String spaced) {
        Set<String> stems = new LinkedHashSet<>();
        Splitter.on(' ').split(spaced).forEach(word -> stems.add(stem(word)));
        return stems;
    }

    private static String stem(String word) {
        return Lexer.tokens(word).get(0).term();
    }
}
