package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;

/**
 * What works in part is not as it should be: "touch works on the left third only", "only one of the two heaters gets hot",
 * "the remote works if you hold it close"; nor is what goes on, but badly or at times only: "the motor runs unevenly", "barely works",
 * "works sometimes", "far from good". Which other state it is in stays open.
 */
final class Limits {
    /** Tokens from "only" to what it limits. */
    private static final int REACH = 5;

    private static final Words SHARES = Words.spaced("one half some two three part left right top bottom first");
    private static final Words PLACES = Words.spaced("on in at from near within");
    private static final Words POORLY = Words.spaced(
            "slowly slow badly bad poorly poor weakly weak faintly dimly unevenly rough roughly "
                    + "jerkily erratically sluggishly sluggish reluctantly haltingly hesitantly noisily wrongly wrong partly partially unsteadily "
                    + "irregularly feebly unreliably incorrectly improperly imperfectly hardly barely scarcely nothing horrible awful terrible");
    private static final Words DEGREES =
            Words.spaced("but only very too so quite rather really somewhat just a bit pretty sort kind of");
    private static final Words SIDES = Words.spaced("left right one upper lower front rear top bottom first second");
    private static final Words FAILS = Words.spaced("dead silent nothing gone fails missing");
    private static final Words HANDS = Words.spaced("you i held pressed pushed");
    private static final Words SCARCELY = Words.of("hardly", "barely", "scarcely");

    /** What in front of praise takes it back, as its two words. */
    private static final Words FAR = Words.spaced("far nowhere anything");

    private static final Words FROM = Words.spaced("from near but");

    private final Passage passage;

    private Limits(Passage passage) {
        this.passage = passage;
    }

    /** Turns round what is said to be well of a part only. */
    static void apply(Passage passage, List<Claim> claims) {
        Limits limits = new Limits(passage);
        for (Claim claim : claims) {
            boolean well = claim.measured == null
                    && claim.normal()
                    && !claim.negated
                    && claim.symptom.states().size() > 1
                    && !Polarity.presence(claim.symptom);
            if (well
                    && (limits.ofPart(claim)
                            || limits.inPlace(claim)
                            || limits.onlyInPlace(claim)
                            || limits.ifHeld(claim)
                            || limits.poorly(claim)
                            || limits.scarcely(claim)
                            || limits.atTimes(claim)
                            || limits.notTheOther(claim))) {
                claim.negated = true;
                claim.anyOther = true;
            }
        }
    }

    /** "Only one of the two heaters gets hot". */
    private boolean ofPart(Claim claim) {
        for (int i = claim.from; i >= Math.max(0, claim.from - REACH) && passage.sameSegment(i, claim.from); i--) {
            if (only(i)) {
                return i + 1 < passage.size()
                        && SHARES.contains(passage.token(i + 1).surface());
            }
        }
        return false;
    }

    /** "Works on the left third only", "works only from near". */
    private boolean inPlace(Claim claim) {
        int at = claim.to;
        if (at < passage.size() && only(at)) {
            at++;
            return inside(claim, at) && PLACES.contains(passage.token(at).surface());
        }
        if (!inside(claim, at) || !PLACES.contains(passage.token(at).surface())) {
            return false;
        }
        for (int i = at + 1; inside(claim, i) && i <= at + REACH; i++) {
            Item item = passage.itemAt(i);
            if (item != null && item.entry.cue != null && Cue.CONDITIONS.contains(item.entry.cue)) {
                return false;
            }
            if (only(i)) {
                return !inside(claim, i + 1);
            }
        }
        return false;
    }

    /** "They only work on the left". */
    private boolean onlyInPlace(Claim claim) {
        int at = claim.to;
        Item item = at < passage.size() ? passage.itemAt(at) : null;
        boolean condition = item != null && item.entry.cue != null && Cue.CONDITIONS.contains(item.entry.cue);
        if (condition
                || !inside(claim, at)
                || !PLACES.contains(passage.token(at).surface())) {
            return false;
        }
        for (int i = Math.max(0, claim.from - 1); i < at; i++) {
            if (only(i)) {
                return true;
            }
        }
        return false;
    }

    /** "Works if you hold it close". */
    private boolean ifHeld(Claim claim) {
        int at = claim.to;
        at += inside(claim, at) && only(at) ? 1 : 0;
        return inside(claim, at + 1)
                && passage.token(at).surface().equals("if")
                && HANDS.contains(passage.token(at + 1).surface());
    }

    /** "Runs unevenly", "charges, but only very slowly": nothing that was taught for it, and not as it should be. */
    private boolean poorly(Claim claim) {
        int at = claim.to;
        boolean but = at + 1 < passage.size()
                && passage.token(at).is(",")
                && passage.token(at + 1).surface().equals("but");
        at += but ? 1 : 0;
        while (at < passage.size()
                && at < claim.to + REACH
                && DEGREES.contains(passage.token(at).surface())) {
            at++;
        }
        boolean told = at < passage.size()
                && passage.sentence(at) == passage.sentence(claim.from)
                && POORLY.contains(passage.token(at).surface())
                && (at > claim.to || inside(claim, at));
        if (!told || (at + 1 < passage.size() && passage.sameSegment(at, at + 1) && passage.content(at + 1))) {
            return false;
        }
        claim.cover(at, at + 1);
        return true;
    }

    /** "Barely works", "is far from good". */
    private boolean scarcely(Claim claim) {
        for (int i = Math.max(0, claim.from - 2); i < claim.to; i++) {
            String word = passage.token(i).surface();
            boolean farFrom = i + 1 < claim.to
                    && FAR.contains(word)
                    && FROM.contains(passage.token(i + 1).surface());
            boolean hardly = i >= claim.from - 1 && SCARCELY.contains(word) && !own(claim, i);
            if ((farFrom || hardly) && passage.sameSegment(i, claim.to - 1)) {
                return true;
            }
        }
        return false;
    }

    /** "Hardly any dust" may be what the packs teach for a little. */
    private boolean own(Claim claim, int i) {
        Item item = passage.itemAt(i);
        return item != null && item.to - item.from > 1 && (item == claim.word || item == claim.name);
    }

    /** "Only works sometimes", "works now and then". */
    private boolean atTimes(Claim claim) {
        int to = claim.to < passage.size() && only(claim.to) ? claim.to + 1 : claim.to;
        for (int i = Math.max(0, claim.from - 1); i <= to && i < passage.size(); i++) {
            if (passage.cue(i) == Cue.INTERMITTENT && passage.sameSegment(i, claim.to - 1)) {
                return true;
            }
        }
        return false;
    }

    /** "The left speaker works, the right one doesn't". */
    private boolean notTheOther(Claim claim) {
        boolean side = false;
        for (int i = Math.max(0, claim.from - 1); i < claim.to; i++) {
            side |= SIDES.contains(passage.token(i).surface()) && passage.sameSegment(i, claim.to - 1);
        }
        boolean other = false;
        for (int i = claim.to; side && i < Math.min(passage.size(), claim.to + 2 * REACH); i++) {
            if (passage.sentence(i) != passage.sentence(claim.from)) {
                return false;
            }
            other |= SIDES.contains(passage.token(i).surface())
                    || passage.token(i).surface().equals("other");
            if (other
                    && (Token.denies(passage.term(i))
                            || FAILS.contains(passage.token(i).surface()))) {
                return true;
            }
        }
        return false;
    }

    private boolean inside(Claim claim, int i) {
        return i < passage.size() && passage.sameSegment(i, claim.to - 1);
    }

    private boolean only(int i) {
        return passage.token(i).surface().equals("only");
    }
}
