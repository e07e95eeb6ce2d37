package org.benchlore.kb.search;

import java.util.Map;
import org.apache.lucene.util.Version;
import org.jspecify.annotations.Nullable;

/**
 * What a commit says of itself: our format, Lucene's major version, the packs it was made from, and how far it got.
 *
 * @param fingerprint see {@link Fingerprint}
 * @param reached the events taken in
 */
record Stamp(String fingerprint, Reached reached) {
    /** Raise it whenever documents made from the same packs and cases would differ. */
    private static final String FORMAT_VERSION = "5";

    private static final String FORMAT = "benchlore.index";
    private static final String LUCENE = "benchlore.lucene";
    private static final String PACKS = "benchlore.packs";
    private static final String POSITION = "benchlore.position";
    private static final String EVENT = "benchlore.event";

    Stamp at(Reached now) {
        return new Stamp(fingerprint, now);
    }

    Map<String, String> data() {
        return Map.of(
                FORMAT, FORMAT_VERSION,
                LUCENE, Integer.toString(Version.LATEST.major),
                PACKS, fingerprint,
                POSITION, Long.toString(reached.position()),
                EVENT, reached.eventId());
    }

    /** Whether the index is one of ours, of whatever version. */
    static boolean ours(Map<String, String> data) {
        return data.containsKey(FORMAT);
    }

    /** Reads {@link #data}; null if it is not of this format, this Lucene and these packs. */
    static @Nullable Stamp read(Map<String, String> data, String fingerprint) {
        String position = data.getOrDefault(POSITION, "");
        boolean fits = FORMAT_VERSION.equals(data.get(FORMAT))
                && Integer.toString(Version.LATEST.major).equals(data.get(LUCENE))
                && fingerprint.equals(data.get(PACKS))
                && position.matches("[0-9]{1,18}");
        return fits
                ? new Stamp(fingerprint, new Reached(Long.parseLong(position), data.getOrDefault(EVENT, "")))
                : null;
    }
}
