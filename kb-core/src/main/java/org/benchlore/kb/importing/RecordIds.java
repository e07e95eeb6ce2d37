package org.benchlore.kb.importing;

import com.google.common.hash.HashCode;
import com.google.common.hash.Hashing;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Case ids made from content: the day, and 50 bits of a hash of the source's name and the record's words, so that reading
 * the same diary twice gives the same cases. Of equal records in one source the second has another id than the first.
 */
final class RecordIds {
    private static final String DIGITS = "0123456789abcdefghjkmnpqrstvwxyz"; // no i, l, o, u: they are misread
    private static final int LENGTH = 10;

    private final String source;
    private final Map<HashCode, Integer> seen = new HashMap<>();

    /** @param source its name without the folder, so that moving a file changes nothing */
    RecordIds(String source) {
        int slash = Math.max(source.lastIndexOf('/'), source.lastIndexOf('\\'));
        this.source = source.substring(slash + 1);
    }

    String of(RawRecord record, Optional<LocalDate> date) {
        HashCode content = hash(record.content());
        int before = seen.merge(content, 1, Integer::sum) - 1;
        HashCode hash = before == 0 ? content : hash(before + "\u001f" + record.content());
        StringBuilder id = new StringBuilder(
                date.map(DateTimeFormatter.BASIC_ISO_DATE::format).orElse("undated"));
        id.append('-');
        long bits = hash.asLong();
        for (int i = 0; i < LENGTH; i++) {
            id.append(DIGITS.charAt((int) (bits >>> (5 * i)) & 31));
        }
        return id.toString();
    }

    private HashCode hash(String content) {
        return Hashing.sha256().hashString(source + "\u001f" + content, StandardCharsets.UTF_8);
    }
}
