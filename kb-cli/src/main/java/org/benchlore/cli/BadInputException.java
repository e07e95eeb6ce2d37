package org.benchlore.cli;

/** What was given cannot be used; the message says where, what, and how to mend it. */
final class BadInputException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    BadInputException(String message) {
        super(message);
    }
}
