package org.benchlore.kb.report;

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

    /** What an owner should know, one sentence per kind of harm that concerns somebody who does not open the unit. */
    static List<String> forOwner(List<Caution> cautions) {
        Set<Hazard> hazards = EnumSet.noneOf(Hazard.class);
        cautions.forEach(c -> hazards.add(c.hazard()));
        return hazards.stream().flatMap(h -> forOwner(h).stream()).toList();
    }

    private static Optional<String> forOwner(Hazard hazard) {
        return switch (hazard) {
            case MAINS ->
                Optional.of("There is mains voltage inside. Do not open the unit, and pull the plug before you"
                        + " clean it. If it smells, smokes or trips the house fuse, pull the plug and call us.");
            case STORED_CHARGE ->
                Optional.of("Parts inside stay charged after the plug is out. That is one more reason"
                        + " not to open it.");
            case LITHIUM ->
                Optional.of("It has a lithium battery. If the battery swells, gets hot or has been dropped,"
                        + " stop charging it, keep it away from anything that burns, and bring it in.");
            case HEAT -> Optional.of("Parts of it get hot. Keep its vents free and do not stand things on it.");
            case LASER -> Optional.of("There is a laser inside. It is safe only with the cover closed.");
            case PRESSURE -> Optional.of("Parts inside are under pressure. Do not open it.");
            case MECHANICAL -> Optional.of("Keep fingers, hair and sleeves away from moving parts and glass.");
            case UV -> Optional.of("There is a lamp inside whose light harms eyes and skin. Keep the cover closed.");
            case FUMES, ESD -> Optional.empty(); // of concern at the bench only
        };
    }
}
