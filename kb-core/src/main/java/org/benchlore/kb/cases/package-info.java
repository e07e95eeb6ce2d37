/**
 * Case histories: the events that are their only truth ({@link org.benchlore.kb.cases.CaseEvent}, read this first), the
 * history folded from them, the durable store, import and export.
 */
@NullMarked
package org.benchlore.kb.cases;

import org.jspecify.annotations.NullMarked;
