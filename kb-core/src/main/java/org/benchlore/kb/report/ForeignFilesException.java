package org.benchlore.kb.report;

import java.nio.file.Path;
import org.benchlore.kb.knowledge.KnowledgeBaseException;

/** Pages were to be written over files that are not ours. */
public final class ForeignFilesException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1;

    ForeignFilesException(Path where, String what) {
        super(where + ": " + what + "; choose a new or empty folder, or move it away", null);
    }
}
