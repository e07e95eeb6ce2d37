package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/** "Voltages: 12.1, 5.05, 3.31": readings of rails that only their nearness to a nominal voltage tells. */
final class RailLists {
    /** How far from nominal a reading may be, relatively, and still tell which rail it is of. */
    private static final double NEAR = 0.15;

    private static final int JOINT = 3;
    private static final Words HEADS = Words.of("voltages", "rails", "supplies", "outputs", "volts");
    private static final Words JOINTS =
            Words.of(":", ",", "/", "and", "be", "at", "read", "measur", "=", "all", "now", ";");

    private RailLists() {}

    static void link(Passage passage, Lexicon lexicon, Values values) {
        for (int i = 0; i < passage.size(); i++) {
            if (HEADS.contains(passage.token(i).surface()) && !passage.unreal(i)) {
                list(passage, lexicon, values, i);
            }
        }
    }

    private static void list(Passage passage, Lexicon lexicon, Values values, int head) {
        List<Integer> members = new ArrayList<>();
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
