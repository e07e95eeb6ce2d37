package org.benchlore.kb.cases;

/** How a case ended. */
public enum Outcome {
    /** Fixed, and held through a proof run. */
    FIXED_AND_PROVEN,
    /** Fixed, not yet proven. */
    FIXED,
    /** The fix that was tried did not help. */
    NOT_FIXED,
    /** The fault returned after the unit was handed back as fixed. */
    CAME_BACK,
    /** The fault went away without a repair. */
    RECOVERED_BY_ITSELF,
    /** Nothing wrong was found; often an innocent cause. */
    NO_FAULT_FOUND,
    /** The unit left worse than it came. */
    MADE_WORSE,
    /** Repair would cost more than it returns. */
    NOT_WORTH_IT,
    /** Stopped without knowing. */
    GIVEN_UP;

    /** Whether the repair did it, as far as is known: fixed, proven or not yet. */
    public boolean cured() {
        return this == FIXED || this == FIXED_AND_PROVEN;
    }

    /** Kebab-case name used in JSON and on the command line, such as {@code fixed-and-proven}. */
    public String id() {
        return JsonFields.kebab(this);
    }

    /**
     * Reads {@link #id}.
     *
     * @throws IllegalArgumentException if there is no such outcome; the message lists them
     */
    public static Outcome parse(String id) {
        StringBuilder known = new StringBuilder();
        for (Outcome outcome : values()) {
            if (outcome.id().equals(id)) {
                return outcome;
            }
            known.append(known.isEmpty() ? "" : ", ").append(outcome.id());
        }
        throw new IllegalArgumentException("unknown outcome '" + id + "'; use one of: " + known);
    }
}
