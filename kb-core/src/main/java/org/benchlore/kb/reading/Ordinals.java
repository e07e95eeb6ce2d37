package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/** Numbers that tell which one of several is meant, "pin 4" or "cell 3 of the pack": part of a name, never its reading. */
final class Ordinals {
    /** More of a kind are rarely counted off by hand. */
    private static final int MOST = 199;

    private static final Words NUMBERED = Words.spaced("pin bit string port slot key channel row cell leg nicad nimh");

    /** Of which each has its own part to play: "pin 20 of the micro" is not "a pin of the micro". */
    private static final Words DISTINCT = Words.of("pin", "leg");

    private Ordinals() {}

    /** Whether a name may leave such a number out: "cell 3 of the pack" is a cell of it. */
    static boolean idle(List<Token> tokens, int i) {
        return at(tokens, i) && !DISTINCT.contains(tokens.get(i - 1).term());
    }

    /** Whether a token is such a number; also the later ones of "pins 8 and 4". */
    static boolean at(List<Token> tokens, int i) {
        if (i == 0 || !whole(tokens.get(i))) {
            return false;
        }
        int before = i - 1;
        if (before > 1 && Plain.joining(tokens.get(before)) && whole(tokens.get(before - 1))) {
            before -= 2;
        }
        return NUMBERED.contains(tokens.get(before).term());
    }

    private static boolean whole(Token token) {
        return token.kind() == Kind.NUMBER
                && token.resolution() >= 1
                && token.value() >= 0
                && token.value() <= MOST
                && !token.tolerance();
    }
}
