/**
 * Decisions: what to test next, what to fix, whether to, and when to believe it. Read
 * {@link org.benchlore.kb.planning.TestPlanner} first; the equations are in {@code kb-core/docs/planning.md}.
 */
@NullMarked
package org.benchlore.kb.planning;

import org.jspecify.annotations.NullMarked;
