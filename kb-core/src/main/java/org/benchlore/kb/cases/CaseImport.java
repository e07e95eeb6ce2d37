package org.benchlore.kb.cases;

import java.io.IOException;
import java.io.Reader;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * Reads lines of JSON ({@link CaseLines}) into a store ({@link CaseIntake}), however many there are: no more than a batch
 * is in memory. The order of lines and reading them again make no difference.
 */
public final class CaseImport {
    private CaseImport() {}

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
     * @throws ListenerException if a listener failed; every good line is imported all the same
     * @throws IllegalArgumentException if the origin is blank or longer than 80 characters
     */
    public static ImportResult read(
            CaseStore store,
            Reader lines,
            String source,
            String origin,
            BiFunction<String, DeviceScope, List<Finding>> words)
            throws IOException {
        CaseIntake intake = new CaseIntake(store, source, origin);
        CaseLines records = new CaseLines(lines, source, words, intake::report);
        for (Optional<CaseRecord> record = records.next(); record.isPresent(); record = records.next()) {
            intake.add(record.get());
        }
        return intake.finish();
    }
}
