package org.benchlore.kb.ranking;

/**
 * A past case that moved a ranking.
 *
 * @param caseId the case
 * @param decibans how much the log odds of the cause would fall without it; below 0 it spoke against
 */
public record Influence(String caseId, double decibans) {}
