package org.benchlore.cli;

/** The command was called the wrong way; the message says how to call it. */
final class UsageException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UsageException(String message) {
        super(message);
    }
}
