package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/**
 * Readings told beside what they should be, for symptoms without limits of their own: "only 9 V at the inverter input, 24 V
 * printed there", "charge current 40 mA, should be 400 mA".
 */
final class Against {
    private static final int REACH = 12;

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
        for (int i = 1; i < passage.size(); i++) {
            Token token = passage.token(i);
            if (token.kind() == Kind.QUANTITY && told.asLabelled(i)) {
                expected(i);
            }
        }
    }

    private void expected(int expected) {
        int reading = -1;
        Item name = null;
        for (int i = expected - 1; i >= 0 && i >= expected - REACH; i--) {
            if (passage.sentence(i) != passage.sentence(expected)) {
                break;
            }
            Item item = passage.item(i).orElse(null);
            if (item != null && !item.entry.names.isEmpty() && item.free() && name == null && !values.reading(i)) {
                name = item;
            }
            boolean like =
                    passage.token(i).unit().equals(passage.token(expected).unit());
            reading = like && reading < 0 && values.reading(i) ? i : reading;
        }
        if (reading >= 0 && name != null && passage.token(expected).value() != 0) {
            claim(name, reading, expected);
        }
    }

    private void claim(Item name, int reading, int expected) {
        Symptom symptom = name.entry.names.get(0).symptom();
        double share = passage.token(reading).value() / passage.token(expected).value();
        int state = symptom.quantity() != null ? -1 : state(symptom, share);
        if (state < 0) {
            return;
        }
        name.name = true;
        passage.item(reading).ifPresent(item -> item.done = true);
        Claim claim = new Claim(symptom, state, name, name.from, name.to);
        claim.cover(reading, reading + 1);
        claim.cover(expected, expected + 1);
        values.add(claim, reading);
    }

    private static int state(Symptom symptom, double share) {
        if (share < NOTHING) {
            return any(symptom, List.of("absent", "none", "missing"));
        }
        if (share < LOW) {
            return any(symptom, List.of("low", "too-low", "weak"));
        }
        if (share > HIGH) {
            return any(symptom, List.of("high", "too-high"));
        }
        boolean compared = any(symptom, List.of("low", "too-low", "high", "too-high")) >= 0;
        return compared && share >= RIGHT_FROM && share <= RIGHT_TO
                ? symptom.indexOf(symptom.normal().id())
                : -1;
    }

    private static int any(Symptom symptom, List<String> states) {
        return states.stream()
                .mapToInt(symptom::indexOf)
                .filter(s -> s >= 0)
                .findFirst()
                .orElse(-1);
    }
}
