package org.benchlore.kb.reading;

import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * The other one of a pair, and the rest of a row: "offset left 11 mV, right 48 V", "5 cells at 4.1 V, one at 2.3 V", "cells
 * 3.91 3.90 2.11". Of sound and bad ones the bad one is what there is to say of the unit.
 */
final class Sides {
    /** Tokens from a reading to the one of its fellow. */
    private static final int REACH = 12;

    private static final Words SIDES = Words.terms(
            "left right l r lh rh other one another two three others first second third fourth fifth sixth last");
    private static final Words AROUND = Words.terms(
            "the on at in be channel ch side and but only just of a to ; , / = : read say show cell side end");
    private static final Words ROW = Words.terms(", / ; and - |");

    private final Passage passage;
    private final Values values;

    Sides(Passage passage, Values values) {
        this.passage = passage;
        this.values = values;
    }

    void link() {
        int before = -1; // the last token that was read
        for (int i : passage.numerals) {
            Claim fellow = before < 0 || i - before > REACH ? null : passage.readAt(before);
            if (fellow != null
                    && values.reading(i)
                    && fits(fellow.symptom, before, i)
                    && (row(before, i) || side(before, i, fellow))) {
                passage.item(i).ifPresent(item -> item.done = true);
                join(fellow, i);
            }
            before = passage.readAt(i) != null ? i : before;
        }
    }

    private void join(Claim fellow, int reading) {
        Claim claim = new Claim(fellow.symptom, 0, null, reading, reading + 1);
        values.measure(claim, reading);
        if (claim.state != fellow.state && claim.normal() == fellow.normal()) {
            return;
        }
        Claim stands = claim.normal() ? fellow : claim;
        Claim other = claim.normal() ? claim : fellow;
        stands.cover(other.from, other.to);
        other.dropped = true;
        passage.read(reading, stands);
    }

    /** A reading of the same kind; a bare one is in the unit of its fellow. */
    private boolean fits(Symptom symptom, int before, int i) {
        Quantity quantity = symptom.quantity();
        Token value = passage.token(i);
        Token fellow = passage.token(before);
        boolean bare = value.kind() == Kind.NUMBER && value.resolution() < 1 && fellow.resolution() < 1;
        return quantity != null
                && passage.sentence(before) == passage.sentence(i)
                && (value.unit().equals(quantity.unit())
                        || (bare && (fellow.unit().isEmpty() || fellow.factor() == 1)));
    }

    /** Whether nothing but the marks of a row stands between. */
    private boolean row(int before, int i) {
        if (passage.token(i).kind() != Kind.NUMBER || passage.token(before).kind() != Kind.NUMBER) {
            return false;
        }
        for (int b = before + 1; b < i; b++) {
            if (!ROW.contains(passage.token(b).term())) {
                return false;
            }
        }
        return true;
    }

    /** Whether a side is named between, or right behind, and nothing else. */
    private boolean side(int before, int i, Claim fellow) {
        boolean side = false;
        for (int b = before + 1; b < i; b++) {
            if (!around(b, fellow.name)) {
                return false;
            }
            side |= SIDES.contains(passage.token(b).term());
        }
        for (int b = i + 1; b < passage.size() && b <= i + 4 && passage.sameSegment(i, b) && around(b, null); b++) {
            side |= SIDES.contains(passage.token(b).term());
        }
        return side;
    }

    /** @param own the name that the reading before belongs to, which may stand behind it */
    private boolean around(int b, @Nullable Item own) {
        Item item = passage.itemAt(b);
        boolean named = item != null && !item.free();
        if (named && item == own) {
            return true;
        }
        return !named
                && (SIDES.contains(passage.token(b).term())
                        || AROUND.contains(passage.token(b).term()));
    }
}
