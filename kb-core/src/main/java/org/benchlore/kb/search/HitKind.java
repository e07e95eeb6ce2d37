package org.benchlore.kb.search;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** What a search can find. */
public enum HitKind {
    SYMPTOM,
    CAUSE,
    TEST,
    FIX,
    CASE;

    private final String id = name().toLowerCase(Locale.ROOT);

    /** Lower-case name used in links, JSON and on the command line, such as {@code cause}. */
    public String id() {
        return id;
    }

    /**
     * Reads {@link #id}.
     *
     * @throws IllegalArgumentException if there is no such kind; the message lists them
     */
    public static HitKind parse(String id) {
        for (HitKind kind : values()) {
            if (kind.id.equals(id)) {
                return kind;
            }
        }
        String known = Arrays.stream(values()).map(HitKind::id).collect(Collectors.joining(", "));
        throw new IllegalArgumentException("unknown kind '" + id + "'; use one of: " + known);
    }
}
