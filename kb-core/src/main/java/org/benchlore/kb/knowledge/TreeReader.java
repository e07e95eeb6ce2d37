package org.benchlore.kb.knowledge;

import java.io.StreamCorruptedException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A tree of YAML from the bytes that {@link TreeBytes} makes. */
final class TreeReader {
    private final byte[] bytes;
    private final int end;
    private final String file;
    private final String yaml;
    private final List<String> keys = new ArrayList<>();
    private int at;
    private int line = 1;
    private int offset;

    private TreeReader(byte[] bytes, int from, int end, PackSource source) {
        this.bytes = bytes;
        this.at = from;
        this.end = end;
        this.file = source.name();
        this.yaml = source.yaml();
    }

    /** The tree that {@code source} was parsed to once; empty if the bytes cannot be its tree. */
    static Optional<YamlNode> read(byte[] bytes, int from, int end, PackSource source) {
        TreeReader reader = new TreeReader(bytes, from, end, source);
        try {
            YamlNode root = reader.node(0);
            return reader.at == end ? Optional.of(root) : Optional.empty();
        } catch (StreamCorruptedException | IndexOutOfBoundsException e) { // the latter: an offset beyond the text
            return Optional.empty();
        }
    }

    private YamlNode node(int depth) throws StreamCorruptedException {
        if (depth > YamlText.MAX_DEPTH) {
            throw new StreamCorruptedException("not a tree");
        }
        int kind = number();
        Place place = place();
        if (kind == TreeBytes.ITEMS) {
            YamlNode[] items = new YamlNode[count()];
            for (int i = 0; i < items.length; i++) {
                items[i] = node(depth + 1);
            }
            return new YamlNode.Items(place, List.of(items));
        }
        if (kind == TreeBytes.TABLE) {
            int size = count();
            Map<String, YamlNode.Field> fields = new LinkedHashMap<>();
            for (int i = 0; i < size; i++) {
                String key = key();
                Place keyPlace = place();
                fields.put(key, new YamlNode.Field(keyPlace, node(depth + 1)));
            }
            return new YamlNode.Table(place, fields);
        }
        int marks = kind - TreeBytes.TEXT;
        if ((marks & ~(TreeBytes.PLAIN | TreeBytes.IN_PLACE)) != 0) {
            throw new StreamCorruptedException("not a tree");
        }
        boolean plain = (marks & TreeBytes.PLAIN) != 0;
        return new YamlNode.Text(place, (marks & TreeBytes.IN_PLACE) != 0 ? inPlace() : string(), plain);
    }

    private String inPlace() throws StreamCorruptedException {
        int from = offset + number();
        offset = from + number();
        return yaml.substring(from, offset);
    }

    private String key() throws StreamCorruptedException {
        int known = number();
        if (known > 0) {
            return keys.get(known - 1);
        }
        String key = string();
        keys.add(key);
        return key;
    }

    private Place place() throws StreamCorruptedException {
        line += number();
        return new Place(file, line, number());
    }

    private String string() throws StreamCorruptedException {
        char[] chars = new char[count()];
        for (int i = 0; i < chars.length; i++) {
            chars[i] = (char) number();
        }
        return new String(chars);
    }

    /** How many follow; each takes a byte or more, so damage cannot ask for more memory than the file has bytes. */
    private int count() throws StreamCorruptedException {
        int count = number();
        if (count < 0 || count > end - at) {
            throw new StreamCorruptedException("not a tree");
        }
        return count;
    }

    private int number() throws StreamCorruptedException {
        int value = 0;
        int shift = 0;
        while (true) {
            if (at >= end || shift > 28) {
                throw new StreamCorruptedException("not a tree");
            }
            byte next = bytes[at++];
            value |= (next & 0x7F) << shift;
            if (next >= 0) {
                return value;
            }
            shift += 7;
        }
    }
}
