package org.benchlore.kb.search;

/**
 * What somebody may be about to type.
 *
 * @param text a name, another name, or a whole phrase
 * @param kind what it stands for
 * @param id id of that entry
 */
public record Suggestion(String text, HitKind kind, String id) {
    /** Stable link to it, as {@link SearchHit#uri}. */
    public String uri() {
        return new EntryLink(kind.id(), id).uri();
    }
}
