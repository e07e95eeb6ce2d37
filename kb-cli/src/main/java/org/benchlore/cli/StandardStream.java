package org.benchlore.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Standard output or error that remembers what went wrong, which {@code System.out} forgets: an export to a full disk must
 * not end as if it were whole.
 */
final class StandardStream extends OutputStream {
    /** What a reader that has seen enough leaves behind, as {@code head} does; no loss to anybody. */
    private static final String READER_GONE = "Broken pipe";

    private final FileOutputStream to;
    private @Nullable IOException trouble;

    StandardStream(FileDescriptor descriptor) {
        to = new FileOutputStream(descriptor);
    }

    /** Why something of what was written is lost, if it is. */
    Optional<String> trouble() {
        return Optional.ofNullable(trouble).map(IOException::getMessage).filter(why -> !why.equals(READER_GONE));
    }

    @Override
    public void write(int b) throws IOException {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        try {
            to.write(bytes, from, length);
        } catch (IOException e) {
            trouble = trouble == null ? e : trouble;
            throw e;
        }
    }
}
