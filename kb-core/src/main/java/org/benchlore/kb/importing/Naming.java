package org.benchlore.kb.importing;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/**
 * By what a line names a unit that no pack knows, to tell it from the unit of the record above.
 *
 * @param designation terms of a name and number, such as "Oriva K5"; all of them belong to it
 * @param returned terms of what the line begins by saying is back: "same deck back again"
 */
record Naming(Set<String> designation, Set<String> returned) {
    private static final Naming NONE = new Naming(Set.of(), Set.of());

    /** Words a designation in the middle of a clause stands behind; behind others it is more likely a part or a maker of it. */
    private static final Set<String> LEADING = Set.of(
            "in", "of", "on", "the", "same", "for", "from", "to", "a", "an", "my", "his", "her", "our", "another",
            "other");

    /** What comes back and is no unit, and how it does. */
    private static final Set<String> NO_UNIT =
            Set.of("same", "fault", "problem", "error", "symptom", "trouble", "issue", "defect", "complaint", "few");

    private static final Set<String> PERSON = Set.of("mr", "mrs", "ms", "dr");

    /** Shorter words are not compared by their beginnings. */
    private static final int SHORT = 3;

    /** Reads the first clause. */
    static Naming of(String text, List<Clause> clauses, Names names) {
        if (clauses.isEmpty()) {
            return NONE;
        }
        Clause first = clauses.get(0);
        return new Naming(designation(text, first, names), returned(first));
    }

    /** Whether the unit is not that of a record with these terms. */
    boolean otherThan(Set<String> terms) {
        return !terms.containsAll(designation)
                || (!returned.isEmpty() && returned.stream().noneMatch(word -> named(word, terms)));
    }

    /** "Amp" is said of an amplifier. */
    private static boolean named(String word, Set<String> terms) {
        return terms.contains(word)
                || terms.stream()
                        .anyMatch(t -> Math.min(t.length(), word.length()) >= SHORT
                                && (t.startsWith(word) || word.startsWith(t)));
    }

    private static Set<String> designation(String text, Clause clause, Names names) {
        List<Token> words = clause.words();
        for (int i = 0; i + 1 < words.size(); i++) {
            boolean placed = i == 0 || LEADING.contains(words.get(i - 1).surface());
            if (placed && proper(text, clause, i, names)) {
                int last = proper(text, clause, i + 1, names) ? i + 2 : i + 1;
                // a sentence begins with a capital, too: "Pin 4"
                boolean sure = last > i + 1 || i > 0;
                if (last < words.size() && numbers(words.get(last), sure)) {
                    Set<String> terms = new LinkedHashSet<>();
                    words.subList(i, last + 1).forEach(w -> terms.add(w.term()));
                    return terms;
                }
            }
        }
        return Set.of();
    }

    private static boolean numbers(Token word, boolean sure) {
        boolean digit = word.surface().chars().anyMatch(Character::isDigit);
        return digit && (word.kind() == Kind.CODE || (sure && word.kind() == Kind.NUMBER));
    }

    /** Whether a word is written like a name, and is none of a part or of work. */
    private static boolean proper(String text, Clause clause, int at, Names names) {
        Token word = clause.words().get(at);
        return word.kind() == Kind.WORD
                && word.surface().length() >= SHORT
                && Character.isUpperCase(text.charAt(word.start()))
                && !clause.heard(at)
                && NameWords.of(word).filter(names::isThing).isEmpty();
    }

    private static Set<String> returned(Clause clause) {
        int back = clause.hits().stream()
                .filter(h -> h.is(Cue.BACK))
                .mapToInt(Clause.Hit::from)
                .findFirst()
                .orElse(0);
        Set<String> said = new HashSet<>();
        for (int i = 0; i < back; i++) {
            Token word = clause.words().get(i);
            if (PERSON.contains(word.surface())) {
                return Set.of();
            }
            boolean names = (word.kind() == Kind.WORD || word.kind() == Kind.CODE)
                    && !clause.heard(i)
                    && !NO_UNIT.contains(word.surface())
                    && !Clause.NUMBERS.containsKey(word.surface())
                    && !word.surface().endsWith("ly");
            if (names) {
                said.add(word.term());
            }
        }
        return said;
    }
}
