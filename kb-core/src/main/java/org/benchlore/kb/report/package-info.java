/**
 * Answers in forms that leave the library: sheets for people, JSON for other tools. Read
 * {@link org.benchlore.kb.report.Sheets} and {@link org.benchlore.kb.report.Json} first.
 */
@NullMarked
package org.benchlore.kb.report;

import org.jspecify.annotations.NullMarked;
