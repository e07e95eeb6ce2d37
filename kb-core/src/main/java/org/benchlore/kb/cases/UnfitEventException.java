package org.benchlore.kb.cases;

/** An event that no store takes as it is. The message reads "what; remedy". */
final class UnfitEventException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    UnfitEventException(String message) {
        super(message);
    }
}
