package org.benchlore.kb.importing;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.importing.RawRecord.Part;
import org.benchlore.kb.reading.analysis.Token;

/** How a record names its unit, and whether it says that the unit is back. */
final class UnitVisits {
    /** Depth from which a device known to the packs is a model. */
    private static final int MODEL = 3;

    /** Words in which a person named is the owner. */
    private static final int HEAD_WORDS = 16;

    private static final Set<String> TITLES = Set.of("mr", "mrs", "ms", "miss", "dr");

    /** A unit that is back; "comes back when it has cooled" says something else. */
    private static final Set<String> BACK = Set.of(
            "back again",
            "is back",
            "was back",
            "came back",
            "has come back",
            "back with",
            "returned with",
            "returned after",
            "warranty return",
            "comeback",
            "second time here",
            "here again",
            "here for the second time",
            "second visit",
            "same fault again",
            "same problem again");

    private UnitVisits() {}

    static Comebacks.Visit of(
            RawRecord record, Map<Part, List<Act>> acts, Heading heading, String caseId, UnitNames units) {
        Optional<Part> first = acts.keySet().stream().findFirst();
        String back = acts.entrySet().stream()
                .flatMap(e -> back(e.getKey(), e.getValue()).stream())
                .findFirst()
                .orElse("");
        Set<String> names = names(record, heading, units);
        if (names.isEmpty() && !back.isEmpty() && first.isPresent()) {
            Part part = first.get();
            names = Naming.of(part.text(), part.clauses(), units).returned();
        }
        return new Comebacks.Visit(
                record.line(),
                caseId,
                names,
                first.map(part -> person(part.words(part.text().length()))).orElse(""),
                back);
    }

    private static Set<String> names(RawRecord record, Heading heading, UnitNames units) {
        if (heading.scope().depth() >= MODEL) {
            return Set.of(heading.scope().toString());
        }
        Set<String> names = new LinkedHashSet<>();
        for (Part part : record.parts()) {
            if (part.field() == ImportField.DEVICE) {
                String label = part.text();
                Set<String> all = new HashSet<>();
                PhraseTable.words(label).forEach(w -> all.add(w.term()));
                names.addAll(units.in(label, Clause.of(label))
                        .map(UnitNames.Found::terms)
                        .orElse(units.kind(label) ? Set.of() : all));
            }
        }
        if (names.isEmpty()) {
            record.parts().stream()
                    .filter(p -> p.field().wordy())
                    .findFirst()
                    .flatMap(p -> units.atHead(p.text(), p.clauses()))
                    .ifPresent(found -> names.addAll(found.terms()));
        }
        return names;
    }

    /** The clause that says so, before any work. */
    private static Optional<String> back(Part part, List<Act> acts) {
        int work = acts.stream()
                .filter(a -> a.is(Act.Kind.WORK) || a.is(Act.Kind.ENDING))
                .mapToInt(Act::start)
                .min()
                .orElse(part.text().length());
        return part.clauses().stream()
                .filter(c -> c.start() < work && !c.has(Cue.NEGATION) && !c.has(Cue.HANDED))
                .filter(c -> c.hits().stream().anyMatch(h -> h.is(Cue.BACK) && BACK.contains(c.surface(h))))
                .findFirst()
                .map(c -> part.text().substring(c.start(), c.end()));
    }

    /** "Mr. Ode": who is named first. */
    static String person(List<Token> words) {
        for (int i = 0; i + 1 < Math.min(HEAD_WORDS, words.size()); i++) {
            if (TITLES.contains(words.get(i).surface())) {
                return words.get(i + 1).surface();
            }
        }
        return "";
    }
}
