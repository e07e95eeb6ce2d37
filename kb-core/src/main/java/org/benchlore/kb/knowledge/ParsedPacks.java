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
import java.util.Map;
import java.util.Optional;
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
    private static final int HEAD = 2 * Integer.BYTES + Long.BYTES; // mark, format, checksum of all that follows

    private record Stretch(int from, int to) {}

    private byte[] bytes = {};
    private final Map<String, Stretch> known = new HashMap<>();

    /** Trees of this reading by their text. */
    private final Map<String, byte[]> used = new LinkedHashMap<>();

    private boolean anyNew;

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
        boolean sound =
                all.length >= HEAD && in.getInt() == MARK && in.getInt() == FORMAT && in.getLong() == checksum(all);
        while (sound && in.hasRemaining()) {
            String yaml = string(in, all);
            int size = yaml == null || in.remaining() < Integer.BYTES ? -1 : in.getInt();
            sound = yaml != null && size >= 0 && size <= in.remaining();
            if (sound && yaml != null) {
                known.put(yaml, new Stretch(in.position(), in.position() + size));
                in.position(in.position() + size);
            }
        }
        bytes = all;
    }

    private static @Nullable String string(ByteBuffer in, byte[] all) {
        int length = in.remaining() < Integer.BYTES ? -1 : in.getInt();
        if (length < 0 || length > in.remaining()) {
            return null;
        }
        String text = new String(all, in.position(), length, StandardCharsets.UTF_8);
        in.position(in.position() + length);
        return text;
    }

    private static long checksum(byte[] all) {
        CRC32C checksum = new CRC32C();
        checksum.update(all, HEAD, all.length - HEAD);
        return checksum.getValue();
    }

    /** Whether the text of a pack was parsed before. */
    boolean knows(PackSource source) {
        return known.containsKey(source.yaml());
    }

    /** As {@link YamlText#parse}. */
    Optional<YamlNode> parse(PackSource source, Problems problems) {
        Stretch before = known.get(source.yaml());
        if (before != null) {
            Optional<YamlNode> tree = TreeReader.read(bytes, before.from(), before.to(), source);
            if (tree.isPresent()) {
                used.put(source.yaml(), Arrays.copyOfRange(bytes, before.from(), before.to()));
                return tree;
            }
        }
        int problemsBefore = problems.count();
        Optional<YamlNode> tree = YamlText.parse(source, problems);
        if (problems.count() == problemsBefore) {
            tree.ifPresent(root -> used.put(source.yaml(), TreeBytes.of(root, source.yaml())));
            anyNew = true;
        }
        return tree;
    }

    /** Writes what was parsed, if any of it is new. A file that cannot be written is done without. */
    void keep(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (!anyNew || folder == null) {
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
            anyNew = false; // the next reading parses again
        }
    }

    private byte[] bytes() {
        ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length + HEAD);
        out.writeBytes(new byte[HEAD]);
        used.forEach((yaml, tree) -> {
            byte[] text = yaml.getBytes(StandardCharsets.UTF_8);
            out.writeBytes(
                    ByteBuffer.allocate(Integer.BYTES).putInt(text.length).array());
            out.writeBytes(text);
            out.writeBytes(
                    ByteBuffer.allocate(Integer.BYTES).putInt(tree.length).array());
            out.writeBytes(tree);
        });
        byte[] all = out.toByteArray();
        ByteBuffer.wrap(all).putInt(MARK).putInt(FORMAT).putLong(checksum(all));
        return all;
    }
}
