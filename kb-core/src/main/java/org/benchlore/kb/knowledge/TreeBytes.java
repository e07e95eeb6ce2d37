package org.benchlore.kb.knowledge;

import java.io.ByteArrayOutputStream;
import java.util.HashMap;
import java.util.Map;

/**
 * A tree of YAML as bytes, for {@link TreeReader}. Most scalars stand in the text as they are and are only pointed at.
 * Numbers are written seven bits to a byte, lowest first; lines and offsets as what they are beyond those before.
 */
final class TreeBytes {
    static final int ITEMS = 0;
    static final int TABLE = 1;

    /** Added up for a scalar: what it is, whether it is plain, whether it stands in the text as it is. */
    static final int TEXT = 2;

    static final int PLAIN = 1;
    static final int IN_PLACE = 4;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final String yaml;
    private final Map<String, Integer> keys = new HashMap<>();
    private int line = 1;
    private int offset;

    /** Where {@link #countedLine} starts. */
    private int lineStart;

    private int countedLine = 1;

    private TreeBytes(String yaml) {
        this.yaml = yaml;
    }

    /** The bytes of a tree without {@link YamlNode.Refused} that was parsed from {@code yaml}. */
    static byte[] of(YamlNode root, String yaml) {
        TreeBytes bytes = new TreeBytes(yaml);
        bytes.node(root);
        return bytes.out.toByteArray();
    }

    private void node(YamlNode node) {
        if (node instanceof YamlNode.Text text) {
            int at = find(text);
            number(TEXT + (text.plain() ? PLAIN : 0) + (at >= 0 ? IN_PLACE : 0));
            place(text.place());
            if (at >= 0) {
                number(at - offset);
                number(text.value().length());
                offset = at + text.value().length();
            } else {
                string(text.value());
            }
        } else if (node instanceof YamlNode.Items items) {
            number(ITEMS);
            place(items.place());
            number(items.items().size());
            items.items().forEach(this::node);
        } else if (node instanceof YamlNode.Table table) {
            number(TABLE);
            place(table.place());
            number(table.fields().size());
            table.fields().forEach((key, field) -> {
                key(key);
                place(field.key());
                node(field.value());
            });
        } else {
            throw new IllegalArgumentException(node.place() + ": " + node.kind() + " cannot be kept");
        }
    }

    /** Keys are few and come often: a new one is written out, then it goes by its number. */
    private void key(String key) {
        Integer known = keys.putIfAbsent(key, keys.size());
        number(known == null ? 0 : known + 1);
        if (known == null) {
            string(key);
        }
    }

    private void place(Place place) {
        number(place.line() - line);
        number(place.column());
        line = place.line();
    }

    private void string(String value) {
        number(value.length());
        for (int i = 0; i < value.length(); i++) {
            number(value.charAt(i));
        }
    }

    private void number(int value) {
        int rest = value;
        while ((rest & ~0x7F) != 0) {
            out.write((rest & 0x7F) | 0x80);
            rest >>>= 7;
        }
        out.write(rest);
    }

    /** Where the value stands in the text, or -1 if it is folded, escaped or hard to find. */
    private int find(YamlNode.Text text) {
        Place place = text.place();
        while (countedLine < place.line() && lineStart >= 0) {
            lineStart = yaml.indexOf('\n', lineStart) + 1;
            lineStart = lineStart == 0 ? -1 : lineStart;
            countedLine++;
        }
        if (lineStart < 0 || countedLine != place.line()) {
            return -1;
        }
        int at = lineStart + place.column() - (text.plain() ? 1 : 0);
        return yaml.startsWith(text.value(), at) ? at : -1;
    }
}
