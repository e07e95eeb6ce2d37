package org.benchlore.kb.reading.analysis;

import java.util.HashMap;
import java.util.Map;

/**
 * Folds plural and tense, nothing else: "controller" must not become "control", nor "regulator" "regulate". Equal stems
 * are all that matters, a stem need not be a word.
 */
final class Stemmer {
    private static final Map<String, String> IRREGULAR = new HashMap<>();

    /** Words that only look like a plural or a verb form. */
    private static final Words KEPT = Words.of(
            "mains",
            "series",
            "always",
            "gas",
            "bias",
            "lens",
            "this",
            "less",
            "thus",
            "setting",
            "reading",
            "evening",
            "nothing",
            "bearing",
            "housing",
            "during",
            "morning",
            "wiring",
            "winding",
            "spring",
            "string",
            "need",
            "speed",
            "feed",
            "bleed",
            "indeed",
            "exceed",
            "red",
            "bed",
            "led",
            "bring",
            "thing",
            "something",
            "anything",
            "everything",
            "sometimes",
            "perhaps",
            "news",
            "building",
            "ceiling",
            "ac",
            "dc",
            "cooler",
            "cleaner",
            "longer",
            "hardly",
            "lately",
            "shortly",
            "leading",
            "later",
            "coupling",
            "recording",
            "quite",
            "silicone",
            "paste",
            "stripe");

    /** What a bench says more or less of: "getting dimmer", "pulls weakly". */
    private static final String[] ADJECTIVES = {
        "dim", "weak", "low", "high", "loud", "slow", "warm", "cool", "cold", "noisy", "quiet", "short", "long", "dark",
        "bright", "dull", "soft", "hard", "stiff", "loose", "tight", "thin", "thick", "dirty", "faint", "pale", "poor",
        "strong", "small", "large", "heavy", "late", "hot", "rough", "clean", "bad", "dry", "wet", "harsh", "steady"
    };

    static {
        same("be", "is", "are", "was", "were", "been", "being", "am");
        same("do", "does", "did");
        same("have", "has");
        same("go", "goes", "went", "going");
        same("gone"); // what is gone is missing, what goes may go anywhere
        same("probably", "prob", "probs", "prolly");
        same("come", "comes", "came", "coming");
        same("blow", "blew", "blown");
        same("burn", "burnt");
        same("break", "broke", "broken");
        same("fall", "fell", "fallen");
        same("freeze", "froze", "frozen", "freezing");
        same("hang", "hung");
        same("keep", "kept");
        same("hold", "held");
        same("lose", "lost", "losing");
        same("run", "ran");
        same("show", "shown");
        same("hear", "heard");
        same("spin", "spun");
        same("swell", "swollen");
        same("die", "dying");
        same("give", "gave", "given", "giving");
        same("take", "took", "taken", "taking");
        same("get", "got", "gotten");
        same("tear", "torn");
        same("wear", "worn");
        same("stink", "stank", "stunk");
        same("smell", "smelt");
        same("bus", "buses", "busses");
        same("ground", "gnd");
        same("use", "using", "used");
        same("catch", "caught");
        same("feed", "fed");
        same("ring", "rang", "rung");
        same("stand", "stood");
        same("sit", "sat", "sitting");
        same("make", "made", "making");
        same("begin", "began", "begun", "beginning");
        same("bend", "bent");
        same("draw", "drew", "drawn");
        same("shake", "shook", "shaken", "shaking");
        same("slide", "slid", "sliding");
        same("stick", "stuck");
        same("creep", "crept");
        same("sink", "sank", "sunk");
        same("rise", "rose", "risen", "rising");
        same("chew", "chewn");
        same("split", "splitting");
        same("cans"); // headphones, not the verb in "can't"
        same("paste", "pasted", "pasting"); // "past" and "strip" are others
        same("stripe", "striped", "stripy");
        same("filings"); // nor has what lies about to do with "file" and "drop"
        same("droppings");
        same("shavings");
        same("shut", "shutting");
        same("leave", "leaving");
        same("drink", "drank");
        same("shrink", "shrank", "shrunk");
        same("throw", "threw", "thrown");
        same("grow", "grew", "grown");
        same("know", "knew", "known");
        same("drive", "drove", "driven", "driving");
        same("write", "wrote", "written", "writing");
        same("speak", "spoke", "spoken");
        same("wake", "woke", "woken", "waking");
        same("steal", "stole", "stolen");
        same("choose", "chose", "chosen");
        same("half", "halves", "halfs");
        same("foot", "feet");
        same("tooth", "teeth");
        same("mouse", "mice");
        same("volt", "volts");
        for (String adjective : ADJECTIVES) {
            graded(adjective);
        }
    }

    private Stemmer() {}

    /**
     * The stem of a word.
     *
     * @param word folded, in lower case
     */
    static String stem(String word) {
        String irregular = IRREGULAR.get(word);
        if (irregular != null) {
            return irregular;
        }
        if (word.length() < 4 || KEPT.contains(word)) {
            return word;
        }
        String singular = singular(word);
        if (!singular.equals(word) && KEPT.contains(singular)) {
            return singular;
        }
        String stem = verb(singular);
        return stem.length() >= 5 && stem.charAt(stem.length() - 1) == 'e' && stem.charAt(stem.length() - 2) != 'e'
                ? stem.substring(0, stem.length() - 1)
                : stem;
    }

    private static String singular(String word) {
        int n = word.length();
        if (word.charAt(n - 1) != 's' || word.endsWith("ss") || word.endsWith("us") || word.endsWith("is")) {
            return word;
        }
        if (word.endsWith("ies")) {
            return n <= 4 ? word.substring(0, n - 1) : word.substring(0, n - 3) + "y";
        }
        if (word.endsWith("xes")
                || word.endsWith("ches")
                || word.endsWith("shes")
                || word.endsWith("sses")
                || word.endsWith("zzes")) {
            return word.substring(0, n - 2);
        }
        return word.substring(0, n - 1);
    }

    private static String verb(String word) {
        int n = word.length();
        char last = word.charAt(n - 1);
        if (last != 'd' && last != 'g') {
            return word;
        }
        if (word.endsWith("ied")) {
            return n <= 4 ? word.substring(0, n - 1) : word.substring(0, n - 3) + "y";
        }
        if (word.endsWith("ying") && n > 5) {
            return word.substring(0, n - 3);
        }
        int cut = word.endsWith("ing") ? 3 : word.endsWith("ed") && !word.endsWith("eed") ? 2 : 0;
        if (cut == 0 || !vowelIn(word, n - cut) || n - cut < 2) {
            return word;
        }
        return mend(word.substring(0, n - cut));
    }

    /** Undoes a doubled consonant ("dipp") or a dropped e ("ris"). */
    private static String mend(String base) {
        int n = base.length();
        char last = base.charAt(n - 1);
        if (n >= 4 && last == base.charAt(n - 2) && "lsz".indexOf(last) < 0 && !vowel(last)) {
            return base.substring(0, n - 1);
        }
        boolean shortBase = n <= 3 && !vowel(last) && "wxy".indexOf(last) < 0 && vowel(base.charAt(n - 2));
        return shortBase ? base + "e" : base;
    }

    private static boolean vowelIn(String word, int end) {
        for (int i = 0; i < end; i++) {
            if (vowel(word.charAt(i)) || (word.charAt(i) == 'y' && i > 0)) {
                return true;
            }
        }
        return false;
    }

    private static boolean vowel(char c) {
        return "aeiou".indexOf(c) >= 0;
    }

    /** The forms with -er, -est and -ly, with the spelling changes that go with them. */
    private static void graded(String adjective) {
        String stem = stem(adjective);
        int n = adjective.length();
        char last = adjective.charAt(n - 1);
        String base = last == 'e' ? adjective.substring(0, n - 1) : adjective;
        if (last == 'y') {
            base = adjective.substring(0, n - 1) + "i";
        } else if (n == 3 && !vowel(last) && "wxy".indexOf(last) < 0) {
            base = adjective + last;
        }
        same(stem, adjective, base + "er", base + "est", (last == 'y' ? base : adjective) + "ly");
    }

    private static void same(String stem, String... forms) {
        IRREGULAR.putIfAbsent(stem, stem);
        for (String form : forms) {
            if (!KEPT.contains(form)) {
                IRREGULAR.putIfAbsent(form, stem);
            }
        }
    }
}
