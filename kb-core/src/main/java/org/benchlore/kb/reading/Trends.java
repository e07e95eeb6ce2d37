package org.benchlore.kb.reading;

import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/** Readings that go on about what was named before: "12 V is at 12.04 but sags to 10.1 V under load", "now 5.0 V". */
final class Trends {
    /** Tokens from the claim before to the reading that goes on about it. */
    private static final int REACH = 20;

    private static final Words TRENDS =
            Words.terms("fall sag drop dip rise climb go creep settl collaps now today unload load run idle cold warm "
                    + "hot later after under to then with once when it at in standby but only up down and also stabl rippl on of them ther "
                    + "without");

    private static final Words TURNS = Words.terms("now today fall sag drop dip collaps rise climb");

    private final Passage passage;
    private final List<Claim> claims;

    Trends(Passage passage, List<Claim> claims) {
        this.passage = passage;
        this.claims = claims;
    }

    /** Adds a claim for each such reading. */
    void follow(Values values, Lexicon lexicon) {
        @Nullable Claim[] at = new Claim[passage.size()];
        for (Claim claim : claims) {
            at[claim.to - 1] = claim;
        }
        int lastNumeral = passage.numerals[passage.numerals.length - 1];
        Claim last = null;
        for (int i = 0; i <= lastNumeral; i++) {
            Item item = passage.itemAt(i);
            if (item != null && item.names && !item.name && !item.done && !trends(item)) {
                last = rail(item);
            }
            if (last != null
                    && values.reading(i)
                    && goesOn(last, i)
                    && (item == null || (item.to - item.from == 1 && !Quantities.round(passage.token(i))))
                    && symptom(last, i, lexicon).isPresent()) {
                int from = start(i);
                Claim claim = new Claim(symptom(last, i, lexicon).orElseThrow(), 0, null, from, i + 1);
                for (int t = from; t < i; t++) {
                    Item word = passage.itemAt(t);
                    if (word != null && !word.entry.words.isEmpty()) {
                        word.done = true;
                    }
                }
                values.measure(claim, i);
                last = claim;
            }
            Claim ends = at[i];
            last = ends != null && ends.measured != null ? ends : last;
        }
    }

    /** "12 V fine cold, 9 V under load": what a later reading may go on about; null for anything but a voltage. */
    private static @Nullable Claim rail(Item item) {
        Symptom symptom = item.entry.names.get(0).symptom();
        boolean volts = symptom.quantity() != null
                && symptom.quantity().nominal() != null
                && symptom.quantity().unit().equals("V");
        return volts ? new Claim(symptom, 0, item, item.from, item.to) : null;
    }

    /** "Unloaded" is a name and a condition of what was named before. */
    private boolean trends(Item item) {
        for (int i = item.from; i < item.to; i++) {
            if (!trend(i)) {
                return false;
            }
        }
        return true;
    }

    /** What the reading is of: the same, or its ripple when it is in millivolts after volts. */
    private Optional<Symptom> symptom(Claim last, int reading, Lexicon lexicon) {
        Token value = passage.token(reading);
        boolean smaller = spokenOf(reading);
        for (int i = last.from; i < last.to && value.kind() == Kind.QUANTITY; i++) {
            smaller |= passage.readAt(i) == last && passage.token(i).factor() > value.factor();
        }
        if (!smaller) {
            return Optional.of(last.symptom);
        }
        return passage.speaksOfRipple(reading) ? lexicon.ripple(last.symptom) : Optional.empty();
    }

    /** Whether the words up to a reading say that it is of ripple: "and the ripple on it is 200 mV". */
    private boolean spokenOf(int reading) {
        for (int i = start(reading); i < reading; i++) {
            if (passage.token(i).term().equals("rippl")) {
                return true;
            }
        }
        return false;
    }

    /** Whether nothing but what a trend is made of stands between the segment's start and the reading. */
    private boolean goesOn(Claim last, int reading) {
        Token value = passage.token(reading);
        boolean near =
                reading - last.to < REACH && Math.abs(passage.sentence(reading) - passage.sentence(last.from)) <= 1;
        boolean bare = value.kind() == Kind.NUMBER
                && (value.resolution() < 1
                        || (reading > 0 && passage.token(reading - 1).term().equals("to")));
        if (!near || !(value.kind() == Kind.QUANTITY || bare) || !Fitting.fits(last.symptom, value)) {
            return false;
        }
        int words = 0;
        for (int i = start(reading); i < reading; i++) {
            boolean part = i == reading - 1 && passage.token(i).kind() == Kind.CODE;
            if (!part && !trend(i)) {
                return false;
            }
            words++;
        }
        boolean condition = conditionFollows(reading);
        return last.measured != null
                ? words > 0 || condition
                : value.kind() == Kind.QUANTITY
                        && !passage.sameSegment(last.from, reading)
                        && (condition || turns(reading));
    }

    /** Whether the words up to a reading tell that it is another one than before: "now 9 V", "drops to 9 V". */
    private boolean turns(int reading) {
        for (int i = start(reading); i < reading; i++) {
            if (TURNS.contains(passage.token(i).term())) {
                return true;
            }
        }
        return false;
    }

    private boolean conditionFollows(int reading) {
        for (int i = reading + 1; i < passage.size() && i < reading + 4 && passage.sameSegment(i, reading); i++) {
            Item item = passage.itemAt(i);
            boolean after = i == reading + 1 && passage.token(i).surface().equals("after");
            if (after || (item != null && item.entry.cue != null && Cue.CONDITIONS.contains(item.entry.cue))) {
                return true;
            }
        }
        return false;
    }

    private int start(int reading) {
        int from = reading;
        while (from > 0
                && from > reading - REACH
                && passage.sameSegment(from - 1, reading)
                && passage.token(from - 1).kind() != Kind.PUNCTUATION
                && passage.readAt(from - 1) == null) {
            from--;
        }
        return from;
    }

    /** Whether a word may stand between a reading and the claim before that it goes on about. */
    private boolean trend(int i) {
        return passage.skipped(i) || TRENDS.contains(passage.token(i).term());
    }
}
