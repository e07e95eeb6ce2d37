package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/** "Voltages: 12.1, 5.05, 3.31": readings of rails that only their nearness to a nominal voltage tells. */
final class RailLists {
    /** How far from nominal a reading may be, relatively, and still tell which rail it is of. */
    private static final double NEAR = 0.15;

    /** The same for a reading without a list around it. */
    private static final double CLOSE = 0.04;

    /** Such a reading is told to a tenth at least: "12 V" may be a name. */
    private static final double FINE = 0.11;

    /** Tokens from "PSU" to a reading of it. */
    private static final int SUPPLY_REACH = 20;

    private static final int JOINT = 3;
    private static final Words HEADS = Words.of("voltages", "rails", "supplies", "outputs", "volts", "psu", "supply");
    private static final Words JOINTS = Words.terms(": , / and be at read measur = all now ; ok fine");

    private final Passage passage;
    private final Lexicon lexicon;
    private final Values values;

    /** Where words stand that may head a list. */
    private final BitSet heads = new BitSet();

    RailLists(Passage passage, Lexicon lexicon, Values values) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.values = values;
        for (int i = 0; passage.numerals.length > 0 && i < passage.size(); i++) {
            heads.set(i, HEADS.contains(passage.token(i).surface()));
        }
    }

    void link() {
        for (int i = heads.nextSetBit(0); i >= 0; i = heads.nextSetBit(i + 1)) {
            if (!passage.unreal(i)) {
                list(i);
            }
        }
    }

    /** "Ran the PSU on a dummy load: fine, 12.05 V": what no name took and only one rail comes close to. */
    void close() {
        if (heads.isEmpty()) {
            return;
        }
        for (int i : passage.numerals) {
            Token token = passage.token(i);
            boolean volts = token.kind() == Kind.QUANTITY && token.unit().equals("V") && token.resolution() < FINE;
            if (volts && values.reading(i) && passage.itemAt(i) == null && ofSupply(i)) {
                int at = i;
                lexicon.railNear(token.value(), CLOSE)
                        .ifPresent(rail -> values.measure(new Claim(rail, 0, null, at, at + 1), at));
            }
        }
    }

    private boolean ofSupply(int reading) {
        for (int i = reading - 1;
                i >= Math.max(0, reading - SUPPLY_REACH) && passage.sentence(i) == passage.sentence(reading);
                i--) {
            if (heads.get(i)) {
                return true;
            }
            Item item = passage.itemAt(i);
            if (item != null && item.names && item.name && passage.sameSegment(i, reading)) {
                return false;
            }
        }
        return false;
    }

    private void list(int head) {
        List<Integer> members = new ArrayList<>(0);
        int last = head;
        for (int i = head + 1; i < passage.size() && i - last <= JOINT; i++) {
            Token token = passage.token(i);
            boolean volts = token.kind() == Kind.QUANTITY && token.unit().equals("V");
            if (volts || token.kind() == Kind.NUMBER) {
                if (lexicon.railNear(token.value(), NEAR).isEmpty() || passage.readAt(i) != null) {
                    return;
                }
                members.add(i);
                last = i;
            } else if (!JOINTS.contains(token.term())) {
                break;
            }
        }
        boolean read = members.stream()
                .anyMatch(i -> lexicon.rail(passage.token(i).value()).isEmpty());
        if (members.size() < 2 || !read) {
            return;
        }
        for (int i : members) {
            Optional<Symptom> rail = lexicon.railNear(passage.token(i).value(), NEAR);
            passage.item(i).ifPresent(item -> item.done = true);
            values.measure(new Claim(rail.orElseThrow(), 0, null, i, i + 1), i);
        }
    }
}
