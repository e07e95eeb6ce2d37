package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * Drops claims that rest on next to nothing: one word of meaning, or a name and a word far apart, in a stretch that says
 * something else. The limits were chosen on texts kept apart from both halves of the gold corpus.
 */
final class Thin {
    /** Words about something else that outweigh a name and one word for it. */
    private static final int CROWD = 4;

    /** Words of a place: "at", "the", "board", "edge". */
    private static final int LONGEST_PLACE = 3;

    /** Words in front of a colon. */
    private static final int LONGEST_HEADING = 3;

    /** Where something shows takes nothing from it: "left channel hums". */
    private static final Words SIDES = Words.terms("left right channel side speaker top bottom middle centre center");

    /** How often tells nothing else: "restarts every hour". */
    private static final Words EVERY = Words.spaced("every each an a per");

    private static final Words PERIODS = Words.terms("second minute hour day night week morning evening month");

    /** Words that only colour what is said: "a dreadful hum", "lifeless ever since". */
    private static final Words COLOURING = Words.terms(
            "since ever whatever suddenly sadly dreadful terrible horrible awful nasty frightful ghastly "
                    + "constant persistent annoying irritating slight distinct definite obvious audible noticeable unbearable");

    private static final String NOTHING = "nothing";

    /** "Hums on everything", "on all inputs": wherever it is looked for. */
    private static final Words EVERYWHERE =
            Words.spaced("everything anything everywhere whatever all every any each both");

    private static final Words PLACING =
            Words.spaced("in on at near by under behind across along inside above below beside around of into");

    private final Passage passage;
    private final Lexicon lexicon;
    private final boolean[] claimed;

    private Thin(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.claimed = new boolean[passage.size()];
        for (Claim claim : claims) {
            for (int i = claim.from; i < claim.to; i++) {
                claimed[i] = true;
            }
        }
    }

    static void drop(Passage passage, Lexicon lexicon, List<Claim> claims) {
        Thin thin = new Thin(passage, lexicon, claims);
        claims.removeIf(thin::thin);
    }

    private boolean thin(Claim claim) {
        Item word = claim.word;
        if (claim.measured != null || claim.listed || claim.bareNegation || word == null) {
            return false;
        }
        int own = 0;
        int between = 0;
        int beside = 0;
        for (int i = start(claim); i < passage.size() && (i < claim.to || together(i, claim.to - 1)); i++) {
            if (tells(i)) {
                boolean inside = i >= claim.from && i < claim.to;
                boolean part = within(i, claim.name) || within(i, word);
                own += inside && part ? 1 : 0;
                between += inside && !part && !placed(i, claim.from) && !denial(i, claim) ? 1 : 0;
                boolean aside = claimed[i]
                        || (i >= claim.to && placed(i, claim.to - 1) && settled(i))
                        || (claim.symptom.history() && claim.name == null && passage.named(i));
                beside += aside ? 0 : 1;
            }
        }
        int foreign = beside + 2 * between;
        own = Math.max(own, wide(claim.name) + wide(word));
        if (claim.name != null) {
            return (own <= 2 && foreign >= CROWD) || (own <= 1 && foreign >= 2);
        }
        boolean predicate = !word.entry.words.isEmpty();
        for (int i = word.from; i < word.to; i++) {
            // a phrase with a name of its own in it is no single word: "the picture went"
            Entry alone = lexicon.trie().find(passage.term(i));
            predicate &= alone == null || !alone.names(claim.symptom);
        }
        boolean denies = Token.denies(passage.term(word.from)) && word.to - word.from > 1;
        return predicate && own <= 1 && foreign >= 1 && !denies;
    }

    /** "Nothing was dropped": what turns the claim round is no word about something else. */
    private boolean denial(int i, Claim claim) {
        return i == claim.from && claim.negated && passage.term(i).equals(NOTHING);
    }

    /** Whether "the" or "my" stands close in front: "in the street" is a place, "in six of ten" is none. */
    private boolean settled(int i) {
        return EVERYWHERE.contains(passage.token(i).surface())
                || EVERYWHERE.contains(passage.token(i - 1).surface())
                || Kinds.POINTING.contains(passage.token(i - 1).term())
                || Kinds.POINTING.contains(passage.token(Math.max(0, i - 2)).term());
    }

    /** Whether a token tells where the thing is, "at the board edge", and so takes nothing from what is said of it. */
    private boolean placed(int i, int from) {
        for (int j = i - 1; j > from && j >= i - LONGEST_PLACE; j--) {
            if (PLACING.contains(passage.token(j).surface())) {
                return true;
            }
        }
        return false;
    }

    private int start(Claim claim) {
        int from = claim.from;
        while (from > 0
                && together(from - 1, claim.from)
                && !heading(from - 1)
                && !(claim.name == null && and(from - 1))) {
            from--;
        }
        return from;
    }

    /** "Counter sheet: …": who says so, or of what. */
    private boolean heading(int colon) {
        int opens = Math.max(0, colon - LONGEST_HEADING);
        return passage.token(colon).is(":") && (opens == 0 || passage.sentence(opens - 1) != passage.sentence(colon));
    }

    private boolean and(int i) {
        return passage.token(i).term().equals("and");
    }

    private boolean together(int a, int b) {
        return passage.sameSegment(a, b) && passage.sameClause(a, b);
    }

    private boolean tells(int i) {
        Token token = passage.token(i);
        if (token.kind() != Kind.NUMBER && !passage.content(i)) {
            return false;
        }
        boolean time = token.unit().equals("s");
        return passage.cue(i) == null
                && !time
                && (token.kind() == Kind.NUMBER || !(SIDES.contains(token.term()) || COLOURING.contains(token.term())))
                && !period(i);
    }

    private boolean period(int i) {
        return i > 0 && EVERY.contains(passage.token(i - 1).surface()) && PERIODS.contains(passage.term(i));
    }

    /** "Way down", "output level" say one thing at least, however plain their words. */
    private static int wide(@Nullable Item item) {
        return item != null && item.to - item.from > 1 ? 1 : 0;
    }

    private static boolean within(int i, @Nullable Item item) {
        return item != null && i >= item.from && i < item.to;
    }
}
