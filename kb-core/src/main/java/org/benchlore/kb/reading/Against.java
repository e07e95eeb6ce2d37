package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Words;

/**
 * Readings told beside what they should be, for symptoms without limits of their own: "only 9 V at the inverter input, 24 V
 * printed there", "charge current 40 mA, should be 400 mA".
 */
final class Against {
    private static final int REACH = 12;

    /** Units of readings that are compared with a bare number. */
    private static final Words COMPARED = Words.of("V", "W");

    /** Shares of what should be: below the first nothing, then low, then as it should be, then high. Our own choice. */
    private static final double NOTHING = 0.03;

    private static final double LOW = 0.8;
    private static final double RIGHT_FROM = 0.9;
    private static final double RIGHT_TO = 1.1;
    private static final double HIGH = 1.25;

    private final Passage passage;
    private final Told told;
    private final Values values;

    Against(Passage passage, Told told, Values values) {
        this.passage = passage;
        this.told = told;
        this.values = values;
    }

    void link() {
        for (int i : passage.numerals) {
            if (i > 0 && passage.token(i).value() != 0 && told.asLabelled(i)) {
                expected(i);
            }
        }
    }

    private void expected(int expected) {
        int reading = -1;
        List<Item> names = new ArrayList<>();
        for (int i = expected - 1; i >= 0 && i >= expected - REACH; i--) {
            if (passage.sentence(i) != passage.sentence(expected)) {
                break;
            }
            Item item = passage.itemAt(i);
            if (item != null && !item.entry.names.isEmpty() && item.from == i && item.free() && !values.reading(i)) {
                names.add(item);
            }
            reading = reading < 0 && like(i, expected) && values.reading(i) ? i : reading;
        }
        for (Item name : names) {
            if (reading >= 0 && claim(name, reading, expected)) {
                return;
            }
        }
    }

    private boolean like(int reading, int expected) {
        String unit = passage.token(expected).unit();
        String read = passage.token(reading).unit();
        return unit.isEmpty() ? COMPARED.contains(read) : read.equals(unit);
    }

    private boolean claim(Item name, int reading, int expected) {
        Symptom symptom = name.entry.names.get(0).symptom();
        double share = passage.token(reading).value() / passage.token(expected).value();
        int state = symptom.quantity() != null ? -1 : state(symptom, share);
        if (state < 0) {
            return false;
        }
        name.name = true;
        passage.item(reading).ifPresent(item -> item.done = true);
        Claim claim = new Claim(symptom, state, name, name.from, name.to);
        claim.cover(reading, reading + 1);
        claim.cover(expected, expected + 1);
        values.add(claim, reading);
        return true;
    }

    private static int state(Symptom symptom, double share) {
        if (share < NOTHING) {
            return Levels.of(symptom, Levels.NONE);
        }
        if (share < LOW) {
            return Levels.of(symptom, Levels.LOW);
        }
        if (share > HIGH) {
            return Levels.of(symptom, Levels.HIGH);
        }
        boolean compared = Levels.of(symptom, Levels.LOW) >= 0 || Levels.of(symptom, Levels.HIGH) >= 0;
        return compared && share >= RIGHT_FROM && share <= RIGHT_TO
                ? symptom.indexOf(symptom.normal().id())
                : -1;
    }
}
