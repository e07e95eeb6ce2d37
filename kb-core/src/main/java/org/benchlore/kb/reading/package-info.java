/**
 * From a bench's own words, logs and measurements to findings. Read {@link org.benchlore.kb.reading.Reader} first; what
 * it returns is a {@link org.benchlore.kb.reading.Reading}.
 *
 * <pre>{@code
 * Reader reader = Reader.of(knowledge);
 * Reading reading = reader.read("LED is green but 12V missing, no answer from the controller", DeviceScope.ANY);
 * reading.findings();      // controller-response silent, power-lamp green, rail-12v absent
 * reading.notUnderstood(); // nothing
 * }</pre>
 */
@NullMarked
package org.benchlore.kb.reading;

import org.jspecify.annotations.NullMarked;
