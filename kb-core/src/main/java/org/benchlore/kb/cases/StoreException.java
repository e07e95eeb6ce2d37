package org.benchlore.kb.cases;

import org.benchlore.kb.knowledge.KnowledgeBaseException;
import org.jspecify.annotations.Nullable;

/**
 * The case store cannot do what was asked. Nothing that was acknowledged is lost, and nothing of the refused batch was
 * stored. One type, since a host mostly shows the message; {@link #trouble} tells apart what it may want to handle.
 */
public final class StoreException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    /** What is wrong, one constant per remedy. */
    public enum Trouble {
        /** Another program writes for longer than the patience given; try again. */
        BUSY,
        /** No room on the disk; free some and try again. */
        FULL,
        /** The home cannot be read or written; mend its permissions or choose another. */
        NO_ACCESS,
        /** There is no store to read; open the home for writing once. */
        MISSING,
        /** Opened for reading only; open it for writing. */
        READ_ONLY,
        /** Written by a newer version; update the library. */
        NEWER,
        /** Not a case store, or damaged; restore a copy or an export. */
        NOT_A_STORE,
        /** The disk or the file system failed. */
        FAILED
    }

    private final Trouble trouble;

    StoreException(Trouble trouble, String where, String whatAndRemedy, @Nullable Throwable cause) {
        super(where + ": " + whatAndRemedy, cause);
        this.trouble = trouble;
    }

    /** What is wrong. */
    public Trouble trouble() {
        return trouble;
    }
}
