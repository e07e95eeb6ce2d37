package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.importing.CaseTeller.Vocabulary;
import org.benchlore.kb.reading.analysis.Token;

/**
 * What a line says at first sight, to tell whether it goes on with the case before or begins another.
 *
 * @param unit serial number or tag in it
 * @param device whether it names a device
 * @param goesOn whether it begins with work, a test, a conclusion or an ending
 * @param back whether it begins by saying that a fault came back
 * @param waits whether it tells of plans, as of a part that is ordered
 * @param worked whether it tells of work
 * @param ended whether it tells of an ending
 * @param naming by what it names a unit that no pack knows
 */
record Glance(
        Optional<String> unit,
        boolean device,
        boolean goesOn,
        boolean back,
        boolean waits,
        boolean worked,
        boolean ended,
        Naming naming) {
    private static final int HEAD_WORDS = 12;

    /** @param worked whether the case before tells of work */
    static Glance at(String text, List<Clause> clauses, boolean worked, Vocabulary vocabulary) {
        Endings endings = new Endings(worked);
        List<Act> acts = new ArrayList<>();
        boolean works = false;
        for (Clause clause : clauses) {
            if (works(clause)) {
                works = true;
                endings.worked();
            }
            acts.addAll(endings.hear(clause, false));
        }
        endings.finish(acts);
        boolean goesOn = false;
        boolean back = false;
        if (!clauses.isEmpty()) {
            Clause first = clauses.get(0);
            back = first.has(Cue.BACK);
            goesOn = works(first)
                    || back
                    || (!first.hits().isEmpty() && continues(first.hits().get(0)));
        }
        boolean device = !clauses.isEmpty()
                && vocabulary.devices().find(head(clauses), false).isPresent();
        return new Glance(
                UnitScan.first(text).map(UnitScan.Found::unit),
                device,
                goesOn,
                back,
                clauses.stream().anyMatch(c -> c.has(Cue.PLANNED)),
                works,
                !acts.isEmpty(),
                Naming.of(text, clauses, vocabulary.units()));
    }

    private static List<Token> head(List<Clause> clauses) {
        return clauses.stream()
                .flatMap(c -> c.words().stream())
                .limit(HEAD_WORDS)
                .toList();
    }

    private static boolean works(Clause clause) {
        return clause.hits().stream().anyMatch(h -> h.work() != null && clause.ours(h));
    }

    private static boolean continues(Clause.Hit hit) {
        Cue cue = hit.cue();
        if (cue == null || hit.from() > 1) {
            return false;
        }
        return switch (cue) {
            case GOES_ON,
                    TEST,
                    CAUSE,
                    FOUND,
                    WORKS_AGAIN,
                    NO_HELP,
                    BACK,
                    RECOVERED,
                    RUN,
                    GOOD,
                    NOT_WORTH,
                    GIVEN_UP,
                    UNMENDED,
                    HANDED -> true;
            default -> false;
        };
    }

    /** Whether it says which unit it is about. */
    boolean named() {
        return device || unit.isPresent();
    }
}
