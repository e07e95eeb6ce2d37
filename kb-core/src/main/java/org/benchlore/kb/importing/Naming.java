package org.benchlore.kb.importing;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/**
 * By what a line names a unit that no pack knows, to tell it from the unit of the record above.
 *
 * @param designation terms of a name and number, such as "Oriva K5"; all of them belong to it
 * @param unit terms of the make and model in its first sentence, wherever they stand in it
 * @param kind terms of a kind of unit among its first words
 * @param sure whether a number belongs to make and model, so that no other unit of the bench is called so
 * @param returned terms of what the line begins by saying is back: "same deck back again"
 */
record Naming(Set<String> designation, Set<String> unit, Set<String> kind, boolean sure, Set<String> returned) {
    private static final Naming NONE = new Naming(Set.of(), Set.of(), Set.of(), false, Set.of());

    /** What comes back and is no unit, and how it does. */
    private static final Set<String> NO_UNIT =
            Set.of("same", "fault", "problem", "error", "symptom", "trouble", "issue", "defect", "complaint", "few");

    private static final Set<String> PERSON = Set.of("mr", "mrs", "ms", "dr");

    /** Shorter words are not compared by their beginnings. */
    private static final int SHORT = 3;

    /** Reads the first clause. */
    static Naming of(String text, List<Clause> clauses, UnitNames units) {
        if (clauses.isEmpty()) {
            return NONE;
        }
        Optional<UnitNames.Found> name = units.in(text, clauses);
        Set<String> designation = name.filter(found -> found.clause() == 0 || found.leads())
                .map(UnitNames.Found::terms)
                .orElse(Set.of());
        return new Naming(
                designation,
                name.map(UnitNames.Found::terms).orElse(Set.of()),
                units.kindAhead(clauses),
                name.filter(UnitNames.Found::numbered).isPresent(),
                returned(clauses.get(0)));
    }

    /** Whether the unit is not that of a record with these terms. */
    boolean otherThan(Set<String> terms) {
        return !terms.containsAll(designation)
                || (!returned.isEmpty() && returned.stream().noneMatch(word -> named(word, terms)));
    }

    /** Whether make and model, or a kind, are named at all. */
    boolean names() {
        return !unit.isEmpty() || !kind.isEmpty();
    }

    /** What tells the unit from every other in a diary: make and model, or make and kind; else empty. */
    Set<String> identity() {
        if (unit.isEmpty() || (!sure && kind.isEmpty())) {
            return Set.of();
        }
        Set<String> identity = new HashSet<>(unit);
        identity.addAll(sure ? Set.of() : kind);
        return identity;
    }

    /** Whether the kind of unit named is none that these terms tell of. */
    boolean otherKind(Set<String> terms) {
        return unit.isEmpty() && kind.stream().anyMatch(word -> !named(word, terms));
    }

    /** "Amp" is said of an amplifier. */
    private static boolean named(String word, Set<String> terms) {
        return terms.contains(word)
                || terms.stream()
                        .anyMatch(t -> Math.min(t.length(), word.length()) >= SHORT
                                && (t.startsWith(word) || word.startsWith(t)));
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
