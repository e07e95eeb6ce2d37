/**
 * How bench text falls into tokens: the reader and the search index share it, so that what one finds the other finds.
 * Read {@link org.benchlore.kb.reading.analysis.Lexer} first. Not exported.
 */
@NullMarked
package org.benchlore.kb.reading.analysis;

import org.jspecify.annotations.NullMarked;
