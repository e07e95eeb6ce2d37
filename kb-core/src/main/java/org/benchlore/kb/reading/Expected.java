package org.benchlore.kb.reading;

import java.util.Optional;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.jspecify.annotations.Nullable;

/** Readings told behind what they should be: "standby should be 5 V but I get 3.9", "supposed to be 24 V, only 18 there". */
final class Expected {
    private static final int REACH = 10;

    private final Passage passage;
    private final Lexicon lexicon;
    private final Told told;
    private final Values values;

    Expected(Passage passage, Lexicon lexicon, Told told, Values values) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.told = told;
        this.values = values;
    }

    void link() {
        for (int i : passage.numerals) {
            if (told.asExpected(i)) {
                behind(i);
            }
        }
    }

    private void behind(int expected) {
        Item printed = passage.itemAt(expected);
        if (printed != null && printed.to - printed.from == 1) {
            printed.done = true;
        }
        int reading = reading(expected);
        if (reading < 0) {
            return;
        }
        Item name = name(expected);
        Token should = passage.token(expected);
        String unit = should.unit().isEmpty() ? passage.token(reading).unit() : should.unit();
        Optional<Symptom> symptom = name != null
                ? Optional.of(name.entry.names.get(0).symptom())
                : Optional.of(should)
                        .filter(e -> unit.equals("V") || unit.isEmpty())
                        .flatMap(e -> lexicon.rail(e.value()));
        symptom.filter(s -> measuredIn(s, unit)).ifPresent(s -> claim(s, name, expected, reading));
    }

    private void claim(Symptom symptom, @Nullable Item name, int expected, int reading) {
        Claim claim = name == null
                ? new Claim(symptom, 0, null, expected, expected + 1)
                : new Claim(symptom, 0, name, name.from, name.to);
        if (name != null) {
            name.name = true;
        }
        claim.cover(expected, reading + 1);
        passage.item(reading).ifPresent(item -> item.done = true);
        values.measure(claim, reading);
    }

    /** The reading behind; it is told in the same unit or without one. */
    private int reading(int expected) {
        String unit = passage.token(expected).unit();
        for (int i = expected + 1; i < passage.size() && i <= expected + REACH; i++) {
            if (passage.sentence(i) != passage.sentence(expected)) {
                return -1;
            }
            Token token = passage.token(i);
            Item item = passage.itemAt(i);
            if (token.numeric()) {
                boolean like = token.unit().equals(unit) || token.unit().isEmpty() || unit.isEmpty();
                return like && !token.tolerance() && passage.readAt(i) == null && !told.asNothing(i) ? i : -1;
            }
            if (item != null && !item.entry.names.isEmpty()) {
                return -1;
            }
        }
        return -1;
    }

    /** What it is expected of: the nearest free name in front. */
    private @Nullable Item name(int expected) {
        for (int i = expected - 1; i >= 0 && i >= expected - REACH; i--) {
            if (passage.sentence(i) != passage.sentence(expected)) {
                return null;
            }
            Item item = passage.itemAt(i);
            if (item != null && !item.entry.names.isEmpty()) {
                return item.free() ? item : null;
            }
        }
        return null;
    }

    private static boolean measuredIn(Symptom symptom, String unit) {
        Quantity quantity = symptom.quantity();
        return quantity != null && (unit.isEmpty() || quantity.unit().equals(unit));
    }
}
