/**
 * From a bench's own words, logs and measurements to findings. Read {@link org.benchlore.kb.reading.Reader} first; what
 * it returns is a {@link org.benchlore.kb.reading.Reading}.
 */
@NullMarked
package org.benchlore.kb.reading;

import org.jspecify.annotations.NullMarked;
