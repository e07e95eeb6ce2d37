/** Answers in forms that leave the library: JSON for other tools. Read {@link org.benchlore.kb.report.Json} first. */
@NullMarked
package org.benchlore.kb.report;

import org.jspecify.annotations.NullMarked;
