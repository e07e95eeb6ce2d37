package org.benchlore.kb.cases;

import org.benchlore.kb.knowledge.KnowledgeBaseException;
import org.jspecify.annotations.Nullable;

/** One line that cannot be read; the import turns it into an {@link ImportProblem} with file and line. */
final class BadLineException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    private final String what;
    private final String remedy;

    BadLineException(String what, String remedy, @Nullable Throwable cause) {
        super(what + "; " + remedy, cause);
        this.what = what;
        this.remedy = remedy;
    }

    /** From a refusal of our own records, which read "what; remedy". */
    static BadLineException of(IllegalArgumentException refusal) {
        String message = String.valueOf(refusal.getMessage());
        int split = message.indexOf("; ");
        return split < 0
                ? new BadLineException(message, "correct the line", refusal)
                : new BadLineException(message.substring(0, split), message.substring(split + 2), refusal);
    }

    String what() {
        return what;
    }

    String remedy() {
        return remedy;
    }
}
