package org.benchlore.kb.knowledge;

/**
 * What can hurt someone or the unit, and what to do about it.
 *
 * @param id stable, kebab-case
 * @param hazard the kind of harm
 * @param text shown in full wherever the step it guards is shown
 * @param from origin of the statement
 */
public record Caution(String id, Hazard hazard, String text, Provenance from) {
    /** Kinds of harm. */
    public enum Hazard {
        MAINS,
        STORED_CHARGE,
        LITHIUM,
        HEAT,
        FUMES,
        LASER,
        ESD,
        PRESSURE,
        MECHANICAL,
        UV
    }
}
