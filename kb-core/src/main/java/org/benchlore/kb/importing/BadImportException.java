package org.benchlore.kb.importing;

import org.benchlore.kb.knowledge.KnowledgeBaseException;

/** A source or a mapping that cannot be used at all. The message says where, what, and how to mend it. */
public final class BadImportException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    BadImportException(String where, String what, String remedy) {
        super(where + ": " + what + "; " + remedy, null);
    }
}
