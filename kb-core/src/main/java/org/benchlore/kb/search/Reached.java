package org.benchlore.kb.search;

/**
 * How far the index has followed the log of events. The id beside the position tells when the store was replaced by
 * another or put back from a copy: then the index has to be rebuilt, though the position alone may look right.
 *
 * @param position position of the last event taken in; 0 for none
 * @param eventId id of that event; empty for none
 */
public record Reached(long position, String eventId) {
    /** No event yet. */
    public static final Reached NOTHING = new Reached(0, "");

    public Reached {
        if (position < 0) {
            throw new IllegalArgumentException("position " + position + " is negative; the first event has 1");
        }
    }
}
