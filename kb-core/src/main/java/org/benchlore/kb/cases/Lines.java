package org.benchlore.kb.cases;

import java.io.IOException;
import java.io.Reader;
import org.jspecify.annotations.Nullable;

/** Lines of bounded length from a reader: a file that is one endless line costs no memory. */
final class Lines {
    private static final int BUFFER = 1 << 14;

    /**
     * A line.
     *
     * @param number from 1
     * @param text without the line break, cut off when too long
     * @param tooLong whether it was longer than {@link CaseJson#MAX_LINE}
     * @param ended whether a line break followed; only the last line may lack it
     */
    record Line(long number, String text, boolean tooLong, boolean ended) {}

    private final Reader reader;
    private final char[] buffer = new char[BUFFER];
    private int next;
    private int filled;
    private long number;

    Lines(Reader reader) {
        this.reader = reader;
    }

    /** The next line, or null at the end. A byte order mark before the first is skipped, as is CR before LF. */
    @Nullable
    Line next() throws IOException {
        StringBuilder text = new StringBuilder();
        boolean tooLong = false;
        boolean any = false;
        while (next < filled || fill()) {
            any = true;
            int start = next;
            while (next < filled && buffer[next] != '\n') {
                next++;
            }
            int room = CaseJson.MAX_LINE + 1 - text.length(); // one more, for CR
            int length = next - start;
            tooLong |= length > room;
            text.append(buffer, start, Math.min(length, room));
            if (next < filled) {
                next++;
                return line(text, tooLong, true);
            }
        }
        return any ? line(text, tooLong, false) : null;
    }

    private boolean fill() throws IOException {
        next = 0;
        filled = Math.max(0, reader.read(buffer, 0, BUFFER));
        return filled > 0;
    }

    private Line line(StringBuilder text, boolean tooLong, boolean ended) {
        number++;
        if (!text.isEmpty() && text.charAt(text.length() - 1) == '\r') {
            text.setLength(text.length() - 1);
        }
        if (number == 1 && !text.isEmpty() && text.charAt(0) == '\ufeff') {
            text.deleteCharAt(0);
        }
        return new Line(number, text.toString(), tooLong || text.length() > CaseJson.MAX_LINE, ended);
    }
}
