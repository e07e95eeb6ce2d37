package org.benchlore.kb.importing;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.analysis.Token;

/** What the clauses of a case name, and where a part was named in full that work only calls "the fuse" or "47 uF". */
final class NamedParts {
    /** How many clauses back a part may have been named in full. */
    private static final int LOOK_BACK = 4;

    /** They count a thing, and name none: "belt set", "seal kit". */
    private static final Set<String> MEASURES = Set.of("set", "kit", "pair");

    private final Names names;
    private final DeviceScope scope;

    /** The last clauses, the latest first. */
    private final Deque<Clause> earlier = new ArrayDeque<>();

    NamedParts(Names names, DeviceScope scope) {
        this.names = names;
        this.scope = scope;
    }

    /** Takes a clause for one of those before the next. */
    void passed(Clause clause) {
        earlier.addFirst(clause);
        if (earlier.size() > LOOK_BACK) {
            earlier.removeLast();
        }
    }

    /** "Mains fuse blown, swapped the fuse": what was named in full just before. */
    Optional<String> fixNamedBefore(Optional<Work> kind, Set<String> said) {
        for (Clause clause : earlier) {
            boolean same = things(clause, 0, clause.words().size()).stream()
                    .anyMatch(t -> said.contains(t) && names.isThing(t));
            Optional<String> fix = actless(clause) && same ? fixIn(kind, clause, said) : Optional.empty();
            if (fix.isPresent()) {
                return fix;
            }
        }
        return Optional.empty();
    }

    /**
     * The fix of what a clause names, with how it is said to be or without.
     *
     * @param said words that name it besides
     */
    Optional<String> fixIn(Optional<Work> kind, Clause clause, Set<String> said) {
        Set<String> full = things(clause, 0, clause.words().size());
        full.addAll(said);
        return names.fix(kind, full, scope).or(() -> names.fix(kind, parts(full), scope));
    }

    /** What a stretch names, without values that no name has. */
    Set<String> things(Clause clause, int from, int to) {
        Set<String> things = withoutMeasures(terms(clause, from, to));
        for (Token word : clause.words().subList(from, to)) {
            boolean number = word.kind() == Token.Kind.QUANTITY || word.kind() == Token.Kind.NUMBER;
            if (number) {
                NameWords.of(word).filter(term -> !names.isThing(term)).ifPresent(things::remove);
            }
        }
        return things;
    }

    static Set<String> withoutMeasures(Set<String> terms) {
        Set<String> things = new LinkedHashSet<>(terms);
        things.removeAll(MEASURES);
        return things;
    }

    /** Those terms that name parts, without how they are. */
    private Set<String> parts(Set<String> terms) {
        Set<String> parts = new LinkedHashSet<>(terms);
        parts.removeIf(term -> !names.isThing(term) || NameWords.fault(term));
        return parts;
    }

    /** Whether a clause tells of no work. */
    static boolean actless(Clause clause) {
        return clause.hits().stream().allMatch(h -> h.work() == null);
    }

    /** Terms of words {@code from} to {@code to}, without those of cues that say how, when or whether. */
    static Set<String> terms(Clause clause, int from, int to) {
        Set<String> terms = new LinkedHashSet<>();
        for (int i = from; i < to; i++) {
            boolean cue = false;
            for (Clause.Hit hit : clause.hits()) {
                cue |= hit.from() <= i && i < hit.to() && !hit.is(Cue.FILLER) && !hit.is(Cue.TEST);
            }
            if (!cue) {
                NameWords.of(clause.words().get(i)).ifPresent(terms::add);
            }
        }
        return terms;
    }
}
