package org.benchlore.kb.cases;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import org.benchlore.kb.cases.CaseEvent.Head;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;

/**
 * Turns one line with a whole case into events, as a person or another program writes it by hand. The events' ids follow
 * from the case id and the place in the line (k1:n2 is the second note of k1), so that the same line gives the same
 * events and a case that grew at the end gives the new ones only.
 */
final class CaseLineReader {
    private static final Duration STEP = Duration.ofMinutes(1);
    private static final int LONGEST_ID = Head.MAX_ID - ":opened".length();

    private final BiFunction<String, DeviceScope, List<Finding>> words;

    /** @param words reads the findings of a note that gives none */
    CaseLineReader(BiFunction<String, DeviceScope, List<Finding>> words) {
        this.words = words;
    }

    /**
     * What a line says.
     *
     * @param events in the order of the line
     * @param readFromWords ids of the notes whose findings were read from their words, and may be read otherwise by a
     *     later reader
     */
    record Read(List<CaseEvent> events, Set<String> readFromWords) {}

    /** @param fields the whole line; its {@code schema} was read by the caller */
    Read read(JsonFields fields) {
        Read read = fields.checked(() -> new OneCase(fields).read());
        fields.done();
        return read;
    }

    /** The state of reading one line: what was read so far and when the last of it was. */
    private final class OneCase {
        private final JsonFields fields;
        private final String id;
        private final DeviceScope scope;
        private final List<CaseEvent> events = new ArrayList<>();
        private final Set<String> readFromWords = new HashSet<>();
        private Instant last = Instant.EPOCH;

        OneCase(JsonFields fields) {
            this.fields = fields;
            this.id = fields.text("id");
            if (id.length() > LONGEST_ID) {
                throw new IllegalArgumentException(
                        "case id '" + JsonFields.shown(id) + "' is longer than " + LONGEST_ID + "; shorten it");
            }
            this.scope = DeviceScope.parse(fields.text("scope", "any"));
        }

        Read read() {
            Instant opened = fields.instantOrDate("opened");
            if (opened == null) {
                throw new BadLineException("case has no 'opened'", "add the day it came in", null);
            }
            last = opened;
            events.add(new CaseEvent.Opened(
                    new Head(id + ":opened", id, opened),
                    scope,
                    fields.text("complaint", ""),
                    fields.text("unit", ""),
                    CaseHistory.OWN,
                    fields.flag("workedOnBefore")));
            events.addAll(numbered("notes", "note", 'n', this::note));
            events.addAll(numbered("tests", "test", 't', EventReader::tested));
            JsonFields conclusion = fields.object("conclusion");
            if (conclusion != null) {
                Head head = head(conclusion, ":c");
                events.add(conclusion.checked(() -> EventReader.concluded(conclusion, head)));
                conclusion.done();
            }
            events.addAll(numbered("fixes", "fix", 'f', EventReader::fixApplied));
            events.addAll(numbered("checks", "check", 'p', EventReader::checked));
            events.addAll(numbered("outcomes", "outcome", 'o', EventReader::ended));
            return new Read(List.copyOf(events), Set.copyOf(readFromWords));
        }

        private List<CaseEvent> numbered(
                String key, String one, char letter, BiFunction<JsonFields, Head, CaseEvent> make) {
            int[] count = {0};
            return fields.each(key, one, item -> make.apply(item, head(item, ":" + letter + ++count[0])));
        }

        private Head head(JsonFields item, String suffix) {
            Instant at = item.instantOrDate("at");
            last = at == null ? last.plus(STEP) : at;
            return new Head(id + suffix, id, last);
        }

        private CaseEvent note(JsonFields note, Head head) {
            String text = note.text("text", "");
            boolean given = note.has("findings");
            List<Finding> findings = note.findings();
            if (text.isBlank() && findings.isEmpty()) {
                throw new IllegalArgumentException("says nothing; give 'text' or 'findings'");
            }
            if (!given) {
                findings = words.apply(text, scope);
                readFromWords.add(head.eventId());
            }
            return new CaseEvent.Noted(head, text, note.choice("source", Reading.Source.values(), "owner"), findings);
        }
    }

    /** Whether two events are the same but for findings read from the same words. */
    static boolean sameButForReading(@Nullable CaseEvent recorded, CaseEvent given) {
        return recorded instanceof CaseEvent.Noted a
                && given instanceof CaseEvent.Noted b
                && a.head().equals(b.head())
                && a.text().equals(b.text())
                && a.source() == b.source();
    }
}
