package org.benchlore.kb.report;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.LogReading;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading;

/**
 * What the reader makes of a case's texts, each read once for all parts of a sheet that ask. Empty for a blank text, and for one
 * that came by import and is longer than the reader takes. For one sheet and one thread.
 */
final class Readings {
    private final Reader reader;
    private final DeviceScope scope;
    private final Map<String, Reading> read = new HashMap<>();

    Readings(Reader reader, CaseHistory history) {
        this.reader = reader;
        this.scope = history.scope();
    }

    Optional<Reading> of(String text) {
        return readable(text) ? Optional.of(read.computeIfAbsent(text, t -> reader.read(t, scope))) : Optional.empty();
    }

    /** A text as a log; not kept, since one part asks. */
    Optional<LogReading> log(String text) {
        return readable(text) ? Optional.of(reader.readLog(text, scope)) : Optional.empty();
    }

    private static boolean readable(String text) {
        return !text.isBlank() && Reader.takes(text);
    }

    /** What somebody wrote of what was found: a note, or what came with a test; else empty. */
    static String found(CaseEvent event) {
        return event instanceof CaseEvent.Noted noted
                ? noted.text()
                : event instanceof CaseEvent.Tested tested ? tested.note() : "";
    }
}
