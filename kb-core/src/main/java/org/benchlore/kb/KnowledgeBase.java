package org.benchlore.kb;

/** The one front door. */
public final class KnowledgeBase {
    private KnowledgeBase() {}
}
