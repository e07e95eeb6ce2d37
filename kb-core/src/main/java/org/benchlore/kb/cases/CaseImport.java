package org.benchlore.kb.cases;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * Reads lines of JSON into a store: events ({@code benchlore/event/1}, as {@link CaseExport} writes them) and whole cases
 * ({@code benchlore/case/1}, as people write them), mixed as they come. The order of lines and reading them again make no
 * difference. A bad line is reported and stops nothing; of a line with a whole case everything is stored or nothing.
 *
 * <p>For one thread and one use; several imports into one store may run at once.
 */
public final class CaseImport {
    private static final int BATCH_EVENTS = 2000; // one durable transaction each

    /** Our spelling of an event may be longer than the line's, most for escaped half characters: 6 for 1. */
    private static final int MOST_GROWTH = 8;

    /** A good line, waiting to be stored. */
    private record Waiting(long line, List<CaseEvent> events, Set<String> readFromWords) {}

    private final CaseStore store;
    private final String source;
    private final String origin;
    private final CaseLineReader cases;
    private final List<Waiting> waiting = new ArrayList<>();
    private final List<ImportProblem> problems = new ArrayList<>();
    private int waitingEvents;
    private long moreProblems;
    private long openings;
    private long events;
    private long added;

    private CaseImport(
            CaseStore store, String source, String origin, BiFunction<String, DeviceScope, List<Finding>> words) {
        this.store = store;
        this.source = source;
        this.origin = origin;
        this.cases = new CaseLineReader(origin, words);
    }

    /**
     * Imports every good line.
     *
     * @param store where to
     * @param lines text, one JSON object of at most 1 MiB per line, blank lines skipped; not closed
     * @param source how problems name it, usually the file
     * @param origin whose cases they are: {@link CaseHistory#OWN} to put back one's own, else a name for the other bench
     * @param words reads the findings of a note in a whole case that has text but no findings
     * @return counts and problems
     * @throws IOException if {@code lines} throws it; batches stored before stay, and importing again is harmless
     * @throws StoreException if the store is in trouble; likewise
     * @throws IllegalArgumentException if the origin is blank or longer than 80 characters
     */
    public static ImportResult read(
            CaseStore store,
            Reader lines,
            String source,
            String origin,
            BiFunction<String, DeviceScope, List<Finding>> words)
            throws IOException {
        if (origin.isBlank() || origin.length() > CaseEvent.Head.MAX_ID) {
            throw new IllegalArgumentException("origin '" + JsonFields.shown(origin) + "'; give a name of 1 to "
                    + CaseEvent.Head.MAX_ID + " characters");
        }
        return new CaseImport(store, source, origin, words).run(new Lines(lines));
    }

    private ImportResult run(Lines lines) throws IOException {
        for (Lines.Line line = lines.next(); line != null; line = lines.next()) {
            if (line.text().isBlank()) {
                continue;
            }
            try {
                Waiting good = parse(line);
                waiting.add(good);
                waitingEvents += good.events().size();
            } catch (BadLineException e) {
                report(line.number(), e.what(), e.remedy());
            }
            if (waitingEvents >= BATCH_EVENTS) {
                store();
            }
        }
        store();
        problems.sort(Comparator.comparingLong(ImportProblem::line));
        return new ImportResult(openings, events, added, events - added, problems, moreProblems);
    }

    private void report(long line, String what, String remedy) {
        if (problems.size() < ImportResult.MOST_PROBLEMS) {
            problems.add(new ImportProblem(source, line, what, remedy));
        } else {
            moreProblems++;
        }
    }

    private Waiting parse(Lines.Line line) {
        if (line.tooLong()) {
            throw CaseJson.tooLong();
        }
        JsonFields fields;
        try {
            fields = CaseJson.parse(line.text(), "line");
        } catch (BadLineException e) {
            if (line.ended()) {
                throw e;
            }
            throw new BadLineException(
                    "the text ends in the middle of this line", "fetch or export the whole of it again", e);
        }
        Waiting good = parse(line.number(), fields);
        if (line.text().length() > CaseJson.MAX_LINE / MOST_GROWTH) {
            fields.checked(() -> good.events().stream().map(CaseJson::write).toList());
        }
        return good;
    }

    private Waiting parse(long number, JsonFields fields) {
        String schema = fields.text("schema");
        if (schema.equals(CaseJson.EVENT)) {
            CaseEvent event = EventCopies.fromOrigin(EventReader.read(fields), origin);
            return new Waiting(number, List.of(event), Set.of());
        }
        if (schema.equals(CaseJson.CASE)) {
            CaseLineReader.Read read = cases.read(fields);
            return new Waiting(number, read.events(), read.readFromWords());
        }
        throw new BadLineException(
                "unknown schema '" + JsonFields.shown(schema) + "'",
                "this version reads " + CaseJson.EVENT + " and " + CaseJson.CASE + "; update if it is newer",
                null);
    }

    private void store() {
        List<CaseStore.Group> groups = waiting.stream()
                .map(w -> new CaseStore.Group(w.events(), (recorded, given) -> same(recorded, given, w)))
                .toList();
        List<EventTable.Appended> done = store.appendGroups(groups);
        for (int i = 0; i < done.size(); i++) {
            settle(waiting.get(i), done.get(i));
        }
        waiting.clear();
        waitingEvents = 0;
    }

    private void settle(Waiting line, EventTable.Appended done) {
        EventTable.Conflict conflict = done.conflict();
        if (conflict != null) {
            report(
                    line.line(),
                    EventConflictException.what(conflict.recorded(), conflict.given()),
                    EventConflictException.REMEDY);
            return;
        }
        events += line.events().size();
        openings += line.events().stream()
                .filter(CaseEvent.Opened.class::isInstance)
                .count();
        added += done.added().size();
    }

    /** An anonymised event and the full one are the same; the one that came first stays. */
    private static boolean same(CaseEvent recorded, CaseEvent given, Waiting line) {
        return CaseStore.sameButForOrigin(recorded, given)
                || (line.readFromWords().contains(given.head().eventId())
                        && CaseLineReader.sameButForReading(recorded, given))
                || CaseStore.sameButForOrigin(recorded, EventCopies.anonymous(given))
                || CaseStore.sameButForOrigin(EventCopies.anonymous(recorded), given);
    }
}
