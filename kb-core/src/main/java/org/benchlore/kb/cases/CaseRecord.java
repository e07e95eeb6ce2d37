package org.benchlore.kb.cases;

import java.util.List;
import java.util.Set;

/**
 * What one record of a source says: events that are stored together or not at all.
 *
 * @param line where it begins, from 1
 * @param events at least one, as the bench that wrote them tells them: its own cases bear {@link CaseHistory#OWN}
 * @param readFromWords ids of the notes whose findings were read from their words, and may be read otherwise by a later
 *     reader
 */
public record CaseRecord(long line, List<CaseEvent> events, Set<String> readFromWords) {
    public CaseRecord {
        events = List.copyOf(events);
        readFromWords = Set.copyOf(readFromWords);
        if (events.isEmpty()) {
            throw new IllegalArgumentException("record at line " + line + " holds no event; leave it out");
        }
    }
}
