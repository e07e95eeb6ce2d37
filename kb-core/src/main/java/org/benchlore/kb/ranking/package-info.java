/**
 * Likely causes for findings: statistics learnt from cases, the posterior, intervals and the explanation. Read
 * {@link org.benchlore.kb.ranking.RankingModel} first.
 */
@NullMarked
package org.benchlore.kb.ranking;

import org.jspecify.annotations.NullMarked;
