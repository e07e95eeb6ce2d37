package org.benchlore.kb.search;

import java.io.IOException;
import org.benchlore.kb.knowledge.KnowledgeBaseException;

/** The index cannot be read any more; close it and open it again. Nothing is lost, since it is derived. */
public final class SearchIndexException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    SearchIndexException(String where, IOException cause) {
        super(
                where + ": the search index cannot be read (" + cause.getMessage()
                        + "); close it and open it again, which rebuilds it if it is damaged",
                cause);
    }
}
