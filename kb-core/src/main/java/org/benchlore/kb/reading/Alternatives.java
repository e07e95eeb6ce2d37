package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * What stands beside a denied thing: "no hiss or hum" denies both, "neither sound nor picture" as well, "picture but no sound"
 * says that there is a picture.
 */
final class Alternatives {
    /** Tokens from "or" back to the denial. */
    private static final int REACH = 5;

    private static final int LONGEST = 2;
    private static final String NO = "no";
    private static final String NOR = "nor";
    private static final Words JOINS = Words.of("or", NOR);
    private static final Words DENYING = Words.of(NO, "neither", "without", NOR, "never");
    private static final Words DETERMINERS = Words.spaced("a an any the");
    private static final Words HAVING = Words.spaced("a an the there is are have has had got with");

    private final Passage passage;
    private final Lexicon lexicon;
    private final List<Claim> claims;
    private final boolean[] claimed;

    private Alternatives(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.claims = claims;
        this.claimed = new boolean[passage.size()];
        for (Claim claim : claims) {
            for (int i = claim.from; i < claim.to; i++) {
                claimed[i] = true;
            }
        }
    }

    /** Turns round or adds what stands beside what a passage denies. */
    static void apply(Passage passage, Lexicon lexicon, List<Claim> claims) {
        Alternatives alternatives = null;
        for (int i = 0; i + 1 < passage.size(); i++) {
            boolean or = JOINS.contains(passage.term(i));
            if ((or || passage.term(i).equals("but") || passage.term(i).equals("neither")) && !passage.unreal(i)) {
                alternatives = alternatives == null ? new Alternatives(passage, lexicon, claims) : alternatives;
                if (!or || alternatives.denied(i)) {
                    alternatives.at(i, or);
                }
            }
        }
    }

    private void at(int i, boolean or) {
        int from = i + 1;
        while (from < passage.size() && DETERMINERS.contains(passage.token(from).surface())) {
            from++;
        }
        if (or) {
            deny(i, from);
        } else if (passage.term(i).equals("neither")) {
            missing(i, from);
        } else if (from < passage.size() && DENYING.contains(passage.term(from))) {
            present(i);
        }
    }

    /** Whether something is denied before a token, with nothing between but words. */
    private boolean denied(int or) {
        for (int i = or - 1; i >= Math.max(0, or - REACH) && passage.sameSegment(i, or); i--) {
            if (DENYING.contains(passage.term(i))) {
                return true;
            }
        }
        return false;
    }

    /** "No hiss or hum": the hum is denied like the hiss. */
    private void deny(int or, int from) {
        boolean nor = passage.term(or).equals(NOR);
        boolean any = false;
        for (Claim claim : claims) {
            boolean here = claim.from >= or && claim.from <= from && claim.to > from;
            any |= here;
            boolean trouble = !claim.normal() && !claim.negated;
            boolean well = nor && claim.normal() && !claim.negated;
            if (here && claim.measured == null && !claim.bareNegation && (trouble || well) && !denies(claim)) {
                claim.negated = true;
                claim.cover(or, or + 1);
            }
        }
        if (!any) {
            missing(or, from);
        }
    }

    private boolean denies(Claim claim) {
        Item word = claim.word;
        return word != null && DENYING.contains(passage.term(word.from));
    }

    /** "Neither sound": what the packs teach as "no sound". */
    private void missing(int denial, int from) {
        Sense sense = from < passage.size() && !claimed[from]
                ? absence(from, Math.min(passage.size(), from + LONGEST))
                : null;
        if (sense != null) {
            add(sense, denial, from + 1);
        }
    }

    /** "Picture but no sound": the thing alone in front of "but" is there. */
    private void present(int but) {
        int from = but;
        while (from > 0 && passage.sameSegment(from - 1, but - 1)) {
            from--;
        }
        while (from < but && HAVING.contains(passage.token(from).surface())) {
            from++;
        }
        if (from >= but || but - from > LONGEST || told(from, but)) {
            return;
        }
        Sense sense = absence(from, but);
        if (sense != null && !sense.stateOf().normal()) {
            add(sense, from, but).negated = true;
        }
    }

    /** Whether something is said of what stands between two tokens alone. */
    private boolean told(int from, int to) {
        for (Claim claim : claims) {
            if (claim.from < to && claim.to > from && claim.to <= to) {
                return true;
            }
        }
        return false;
    }

    private Claim add(Sense sense, int from, int to) {
        Claim claim = new Claim(sense.symptom(), sense.state(), null, from, to);
        claim.listed = true;
        claims.add(claim);
        for (int i = from; i < to; i++) {
            claimed[i] = true;
        }
        return claim;
    }

    /** What "no THING" says of the thing that starts at a token: by the packs' phrase or the name's own meaning; null for nothing. */
    private @Nullable Sense absence(int from, int to) {
        for (int end = to; end > from; end--) {
            List<String> terms = new ArrayList<>(LONGEST + 1);
            terms.add(NO);
            for (int i = from; i < end; i++) {
                terms.add(passage.term(i));
            }
            Entry phrase = lexicon.trie().find(terms).orElse(null);
            if (phrase != null && !phrase.phrases.isEmpty()) {
                return phrase.phrases.get(0);
            }
        }
        Item item = passage.itemAt(from);
        if (item == null || !item.free() || item.entry.names.isEmpty() || item.to > to) {
            return null;
        }
        return Negations.bare(item)
                .filter(claim -> !claim.normal() && !claim.negated)
                .map(claim -> new Sense(claim.symptom, claim.state))
                .orElse(null);
    }
}
