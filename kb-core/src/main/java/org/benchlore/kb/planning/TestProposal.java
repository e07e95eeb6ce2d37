package org.benchlore.kb.planning;

import org.benchlore.kb.knowledge.BenchTest;

/**
 * A bench test worth doing now.
 *
 * @param test the test, with its steps, readings and cautions
 * @param bits expected information about the cause, 0 or more
 * @param bitsPerMinute the same per minute of bench time; what proposals are ordered by
 */
public record TestProposal(BenchTest test, double bits, double bitsPerMinute) {}
