package org.benchlore.kb.reading;

import org.benchlore.kb.knowledge.KnowledgeBaseException;

/** A text longer than the reader accepts; split it. */
public final class TextTooLongException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    TextTooLongException(int length, int most) {
        super(
                "text: " + length + " characters, " + most
                        + " are read at once; split it, a long log at a line end, and read the parts",
                null);
    }
}
