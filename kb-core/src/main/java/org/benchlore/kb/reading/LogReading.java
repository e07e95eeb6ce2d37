package org.benchlore.kb.reading;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchlore.kb.reading.Reading.Span;
import org.benchlore.kb.reading.Reading.Understood;

/**
 * What a pasted log says. A code in it is evidence, not a verdict; an innocent cause may have written it.
 *
 * @param codes per code, in order of first line
 * @param starts counted starts, if the log has such a counter
 * @param cleanStops counted clean stops
 * @param uncleanStops as counted; else starts less clean stops, where both are there and the difference is not negative
 * @param hours counted hours of use
 * @param understood findings, in order of place
 * @param implausible times that are not used: before 1990, no date at all, or out of order with most others (a clock that
 *     lost its cell)
 * @param unmatched lines that no pattern fits, blank ones left out
 */
public record LogReading(
        List<CodeCount> codes,
        OptionalLong starts,
        OptionalLong cleanStops,
        OptionalLong uncleanStops,
        OptionalLong hours,
        List<Understood> understood,
        List<Span> implausible,
        List<Span> unmatched) {
    /**
     * How often a code stands in the log.
     *
     * @param code canonical spelling when known, else as written
     * @param known whether the scope's device packs know it
     * @param count lines with it, or what a line counts
     * @param first earliest plausible time; empty when there is none
     * @param last latest plausible time; empty when there is none
     * @param span first place
     */
    public record CodeCount(
            String code,
            boolean known,
            int count,
            Optional<LocalDateTime> first,
            Optional<LocalDateTime> last,
            Span span) {}

    public LogReading {
        codes = List.copyOf(codes);
        understood = List.copyOf(understood);
        implausible = List.copyOf(implausible);
        unmatched = List.copyOf(unmatched);
    }
}
