package org.benchlore.kb.knowledge;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The text of a pack and the name to show in messages.
 *
 * @param name file name or path, as the author knows it
 * @param yaml the whole text
 */
public record PackSource(String name, String yaml) {
    /** Largest pack file, in bytes. */
    public static final int MAX_BYTES = 8 << 20;

    public PackSource {
        requireNonNull(name, "name");
        requireNonNull(yaml, "yaml");
    }

    /**
     * Reads a pack file.
     *
     * @throws BadPackException if there is no such file, or it cannot be read, is larger than {@link #MAX_BYTES}, or is not
     *     UTF-8 text
     */
    public static PackSource read(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MAX_BYTES + 1);
            if (bytes.length > MAX_BYTES) {
                throw bad(file, "the pack is larger than 8 MiB", "split it into several packs");
            }
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return new PackSource(file.toString(), text);
        } catch (CharacterCodingException e) {
            throw bad(file, "this is not UTF-8 text", "give a YAML file saved as UTF-8");
        } catch (AccessDeniedException e) {
            throw bad(file, "this file may not be read", "mend its permissions");
        } catch (NoSuchFileException e) {
            throw bad(file, "there is no such file", "check the path");
        } catch (IOException e) {
            throw bad(file, "the file cannot be read (" + e.getMessage() + ")", "check that it is a file you may read");
        }
    }

    /**
     * Reads pack files, in this order.
     *
     * @throws BadPackException as {@link #read(Path)}, with every file that cannot be read
     */
    public static List<PackSource> read(List<Path> files) {
        List<PackSource> sources = new ArrayList<>(files.size());
        List<PackProblem> problems = new ArrayList<>();
        for (Path file : files) {
            try {
                sources.add(read(file));
            } catch (BadPackException e) {
                problems.addAll(e.problems());
            }
        }
        if (!problems.isEmpty()) {
            throw new BadPackException(problems);
        }
        return sources;
    }

    /**
     * The packs of a folder, files ending in {@code .yaml} in order of name; none if there is no such folder.
     *
     * @throws BadPackException as {@link #read(List)}, or if the folder cannot be read
     */
    public static List<PackSource> readFolder(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return read(files.filter(f -> f.getFileName().toString().endsWith(".yaml"))
                    .sorted()
                    .toList());
        } catch (IOException | UncheckedIOException e) {
            throw bad(folder, "the folder cannot be read (" + e.getMessage() + ")", "check that you may read it");
        }
    }

    private static BadPackException bad(Path file, String what, String remedy) {
        return new BadPackException(
                List.of(new PackProblem(file.toString(), 1, 1, PackProblem.Severity.ERROR, what, remedy)));
    }
}
