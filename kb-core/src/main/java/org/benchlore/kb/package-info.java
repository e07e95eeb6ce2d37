/** The front door: {@link org.benchlore.kb.KnowledgeBase} and its builder. */
@NullMarked
package org.benchlore.kb;

import org.jspecify.annotations.NullMarked;
