package org.benchlore.kb.reading;

import java.util.ArrayList;
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
    private static final Words UNITS = Words.of("F", "ohm", "A", "H");
    private static final Words CAPACITIES = Words.of("mah", "ah", "wh", "mwh");

    private final Passage passage;
    private final Told told;
    private final Values values;
    private final boolean holdsUnits;

    Ratios(Passage passage, Told told, Values values) {
        this.passage = passage;
        this.told = told;
        this.values = values;
        this.holdsUnits = passage.numerals.length > 0 && holdsUnits();
    }

    void link() {
        if (!holdsUnits) {
            return;
        }
        for (Item item : List.copyOf(passage.items)) {
            Symptom symptom = item.free() ? inPercent(item) : null;
            if (symptom != null && !portion(item, symptom)) {
                compare(item, symptom);
            }
        }
    }

    private boolean holdsUnits() {
        for (int i = 0; i < passage.size(); i++) {
            Token token = passage.token(i);
            boolean quantity = token.kind() == Kind.QUANTITY && UNITS.contains(token.unit());
            if (quantity || CAPACITIES.contains(token.surface())) {
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

    /** "Capacity 1850 of 2000 mAh". @return whether there is one */
    private boolean portion(Item item, Symptom symptom) {
        for (int i = item.to; i + 2 < passage.size() && i < item.to + REACH && passage.sameClause(item.from, i); i++) {
            Token part = passage.token(i);
            int whole = passage.token(i + 1).term().equals("out") ? i + 3 : i + 2;
            boolean of = part.kind() == Kind.NUMBER
                    && whole + 1 < passage.size()
                    && passage.token(whole - 1).term().equals("of");
            if (of
                    && values.reading(i)
                    && passage.token(whole).kind() == Kind.NUMBER
                    && CAPACITIES.contains(passage.token(whole + 1).surface())) {
                claim(item, symptom, whole, i);
                return true;
            }
        }
        return false;
    }

    private void compare(Item item, Symptom symptom) {
        if (measuredOtherwise(item)) {
            return;
        }
        int marked = -1;
        int attribute = -1;
        List<Integer> read = new ArrayList<>();
        String unit = "";
        int from = Math.max(0, item.from - 3);
        for (int i = from; i < Math.min(passage.size(), item.to + REACH); i++) {
            Token token = passage.token(i);
            boolean here = passage.sentence(i) == passage.sentence(item.from);
            boolean quantity = token.kind() == Kind.QUANTITY && UNITS.contains(token.unit());
            boolean number = token.kind() == Kind.NUMBER && !unit.isEmpty() && told.asLabelled(i);
            if (!here || !(quantity || number) || (quantity && !unit.isEmpty() && !unit.equals(token.unit()))) {
                continue;
            }
            unit = quantity ? token.unit() : unit;
            if (marked < 0 && told.asLabelled(i)) {
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

    /** "Filter cap ESR 4.2 ohm, new one 0.3": what is measured of the part has a name and a unit of its own. */
    private boolean measuredOtherwise(Item item) {
        Item next = passage.itemAt(Math.min(item.to, passage.size() - 1));
        return next != null
                && next != item
                && next.free()
                && next.entry.names.stream()
                        .map(sense -> sense.symptom().quantity())
                        .anyMatch(quantity -> quantity != null && UNITS.contains(quantity.unit()));
    }

    /** The unit of a label without one. Optical blocks are marked in three digits with tenths of a milliampere. */
    private static double scale(Token label, Token reading) {
        double scale = Quantities.nearest(label.value(), reading);
        boolean tenths = reading.unit().equals("A")
                && label.resolution() >= 1
                && label.value() >= 100
                && label.value() < 1000
                && reading.value() < 0.3 * label.value() * scale;
        return tenths ? scale / 10 : scale;
    }

    private void claim(Item item, Symptom symptom, int marked, int read) {
        Token reading = passage.token(read);
        Token nominal = passage.token(marked);
        boolean bare = nominal.kind() == Kind.NUMBER;
        double scale = bare && reading.kind() == Kind.QUANTITY ? scale(nominal, reading) : 1;
        double percent = 100 * reading.value() / (nominal.value() * scale);
        boolean absurd = bare && (percent < 1 || percent > 100 * 100);
        if (!Double.isFinite(percent) || percent <= 0 || absurd) {
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
        claim.measured = verdict.likelihoods();
        claim.note = verdict.note();
        item.name = true;
        values.add(claim, read);
    }
}
