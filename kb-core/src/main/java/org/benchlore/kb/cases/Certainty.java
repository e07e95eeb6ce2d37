package org.benchlore.kb.cases;

/** How sure the bench is of a conclusion. */
public enum Certainty {
    /** A guess worth writing down. */
    SUSPECTED,
    /** Fits everything seen. */
    LIKELY,
    /** Shown by a test or by the cure. */
    PROVEN
}
