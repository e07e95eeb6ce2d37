package org.benchlore.kb.knowledge;

import org.jspecify.annotations.Nullable;

/**
 * Root of everything this library throws on its own account; one subtype per remedy. The message says where, what, and
 * how to mend it. Bad arguments stay the JDK's own exceptions.
 */
public abstract class KnowledgeBaseException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * @param message where, what, and how to mend it
     * @param cause what was thrown below, or null
     */
    protected KnowledgeBaseException(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
