package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/** Lists that are ticked off: "picture (yes), remote (no)", "hum: n", "lamp yes, hum no". */
final class Ticks {
    private static final Words OPENING = Words.of(":", "=", "(", "?");
    private static final Words YES = Words.of("yes", "y");
    private static final Words NO = Words.of("no", "n");

    private Ticks() {}

    /** Adds a claim for each free name behind which only "yes" or "no" stands. */
    static void add(Passage passage, List<Claim> claims) {
        for (Item name : passage.items) {
            if (!name.names || !name.free() || name.to >= passage.size() || passage.unreal(name.from)) {
                continue;
            }
            boolean alone = alone(passage, name);
            int answer = alone ? name.to : name.to + 1;
            boolean open = (alone || OPENING.contains(passage.token(name.to).term()))
                    && answer < passage.size()
                    && closes(passage, answer + 1);
            if (!open) {
                continue;
            }
            String word = passage.token(answer).surface();
            boolean yes = YES.contains(word);
            if (yes || NO.contains(word)) {
                add(passage, claims, name, answer, yes);
            }
        }
    }

    /** "Hum no, lamp yes": a name and its answer and nothing else. */
    private static boolean alone(Passage passage, Item name) {
        String answer = passage.term(name.to);
        boolean opens = name.from == 0
                || !passage.sameSegment(name.from - 1, name.from)
                || passage.token(name.from - 1).kind() == Kind.PUNCTUATION;
        return opens && passage.sameSegment(name.from, name.to) && (answer.equals("yes") || answer.equals("no"));
    }

    private static void add(Passage passage, List<Claim> claims, Item name, int answer, boolean yes) {
        Symptom symptom = name.entry.names.get(0).symptom();
        int normal = symptom.indexOf(symptom.normal().id());
        Claim claim = new Claim(symptom, normal, name, name.from, answer + 1);
        // "yes" to what is normally not there is trouble
        claim.negated = yes == Polarity.presence(symptom);
        if (claim.negated
                && symptom.normal().opposite() == null
                && symptom.states().size() > 2) {
            return;
        }
        claim.bareNegation = true;
        name.name = true;
        passage.item(answer).ifPresent(item -> item.done = true);
        claims.add(claim);
    }

    private static boolean closes(Passage passage, int at) {
        if (at >= passage.size()) {
            return true;
        }
        Token token = passage.token(at);
        return token.kind() == Kind.PUNCTUATION && !token.is("-") && !token.is("/");
    }
}
