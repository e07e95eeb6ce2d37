package org.benchlore.kb.search;

import java.util.List;
import java.util.Optional;

/**
 * A link to an entry or a case that other tools can store: {@code benchlore:cause/standby-converter-dead}. It stays valid
 * as long as the id does, and ids never change once shipped.
 *
 * @param kind what it points to: symptom, cause, test, fix, caution, device, power-off-rule or case
 * @param id the entry's or case's id, a device's scope
 */
public record EntryLink(String kind, String id) {
    private static final String SCHEME = "benchlore:";
    private static final List<String> KINDS =
            List.of("symptom", "cause", "test", "fix", "caution", "device", "power-off-rule", "case");

    public EntryLink {
        if (!KINDS.contains(kind)) {
            throw new IllegalArgumentException(
                    "unknown kind '" + kind + "' of a link; use one of: " + String.join(", ", KINDS));
        }
        if (id.isBlank()) {
            throw new IllegalArgumentException("link to a " + kind + " has no id; give one");
        }
    }

    /** The id that somebody typed, alone or as a link; whatever else stands there is returned as it is. */
    static String idIn(String typed) {
        String text = typed.strip();
        return text.startsWith(SCHEME) ? text.substring(text.indexOf('/') + 1) : text;
    }

    /** The URI form. */
    public String uri() {
        return SCHEME + kind + "/" + id;
    }

    /**
     * Reads {@link #uri}.
     *
     * @return empty if the text is no link at all
     * @throws IllegalArgumentException if it is one, but not to anything of ours
     */
    public static Optional<EntryLink> parse(String typed) {
        String text = typed.strip();
        if (!text.startsWith(SCHEME)) {
            return Optional.empty();
        }
        int slash = text.indexOf('/');
        if (slash < 0) {
            throw new IllegalArgumentException("'" + text + "' is not a link of ours; write benchlore:KIND/ID");
        }
        return Optional.of(new EntryLink(text.substring(SCHEME.length(), slash), text.substring(slash + 1)));
    }
}
