package org.benchlore.kb.reading;

import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/**
 * Items that look like a name or a state and are none here: only spoken of or still to be looked at, a preposition, an adverb, a
 * verb, or the number that a reading moves to.
 */
final class Unmeant {
    private static final Words PREPOSITIONS =
            Words.of("off", "out", "up", "down", "on", "in", "over", "around", "through");
    private static final Words PLACES = Words.of(
            "the", "a", "an", "his", "her", "its", "my", "their", "our", "of", "this", "that", "each", "every");
    private static final Words MAKERS = Words.spaced(
            "machine machines maker makers frother grinder grinders dispenser detector detectors pedal pedals holder holders "
                    + "cover covers protector protectors guard guards bracket brackets caddy bucket");

    private static final Words LIKENED = Words.spaced(
            "tinted coloured colored grey proof resistant tight cooled heated powered driven operated fed filled loaded mounted "
                    + "type style style like shaped sized");

    private final Passage passage;

    /** Whether anything is said to be still to be looked at. */
    private final boolean unchecked;

    Unmeant(Passage passage) {
        this.passage = passage;
        boolean any = false;
        for (Item item : passage.items) {
            any |= item.entry.cue == Cue.UNCHECKED;
        }
        this.unchecked = any;
    }

    boolean is(Item item) {
        boolean byItself = !item.judged && byItself(item);
        item.judged = true;
        return byItself || (unchecked && means(item) && beside(item));
    }

    /** "There is neither sound nor picture": no word for what is there. */
    private boolean opening(Item item) {
        return !item.names
                && item.to + 1 < passage.size()
                && passage.token(item.from).surface().equals("there")
                && passage.term(item.to).equals("be")
                && Token.denies(passage.term(item.to + 1));
    }

    /** What does not depend on other items, and so stays as it is. */
    private boolean byItself(Item item) {
        return ((passage.unreal(item.from) || passage.unreal(item.to - 1)) && means(item))
                || (item.to - item.from == 1
                        && (opening(item)
                                || preposition(item)
                                || adverb(item)
                                || forGood(item)
                                || verb(item)
                                || madeBy(item)));
    }

    private static boolean means(Item item) {
        return item.names || !item.entry.words.isEmpty() || !item.entry.phrases.isEmpty();
    }

    /** Whether it is still to be looked at. */
    private boolean beside(Item item) {
        for (int i = item.from - 1; i >= 0 && i >= item.from - Linker.REACH && passage.sameSegment(i, item.from); i--) {
            Item cue = passage.itemAt(i);
            if (cue != null && cue.cue(Cue.UNCHECKED)) {
                return true;
            }
        }
        for (int i = item.to;
                i < passage.size() && i < item.to + Linker.REACH && passage.sameSegment(i, item.from);
                i++) {
            Item cue = passage.itemAt(i);
            if (cue != null && cue.cue(Cue.UNCHECKED)) {
                return true;
            }
        }
        return false;
    }

    /** "Coffee machine", "smoke detector", "distortion pedal": a word that only says what kind of unit it is. */
    private boolean madeBy(Item item) {
        return item.entry.cue == null
                && item.to < passage.size()
                && passage.sameSegment(item.from, item.to)
                && (MAKERS.contains(passage.token(item.to).surface()) || likened(item.to));
    }

    /** "Smoke-tinted", "water-cooled", "belt-driven": what something is like or made for. */
    private boolean likened(int second) {
        int hyphen = passage.token(second).start() - 1;
        return hyphen > 0
                && passage.text.charAt(hyphen) == '-'
                && passage.token(second - 1).end() == hyphen
                && LIKENED.contains(passage.token(second).surface());
    }

    /** "Off the front display", "out of service": where a place follows, "off" and "out" are no states. */
    private boolean preposition(Item item) {
        boolean plain =
                !item.names && PREPOSITIONS.contains(passage.token(item.from).term());
        return plain
                && item.to < passage.size()
                && PLACES.contains(passage.token(item.to).term());
    }

    /** "It is still" is a state, "still no answer" is none. */
    private boolean adverb(Item item) {
        boolean still = passage.token(item.from).term().equals("still");
        return still
                && item.to < passage.size()
                && passage.sameSegment(item.from, item.to)
                && passage.token(item.to).kind() != Kind.PUNCTUATION;
    }

    /** "Stuck for good" is said of time, as is "for good and all". */
    private boolean forGood(Item item) {
        boolean good = item.from > 0
                && passage.token(item.from).term().equals("good")
                && passage.token(item.from - 1).term().equals("for");
        return good && (item.to == passage.size() || !passage.content(item.to));
    }

    /** "Sinks to 10.3" names no heatsink. */
    private boolean verb(Item item) {
        Token token = passage.token(item.from);
        boolean third =
                item.names && token.surface().endsWith("s") && !token.surface().equals(token.term());
        return third
                && item.to + 1 < passage.size()
                && passage.token(item.to).term().equals("to")
                && passage.token(item.to + 1).numeric();
    }

    /** "Drops to 1 V" names no rail of 1 V. */
    boolean reached(Item item) {
        Token token = passage.token(item.from);
        boolean number = token.numeric();
        return number
                && item.to - item.from == 1
                && item.from > 1
                && passage.token(item.from - 1).term().equals("to")
                && Told.REACHING.contains(passage.token(item.from - 2).term());
    }
}
