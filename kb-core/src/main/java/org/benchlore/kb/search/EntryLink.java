package org.benchlore.kb.search;

/**
 * A link to an entry or a case that other tools can store: {@code benchlore:cause/standby-converter-dead}. It stays valid
 * as long as the id does, and ids never change once shipped.
 *
 * @param kind what it points to
 * @param id the entry's or case's id
 */
public record EntryLink(HitKind kind, String id) {
    private static final String SCHEME = "benchlore:";

    public EntryLink {
        if (id.isBlank()) {
            throw new IllegalArgumentException("link to a " + kind.id() + " has no id; give one");
        }
    }

    /** The id that somebody typed, alone or as a link; whatever else stands there is returned as it is. */
    static String idIn(String typed) {
        String text = typed.strip();
        return text.startsWith(SCHEME) ? text.substring(text.indexOf('/') + 1) : text;
    }

    /** The URI form. */
    public String uri() {
        return SCHEME + kind.id() + "/" + id;
    }

    /**
     * Reads {@link #uri}.
     *
     * @throws IllegalArgumentException if the text is not such a link
     */
    public static EntryLink parse(String uri) {
        int slash = uri.indexOf('/');
        if (!uri.startsWith(SCHEME) || slash < 0) {
            throw new IllegalArgumentException("'" + uri + "' is not a link of ours; write benchlore:KIND/ID");
        }
        return new EntryLink(HitKind.parse(uri.substring(SCHEME.length(), slash)), uri.substring(slash + 1));
    }
}
