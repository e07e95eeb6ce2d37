package org.benchlore.kb.knowledge;

/**
 * Where a number comes from.
 *
 * @param kind published, common practice, or memory
 * @param citation the source in full for published numbers, else empty
 * @param clause clause, table or page within it, or empty
 */
public record Provenance(Kind kind, String citation, String clause) {
    /** From memory, the most modest origin. */
    public static final Provenance MEMORY = new Provenance(Kind.MEMORY, "", "");

    /** The three kinds of origin. */
    public enum Kind {
        PUBLISHED,
        COMMON_PRACTICE,
        MEMORY
    }

    public Provenance {
        if ((kind == Kind.PUBLISHED) == citation.isBlank()) {
            throw new IllegalArgumentException(
                    "a published number needs a citation, any other none; got " + kind + " with '" + citation + "'");
        }
    }

    /** In words: the source with its clause, "common practice" or "memory". */
    public String text() {
        return switch (kind) {
            case PUBLISHED -> citation + (clause.isBlank() ? "" : ", " + clause);
            case COMMON_PRACTICE -> "common practice";
            case MEMORY -> "memory";
        };
    }
}
