package org.benchlore.kb.reading;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Device;

/** What the lines of a log look like. Bounded time per line. */
interface LogForm {
    /** Some characters of a line and where they start in it. */
    record Part(String text, int start) {}

    /** A code in a line and how often the line says it was written. */
    record Mark(Part part, int count) {}

    /** A counter in a line and what it stands at. */
    record Count(Device.Counter.Meaning means, Part name, Part value) {}

    /**
     * What a line holds.
     *
     * @param time as written; missing where the line has none
     * @param clock the same as a date and time, where it is one
     * @param prose whether the rest of the line may say more
     */
    record Hit(
            Optional<Part> time, Optional<LocalDateTime> clock, List<Mark> codes, List<Count> counts, boolean prose) {}

    /** Whether the text is no log; counters may still be told in it. */
    boolean none();

    /** What a line of the log holds; empty for a line that is none. */
    Optional<Hit> match(String line);
}
