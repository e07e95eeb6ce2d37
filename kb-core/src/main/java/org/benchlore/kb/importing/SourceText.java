package org.benchlore.kb.importing;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.SequenceInputStream;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.StandardCharsets;

/**
 * The text of a source: UTF-8, UTF-16 with a byte order mark as spreadsheets save it, or, in lines that are neither, the
 * one-byte encoding of old office machines (windows-1252). Each line is told by itself, since two programs may have
 * written to one file.
 */
public final class SourceText {
    /** Largest source, in bytes: some hundred thousand notes. */
    static final int MAX_BYTES = 64 << 20;

    private static final Charset OLD_OFFICE = Charset.forName("windows-1252");

    private SourceText() {}

    /**
     * The text of a source of any length, as {@code KnowledgeBase.importCases} takes it.
     *
     * @param in read up to 64 KiB ahead; closed with the reader
     * @return the text without a byte order mark
     * @throws IOException if {@code in} throws it
     */
    public static Reader reader(InputStream in) throws IOException {
        byte[] first = in.readNBytes(2);
        if (first.length == 2 && first[0] == (byte) 0xFF && first[1] == (byte) 0xFE) {
            return new InputStreamReader(in, StandardCharsets.UTF_16LE);
        }
        if (first.length == 2 && first[0] == (byte) 0xFE && first[1] == (byte) 0xFF) {
            return new InputStreamReader(in, StandardCharsets.UTF_16BE);
        }
        return new LineDecoder(new SequenceInputStream(new ByteArrayInputStream(first), in));
    }

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
        StringWriter all = new StringWriter(bytes.length);
        reader(new ByteArrayInputStream(bytes)).transferTo(all);
        String text = all.toString();
        int zero = text.indexOf('\0');
        if (zero >= 0) {
            throw new BadImportException(source, "this is not text (it holds zero bytes)", "give a text file");
        }
        return text;
    }

    /** Decodes line by line; a line that is longer than the buffer, piece by piece. */
    private static final class LineDecoder extends Reader {
        private static final int BUFFER = 1 << 16;

        /** A character of UTF-8 takes at most so many bytes behind its first. */
        private static final int FOLLOWING = 3;

        private final InputStream in;
        private final CharsetDecoder utf8 = StandardCharsets.UTF_8.newDecoder();
        private final byte[] bytes = new byte[BUFFER];
        private int from;
        private int to;
        private boolean begun;
        private String piece = "";
        private int next;

        LineDecoder(InputStream in) {
            this.in = in;
        }

        @Override
        public int read(char[] chars, int offset, int length) throws IOException {
            while (next == piece.length()) {
                int end = end();
                if (end == from) {
                    return -1;
                }
                piece = decoded(from, end);
                next = !begun && piece.startsWith("\uFEFF") ? 1 : 0;
                begun = true;
                from = end;
            }
            int given = Math.min(length, piece.length() - next);
            piece.getChars(next, next + given, chars, offset);
            next += given;
            return given;
        }

        /** Where the piece ends that begins at {@link #from}; the same place at the end of all. */
        private int end() throws IOException {
            int at = from;
            while (true) {
                while (at < to) {
                    if (bytes[at++] == '\n') {
                        return at;
                    }
                }
                if (at - from == BUFFER) {
                    return betweenCharacters(at);
                }
                System.arraycopy(bytes, from, bytes, 0, to - from);
                at -= from;
                to -= from;
                from = 0;
                int more = in.read(bytes, to, BUFFER - to);
                if (more < 0) {
                    return to;
                }
                to += more;
            }
        }

        private int betweenCharacters(int end) {
            for (int i = end - 1; i >= end - FOLLOWING; i--) {
                if ((bytes[i] & 0xC0) == 0xC0) {
                    return i;
                }
            }
            return end;
        }

        private String decoded(int start, int end) {
            try {
                return utf8.decode(ByteBuffer.wrap(bytes, start, end - start)).toString();
            } catch (CharacterCodingException e) {
                return new String(bytes, start, end - start, OLD_OFFICE);
            }
        }

        @Override
        public void close() throws IOException {
            in.close();
        }
    }
}
