package org.benchlore.kb.knowledge;

import org.jspecify.annotations.Nullable;

/**
 * What a measured symptom is measured in.
 *
 * @param unit V, A, W, ohm, Hz, degC, h, F, s, % or 1 for a count
 * @param nominal the value a sound unit has, or null where there is none; may be negative (a minus rail)
 * @param toleranceShare half-width of the tolerance as a share of |nominal|, e.g. 0.05; 0 where there is no nominal
 */
public record Quantity(String unit, @Nullable Double nominal, double toleranceShare) {}
