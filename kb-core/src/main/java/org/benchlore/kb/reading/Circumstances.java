package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;

/**
 * Drops claims that are none: what only tells when something else was so ("sags when the disc spins up", "still charged
 * minutes after I pulled the plug", "crackles at low volume"), and what is only not at hand ("no belt in stock").
 */
final class Circumstances {
    private static final int REACH = 3;
    private static final int LONGEST_DEED = 2;

    private static final Words WHEN = Words.spaced("when whenever once until till while where");
    private static final Words WITH = Words.spaced("with after before when whenever once until till while upon time");
    private static final Words DEEDS =
            Words.spaced("pull pulled pulling unplug unplugged unplugging plugging plugged pressing pressed "
                    + "pushing pushed held holding disconnecting disconnected removing removed");

    private static final Words HANDLING = Words.spaced(
            "wiggle wiggled wiggling jiggle jiggled jiggling waggle waggled tap tapped tapping press pressed pressing push pushed"
                    + " twist twisted bend bent flex flexed knock knocked move moved turn turned");
    private static final Words SOLDERED = Words.spaced("resoldered soldered reflowed retouched redid remade");
    private static final Words KEEPS = Words.spaced("stock store shop box bag parcel manual drawer catalogue");
    private static final Words NOT_SENT = Words.spaced("enclosed included supplied delivered available fitted");
    private static final Words HAS = Words.spaced("has have had having");

    private static final Words THIS = Words.of("this", "these", "it");

    /** Parts that some units are made without. */
    private static final Words PARTS = Words.terms(
            "fan blower remote lamp led display battery pack fuse belt tray drive antenna aerial speaker clock tuner motor");

    private static final Words SET = Words.spaced("at with");
    private static final Words CONTROLS = Words.terms("volum bright brightnes loudnes");
    private static final int LONGEST_SETTING = 3;

    private final Passage passage;

    private Circumstances(Passage passage) {
        this.passage = passage;
    }

    static void drop(Passage passage, List<Claim> claims) {
        Circumstances circumstances = new Circumstances(passage);
        claims.removeIf(c -> c.measured == null && (circumstances.aside(c) || circumstances.lacking(c)));
    }

    private boolean aside(Claim claim) {
        if (claim.symptom.history()) {
            return false;
        }
        if (soldered(claim)) {
            return true;
        }
        if (setting(claim)) {
            return true;
        }
        boolean asItShould = claim.normal() && !claim.negated;
        return (asItShould && opened(claim.from, WHEN, 2))
                || (claim.name == null && deed(claim) && opened(claim.from, WITH, REACH))
                || (claim.name == null && tried(claim));
    }

    /** "Resoldered the joints, ok now": that the work helped, not how the joints were. */
    private boolean soldered(Claim claim) {
        Item name = claim.name;
        Item word = claim.word;
        if (name == null
                || word == null
                || word.entry.polarity != Polarity.GOOD
                || passage.sameSegment(name.from, word.from)) {
            return false;
        }
        int from = name.from;
        while (from > 0 && passage.sameSegment(from - 1, name.from)) {
            from--;
        }
        for (int i = from; i < passage.size() && passage.sameSegment(i, name.from); i++) {
            if (SOLDERED.contains(passage.token(i).surface())) {
                return true;
            }
        }
        return false;
    }

    /** "Wiggle the plug." and no word of what came of it. */
    private boolean tried(Claim claim) {
        int sentence = passage.sentence(claim.from);
        boolean opens = claim.from == 0 || passage.sentence(claim.from - 1) != sentence;
        boolean ends = claim.to == passage.size()
                || passage.sentence(claim.to) != sentence
                || (passage.token(claim.to).kind() == Token.Kind.PUNCTUATION
                        && (claim.to + 1 == passage.size() || passage.sentence(claim.to + 1) != sentence));
        return opens
                && ends
                && HANDLING.contains(passage.token(claim.from).surface())
                && claim.to - claim.from > 1
                && Plain.ARTICLES.contains(passage.token(claim.from + 1).term());
    }

    /** "Crackles at low volume", "hums with the volume down": how a control was set. */
    private boolean setting(Claim claim) {
        boolean set = claim.from > 0
                && SET.contains(passage.token(claim.from - 1).surface())
                && passage.sameSegment(claim.from - 1, claim.from);
        for (int i = claim.from; set && i < Math.min(claim.to, claim.from + LONGEST_SETTING); i++) {
            if (CONTROLS.contains(passage.term(i))) {
                return true;
            }
        }
        return false;
    }

    /** Whether one of some words stands there or right in front, but for articles and pronouns. */
    private boolean opened(int from, Words openers, int reach) {
        if (openers.contains(passage.token(from).surface())) {
            return true;
        }
        for (int i = from - 1; i >= Math.max(0, from - reach) && passage.sameSegment(i, from); i--) {
            if (openers.contains(passage.token(i).surface())) {
                return true;
            }
            if (passage.content(i) && reach < REACH) {
                return false;
            }
        }
        return false;
    }

    /** "Pulled the plug": little more than what somebody did. */
    private boolean deed(Claim claim) {
        boolean deed = false;
        int content = 0;
        for (int i = claim.from; i < claim.to; i++) {
            deed |= DEEDS.contains(passage.token(i).surface());
            content += passage.content(i) ? 1 : 0;
        }
        return deed && content <= LONGEST_DEED;
    }

    /** "No belt in stock", "no power lead enclosed": what is not at hand is not what is not as it should be. */
    private boolean lacking(Claim claim) {
        if (!Token.denies(passage.token(claim.from).term())) {
            return false;
        }
        if (madeWithout(claim)) {
            return true;
        }
        for (int i = claim.from + 1; i < passage.size() && passage.sameSegment(claim.from, i); i++) {
            if (i > claim.to + REACH) {
                return false;
            }
            boolean kept = passage.token(i).surface().equals("in") && keeps(i + 1);
            if (kept || NOT_SENT.contains(passage.token(i).surface())) {
                return true;
            }
        }
        return false;
    }

    /** "Has no fan" tells how the unit is made, "has no picture" that something is wrong. */
    private boolean madeWithout(Claim claim) {
        boolean has = claim.from > 0
                && HAS.contains(passage.token(claim.from - 1).surface())
                && passage.sameSegment(claim.from - 1, claim.from);
        boolean here = claim.to + 1 < passage.size()
                && passage.sameSegment(claim.to + 1, claim.from)
                && passage.token(claim.to).surface().equals("in")
                && THIS.contains(passage.token(claim.to + 1).surface());
        return (has || here)
                && claim.bareNegation
                && claim.to == claim.from + 2
                && PARTS.contains(passage.term(claim.to - 1));
    }

    private boolean keeps(int from) {
        int i = from;
        while (i < passage.size() && i < from + 2 && !passage.content(i)) {
            i++;
        }
        return i < passage.size() && KEEPS.contains(passage.token(i).surface()) && passage.sameSegment(from, i);
    }
}
