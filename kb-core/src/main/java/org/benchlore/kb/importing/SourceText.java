package org.benchlore.kb.importing;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * The text of a source: UTF-8, UTF-16 with a byte order mark as spreadsheets save it, or, where it is neither, the
 * one-byte encoding of old office machines (windows-1252).
 */
final class SourceText {
    /** Largest source, in bytes: some hundred thousand notes. */
    static final int MAX_BYTES = 64 << 20;

    private static final Charset OLD_OFFICE = Charset.forName("windows-1252");

    private SourceText() {}

    /**
     * Reads a source to its end.
     *
     * @throws BadImportException if it is larger than {@link #MAX_BYTES} or no text
     */
    static String read(InputStream in, String source) throws IOException {
        byte[] bytes = in.readNBytes(MAX_BYTES + 1);
        if (bytes.length > MAX_BYTES) {
            throw new BadImportException(source, "larger than 64 MiB", "split it");
        }
        String text = decode(bytes);
        int zero = text.indexOf('\0');
        if (zero >= 0) {
            throw new BadImportException(source, "this is not text (it holds zero bytes)", "give a text file");
        }
        return text;
    }

    private static String decode(byte[] bytes) {
        if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xFE) {
            return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16LE);
        }
        if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFE && (bytes[1] & 0xFF) == 0xFF) {
            return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16BE);
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            return new String(bytes, OLD_OFFICE);
        }
    }
}
