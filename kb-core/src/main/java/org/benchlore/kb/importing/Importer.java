package org.benchlore.kb.importing;

import com.google.common.base.CharMatcher;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.benchlore.kb.cases.CaseIntake;
import org.benchlore.kb.cases.CaseLines;
import org.benchlore.kb.cases.CaseRecord;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.cases.ImportProblem;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.cases.JsonRows;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Reader;

/**
 * Reads whole histories, as benches keep them, into drafts of cases, and stores those that are wanted. Thread-safe; the
 * words of the packs are prepared once, and the words of stored cases are followed from review to review.
 */
public final class Importer {
    /** Most cases of one source; all of them are in memory at once. */
    public static final int MOST_CASES = 100_000;

    private final Knowledge knowledge;
    private final Reader reader;
    private final CaseTeller.Vocabulary vocabulary;
    private final CaseStore store;
    private final KnownCases known;

    /**
     * @param knowledge names of causes, fixes, tests and devices
     * @param reader reads findings
     * @param store where cases go, and where those like them are looked for
     */
    public Importer(Knowledge knowledge, Reader reader, CaseStore store) {
        this.knowledge = knowledge;
        this.reader = reader;
        this.vocabulary = CaseTeller.Vocabulary.of(knowledge);
        this.store = store;
        this.known = new KnownCases(store);
    }

    /**
     * Reads a source and stores nothing.
     *
     * @param in text of at most 64 MiB: UTF-8, UTF-16 with a byte order mark, else windows-1252; not closed
     * @param source its name, usually the file's; case ids are made from it
     * @throws IOException if {@code in} throws it
     * @throws BadImportException if the source is no text or too large, or a table's columns cannot be told
     */
    public ImportReview review(InputStream in, String source, ImportSettings settings) throws IOException {
        return new Review(source, settings).of(SourceText.read(in, source));
    }

    /**
     * Stores the cases of a review. Cases stored already are left as they are.
     *
     * @param origin {@link org.benchlore.kb.cases.CaseHistory#OWN} for one's own cases, else a name for the other bench
     * @param duplicates whether to store cases, too, that are another one told again
     * @throws org.benchlore.kb.cases.StoreException if the store is in trouble; batches stored before stay, and storing
     *     the review again is harmless
     */
    public ImportResult store(ImportReview review, String origin, boolean duplicates) {
        CaseIntake intake = new CaseIntake(store, review.source(), origin);
        review.problems().forEach(intake::report);
        intake.reportMore(review.moreProblems());
        for (ImportDraft draft : review.drafts()) {
            if (review.kind() != ImportKind.JSON && store.hasCase(draft.caseId())) {
                CaseRecord own = draft.records().get(0);
                intake.known(own);
                // that it came back may have been told only since
                draft.records().stream().skip(1).forEach(intake::add);
            } else if (draft.duplicate() && !duplicates) {
                intake.leaveOut();
            } else {
                draft.records().forEach(intake::add);
            }
        }
        return intake.finish();
    }

    /** One source on its way to drafts. */
    private final class Review {
        private final String source;
        private final ImportSettings settings;
        private final Problems problems = new Problems();
        private final List<ImportDraft> drafts = new ArrayList<>();
        private final Comebacks comebacks = new Comebacks(knowledge);
        private Optional<ColumnMapping> mapping;

        Review(String source, ImportSettings settings) {
            this.source = source;
            this.settings = settings;
            this.mapping = settings.mapping();
        }

        ImportReview of(String text) throws IOException {
            switch (settings.kind()) {
                case DIARY -> diary(text);
                case CSV -> table(text);
                case OBJECTS -> objects(text);
                case JSON -> lines(text);
            }
            List<ImportDraft> marked = drafts.stream()
                    .map(d -> store.hasCase(d.caseId()) ? d.asStored() : d)
                    .toList();
            return new ImportReview(
                    source,
                    settings.kind(),
                    mapping,
                    mapping.isPresent() && settings.mapping().isEmpty(),
                    comebacks.tie(known.compare(marked)),
                    problems.sorted(),
                    problems.more());
        }

        private void diary(String text) {
            mapping = Optional.empty();
            tell(new DiarySplitter(text, settings, vocabulary, source, problems::add)::next);
            drafts.sort(Comparator.comparingLong(ImportDraft::line)); // those that waited longest come last
        }

        private void table(String text) {
            // "sep=;" in the first line is how one spreadsheet tells another; a blank line keeps the numbers right
            String table = text.startsWith("sep=") ? text.substring(lineEnd(text)) : text;
            ColumnMapping columns = settings.mapping()
                    .orElseGet(() -> new MappingGuess(vocabulary, settings.dates()).of(table, source));
            mapping = Optional.of(columns);
            CsvReader reading = new CsvReader(table, columns.separator(), source, problems::add);
            List<String> names = columns.header() ? header(reading) : List.of();
            TableRecords records = new TableRecords(
                    columns,
                    names,
                    columns.header() ? names.size() : TableRecords.widest(silent(table, columns)),
                    spare(table, columns, names.size()),
                    source,
                    problems::add);
            tell(() -> {
                for (Optional<CsvReader.Row> row = reading.next(); row.isPresent(); row = reading.next()) {
                    Optional<RawRecord> record =
                            records.record(row.get().line(), row.get().fields());
                    if (record.isPresent()) {
                        return record;
                    }
                }
                return Optional.empty();
            });
        }

        private static int lineEnd(String text) {
            int end = CharMatcher.anyOf("\r\n").indexIn(text);
            return end < 0 ? text.length() : end;
        }

        /** The names of the columns; the row below bad ones would be a case, read as names. */
        private List<String> header(CsvReader reading) {
            List<String> names = reading.next().map(CsvReader.Row::fields).orElse(List.of());
            problems.sorted().stream().findFirst().ifPresent(bad -> {
                throw new BadImportException(
                        source, "line " + bad.line() + " names the columns, and " + bad.what(), bad.remedy());
            });
            return names;
        }

        private CsvReader silent(String table, ColumnMapping columns) {
            return new CsvReader(table, columns.separator(), source, problem -> {});
        }

        private int spare(String table, ColumnMapping columns, int width) {
            CsvReader rows = silent(table, columns);
            return width > 0 && rows.next().isPresent() ? TableRecords.spare(rows, width) : 0;
        }

        private void objects(String text) throws IOException {
            JsonRows reading = new JsonRows(new StringReader(text), source, problems::add);
            List<JsonRows.Row> rows = new ArrayList<>();
            LinkedHashSet<String> keys = new LinkedHashSet<>();
            for (Optional<JsonRows.Row> row = reading.next();
                    row.isPresent() && rows.size() <= MOST_CASES;
                    row = reading.next()) {
                rows.add(row.get());
                keys.addAll(row.get().fields().keySet());
                if (keys.size() > CsvReader.MOST_FIELDS) {
                    throw new BadImportException(
                            source,
                            "the objects have more than " + CsvReader.MOST_FIELDS + " different keys",
                            "give all cases the same keys, or write them as a diary");
                }
            }
            if (rows.isEmpty()) {
                return;
            }
            List<String> names = List.copyOf(keys);
            List<List<String>> sample = new ArrayList<>(List.of(names));
            rows.stream().limit(MappingGuess.SAMPLE).forEach(r -> sample.add(cells(r.fields(), names)));
            ColumnMapping columns = settings.mapping()
                    .orElseGet(() -> new MappingGuess(vocabulary, settings.dates()).of(sample, ',', true, source));
            mapping = Optional.of(columns);
            TableRecords records = new TableRecords(columns, names, names.size(), 0, source, problems::add);
            Iterator<RawRecord> told = rows.stream()
                    .flatMap(r -> records.record(r.line(), cells(r.fields(), names)).stream())
                    .iterator();
            tell(() -> told.hasNext() ? Optional.of(told.next()) : Optional.empty());
        }

        private List<String> cells(Map<String, String> fields, List<String> names) {
            return names.stream().map(name -> fields.getOrDefault(name, "")).toList();
        }

        private void tell(Supplier<Optional<RawRecord>> records) {
            CaseTeller teller = new CaseTeller(knowledge, reader, vocabulary, settings, source, comebacks);
            for (Optional<RawRecord> next = records.get(); next.isPresent(); next = records.get()) {
                RawRecord record = next.get();
                if (full(drafts.size(), record.line())) {
                    return;
                }
                Optional<ImportDraft> draft = teller.tell(record);
                draft.ifPresent(drafts::add);
                if (draft.isEmpty() && !record.preamble()) {
                    problems.add(new ImportProblem(
                            source,
                            record.line(),
                            "nothing of a case was understood",
                            "say what was found, done or reached, or leave it out"));
                }
            }
        }

        private boolean full(int cases, long line) {
            boolean full = cases >= MOST_CASES;
            if (full) {
                problems.add(new ImportProblem(
                        source, line, "more than " + MOST_CASES + " cases; the rest was not read", "split the file"));
            }
            return full;
        }

        /** Lines of JSON: what one line says is stored wholly or not at all, what a case says is shown together. */
        private void lines(String text) throws IOException {
            mapping = Optional.empty();
            CaseLines reading = new CaseLines(
                    new StringReader(text),
                    source,
                    (words, scope) -> reader.read(words, scope).findings(),
                    problems::add);
            JsonDrafts cases = new JsonDrafts();
            for (Optional<CaseRecord> record = reading.next(); record.isPresent(); record = reading.next()) {
                if (!cases.knows(record.get())
                        && full(cases.count(), record.get().line())) {
                    break;
                }
                cases.add(record.get());
            }
            drafts.addAll(cases.drafts());
        }
    }
}
