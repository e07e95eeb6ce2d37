package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Caution;
import org.benchlore.kb.knowledge.Caution.Hazard;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.planning.PowerHold;
import org.benchlore.kb.reading.Finding;

/** The cautions that belong to a case. */
final class Hazards {
    /** Harm that work in an open unit meets only where the unit holds it. */
    private static final Set<Hazard> INSIDE = EnumSet.of(Hazard.MAINS, Hazard.STORED_CHARGE, Hazard.LASER);

    private Hazards() {}

    /** Of the tests done, the fixes applied and the cause concluded with its fixes; in that order, each once. */
    static List<Caution> of(CaseHistory history, Knowledge knowledge) {
        Set<String> ids = new LinkedHashSet<>();
        for (CaseEvent event : history.events()) {
            if (event instanceof CaseEvent.Tested tested) {
                knowledge.test(tested.testId()).map(BenchTest::cautions).ifPresent(ids::addAll);
            } else if (event instanceof CaseEvent.FixApplied fixed) {
                knowledge.fix(fixed.fixId()).map(Fix::cautions).ifPresent(ids::addAll);
                ofCause(fixed.causeId(), knowledge).forEach(ids::add);
            }
        }
        if (history.causeId() != null) {
            ofCause(history.causeId(), knowledge).forEach(ids::add);
        }
        return ids.stream().flatMap(id -> knowledge.caution(id).stream()).toList();
    }

    /**
     * What an owner should know: first what was found and still stands, then one sentence per kind of harm that concerns
     * somebody who does not open the unit. That the unit has a lithium battery is not taken from cautions for work on units of
     * any kind, which name mains beside it; nor is mains inside taken from them where the case tells of such a battery.
     *
     * @param standing abnormal findings that nothing has put right
     * @param held what forbids power in the unit as it goes home
     */
    static List<String> forOwner(
            CaseHistory history, Terms terms, List<Finding> standing, List<PowerHold.Reason> held) {
        Knowledge knowledge = terms.knowledge();
        Standing found = Standing.of(standing, terms);
        Optional<String> battery = found.told(Hazard.LITHIUM) ? Optional.empty() : battery(history, knowledge);
        Set<Hazard> hazards = ofUnit(history, knowledge);
        if (!found.told(Hazard.LITHIUM) && battery.isEmpty()) {
            hazards.addAll(ofWork(history, knowledge));
        }
        hazards.addAll(found.otherHazards());
        hazards.remove(Hazard.LITHIUM);
        List<String> said = new ArrayList<>(found.said(held, terms));
        battery.ifPresent(said::add);
        hazards.stream().flatMap(h -> forOwner(h).stream()).forEach(said::add);
        return said;
    }

    /** Kinds of harm that the causes warn of: the one concluded, and those that a fix was for. */
    private static Set<Hazard> ofUnit(CaseHistory history, Knowledge knowledge) {
        return hazards(causes(history, knowledge).flatMap(c -> c.cautions().stream()), knowledge);
    }

    /**
     * Kinds of harm that work within the open unit met there, or would. Heat, pressure or light may be the tool's, and work with
     * the unit shut may be on what belongs to it, such as an adapter.
     */
    private static Set<Hazard> ofWork(CaseHistory history, Knowledge knowledge) {
        Stream<BenchTest> tests = history.events().stream()
                .filter(CaseEvent.Tested.class::isInstance)
                .flatMap(e -> knowledge.test(((CaseEvent.Tested) e).testId()).stream());
        Stream<String> fixes = Stream.concat(
                fixes(history).map(CaseEvent.FixApplied::fixId),
                causes(history, knowledge).flatMap(c -> c.fixedBy().stream()).map(Remedy::fixId));
        Set<Hazard> hazards = hazards(
                Stream.concat(
                        tests.filter(BenchTest::opens).flatMap(t -> t.cautions().stream()),
                        fixes.flatMap(id -> knowledge.fix(id).stream())
                                .filter(Fix::opens)
                                .flatMap(f -> f.cautions().stream())),
                knowledge);
        hazards.retainAll(INSIDE);
        return hazards;
    }

    private static Stream<CaseEvent.FixApplied> fixes(CaseHistory history) {
        return history.events().stream()
                .filter(CaseEvent.FixApplied.class::isInstance)
                .map(CaseEvent.FixApplied.class::cast);
    }

    private static Stream<Cause> causes(CaseHistory history, Knowledge knowledge) {
        return Stream.concat(fixes(history).map(CaseEvent.FixApplied::causeId), Stream.ofNullable(history.causeId()))
                .distinct()
                .flatMap(id -> knowledge.cause(id).stream());
    }

    private static Set<Hazard> hazards(Stream<String> cautions, Knowledge knowledge) {
        Set<Hazard> hazards = EnumSet.noneOf(Hazard.class);
        cautions.flatMap(id -> knowledge.caution(id).stream()).forEach(c -> hazards.add(c.hazard()));
        return hazards;
    }

    /**
     * What findings that still stand warn of, by the causes they all but name.
     *
     * @param findings per kind of harm their words, by symptom
     * @param lithium what the packs say of the battery
     */
    private record Standing(Map<Hazard, Map<String, String>> findings, Set<String> lithium) {
        static Standing of(List<Finding> standing, Terms terms) {
            Map<Hazard, Map<String, String>> findings = new EnumMap<>(Hazard.class);
            Set<String> lithium = new LinkedHashSet<>();
            for (Finding finding : standing) {
                for (Caution caution : cautions(finding, terms.knowledge())) {
                    findings.computeIfAbsent(caution.hazard(), h -> new LinkedHashMap<>())
                            .put(finding.symptomId(), terms.brief(finding));
                    if (caution.hazard() == Hazard.LITHIUM) {
                        lithium.add(caution.text().strip());
                    }
                }
            }
            return new Standing(findings, lithium);
        }

        private static List<Caution> cautions(Finding finding, Knowledge knowledge) {
            return knowledge.causesNamedBy(finding.symptomId(), finding.state()).stream()
                    .filter(c -> c.kind() == Cause.Kind.FAULT)
                    .flatMap(c -> c.cautions().stream())
                    .flatMap(id -> knowledge.caution(id).stream())
                    .toList();
        }

        boolean told(Hazard hazard) {
            return findings.containsKey(hazard);
        }

        /** Those that take no more than the sentence for a sound unit. */
        Set<Hazard> otherHazards() {
            Set<Hazard> others = EnumSet.noneOf(Hazard.class);
            others.addAll(findings.keySet());
            others.remove(Hazard.MAINS);
            return others;
        }

        /** Each finding once: the battery's own caution before what forbids power, and that before mains in general. */
        List<String> said(List<PowerHold.Reason> held, Terms terms) {
            List<String> said = new ArrayList<>();
            Map<String, String> battery = findings.getOrDefault(Hazard.LITHIUM, Map.of());
            if (!battery.isEmpty()) {
                said.add(notPutRight(battery.values()) + " Do not use or post the unit. " + String.join(" ", lithium));
            }
            Map<String, String> mains = new LinkedHashMap<>(findings.getOrDefault(Hazard.MAINS, Map.of()));
            for (PowerHold.Reason reason : held) {
                if (!battery.containsKey(reason.symptomId())) {
                    mains.remove(reason.symptomId());
                    String seen = terms.brief(Finding.of(reason.symptomId(), reason.stateId()));
                    said.add(notPutRight(List.of(seen)) + " Do not plug it in, charge it or switch it on, and leave"
                            + " opening it to a workshop: " + reason.why() + ".");
                }
            }
            if (!mains.isEmpty()) {
                said.add(
                        notPutRight(mains.values()) + " That concerns the mains side, where a fault can give a shock or"
                                + " start a fire. Do not plug the unit in until it is put right.");
            }
            return said;
        }

        private static String notPutRight(Collection<String> findings) {
            return "Not put right: " + String.join("; ", findings) + ".";
        }
    }

    /** Certain where the cause itself is one of such batteries, a condition where only the work was on one. */
    private static Optional<String> battery(CaseHistory history, Knowledge knowledge) {
        boolean cause = Optional.ofNullable(history.causeId())
                .flatMap(knowledge::cause)
                .filter(c -> lithiumOnly(c.cautions(), knowledge))
                .isPresent();
        boolean work = fixes(history)
                .flatMap(fix -> knowledge.fix(fix.fixId()).stream())
                .anyMatch(f -> lithiumOnly(f.cautions(), knowledge));
        return cause || work
                ? Optional.of((cause ? "It has a lithium battery. If the battery" : "If it has a lithium battery that")
                        + " swells, gets hot or has been dropped, stop charging it, keep it away from anything that burns,"
                        + " and bring it in.")
                : Optional.empty();
    }

    private static boolean lithiumOnly(List<String> cautions, Knowledge knowledge) {
        Set<Hazard> hazards = hazards(cautions.stream(), knowledge);
        return hazards.contains(Hazard.LITHIUM) && !hazards.contains(Hazard.MAINS);
    }

    private static Stream<String> ofCause(String causeId, Knowledge knowledge) {
        Optional<Cause> cause = knowledge.cause(causeId);
        return Stream.concat(
                cause.stream().flatMap(c -> c.cautions().stream()),
                cause.stream()
                        .flatMap(c -> c.fixedBy().stream())
                        .map(Remedy::fixId)
                        .flatMap(id -> knowledge.fix(id).stream())
                        .flatMap(f -> f.cautions().stream()));
    }

    /** As the bench says it. */
    static String name(Hazard hazard) {
        return hazard == Hazard.ESD || hazard == Hazard.UV ? hazard.name() : Terms.words(hazard);
    }

    private static Optional<String> forOwner(Hazard hazard) {
        return switch (hazard) {
            case MAINS ->
                Optional.of("There is mains voltage inside. Do not open the unit, and pull the plug before you"
                        + " clean it. If it smells, smokes or trips the house fuse, pull the plug and call us.");
            case STORED_CHARGE ->
                Optional.of("Parts inside stay charged after the plug is out. That is one more reason"
                        + " not to open it.");
            case HEAT -> Optional.of("Parts of it get hot. Keep its vents free and do not stand things on it.");
            case LASER -> Optional.of("There is a laser inside. It is safe only with the cover closed.");
            case PRESSURE -> Optional.of("Parts inside are under pressure. Do not open it.");
            case MECHANICAL -> Optional.of("Keep fingers, hair and sleeves away from moving parts and glass.");
            case UV -> Optional.of("There is a lamp inside whose light harms eyes and skin. Keep the cover closed.");
            case LITHIUM -> Optional.empty(); // see battery
            case FUMES, ESD -> Optional.empty(); // of concern at the bench only
        };
    }
}
