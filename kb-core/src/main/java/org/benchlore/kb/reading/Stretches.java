package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/**
 * Gives every claim the stretch of text that is about it: its name and word with what stands around them, up to the next
 * comma, the next statement or the next claim. What the stretch says besides (a condition, a doubt) is said of that claim.
 */
final class Stretches {
    private static final int REACH_BACK = 16;
    private static final int REACH_ON = 24;
    private static final int LONGEST_ASIDE = 6;

    private static final Words JOINTS =
            Words.spaced("and but so then though although because which or plus & / while whereas yet");
    private static final Words DETERMINERS =
            Words.spaced("the a an its his her their my our no this that both all some own");
    private static final Words LEADS = Words.spaced(
            "and but so then also yet or plus well okay ok hi though although however because & er uh um which");
    private static final Words TRAILS = Words.spaced("and but so then or of with & lol pls the a an");
    private static final Words ENDS = Words.spaced("as instead where although because whereas whatever which");
    private static final Words DENYING = Words.of("no", "not");
    private static final Words ON_ABOUT_IT =
            Words.spaced("on at in from to when after with under for over by until till since now "
                    + "again too either as during all both every if while not");

    private final Passage passage;
    private final List<Claim> claims;

    private Stretches(Passage passage, List<Claim> claims) {
        this.passage = passage;
        this.claims = claims;
    }

    /** Sets the stretch of each claim; they are in order of their first token. */
    static void stretch(Passage passage, List<Claim> claims) {
        new Stretches(passage, claims).run();
    }

    private void run() {
        int before = 0;
        int i = 0;
        while (i < claims.size()) {
            int end = i + 1;
            int to = claims.get(i).to;
            while (end < claims.size() && claims.get(end).from < to) {
                to = Math.max(to, claims.get(end).to);
                end++;
            }
            int next = end < claims.size() ? claims.get(end).from : passage.size();
            before = stretch(i, end, to, before, next);
            i = end;
        }
    }

    /** Stretches claims {@code first} to {@code end}, whose words overlap. @return where the next one may start */
    private int stretch(int first, int end, int to, int before, int next) {
        int from = claims.get(first).from;
        int left = lead(left(from, before), from);
        int right = right(to, next);
        int nextMayStart = right;
        right = trail(to, right);
        for (Claim claim : claims.subList(first, end)) {
            claim.stretchFrom = claim.from == from ? left : claim.from;
            claim.stretchTo = claim.to == to ? right : claim.to;
        }
        return nextMayStart;
    }

    private int left(int from, int before) {
        int left = from;
        while (left > before
                && left > from - REACH_BACK
                && passage.sameSegment(left - 1, from)
                && !colon(left - 1)
                && !breaks(left - 1)) {
            left--;
            if (passage.cue(left) == Cue.NOW) {
                return left;
            }
        }
        return left;
    }

    private int lead(int left, int from) {
        int start = left;
        while (start < from && leads(start)) {
            start++;
        }
        return start;
    }

    private boolean leads(int i) {
        Token token = passage.token(i);
        boolean stillNo = token.term().equals("still")
                && i + 1 < passage.size()
                && DENYING.contains(passage.token(i + 1).term());
        return LEADS.contains(token.surface()) || stillNo || (token.kind() == Kind.PUNCTUATION && !token.is("("));
    }

    private boolean colon(int i) {
        return passage.token(i).is(":") || passage.token(i).is(">");
    }

    private boolean breaks(int i) {
        Item item = passage.itemAt(i);
        return item != null && item.cue(Cue.BREAK);
    }

    /** End of the stretch, exclusive: the segment's, or where the next claim's own words begin. */
    private int right(int to, int next) {
        int end = to;
        while (end < next
                && end < to + REACH_ON
                && passage.sameSegment(end, to - 1)
                && passage.token(end).kind() != Kind.PUNCTUATION
                && !breaks(end)
                && !ENDS.contains(passage.token(end).surface())) {
            end++;
        }
        if (end == next && next < passage.size() && passage.sameSegment(next, to - 1)) {
            return split(to, next);
        }
        return asides(end, next);
    }

    /** Where the words between two claims are parted. */
    private int split(int from, int to) {
        for (int i = to - 1; i >= from; i--) {
            if (JOINTS.contains(passage.token(i).surface())) {
                return i;
            }
        }
        for (int i = to - 1; i >= from; i--) {
            if (DETERMINERS.contains(passage.token(i).surface())) {
                return i;
            }
        }
        return from < to && ON_ABOUT_IT.contains(passage.token(from).surface()) ? to : from;
    }

    /** Takes along "(0.3 ohm)" and ", only when hot". */
    private int asides(int end, int next) {
        int right = end;
        while (right < next) {
            int aside = aside(right, next);
            if (aside == right) {
                return right;
            }
            right = aside;
        }
        return right;
    }

    private int aside(int from, int next) {
        if (from >= passage.size() || passage.sentence(from) != passage.sentence(Math.max(0, from - 1))) {
            return from;
        }
        boolean bracket = passage.token(from).is("(");
        if (!bracket && !passage.token(from).is(",")) {
            return from;
        }
        boolean condition = false;
        int i = from + 1;
        for (; i < next && i <= from + 1 + LONGEST_ASIDE && i < passage.size() && sameSentence(i, from); i++) {
            Token token = passage.token(i);
            if (token.kind() == Kind.PUNCTUATION && passage.itemAt(i) == null) {
                break;
            }
            Cue told = passage.cue(i);
            boolean cue = told != null && Cue.CONDITIONS.contains(told);
            condition |= cue;
            if (!bracket && !cue && passage.content(i)) {
                return from;
            }
        }
        boolean closed = bracket && i < passage.size() && passage.token(i).is(")");
        boolean ended = i == passage.size() || passage.token(i).kind() == Kind.PUNCTUATION;
        return closed ? i + 1 : !bracket && condition && ended && i <= next ? i : from;
    }

    private boolean sameSentence(int a, int b) {
        return passage.sentence(a) == passage.sentence(b);
    }

    private int trail(int to, int right) {
        int end = right;
        while (end > to) {
            Token token = passage.token(end - 1);
            boolean dropped = TRAILS.contains(token.surface()) || (token.kind() == Kind.PUNCTUATION && !token.is(")"));
            if (!dropped) {
                return end;
            }
            end--;
        }
        return end;
    }
}
