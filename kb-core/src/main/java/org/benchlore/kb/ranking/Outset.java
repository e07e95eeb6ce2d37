package org.benchlore.kb.ranking;

/**
 * Shares of the causes before any finding, each view on top of the one before.
 *
 * @param scope by base frequency and cases
 * @param tried with what was tried in vain held against its causes
 * @param worded with what the wording of the note lends to each cause
 * @param coded with what past cases teach of codes that no pack knows
 */
record Outset(ScopeView scope, ScopeView tried, ScopeView worded, ScopeView coded) {}
