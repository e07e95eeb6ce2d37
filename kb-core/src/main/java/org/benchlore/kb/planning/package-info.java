/**
 * What to do next: bench tests by what they tell per minute. Read {@link org.benchlore.kb.planning.TestPlanner} first.
 */
@NullMarked
package org.benchlore.kb.planning;

import org.jspecify.annotations.NullMarked;
