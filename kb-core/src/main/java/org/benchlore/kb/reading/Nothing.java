package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/**
 * Drops a "nothing" that is not said of the unit: the object of something ("found nothing", "rewind nothing") or the end of a
 * long run ("ran three days, nothing").
 */
final class Nothing {
    private static final Words SUBJECTS = Words.spaced("it he she that this one unit set thing box still just absolut"
            + " absolutely simply then and but then so or totally literally now since or yet");
    private static final Words NAMELESS_OBJECT =
            Words.spaced("with without to from in but else that of unusual wrong odd special");
    private static final Words GOVERNING = Words.spaced(
            "find found see saw hear heard read measur show notice get got doing say found did change help press mean "
                    + "there is be");
    private static final Words RUNS = Words.terms("run ran soak test play");
    private static final Words LONG = Words.terms("hour day week night evening weekend");

    /** In seconds. */
    private static final double AN_HOUR = 3600;

    private final Passage passage;

    private Nothing(Passage passage) {
        this.passage = passage;
    }

    static void drop(Passage passage, List<Claim> claims) {
        Nothing nothing = new Nothing(passage);
        claims.removeIf(c -> c.measured == null && nothing.empty(c));
    }

    private boolean empty(Claim claim) {
        Item word = claim.word;
        if (word == null || claim.name != null || word.entry.phrases.isEmpty() || !bareNothing(word)) {
            return false;
        }
        if (afterRun(word)) {
            return true;
        }
        for (int i = word.from - 1;
                i >= 0 && passage.sameSegment(i, word.from) && passage.sameClause(i, word.from);
                i--) {
            String surface = passage.token(i).surface();
            if (surface.equals("and") || surface.equals("then")) {
                break;
            }
            boolean governs = i == word.from - 1
                    && (GOVERNING.contains(surface)
                            || GOVERNING.contains(passage.token(i).term()));
            boolean tells = passage.content(i) || passage.token(i).kind() == Kind.NUMBER || passage.named(i);
            if (governs || (tells && !SUBJECTS.contains(surface))) {
                return true;
            }
        }
        int next = word.to;
        return next < passage.size()
                && passage.sameSegment(next, word.to - 1)
                && (NAMELESS_OBJECT.contains(passage.token(next).surface()) || passage.content(next));
    }

    /** "Ran three days, nothing": no fault showed. */
    private boolean afterRun(Item word) {
        boolean lasted = false;
        for (int i = word.from - 1; i >= 0 && passage.sentence(i) == passage.sentence(word.from); i--) {
            Token token = passage.token(i);
            lasted |= LONG.contains(token.term())
                    || (token.kind() == Kind.QUANTITY && token.unit().equals("s") && token.value() >= AN_HOUR);
            if (lasted && RUNS.contains(token.term())) {
                return true;
            }
        }
        return false;
    }

    private boolean bareNothing(Item word) {
        boolean nothing = false;
        for (int i = word.from; i < word.to; i++) {
            nothing |= passage.term(i).equals("nothing");
            if (passage.token(i).kind() != Kind.WORD
                    || (passage.content(i) && !passage.term(i).equals("nothing"))) {
                return false;
            }
        }
        return nothing;
    }
}
