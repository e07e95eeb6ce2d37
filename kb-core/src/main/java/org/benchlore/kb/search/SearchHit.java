package org.benchlore.kb.search;

import java.util.List;
import java.util.Optional;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;

/**
 * One entry or case found.
 *
 * @param kind what it is
 * @param id its id
 * @param title name of the entry; for a case the owner's words, or what it turned out to be
 * @param scope where it belongs
 * @param outcome how the case ended; empty for entries and open cases
 * @param score comparable within one result only; 0 and up
 * @param snippet the passage that fits the words best
 */
public record SearchHit(
        HitKind kind,
        String id,
        String title,
        DeviceScope scope,
        Optional<Outcome> outcome,
        double score,
        Snippet snippet) {
    /** Stable link, such as {@code benchlore:cause/standby-converter-dead}. */
    public String uri() {
        return new EntryLink(kind.id(), id).uri();
    }

    /**
     * A passage of plain text.
     *
     * @param text without markup; an ellipsis stands where it was cut
     * @param matches the words that matched, in order, not overlapping
     */
    public record Snippet(String text, List<Match> matches) {
        public Snippet {
            matches = List.copyOf(matches);
        }
    }

    /** Where a matched word stands in {@link Snippet#text}: UTF-16 offsets, end exclusive. */
    public record Match(int start, int end) {}
}
