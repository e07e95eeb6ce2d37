package org.benchlore.kb.search;

import org.benchlore.kb.knowledge.KnowledgeBaseException;

/** The index was used after it was closed; open it again. */
public final class ClosedIndexException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    ClosedIndexException(String where) {
        super(where + ": the search index is closed; open it again, or close it later", null);
    }
}
