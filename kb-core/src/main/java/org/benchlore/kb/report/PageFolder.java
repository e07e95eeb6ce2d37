package org.benchlore.kb.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A folder of pages that may be written again and again. A list in it names the files that are ours; nothing else is ever
 * overwritten or taken away, and no link is followed. Each file is replaced in one step, and the list is widened before the
 * first and narrowed after the last, so that whatever breaks off in between can be written again.
 */
final class PageFolder {
    static final String OURS = "benchlore-pages.txt";
    private static final String HEAD = "Pages written by Benchlore, version 1. These files may be replaced or removed:";
    private static final Pattern NAME = Pattern.compile("([a-z]{1,20}/)?[a-z0-9][a-z0-9.-]{0,400}\\.(html|css|js)");
    private static final long MOST_LISTED = 64L << 20;

    private final Path folder;

    PageFolder(Path folder) {
        this.folder = folder;
    }

    /**
     * Writes files; those of an earlier time that are no longer among them are removed.
     *
     * @param files by name, {@code name.ext} or {@code folder/name.ext}
     * @throws ForeignFilesException if that would overwrite what is not ours; nothing is changed then
     */
    KnowledgePages.Written write(SortedMap<String, String> files) throws IOException {
        SortedSet<String> owned = owned();
        for (String name : files.keySet()) {
            check(name, owned);
        }
        Files.createDirectories(folder);
        TreeSet<String> all = new TreeSet<>(owned);
        all.addAll(files.keySet());
        list(all);
        int changed = 0;
        for (var file : files.entrySet()) {
            Path path = folder.resolve(file.getKey());
            Path parent = path.getParent();
            if (parent != null) {
                Files.createDirectories(parent);
            }
            changed += put(path, file.getValue().getBytes(StandardCharsets.UTF_8)) ? 1 : 0;
        }
        owned.removeAll(files.keySet());
        int removed = 0;
        for (String name : owned) {
            removed += remove(name) ? 1 : 0;
        }
        list(new TreeSet<>(files.keySet()));
        return new KnowledgePages.Written(files.size(), changed, removed);
    }

    /** The files that an earlier time has left; none in a fresh folder. */
    private SortedSet<String> owned() throws IOException {
        if (Files.notExists(folder, LinkOption.NOFOLLOW_LINKS)) {
            return new TreeSet<>();
        }
        if (!Files.isDirectory(folder)) {
            throw new ForeignFilesException(folder, "is not a folder");
        }
        Path list = folder.resolve(OURS);
        if (!Files.isRegularFile(list, LinkOption.NOFOLLOW_LINKS)) {
            try (Stream<Path> held = Files.list(folder)) {
                if (held.findAny().isPresent()) {
                    throw new ForeignFilesException(folder, "holds files that are not pages of ours");
                }
            }
            return new TreeSet<>();
        }
        if (Files.size(list) > MOST_LISTED) {
            throw new ForeignFilesException(list, "is larger than any list of ours");
        }
        List<String> lines = Files.readAllLines(list, StandardCharsets.UTF_8);
        if (lines.isEmpty()
                || !lines.get(0).equals(HEAD)
                || !lines.stream().skip(1).allMatch(name -> NAME.matcher(name).matches())) {
            throw new ForeignFilesException(list, "is not the list that we wrote");
        }
        return new TreeSet<>(lines.subList(1, lines.size()));
    }

    private void check(String name, SortedSet<String> owned) {
        if (!NAME.matcher(name).matches()) {
            throw new IllegalArgumentException("'" + name + "' cannot be the name of a page");
        }
        Path path = folder.resolve(name);
        Path parent = path.getParent();
        if (parent != null && !parent.equals(folder) && present(parent) && !isFolder(parent)) {
            throw new ForeignFilesException(parent, "is not a folder of ours");
        }
        boolean ours = owned.contains(name) && Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS);
        if (present(path) && !ours) {
            throw new ForeignFilesException(path, "is not a page of ours");
        }
    }

    private static boolean present(Path path) {
        return Files.exists(path, LinkOption.NOFOLLOW_LINKS);
    }

    private static boolean isFolder(Path path) {
        return Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS);
    }

    private void list(SortedSet<String> names) throws IOException {
        put(folder.resolve(OURS), (HEAD + "\n" + String.join("\n", names) + "\n").getBytes(StandardCharsets.UTF_8));
    }

    /** Beside the target first; a file that holds just that already is left alone. */
    private static boolean put(Path path, byte[] content) throws IOException {
        if (Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)
                && Files.size(path) == content.length
                && Arrays.equals(Files.readAllBytes(path), content)) {
            return false;
        }
        Path part = path.resolveSibling(path.getFileName() + ".part");
        Files.deleteIfExists(part); // of a run that broke off
        try {
            Files.write(part, content, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            move(part, path);
        } finally {
            Files.deleteIfExists(part);
        }
        return true;
    }

    private static void move(Path part, Path path) throws IOException {
        try {
            Files.move(part, path, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(part, path, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private boolean remove(String name) throws IOException {
        Path path = folder.resolve(name);
        Path parent = path.getParent();
        boolean safe = parent != null && (parent.equals(folder) || isFolder(parent));
        return safe && Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS) && Files.deleteIfExists(path);
    }
}
