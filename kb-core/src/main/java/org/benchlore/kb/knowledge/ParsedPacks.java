package org.benchlore.kb.knowledge;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.zip.CRC32C;
import org.jspecify.annotations.Nullable;

/**
 * What packs were parsed to before, in one file, since parsing YAML is most of the work of reading them. Derived: a tree
 * counts only for exactly the text it was made from, which is kept beside it, and a file that is missing, torn or of
 * another version is made anew. Texts with problems are not kept, so that their problems are found again.
 */
final class ParsedPacks {
    /** Raise it whenever {@link YamlText} makes another tree of the same text, or the bytes change. */
    private static final int FORMAT = 1;

    private static final int MARK = 0x424C5031; // "BLP1"
    private static final int MAX_BYTES = 64 << 20;
    private static final int SIZE = Integer.BYTES; // of the number in front of a text or tree
    private static final int HEAD = 2 * Integer.BYTES + Long.BYTES; // mark, format, checksum of all that follows

    /** Where in {@link #bytes} a text stands, in UTF-8, and behind it its tree. */
    record Stretch(int textFrom, int textEnd, int end) {
        int treeFrom() {
            return textEnd + SIZE;
        }
    }

    private byte[] bytes = {};

    /** By the checksum of the text; of several, any. */
    private final Map<Long, Stretch> known = new HashMap<>();

    /** Those that this reading met again. */
    private final Set<Stretch> used = new LinkedHashSet<>();

    /** Trees that this reading made, by their text. */
    private final Map<String, byte[]> made = new LinkedHashMap<>();

    /** Nothing parsed before. */
    ParsedPacks() {}

    /** What the file holds; nothing if it is not there or not sound. */
    static ParsedPacks read(Path file) {
        ParsedPacks parsed = new ParsedPacks();
        try {
            if (Files.size(file) <= MAX_BYTES) {
                parsed.load(Files.readAllBytes(file));
            }
        } catch (IOException e) {
            return parsed; // parsing does without
        }
        return parsed;
    }

    private void load(byte[] all) {
        ByteBuffer in = ByteBuffer.wrap(all);
        boolean sound = all.length >= HEAD
                && in.getInt() == MARK
                && in.getInt() == FORMAT
                && in.getLong() == checksum(all, HEAD, all.length);
        while (sound && in.hasRemaining()) {
            int textFrom = in.position() + SIZE;
            int textEnd = skip(in);
            int end = textEnd < 0 ? textEnd : skip(in);
            sound = end >= 0;
            if (sound) {
                known.put(checksum(all, textFrom, textEnd), new Stretch(textFrom, textEnd, end));
            }
        }
        bytes = all;
    }

    /** Goes past bytes behind their number. @return their end, or less than 0 if they are not there */
    private static int skip(ByteBuffer in) {
        int length = in.remaining() < SIZE ? -1 : in.getInt();
        if (length < 0 || length > in.remaining()) {
            return -1;
        }
        in.position(in.position() + length);
        return in.position();
    }

    private static long checksum(byte[] all, int from, int end) {
        CRC32C checksum = new CRC32C();
        checksum.update(all, from, end - from);
        return checksum.getValue();
    }

    /** Where exactly this text stands, or null. */
    @Nullable
    Stretch find(String yaml) {
        if (known.isEmpty()) {
            return null;
        }
        byte[] text = yaml.getBytes(StandardCharsets.UTF_8);
        Stretch stretch = known.get(checksum(text, 0, text.length));
        boolean same =
                stretch != null && Arrays.equals(bytes, stretch.textFrom(), stretch.textEnd(), text, 0, text.length);
        return same ? stretch : null;
    }

    /** As {@link YamlText#parse}. */
    Optional<YamlNode> parse(PackSource source, Problems problems) {
        Stretch before = find(source.yaml());
        if (before != null) {
            Optional<YamlNode> tree = TreeReader.read(bytes, before.treeFrom(), before.end(), source);
            if (tree.isPresent()) {
                used.add(before);
                return tree;
            }
        }
        int problemsBefore = problems.count();
        Optional<YamlNode> tree = YamlText.parse(source, problems);
        if (problems.count() == problemsBefore) {
            tree.ifPresent(root -> made.put(source.yaml(), TreeBytes.of(root, source.yaml())));
        }
        return tree;
    }

    /** Writes what was parsed, if any of it is new. A file that cannot be written is done without. */
    void keep(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (made.isEmpty() || folder == null) {
            return;
        }
        byte[] all = bytes();
        try {
            Files.createDirectories(folder);
            Path whole = Files.createTempFile(folder, String.valueOf(file.getFileName()), ".tmp");
            try {
                Files.write(whole, all);
                Files.move(whole, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(whole);
            }
        } catch (IOException e) {
            made.clear(); // the next reading parses again
        }
    }

    private byte[] bytes() {
        ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length + HEAD);
        out.writeBytes(new byte[HEAD]);
        used.forEach(met -> out.write(bytes, met.textFrom() - SIZE, met.end() - met.textFrom() + SIZE));
        made.forEach((yaml, tree) -> {
            write(out, yaml.getBytes(StandardCharsets.UTF_8));
            write(out, tree);
        });
        byte[] all = out.toByteArray();
        ByteBuffer.wrap(all).putInt(MARK).putInt(FORMAT).putLong(checksum(all, HEAD, all.length));
        return all;
    }

    private static void write(ByteArrayOutputStream out, byte[] part) {
        out.writeBytes(ByteBuffer.allocate(SIZE).putInt(part.length).array());
        out.writeBytes(part);
    }
}
