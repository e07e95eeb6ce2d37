package org.benchlore.kb.cases;

import java.io.IOException;
import java.util.List;

/**
 * Writes a store as lines of JSON, one event per line, for another bench or as a copy. Read back by {@link CaseImport},
 * in any order and any number of times, the lines give the same histories.
 */
public final class CaseExport {
    private static final int PAGE = 1000;

    private CaseExport() {}

    /**
     * Writes every event recorded so far.
     *
     * @param store where from; may go on recording meanwhile
     * @param to where to; neither flushed nor closed. Give it UTF-8
     * @param anonymised leave out free text, serial numbers, prices and the names of other shops. Ids, times, device scopes,
     *     findings, causes, fixes and outcomes stay, so keep people's names out of ids
     * @return number of events written
     * @throws IOException if {@code to} throws it; what was written so far is good lines but for the last
     */
    public static long write(CaseStore store, Appendable to, boolean anonymised) throws IOException {
        long last = store.position();
        long position = 0;
        while (position < last) {
            List<CaseStore.Recorded> page = store.eventsAfter(position, (int) Math.min(PAGE, last - position));
            for (CaseStore.Recorded recorded : page) {
                CaseEvent event = anonymised ? EventCopies.anonymous(recorded.event()) : recorded.event();
                to.append(CaseJson.write(event)).append('\n');
                position = recorded.position();
            }
        }
        return position;
    }
}
