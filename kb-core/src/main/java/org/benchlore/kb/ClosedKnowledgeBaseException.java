package org.benchlore.kb;

import org.benchlore.kb.knowledge.KnowledgeBaseException;

/** The knowledge base was used after close; open another. */
public final class ClosedKnowledgeBaseException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    ClosedKnowledgeBaseException() {
        super("this knowledge base is closed; open another with KnowledgeBase.builder()", null);
    }
}
