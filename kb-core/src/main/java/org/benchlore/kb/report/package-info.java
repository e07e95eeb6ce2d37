/**
 * Answers in forms that leave the library: sheets for people, JSON for other tools, pages to browse. Read
 * {@link org.benchlore.kb.report.Sheets}, {@link org.benchlore.kb.report.Json} and
 * {@link org.benchlore.kb.report.KnowledgePages} first.
 */
@NullMarked
package org.benchlore.kb.report;

import org.jspecify.annotations.NullMarked;
