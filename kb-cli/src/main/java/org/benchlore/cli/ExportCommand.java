package org.benchlore.cli;

import java.io.IOException;
import java.io.Writer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.report.KnowledgePages;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Exports cases, or the knowledge as pages. */
@Command(
        name = "export",
        description = {
            "Export all cases as lines of JSON; reading them back, in any order and any number of times, gives the"
                    + " same cases.",
            "With --html, write the knowledge as pages to browse and search instead, one for each entry; no case goes"
                    + " into them. Open DIR/index.html. The page of benchlore:cause/ID is DIR/cause/ID.html."
        },
        mixinStandardHelpOptions = true)
final class ExportCommand extends BenchCommand implements BenchCommand.WithoutJson {
    @Parameters(arity = "0..1", paramLabel = "FILE", description = "Where to; standard output without.")
    @Nullable
    Path file;

    @Option(
            names = "--anonymous",
            description = "Leave out free text, serial numbers, prices and the names of other shops.")
    boolean anonymous;

    @Option(
            names = "--html",
            paramLabel = "DIR",
            description = "Write pages there; a folder that is new, empty, or was written so before.")
    @Nullable
    Path pages;

    ExportCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        noJson("'export' writes lines of JSON, or pages, as it is; leave out --json");
        Path folder = pages;
        if (folder != null && (file != null || anonymous)) {
            throw new UsageException(
                    "--html writes the knowledge and no case; leave out FILE and --anonymous, or --html");
        }
        try (KnowledgeBase kb = open()) {
            return folder == null ? cases(kb) : pages(kb, folder);
        }
    }

    private int pages(KnowledgeBase kb, Path folder) {
        try {
            KnowledgePages.Written written = kb.exportPages(folder);
            bench.tell(written.files() + " files in " + folder + ", " + written.changed() + " of them new or changed, "
                    + written.removed() + " removed");
        } catch (IOException e) {
            throw new BadInputException(
                    folder + ": cannot be written (" + why(e) + "); choose another folder with --html");
        }
        return ExitCode.DONE;
    }

    private int cases(KnowledgeBase kb) {
        Path to = file;
        try {
            if (to == null) {
                kb.exportCases(bench.out(), anonymous);
            } else {
                long events = write(kb, to);
                bench.tell("wrote " + events + " events to " + to);
            }
        } catch (NoSuchFileException e) {
            throw new BadInputException(to + ": there is no such folder; make it, or choose another place");
        } catch (IOException e) {
            throw new BadInputException((to == null ? "standard output" : to.toString()) + ": cannot be written ("
                    + why(e) + "); choose another place");
        }
        return ExitCode.DONE;
    }

    /** Beside the target first, so that an export that fails leaves the last good one alone; what a link means, not the link. */
    private long write(KnowledgeBase kb, Path file) throws IOException {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new BadInputException(file + ": is no plain file; give one, or none for standard output");
        }
        Path to = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
        Path part = Files.createTempFile(to.getParent(), ".benchlore", ".part");
        try {
            long events;
            try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE);
                    Writer writer = Channels.newWriter(channel, StandardCharsets.UTF_8)) {
                events = kb.exportCases(writer, anonymous);
                writer.flush();
                channel.force(true);
            }
            Files.move(part, to, StandardCopyOption.REPLACE_EXISTING);
            return events;
        } finally {
            Files.deleteIfExists(part);
        }
    }
}
