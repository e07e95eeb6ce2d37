package org.benchlore.kb.ranking;

import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * What a ranking is asked for.
 *
 * @param findings at most one per symptom
 * @param scope device scope of the unit
 * @param fromNote whether the findings come from a note, so that what it does not mention says a little; false when they
 *     were picked from a list, where silence says nothing
 * @param workedOnBefore whether somebody had been inside the unit, so that two faults at once are likelier; only {@link
 *     RankingModel#pairs} asks
 */
public record RankingQuery(List<Finding> findings, DeviceScope scope, boolean fromNote, boolean workedOnBefore) {
    public RankingQuery {
        findings = List.copyOf(findings);
    }

    /** A unit nobody is known to have worked on. */
    public RankingQuery(List<Finding> findings, DeviceScope scope, boolean fromNote) {
        this(findings, scope, fromNote, false);
    }

    /** Findings picked outright, in any device. */
    public static RankingQuery of(List<Finding> findings) {
        return new RankingQuery(findings, DeviceScope.ANY, false);
    }
}
