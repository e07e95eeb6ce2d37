package org.benchlore.kb.knowledge;

/** Risk to the unit, in rising order. */
public enum Risk {
    NONE,
    LOW,
    MEDIUM,
    HIGH
}
