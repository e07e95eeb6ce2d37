package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/** Lists such as "3.3, 5 and 12": what joins their members, and the bare numbers in them that name rails. */
final class Lists {
    private static final int WIDEST_JOINT = 4;

    private Lists() {}

    /** Whether only a list's joints stand between two members. */
    static boolean joined(Passage passage, int from, int to) {
        boolean joint = false;
        for (int i = from; i < to; i++) {
            Token token = passage.token(i);
            boolean joining = Plain.joining(token);
            if (!joining && !Plain.skipped(token) && !filler(token)) {
                return false;
            }
            joint |= joining;
        }
        return joint && to - from <= WIDEST_JOINT;
    }

    private static boolean filler(Token token) {
        return token.term().equals("rail")
                || token.term().equals("line")
                || token.term().equals("volt");
    }

    /** Bare numbers that stand in one list with a rail, or with another number that is a rail's. */
    static List<Trie.Match> numbers(List<Token> tokens, List<Trie.Match> matches, Lexicon lexicon) {
        boolean[] rail = new boolean[tokens.size()];
        boolean[] taken = new boolean[tokens.size()];
        for (Trie.Match match : matches) {
            boolean volts = match.entry().names.stream().anyMatch(s -> volts(s.symptom()));
            for (int i = match.from(); i < match.to(); i++) {
                taken[i] = true;
                rail[i] = volts;
            }
        }
        List<Trie.Match> found = new ArrayList<>();
        for (int i = 0; i < tokens.size(); i++) {
            rail[i] |= !taken[i] && bareRail(tokens, i, lexicon).isPresent();
        }
        for (int i = 0; i < tokens.size(); i++) {
            int at = i;
            if (!taken[i] && rail[i] && (neighbour(tokens, i, 1, rail) || neighbour(tokens, i, -1, rail))) {
                bareRail(tokens, at, lexicon).ifPresent(symptom -> {
                    Entry entry = new Entry();
                    entry.names.add(new Sense(symptom, Sense.NAME));
                    found.add(new Trie.Match(at, at + 1, 1, entry));
                });
            }
        }
        return found;
    }

    private static Optional<Symptom> bareRail(List<Token> tokens, int i, Lexicon lexicon) {
        boolean number = tokens.get(i).kind() == Kind.NUMBER && !tokens.get(i).tolerance();
        boolean counted = i > 0 && tokens.get(i - 1).term().equals("pin");
        return number && !counted ? lexicon.rail(tokens.get(i).value()) : Optional.empty();
    }

    private static boolean neighbour(List<Token> tokens, int from, int step, boolean[] rail) {
        boolean joint = false;
        for (int i = from + step; i >= 0 && i < tokens.size() && Math.abs(i - from) <= WIDEST_JOINT; i += step) {
            if (rail[i]) {
                return joint;
            }
            if (!Plain.joining(tokens.get(i))) {
                return false;
            }
            joint = true;
        }
        return false;
    }

    private static boolean volts(Symptom symptom) {
        Quantity quantity = symptom.quantity();
        return quantity != null && quantity.unit().equals("V");
    }
}
