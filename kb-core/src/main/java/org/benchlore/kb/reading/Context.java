package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.Reading.Condition;
import org.benchlore.kb.reading.Reading.Source;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/**
 * What the words around a claim say about it: doubt, history, conditions, who says so; after ConText (Harkema and others,
 * J. Biomed. Inform. 42:839-851, 2009). A cue counts for the claim in whose stretch it stands; one that stands in none counts
 * for its neighbour, and who speaks and of what time for the rest of the sentence.
 */
final class Context {
    /** Tokens looked at for a closing question mark. */
    private static final int ASKED_REACH = 30;

    /** Seconds from which on "after …" is a condition and not a start. */
    private static final double A_WHILE = 60;

    /** Tokens from "20 min" to what comes then. */
    private static final int THEN_REACH = 5;

    /** Tokens of praise between what is said and "until". */
    private static final int PRAISE_REACH = 3;

    private static final Words UNTIL = Words.of("until", "till", "before");
    private static final Words RAN = Words.spaced("ran went kept held stood stayed lit spun");
    private static final Words MAY = Words.of("may", "might", "could");
    private static final Words AFTER = Words.of("after");
    private static final Words LASTING = Words.of("for", "after");
    private static final Words DRAWING = Words.of("at", "with", "draw", "under", "load");
    private static final Words ME = Words.of("i", "we");
    private static final Words JOINTS = Words.of("but", "and", "though", "yet");
    private static final Words NEW = Words.of("new", "replacement");
    private static final Words WAS = Words.of("was", "were", "had", "did", "used");

    private final Passage passage;
    private final List<Claim> claims;
    private final List<Set<Cue>> cues = new ArrayList<>();

    /** Finds the cues of claims, which are in order and have their stretches. */
    Context(Passage passage, List<Claim> claims) {
        this.passage = passage;
        this.claims = claims;
        int farthest = 0;
        int[] reach = new int[claims.size()];
        for (int i = 0; i < claims.size(); i++) {
            cues.add(EnumSet.noneOf(Cue.class));
            farthest = Math.max(farthest, claims.get(i).stretchTo);
            reach[i] = farthest;
        }
        int next = 0;
        for (Item item : passage.items) {
            Cue cue = item.entry.cue;
            while (next < claims.size() && claims.get(next).stretchFrom <= item.from) {
                next++;
            }
            if (cue != null && item.free() && !(Cue.CONDITIONS.contains(cue) && notOnly(item))) {
                place(item, cue, next, reach);
            }
        }
        for (int i = 0; i < claims.size(); i++) {
            tokens(claims.get(i), cues.get(i));
            if (lastedBefore(claims.get(i))) {
                cues.get(i).add(Cue.AFTER_A_WHILE);
            }
            if (endedThen(claims.get(i)) && Collections.disjoint(cues.get(i), Cue.CONDITIONS)) {
                cues.get(i).add(Cue.PAST);
            }
            if (passage.asks() && asked(claims.get(i))) {
                cues.get(i).add(Cue.DOUBT);
            }
        }
        contrastWithNow();
    }

    /** "After 25 min", "at 2 A": quantities that are conditions; and "may be low", where "be low" is the packs' own. */
    private void tokens(Claim claim, Set<Cue> found) {
        for (int i = claim.stretchFrom; i < claim.stretchTo; i++) {
            Token token = passage.token(i);
            if (MAY.contains(token.surface()) && i + 1 < claim.stretchTo && supposed(i)) {
                found.add(Cue.DOUBT);
            }
            if (passage.readAt(i) == claim && before(i + 1)) {
                found.add(Cue.PAST);
            }
            if (token.kind() != Kind.QUANTITY || passage.readAt(i) != null) {
                continue;
            }
            if (token.unit().equals("s") && token.value() >= A_WHILE && precedes(i, AFTER)) {
                found.add(Cue.AFTER_A_WHILE);
            } else if (token.unit().equals("A") && precedes(i, DRAWING)) {
                found.add(Cue.UNDER_LOAD);
            }
        }
    }

    /** "3.9 before, 5.02 after": a time that needs no word for what came between. */
    private boolean before(int i) {
        return i < passage.size()
                && passage.token(i).surface().equals("before")
                && (i + 1 == passage.size() || passage.token(i + 1).kind() == Kind.PUNCTUATION);
    }

    /** "Worked until it fell", "was fine before the storm": what was well up to a time is so no more. */
    private boolean endedThen(Claim claim) {
        if (claim.measured != null || !claim.normal() || claim.negated || claim.symptom.history()) {
            return false;
        }
        int at = claim.to;
        while (inSegment(at, claim) && at < claim.to + PRAISE_REACH && praises(at)) {
            at++;
        }
        int until = inSegment(at, claim) ? at : claim.to - 1; // "worked until" may be the packs' own words
        return UNTIL.contains(passage.token(until).surface()) && toldInPast(claim);
    }

    private boolean toldInPast(Claim claim) {
        for (int i = claim.stretchFrom; i < claim.stretchTo; i++) {
            String word = passage.token(i).surface();
            if (WAS.contains(word) || RAN.contains(word) || word.endsWith("ed")) {
                return true;
            }
        }
        return false;
    }

    private boolean inSegment(int i, Claim claim) {
        return i < passage.size() && passage.sameSegment(i, claim.to - 1);
    }

    private boolean praises(int i) {
        Item item = passage.itemAt(i);
        return passage.skipped(i) || (item != null && item.entry.polarity == Polarity.GOOD);
    }

    /** "Fine for 20 min, then goes dark". */
    private boolean lastedBefore(Claim claim) {
        boolean then = false;
        for (int i = claim.to - 1; i >= Math.max(0, claim.from - THEN_REACH); i--) {
            if (passage.sentence(i) != passage.sentence(claim.from)) {
                return false;
            }
            Token token = passage.token(i);
            boolean lasted = then && token.unit().equals("s") && token.value() >= A_WHILE;
            if (lasted && passage.readAt(i) == null) {
                return precedes(i, LASTING);
            }
            if (then && i < claim.from && passage.content(i)) {
                return false;
            }
            then |= token.surface().equals("then");
        }
        return false;
    }

    private boolean supposed(int may) {
        String next = passage.token(may + 1).surface();
        return next.equals("have")
                || (next.equals("be") && !passage.token(may).surface().equals("could"));
    }

    private boolean precedes(int token, Words words) {
        for (int i = token - 1; i >= Math.max(0, token - 2); i--) {
            if (words.contains(passage.token(i).term())) {
                return true;
            }
        }
        return false;
    }

    /** Cues that count for the claim of that number. */
    Set<Cue> of(int claim) {
        return cues.get(claim);
    }

    /**
     * Notes a cue.
     *
     * @param next number of the first claim whose stretch starts behind it
     * @param reach per claim, the farthest end of a stretch up to it
     */
    private void place(Item item, Cue cue, int next, int[] reach) {
        boolean inside = false;
        for (int i = next - 1; i >= 0 && reach[i] > item.from; i--) {
            if (claims.get(i).stretchTo > item.from) {
                inside = true;
                cues.get(i).add(cue);
            }
        }
        boolean opens = !inside || opensStretch(item, next);
        if (cue == Cue.OWNER || (cue == Cue.PAST && opens)) {
            onwards(item, cue, next);
        } else if (cue == Cue.DOUBT && !inside && next > 0 && sameSentence(next - 1, item)) {
            backwards(item, cue, next - 1);
        } else if (!inside && attaches(cue) && light(item)) {
            beside(item, cue, next);
        }
    }

    private static boolean attaches(Cue cue) {
        return Cue.CONDITIONS.contains(cue)
                || cue == Cue.DOUBT
                || cue == Cue.MEASURED
                || cue == Cue.PAST
                || cue == Cue.NOW;
    }

    /** "Not only when warm" is no condition. */
    private boolean notOnly(Item item) {
        Item before = item.index > 0 ? passage.items.get(item.index - 1) : null;
        return before != null && before.entry.cue == Cue.NO_NEGATION && before.to == item.from;
    }

    /** Whether the segment says nothing but cues, so that they must be meant for a neighbour. */
    private boolean light(Item item) {
        return light(item, -1) && light(item, 1);
    }

    private boolean light(Item item, int step) {
        int i = step < 0 ? item.from - 1 : item.to;
        for (; i >= 0 && i < passage.size() && passage.sameSegment(i, item.from); i += step) {
            if (passage.content(i) && passage.cue(i) == null) {
                return false;
            }
        }
        return true;
    }

    private boolean opensStretch(Item item, int next) {
        return next > 0 && item.from - claims.get(next - 1).stretchFrom <= 1;
    }

    /** To all claims of the sentence that follow, until it turns to the present. */
    private void onwards(Item item, Cue cue, int next) {
        int until = cue == Cue.PAST ? turnsToNow(item) : turnsToMe(item);
        for (int i = next; i < claims.size() && sameSentence(i, item) && claims.get(i).from < until; i++) {
            cues.get(i).add(cue);
        }
    }

    /** "Owner smelled burning, I smell nothing": where the writer speaks for himself. */
    private int turnsToMe(Item owner) {
        for (int i = owner.to + 1; i < passage.size() && passage.sentence(i) == passage.sentence(owner.from); i++) {
            boolean opens = passage.token(i - 1).kind() == Kind.PUNCTUATION
                    || JOINTS.contains(passage.token(i - 1).term());
            if (opens && ME.contains(passage.token(i).surface())) {
                return i;
            }
        }
        return passage.size();
    }

    private int turnsToNow(Item past) {
        for (int i = past.index + 1; i < passage.items.size(); i++) {
            Item item = passage.items.get(i);
            if (passage.sentence(item.from) != passage.sentence(past.from)) {
                return item.from;
            }
            if (item.entry.cue == Cue.NOW && item.free()) {
                return item.from;
            }
        }
        return passage.size();
    }

    /** "The opto is weak and the ESR high, but not sure": to all claims of the sentence before. */
    private void backwards(Item item, Cue cue, int last) {
        for (int i = last; i >= 0 && sameSentence(i, item); i--) {
            cues.get(i).add(cue);
        }
    }

    /** To the claim just before in the sentence, else to the one just behind. */
    private void beside(Item item, Cue cue, int next) {
        if (next > 0 && sameSentence(next - 1, item)) {
            int to = claims.get(next - 1).stretchTo;
            for (int i = next - 1; i >= 0 && claims.get(i).stretchTo == to; i--) {
                cues.get(i).add(cue);
            }
        } else if (next < claims.size() && sameSentence(next, item)) {
            int from = claims.get(next).stretchFrom;
            for (int i = next; i < claims.size() && claims.get(i).stretchFrom == from; i++) {
                cues.get(i).add(cue);
            }
        }
    }

    private boolean sameSentence(int claim, Item item) {
        return passage.sentence(claims.get(claim).from) == passage.sentence(item.from);
    }

    /** "It was dead on Friday, today it runs": what was so, told beside what is so now, is over. */
    private void contrastWithNow() {
        Set<String> now = new HashSet<>(); // what the rest of the sentence tells of now
        int sentence = -1;
        for (int i = claims.size() - 1; i >= 0; i--) {
            Claim claim = claims.get(i);
            if (passage.sentence(claim.from) != sentence) {
                now.clear();
            }
            sentence = passage.sentence(claim.from);
            if ((cues.get(i).contains(Cue.NOW) || ofNew(claim)) && !cold(claim)) {
                now.add(claim.symptom.id());
            } else if (now.contains(claim.symptom.id()) || (!now.isEmpty() && toldOfThen(claim))) {
                cues.get(i).add(Cue.PAST);
            }
        }
    }

    /** "Gets hot, 25 degrees now": how warm it lies there is no news of how warm it gets. */
    private static boolean cold(Claim claim) {
        Quantity quantity = claim.symptom.quantity();
        return claim.measured != null && quantity != null && quantity.unit().equals("degC") && claim.normal();
    }

    /** "New fuse holds" is said of now. */
    private boolean ofNew(Claim claim) {
        for (int i = claim.stretchFrom; i < Math.min(claim.stretchTo, claim.stretchFrom + 2); i++) {
            if (NEW.contains(passage.token(i).surface())) {
                return true;
            }
        }
        return false;
    }

    private boolean toldOfThen(Claim claim) {
        for (int i = claim.stretchFrom; i < claim.stretchTo; i++) {
            Token token = passage.token(i);
            if (WAS.contains(token.surface())) {
                return true;
            }
        }
        return false;
    }

    static Source source(Claim claim, Set<Cue> cues) {
        if (claim.measured != null || cues.contains(Cue.MEASURED)) {
            return Source.MEASURED;
        }
        return cues.contains(Cue.OWNER) ? Source.OWNER : Source.SEEN;
    }

    static List<Condition> conditions(Set<Cue> cues) {
        if (cues.isEmpty()) {
            return List.of();
        }
        List<Condition> conditions = new ArrayList<>();
        for (Cue cue : cues) {
            if (Cue.CONDITIONS.contains(cue)) {
                conditions.add(cue.condition());
            }
        }
        Collections.sort(conditions);
        return conditions;
    }

    private boolean asked(Claim claim) {
        int last = claim.to - 1;
        for (int i = last; i < passage.size() && i < last + ASKED_REACH && passage.sameSegment(i, last); i++) {
            if (passage.token(i).is("?")) {
                return true;
            }
        }
        return false;
    }
}
