package org.benchlore.kb.knowledge;

/**
 * A fix for a cause, with the pack's opinion of how often it works.
 *
 * @param fixId the fix
 * @param works probability in (0,1) that it cures this cause
 * @param cases how many cases the opinion is worth
 * @param from origin of the number
 */
public record Remedy(String fixId, double works, double cases, Provenance from) {}
