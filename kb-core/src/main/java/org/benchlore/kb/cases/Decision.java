package org.benchlore.kb.cases;

/** What is to become of a unit. */
public enum Decision {
    /** Do the work. */
    WORK,
    /** Leave it as it is. */
    LEAVE,
    /** Take it for parts. */
    PARTS
}
