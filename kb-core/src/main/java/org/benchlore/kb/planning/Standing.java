package org.benchlore.kb.planning;

import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.importing.PutRight;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;

/**
 * What forbids power now: rules of the packs whose state was found and that nothing has lifted.
 *
 * @param rules by id, each with the looks under {@code until} that are still to be made, none once one found what is amiss;
 *     empty where the unit may be powered
 */
record Standing(List<PowerOff> rules) {
    /** A look lifts what forbids power if no state but the normal one is more than a quarter as likely; our choice. */
    private static final double DOUBT = 0.25;

    /** A state forbids power already if it is at least half as likely as the likeliest; our choice. */
    private static final double FEARED = 0.5;

    private static final Pattern FORMER =
            Pattern.compile("^(?!.*\\bagain\\b).*\\b(was|were|had)\\b", Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

    static Standing of(Knowledge knowledge, RankingQuery query, BenchConditions conditions) {
        return new Standing(knowledge.powerOff().stream()
                .filter(rule -> !conditions.madeSafe().contains(rule.id()))
                .filter(rule -> shows(knowledge, query, rule.symptomId()))
                .filter(rule -> query.findings().stream().anyMatch(finding -> feared(finding, rule)))
                .flatMap(rule -> left(knowledge, query, rule).stream())
                .toList());
    }

    /** What is left of a rule by what was looked at: nothing where all was found sound, and only a fix where one was not. */
    private static Optional<PowerOff> left(Knowledge knowledge, RankingQuery query, PowerOff rule) {
        List<String> looks =
                rule.until().stream().filter(id -> shows(knowledge, query, id)).toList();
        List<String> left = looks.stream()
                .filter(id -> !(amiss(knowledge, query, id) <= DOUBT))
                .toList();
        boolean bad = left.stream().anyMatch(id -> amiss(knowledge, query, id) >= FEARED);
        return left.isEmpty() && !looks.isEmpty()
                ? Optional.empty()
                : Optional.of(rule.awaiting(bad ? List.of() : left));
    }

    /** Whether such a unit can show a symptom at all. */
    private static boolean shows(Knowledge knowledge, RankingQuery query, String symptomId) {
        return knowledge
                .symptom(symptomId)
                .filter(symptom -> knowledge.lacking(symptom, query.kinds()).isEmpty())
                .isPresent();
    }

    /** The greatest likelihood of a state that a sound unit does not show; not a number where nobody looked. */
    private static double amiss(Knowledge knowledge, RankingQuery query, String symptomId) {
        return query.findings().stream()
                .filter(finding -> finding.symptomId().equals(symptomId))
                .mapToDouble(finding -> finding.likelihoods().entrySet().stream()
                        .filter(e -> !knowledge.normal(symptomId, e.getKey()))
                        .mapToDouble(Map.Entry::getValue)
                        .max()
                        .orElse(0))
                .findFirst()
                .orElse(Double.NaN);
    }

    private static boolean feared(Finding finding, PowerOff rule) {
        return finding.symptomId().equals(rule.symptomId())
                && finding.likelihoods().getOrDefault(rule.stateId(), 0.0) >= FEARED;
    }

    /**
     * Ids of symptoms looked at before that which the look was to answer was told again: "no deposit" says nothing of the
     * spill after it.
     *
     * @param told what each note or test in turn found
     */
    static Set<String> outdated(Knowledge knowledge, List<List<Finding>> told) {
        Set<String> outdated = new HashSet<>();
        Set<String> before = new HashSet<>();
        for (List<Finding> found : told) {
            knowledge.powerOff().stream()
                    .filter(rule -> found.stream().anyMatch(finding -> feared(finding, rule)))
                    .filter(rule -> !before.add(rule.id()))
                    .forEach(rule -> outdated.addAll(rule.until()));
            found.forEach(finding -> outdated.remove(finding.symptomId()));
        }
        return outdated;
    }

    /** Ids of rules that a fix has lifted, or words that tell of one, and whose state was not seen again since. */
    static List<String> madeSafe(
            Knowledge knowledge, List<CaseEvent> events, Function<String, Optional<Reading>> read) {
        Set<String> safe = new LinkedHashSet<>();
        Set<String> seen = new HashSet<>();
        for (CaseEvent event : events) {
            Set<String> here = findings(event).map(Finding::symptomId).collect(Collectors.toSet());
            seen.addAll(here);
            List<PowerOff> open = knowledge.powerOff().stream()
                    .filter(rule -> seen.contains(rule.symptomId()))
                    .toList();
            for (PowerOff rule : open) {
                if (event instanceof CaseEvent.FixApplied fix && rule.fixes().contains(fix.fixId())) {
                    safe.add(rule.id());
                } else if (here.contains(rule.symptomId())) {
                    safe.remove(rule.id());
                }
            }
            if (event instanceof CaseEvent.Noted noted) {
                safe.addAll(
                        open.stream().noneMatch(rule -> here.contains(rule.symptomId()))
                                ? toldSafe(knowledge, open, noted.text(), List.of())
                                : read.apply(noted.text()).stream()
                                        .flatMap(r -> toldSafe(knowledge, open, r.text(), r.understood()).stream())
                                        .toList());
            }
        }
        return List.copyOf(safe);
    }

    /** Ids of rules that a note says were put right, behind all that it says against power. */
    static List<String> madeSafe(Knowledge knowledge, Reading reading) {
        return toldSafe(knowledge, knowledge.powerOff(), reading.text(), reading.understood());
    }

    private static List<String> toldSafe(
            Knowledge knowledge, Collection<PowerOff> rules, String text, List<Reading.Understood> understood) {
        PutRight said = PutRight.in(text);
        return rules.stream()
                .filter(rule -> rule.fixes().stream()
                        .flatMap(id -> knowledge.fix(id).stream())
                        .anyMatch(fix -> said.told(fix.done(), lastToldOf(rule, understood))))
                .map(PowerOff::id)
                .toList();
    }

    /** Where a note last says what forbids power, as it is now: "took the pack out, it was swollen" says how it was. */
    private static int lastToldOf(PowerOff rule, List<Reading.Understood> understood) {
        return understood.stream()
                .filter(u -> u.finding().symptomId().equals(rule.symptomId()) && !u.past())
                .filter(u -> !FORMER.matcher(u.span().text()).find())
                .mapToInt(u -> u.span().end())
                .max()
                .orElse(0);
    }

    static Stream<Finding> findings(CaseEvent event) {
        if (event instanceof CaseEvent.Noted noted) {
            return noted.findings().stream();
        }
        return event instanceof CaseEvent.Tested tested ? tested.findings().stream() : Stream.empty();
    }

    boolean forbids(BenchTest test) {
        return test.powers() && !rules.isEmpty();
    }

    /** Whether a fix has to wait; what lifts a rule need not. */
    boolean forbids(Fix fix) {
        return fix.powers() && !rules.isEmpty() && !lifts(fix.id());
    }

    boolean lifts(String fixId) {
        return rules.stream().anyMatch(rule -> rule.fixes().contains(fixId));
    }
}
