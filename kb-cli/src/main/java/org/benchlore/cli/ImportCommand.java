package org.benchlore.cli;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.importing.ColumnMapping;
import org.benchlore.kb.importing.DateOrder;
import org.benchlore.kb.importing.ImportKind;
import org.benchlore.kb.importing.ImportReview;
import org.benchlore.kb.importing.ImportSettings;
import org.benchlore.kb.importing.SourceText;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Imports cases. */
@Command(
        name = "import",
        description = {
            "Import cases from diaries, tables and lines of JSON. Bad records are reported and stop nothing.",
            "Look first:  benchlore import diary.txt --dry-run"
        },
        mixinStandardHelpOptions = true)
final class ImportCommand extends BenchCommand {
    /** Enough of a source to see how it is written. */
    private static final int BEGINNING = 1 << 14;

    private static final int LARGEST_MAPPING = 1 << 16;

    /** What becomes of a case that is another one told again. */
    enum NearDuplicates {
        SKIP,
        KEEP
    }

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Files; - reads standard input.")
    List<String> files = new ArrayList<>();

    @Option(
            names = "--as",
            paramLabel = "KIND",
            description = "How they are written: diary, csv, json, objects (default: by the file's ending).")
    @Nullable
    ImportKind kind;

    @Option(names = "--dry-run", description = "Show what was understood and store nothing.")
    boolean dryRun;

    @Option(names = "--mapping", paramLabel = "FILE", description = "Which column of a table tells what.")
    @Nullable
    Path mapping;

    @Option(
            names = "--write-mapping",
            paramLabel = "FILE",
            description = "Write the mapping that was used, to correct it and give it back with --mapping.")
    @Nullable
    Path writeMapping;

    @Option(
            names = "--near-duplicates",
            paramLabel = "WHAT",
            description = "skip or keep cases that are another one told again (default: skip; keep for lines of JSON).")
    @Nullable
    NearDuplicates nearDuplicates;

    @Option(
            names = "--dates",
            paramLabel = "ORDER",
            defaultValue = "dmy",
            description = "How 3/4/2024 is meant: dmy or mdy (default: ${DEFAULT-VALUE}).")
    DateOrder dates = DateOrder.DMY;

    @Option(
            names = "--undated",
            paramLabel = "DATE",
            description = "The day of cases that name none, as 2024-03-12; its year also is that of days without one.")
    @Nullable
    String undated;

    @Option(
            names = "--device",
            paramLabel = "SCOPE",
            description = "What units are that name no known device: class/family/model/revision.")
    @Nullable
    String device;

    @Option(
            names = "--origin",
            paramLabel = "NAME",
            defaultValue = CaseHistory.OWN,
            description =
                    "Whose cases they are; those of others weigh a little less (default: ${DEFAULT-VALUE}, one's own).")
    String origin = CaseHistory.OWN;

    ImportCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        Optional<LocalDate> day = day();
        Optional<ColumnMapping> columns = Optional.ofNullable(mapping).map(ImportCommand::mapping);
        if (writeMapping != null && files.size() > 1) {
            throw new UsageException("--write-mapping goes with one file");
        }
        if (origin.isBlank() || origin.length() > CaseEvent.Head.MAX_ID) {
            throw new UsageException("--origin: give a name of 1 to " + CaseEvent.Head.MAX_ID
                    + " characters, or leave it out for your own cases");
        }
        try (KnowledgeBase kb = open()) {
            Set<String> unknown = new TreeSet<>();
            kb.onRecorded(event -> unknown.addAll(kb.unknownIds(List.of(event))));
            boolean clean = true;
            boolean any = false;
            for (String file : files) {
                try (BufferedInputStream in = new BufferedInputStream(source(file), BEGINNING)) {
                    ImportSettings settings = new ImportSettings(kind(file, in), columns, dates, day, scope(device));
                    ImportOutcome done = run(kb, in, name(file), settings);
                    clean &= done.clean();
                    any |= done.any();
                } catch (IOException e) {
                    throw new BadInputException(name(file) + ": cannot be read (" + e.getMessage()
                            + "); check that it is a file; what was stored stays");
                }
            }
            if (!unknown.isEmpty()) {
                bench.tell(CasePage.unknown(unknown));
            }
            return clean ? (any ? ExitCode.DONE : ExitCode.NOTHING_FOUND) : ExitCode.BAD_INPUT;
        }
    }

    /** Whether every record was good, and whether there was one. */
    private record ImportOutcome(boolean clean, boolean any) {}

    private ImportOutcome run(KnowledgeBase kb, InputStream in, String name, ImportSettings settings)
            throws IOException {
        boolean keep =
                nearDuplicates == null ? settings.kind() == ImportKind.JSON : nearDuplicates == NearDuplicates.KEEP;
        ImportPage page = new ImportPage(bench, kb.knowledge());
        if (settings.kind() == ImportKind.JSON && keep && !dryRun) {
            ImportResult result = read(kb, in, name, origin);
            print(page, name, result);
            return new ImportOutcome(result.clean(), result.events() > 0 || !result.clean());
        }
        ImportReview review = kb.reviewImport(in, name, settings);
        if (writeMapping != null) {
            write(writeMapping, review);
        }
        boolean any = !review.drafts().isEmpty() || !review.problems().isEmpty();
        if (dryRun) {
            if (json) {
                bench.out().println(Json.importReview(review));
            } else {
                page.review(review, keep);
            }
            page.problems(review.problems(), review.moreProblems(), name);
            return new ImportOutcome(review.problems().isEmpty(), any);
        }
        ImportResult result = kb.importReviewed(review, origin, keep);
        if (!json) {
            page.understood(review);
        }
        print(page, name, result);
        if (!json && !keep) {
            page.leftOut(review);
        }
        return new ImportOutcome(result.clean(), any);
    }

    private Optional<LocalDate> day() {
        try {
            return Optional.ofNullable(undated).map(LocalDate::parse);
        } catch (DateTimeParseException e) {
            throw new UsageException("--undated '" + undated + "' is no date; write it like 2024-03-12");
        }
    }

    private static String name(String file) {
        return file.equals("-") ? "standard input" : file;
    }

    private static InputStream source(String file) throws IOException {
        try {
            return file.equals("-") ? System.in : Files.newInputStream(Path.of(file));
        } catch (NoSuchFileException e) {
            throw new BadInputException(file + ": there is no such file; check the path");
        }
    }

    private ImportKind kind(String file, BufferedInputStream in) throws IOException {
        if (kind != null) {
            return kind;
        }
        in.mark(BEGINNING);
        String beginning = text(in.readNBytes(BEGINNING));
        in.reset();
        return ImportKind.of(file, beginning)
                .orElseThrow(() -> new BadInputException(name(file)
                        + ": its name does not tell how it is written; add --as diary, csv, json or objects"));
    }

    private static String text(byte[] bytes) throws IOException {
        StringWriter text = new StringWriter();
        SourceText.reader(new ByteArrayInputStream(bytes)).transferTo(text);
        return text.toString();
    }

    private static ColumnMapping mapping(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(LARGEST_MAPPING + 1);
            if (bytes.length > LARGEST_MAPPING) {
                throw new BadInputException(file + ": too large for a mapping; give the file that names the columns");
            }
            return ColumnMapping.parse(text(bytes), file.toString());
        } catch (NoSuchFileException e) {
            throw new BadInputException(file + ": there is no such file; check the path");
        } catch (IOException e) {
            throw new BadInputException(file + ": cannot be read (" + e.getMessage() + "); check that it is a file");
        }
    }

    private static void write(Path file, ImportReview review) {
        ColumnMapping used =
                review.mapping().orElseThrow(() -> new UsageException("--write-mapping goes with tables and objects"));
        try {
            Files.writeString(file, used.text());
        } catch (IOException e) {
            throw new BadInputException(file + ": cannot be written (" + e.getMessage() + "); choose another file");
        }
    }

    static ImportResult read(KnowledgeBase kb, InputStream in, String source, String origin) {
        try {
            return kb.importCases(SourceText.reader(in), source, origin);
        } catch (IOException e) {
            throw new BadInputException(source + ": cannot be read (" + e.getMessage() + "); what was stored stays");
        }
    }

    private void print(ImportPage page, String source, ImportResult result) {
        if (json) {
            bench.out().println(Json.imported(source, result));
        } else {
            page.done(source, result);
        }
        page.problems(result.problems(), result.moreProblems(), source);
    }
}
