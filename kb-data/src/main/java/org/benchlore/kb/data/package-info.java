/** The knowledge that ships: {@link org.benchlore.kb.data.ShippedPacks} and {@link org.benchlore.kb.data.DemoScenario}. */
@NullMarked
package org.benchlore.kb.data;

import org.jspecify.annotations.NullMarked;
