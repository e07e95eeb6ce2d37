package org.benchlore.kb.importing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.reading.analysis.Token;

/**
 * One record of a source, told apart but not yet understood.
 *
 * @param line where it begins, from 1
 * @param date the day that its heading gives
 * @param parts its texts, in order; at least one
 * @param preamble whether it introduces other records, and need not be a case
 */
record RawRecord(long line, Optional<LocalDate> date, List<Part> parts, boolean preamble) {
    /** A text and what it is about. */
    static final class Part {
        private final ImportField field;
        private final String text;
        private final long line;
        private final Optional<LocalDate> date;
        private final List<Clause> clauses;

        /**
         * @param field {@link ImportField#NOTES} where nothing says otherwise
         * @param text not blank
         * @param line where it begins, from 1
         * @param date the day that it tells of, where it names one
         */
        Part(ImportField field, String text, long line, Optional<LocalDate> date) {
            this(field, text, line, date, field.wordy() ? Clause.of(text) : List.of());
        }

        /** @param clauses of the text, where they are known already */
        Part(ImportField field, String text, long line, Optional<LocalDate> date, List<Clause> clauses) {
            this.field = field;
            this.text = text;
            this.line = line;
            this.date = date;
            this.clauses = clauses;
        }

        ImportField field() {
            return field;
        }

        String text() {
            return text;
        }

        long line() {
            return line;
        }

        Optional<LocalDate> date() {
            return date;
        }

        List<Clause> clauses() {
            return clauses;
        }

        /** Words up to an offset. */
        List<Token> words(int end) {
            List<Token> words = new ArrayList<>();
            for (Clause clause : clauses) {
                for (Token word : clause.words()) {
                    if (word.end() > end) {
                        return words;
                    }
                    words.add(word);
                }
            }
            return words;
        }
    }

    RawRecord {
        parts = List.copyOf(parts);
    }

    /** Everything it says, for telling it from other records. */
    String content() {
        StringBuilder all = new StringBuilder();
        date.ifPresent(all::append);
        for (Part part : parts) {
            all.append('\u001f').append(part.field().id());
            part.date().ifPresent(all::append);
            all.append('\u001f').append(part.text());
        }
        return all.toString();
    }
}
