package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * Readings told beside what the part is marked with, for symptoms in percent of it: "is marked 220u and reads 91u", "330k
 * start resistor measures 2.7M", "71 mA, the label says 48.2".
 */
final class Ratios {
    private static final int REACH = 12;
    private static final int LABELLED = 3;
    private static final Words UNITS = Words.of("F", "ohm", "A", "H");
    private static final Words LABELS = Words.spaced(
            "mark marked label print printed book spec nominal rate rated should sheet manual schematic instead new");

    private final Passage passage;
    private final Values values;

    Ratios(Passage passage, Values values) {
        this.passage = passage;
        this.values = values;
    }

    void link() {
        if (!holdsUnits()) {
            return;
        }
        for (Item item : List.copyOf(passage.items)) {
            Symptom symptom = item.free() ? inPercent(item) : null;
            if (symptom != null) {
                compare(item, symptom);
            }
        }
    }

    private boolean holdsUnits() {
        for (int i = 0; i < passage.size(); i++) {
            if (passage.token(i).kind() == Kind.QUANTITY
                    && UNITS.contains(passage.token(i).unit())) {
                return true;
            }
        }
        return false;
    }

    private static @Nullable Symptom inPercent(Item item) {
        for (Sense sense : item.entry.names) {
            Quantity quantity = sense.symptom().quantity();
            if (quantity != null && quantity.unit().equals("%")) {
                return sense.symptom();
            }
        }
        return null;
    }

    private void compare(Item item, Symptom symptom) {
        int marked = -1;
        int attribute = -1;
        List<Integer> read = new ArrayList<>();
        String unit = "";
        int from = Math.max(0, item.from - 2);
        for (int i = from; i < Math.min(passage.size(), item.to + REACH); i++) {
            Token token = passage.token(i);
            boolean here = passage.sentence(i) == passage.sentence(item.from);
            boolean quantity = token.kind() == Kind.QUANTITY && UNITS.contains(token.unit());
            boolean number = token.kind() == Kind.NUMBER && !unit.isEmpty() && labelled(i);
            if (!here || !(quantity || number) || (quantity && !unit.isEmpty() && !unit.equals(token.unit()))) {
                continue;
            }
            unit = quantity ? token.unit() : unit;
            if (marked < 0 && labelled(i)) {
                marked = i;
            } else if (attribute < 0 && quantity && i <= item.to) {
                attribute = i;
            } else if (values.reading(i)) {
                read.add(i);
            }
        }
        if (marked >= 0 && attribute >= 0 && read.isEmpty()) {
            claim(item, symptom, marked, attribute);
        } else if (!read.isEmpty() && (marked >= 0 || attribute >= 0)) {
            claim(item, symptom, marked >= 0 ? marked : attribute, read.get(0));
        }
    }

    private boolean labelled(int i) {
        for (int b = i - 1; b >= Math.max(0, i - LABELLED); b--) {
            if (LABELS.contains(passage.token(b).surface())
                    || LABELS.contains(passage.token(b).term())) {
                return true;
            }
            if (passage.token(b).kind() != Kind.WORD) {
                return false;
            }
        }
        return false;
    }

    private void claim(Item item, Symptom symptom, int marked, int read) {
        Token reading = passage.token(read);
        Token nominal = passage.token(marked);
        double scale = nominal.kind() == Kind.NUMBER ? Quantities.nearest(nominal.value(), reading) : 1;
        double percent = 100 * reading.value() / (nominal.value() * scale);
        if (!Double.isFinite(percent) || percent <= 0) {
            return;
        }
        Claim claim = new Claim(symptom, 0, item, item.from, item.to);
        claim.cover(marked, marked + 1);
        claim.cover(read, read + 1);
        Token share = new Token(
                Kind.QUANTITY,
                reading.start(),
                reading.end(),
                reading.surface(),
                reading.term(),
                percent,
                "%",
                percent * reading.resolution() / Math.abs(reading.value()),
                0,
                1);
        Verdict verdict = Verdict.of(symptom, share, 0);
        claim.state = verdict.state();
        claim.measured = new HashMap<>(verdict.likelihoods());
        claim.note = verdict.note();
        item.name = true;
        values.add(claim, read);
    }
}
