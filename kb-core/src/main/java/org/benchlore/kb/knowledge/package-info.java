/**
 * What is known before any case: symptoms, causes, bench tests, fixes, cautions and device scopes, the immutable graph
 * of them ({@link org.benchlore.kb.knowledge.Knowledge}, read this first), and the packs they are read from.
 */
@NullMarked
package org.benchlore.kb.knowledge;

import org.jspecify.annotations.NullMarked;
