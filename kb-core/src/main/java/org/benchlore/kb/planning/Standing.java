package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;

/**
 * What forbids power now: rules of the packs whose state was found and that nothing has lifted.
 *
 * @param rules by id; empty where the unit may be powered
 */
record Standing(List<PowerOff> rules) {
    /** A state is sure enough to lift what forbids power if every other one is at most a quarter as likely; our choice. */
    private static final double DOUBT = 0.25;

    /** A state forbids power already if it is at least half as likely as the likeliest; our choice. */
    private static final double FEARED = 0.5;

    static Standing of(Knowledge knowledge, RankingQuery query, BenchConditions conditions) {
        return new Standing(knowledge.powerOff().stream()
                .filter(rule -> !conditions.madeSafe().contains(rule.id()))
                .filter(rule -> feared(query.findings(), rule))
                .filter(rule -> rule.until().stream()
                        .noneMatch(sign -> found(query.findings(), sign.symptomId(), sign.stateId())))
                .toList());
    }

    private static boolean feared(List<Finding> findings, PowerOff rule) {
        return findings.stream()
                .filter(finding -> finding.symptomId().equals(rule.symptomId()))
                .anyMatch(finding -> finding.likelihoods().getOrDefault(rule.stateId(), 0.0) >= FEARED);
    }

    private static boolean found(List<Finding> findings, String symptomId, String stateId) {
        return findings.stream()
                .filter(finding -> finding.symptomId().equals(symptomId))
                .anyMatch(finding -> finding.likelihoods().entrySet().stream()
                        .allMatch(e -> e.getKey().equals(stateId) ? e.getValue() == 1 : e.getValue() <= DOUBT));
    }

    /** Ids of rules that a fix has lifted, and whose state was not seen again since. */
    static List<String> madeSafe(Knowledge knowledge, List<CaseEvent> events) {
        Set<String> safe = new LinkedHashSet<>();
        for (CaseEvent event : events) {
            for (PowerOff rule : knowledge.powerOff()) {
                if (event instanceof CaseEvent.FixApplied fix && rule.fixes().contains(fix.fixId())) {
                    safe.add(rule.id());
                } else if (findings(event).anyMatch(f -> f.symptomId().equals(rule.symptomId()))) {
                    safe.remove(rule.id());
                }
            }
        }
        return List.copyOf(safe);
    }

    private static Stream<Finding> findings(CaseEvent event) {
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

    List<PowerHold.Reason> reasons() {
        List<PowerHold.Reason> reasons = new ArrayList<>();
        rules.forEach(
                rule -> reasons.add(new PowerHold.Reason(rule.id(), rule.symptomId(), rule.stateId(), rule.why())));
        return reasons;
    }
}
