package org.benchlore.kb;

import org.benchlore.kb.knowledge.KnowledgeBaseException;
import org.jspecify.annotations.Nullable;

/** The knowledge base was used after close; open another. */
public final class ClosedKnowledgeBaseException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    /** @param cause what was met where it was closed while an answer was under way, or null */
    ClosedKnowledgeBaseException(@Nullable Throwable cause) {
        super("this knowledge base is closed; open another with KnowledgeBase.builder()", cause);
    }
}
