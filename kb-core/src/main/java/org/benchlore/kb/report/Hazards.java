package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
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

/** The cautions that belong to a case. */
final class Hazards {
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
     * What an owner should know, one sentence per kind of harm that concerns somebody who does not open the unit. That the
     * unit has a lithium battery is not taken from cautions for work on units of any kind, which name mains beside it.
     */
    static List<String> forOwner(CaseHistory history, Knowledge knowledge) {
        Set<Hazard> hazards = EnumSet.noneOf(Hazard.class);
        of(history, knowledge).forEach(c -> hazards.add(c.hazard()));
        hazards.remove(Hazard.LITHIUM);
        List<String> said = new ArrayList<>();
        battery(history, knowledge).ifPresent(said::add);
        hazards.stream().flatMap(h -> forOwner(h).stream()).forEach(said::add);
        return said;
    }

    /** Certain where the cause itself is one of such batteries, a condition where only the work was on one. */
    private static Optional<String> battery(CaseHistory history, Knowledge knowledge) {
        boolean cause = Optional.ofNullable(history.causeId())
                .flatMap(knowledge::cause)
                .filter(c -> lithiumOnly(c.cautions(), knowledge))
                .isPresent();
        boolean work = history.events().stream()
                .filter(CaseEvent.FixApplied.class::isInstance)
                .flatMap(e -> knowledge.fix(((CaseEvent.FixApplied) e).fixId()).stream())
                .anyMatch(f -> lithiumOnly(f.cautions(), knowledge));
        return cause || work
                ? Optional.of((cause ? "It has a lithium battery. If the battery" : "If it has a lithium battery that")
                        + " swells, gets hot or has been dropped, stop charging it, keep it away from anything that burns,"
                        + " and bring it in.")
                : Optional.empty();
    }

    private static boolean lithiumOnly(List<String> cautions, Knowledge knowledge) {
        Set<Hazard> hazards = EnumSet.noneOf(Hazard.class);
        cautions.stream().flatMap(id -> knowledge.caution(id).stream()).forEach(c -> hazards.add(c.hazard()));
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
