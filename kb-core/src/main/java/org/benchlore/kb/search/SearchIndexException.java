package org.benchlore.kb.search;

import java.io.IOException;
import org.benchlore.kb.knowledge.KnowledgeBaseException;

/** The index cannot be read, or not be rebuilt; open it again. Nothing is lost, since it is derived. */
public final class SearchIndexException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    SearchIndexException(String trouble) {
        super(trouble + "; the cases before the rebuild still stand. Rebuild again", null);
    }

    SearchIndexException(String where, IOException cause) {
        super(
                where + ": the search index cannot be read (" + cause.getMessage()
                        + "); close it and open it again, which rebuilds it if it is damaged",
                cause);
    }
}
