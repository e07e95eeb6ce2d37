package org.benchlore.kb.reading;

import java.util.Set;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/**
 * What a number is told for, where it is no plain reading: a difference ("by more than one volt"), what is printed on the
 * part or expected ("24 V printed there"), a marking ahead of the reading ("4R7 measures 150k"), either end of a course ("from
 * 12 to 8 V"), a share of the marking ("38 % of its marking").
 */
final class Told {
    private static final int NEAR = 4;
    private static final int LABELLED = 3;
    private static final int STAGE = 6;

    private static final Words ROUGHLY =
            Words.terms("more less than about some around roughly almost nearly over up to a the whole full");

    /** "Powered by 12 V" is no difference. */
    private static final Words POWERED = Words.terms("power feed fed suppli suppl run drive driven charg heat light");

    private static final Words BESIDE = Words.terms("under below abov over less more than off");
    private static final Words LIKE_PARTS = Words.terms("other rest mate neighbour sister twin");
    private static final Words PRINTED = Words.of("printed", "expected", "nominal");
    private static final Words RATED = Words.of("printed", "expected", "rated", "nominal", "marked");
    private static final Words SHOULD = Words.spaced("should must ought supposed nominal");

    /** Words between those and the number. */
    private static final Words LEADING =
            Words.terms("be to read show have give deliver put out measure around about at least roughly");

    private static final Words AGAINST = Words.terms("against versus vs");
    private static final Words MEASURES = Words.terms("measur read show test");
    private static final Words MARKINGS =
            Words.terms("mark marked marking label value valu print rate rated rating nominal capacity capac spec");

    private static final Words LABELS =
            Words.terms("mark marked label print printed book spec nominal rate rated should "
                    + "sheet manual schematic instead new");

    /** What a reading that moves stands behind, with "to". */
    static final Words REACHING =
            Words.terms("drop fall sag dip sink collaps go come rise climb jump shoot down up creep settl back");

    private final Passage passage;

    Told(Passage passage) {
        this.passage = passage;
    }

    /** Whether a number is what something should be: "must be 5.0", "supposed to read 24 V", "9 V expected". */
    boolean asExpected(int i) {
        if (printed(i)) {
            return true;
        }
        for (int b = i - 1; b >= Math.max(0, i - NEAR) && passage.sameSegment(b, i); b--) {
            if (SHOULD.contains(passage.token(b).surface())) {
                return true;
            }
            if (!LEADING.contains(term(b)) && !LEADING.contains(passage.token(b).surface())) {
                return false;
            }
        }
        return false;
    }

    /** Whether a number neither names a rail nor is a reading. */
    boolean asNothing(int i) {
        boolean bare = passage.token(i).kind() == Kind.NUMBER;
        return difference(i)
                || ofAKind(i)
                || asExpected(i)
                || (startsCourse(i) && namedBefore(i))
                || (bare && term(i + 1).equals("to") && number(i + 2))
                || (ofIts(i) && namedBefore(i));
    }

    /** "12 V in, 0 V out", "in 12 V, out 3": what goes into a stage and comes out of it names no rail. */
    boolean throughput(int i) {
        return passage.token(i).numeric() && (through(i, "in", "out") || through(i, "out", "in"));
    }

    private boolean through(int i, String own, String other) {
        if (!stage(i, own)) {
            return false;
        }
        for (int o = Math.max(0, i - STAGE); o <= i + STAGE && o < passage.size(); o++) {
            boolean beside = o != i && number(o) && passage.sentence(o) == passage.sentence(i);
            if (beside && stage(o, other)) {
                return true;
            }
        }
        return false;
    }

    /** Whether "in" or "out" stands right behind a number and ends its part, or opens it in front. */
    private boolean stage(int i, String side) {
        boolean behind = term(i + 1).equals(side) && closes(i + 2);
        boolean before = term(i - 1).equals(side) && closes(i + 1) && closes(i - 2);
        return behind || before;
    }

    private boolean closes(int i) {
        return i < 0
                || i >= passage.size()
                || passage.token(i).kind() == Kind.PUNCTUATION
                || Plain.joining(passage.token(i));
    }

    /** "Overshoots by more than one volt", "sits 650 mV under the others". */
    private boolean difference(int i) {
        int by = i - 1;
        while (by > 0 && by >= i - NEAR && ROUGHLY.contains(term(by))) {
            by--;
        }
        if (term(by).equals("by")) {
            return !POWERED.contains(term(by - 1));
        }
        int than = i + 1;
        while (than < i + NEAR && (BESIDE.contains(term(than)) || term(than).equals("the"))) {
            than++;
        }
        return than > i + 1 && LIKE_PARTS.contains(term(than));
    }

    /** "On a 19 V laptop", "an 8 ohm speaker": what kind of thing it is. */
    private boolean ofAKind(int i) {
        Token next = i + 1 < passage.size() ? passage.token(i + 1) : null;
        return next != null
                && passage.token(i).kind() == Kind.QUANTITY
                && next.kind() == Kind.WORD
                && (term(i - 1).equals("a") || term(i - 1).equals("an"))
                && passage.unexplained(i + 1);
    }

    /** "24 V printed there", "3.3 expected". */
    private boolean printed(int i) {
        return i + 1 < passage.size() && PRINTED.contains(passage.token(i + 1).surface());
    }

    /** Whether the words in front of a number or behind it make it what the part is marked with or should have. */
    boolean asLabelled(int i) {
        if (asRated(i)) {
            return true;
        }
        for (int b = i - 1; b >= Math.max(0, i - LABELLED); b--) {
            if (LABELS.contains(passage.token(b).surface()) || LABELS.contains(term(b))) {
                return true;
            }
            if (passage.token(b).kind() != Kind.WORD) {
                return false;
            }
        }
        return false;
    }

    /** Whether the words beside a number make it what the part should have: "12.5 printed", "against 12.5". */
    private boolean asRated(int i) {
        boolean ofNext = i + 2 < passage.size() && passage.token(i + 2).numeric(); // "3.1 uF marked 5 uF"
        boolean behind = !ofNext
                && i + 1 < passage.size()
                && RATED.contains(passage.token(i + 1).surface());
        return behind || AGAINST.contains(term(i - 1)) || ofIts(i);
    }

    /** The second number of "14 V of its 24 V". */
    private boolean ofIts(int i) {
        return term(i - 1).equals("its") && term(i - 2).equals("of") && number(i - 3);
    }

    /** "Surge resistor 4R7 measures 150k": a value right behind the name, with the reading still to come. */
    boolean asMarking(int i) {
        boolean behindName = i > 0 && number(i) && passage.named(i - 1) && !passage.named(i);
        return behindName && MEASURES.contains(term(i + 1)) && (comparable(i, i + 2) || comparable(i, i + 3));
    }

    private boolean comparable(int marking, int reading) {
        String unit = number(reading) ? passage.token(reading).unit() : "none";
        return unit.isEmpty()
                || unit.equals("%")
                || unit.equals(passage.token(marking).unit());
    }

    /** "38 % of its marking". */
    boolean asShare(int i) {
        boolean share = passage.token(i).unit().equals("%") && term(i + 1).equals("of");
        return share && (MARKINGS.contains(term(i + 2)) || MARKINGS.contains(term(i + 3)));
    }

    /** Whether a reading is what its subject moved to: "sags to 9". */
    boolean reached(int i) {
        return term(i - 1).equals("to")
                && (REACHING.contains(term(i - 2))
                        || (number(i - 2) && term(i - 3).equals("from")));
    }

    private boolean startsCourse(int i) {
        return term(i - 1).equals("from") && term(i + 1).equals("to") && number(i + 2);
    }

    private boolean namedBefore(int reading) {
        for (int i = reading - 1; i >= 0 && i >= reading - 2 * NEAR && passage.sameClause(i, reading); i--) {
            if (passage.named(i)) {
                return true;
            }
        }
        return false;
    }

    /** Whether only the size of a reading counts: "plus and minus 15.1 V", "+42 and -42 V", "-22 V instead of -15". */
    boolean bySize(int i) {
        if (passage.token(i).value() >= 0) {
            return false;
        }
        boolean joined = i > 0 && Plain.joining(passage.token(i - 1));
        int before = joined ? i - 2 : i - 1;
        if (term(before).equals("plus")
                || (joined && number(before) && passage.token(before).value() > 0)) {
            return true;
        }
        for (int other = i + 1; other < passage.size() && other <= i + NEAR; other++) {
            if (number(other) && passage.token(other).value() < 0) {
                return Set.of("of", "be", "to").contains(term(other - 1));
            }
        }
        return false;
    }

    private boolean number(int i) {
        return i >= 0 && i < passage.size() && passage.token(i).numeric();
    }

    private String term(int i) {
        return i < 0 || i >= passage.size() ? "" : passage.token(i).term();
    }
}
