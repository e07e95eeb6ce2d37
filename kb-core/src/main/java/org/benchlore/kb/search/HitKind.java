package org.benchlore.kb.search;

import java.util.Locale;

/** What a search can find. */
public enum HitKind {
    SYMPTOM,
    CAUSE,
    TEST,
    FIX,
    CASE;

    /** Lower-case name used in links, JSON and on the command line, such as {@code cause}. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Reads {@link #id}.
     *
     * @throws IllegalArgumentException if there is no such kind; the message lists them
     */
    public static HitKind parse(String id) {
        StringBuilder known = new StringBuilder();
        for (HitKind kind : values()) {
            if (kind.id().equals(id)) {
                return kind;
            }
            known.append(known.isEmpty() ? "" : ", ").append(kind.id());
        }
        throw new IllegalArgumentException("unknown kind '" + id + "'; use one of: " + known);
    }
}
