package org.benchlore.kb.reading;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Reads gold files; the format is described in {@code kb-core/docs/reading.md}. */
final class GoldFile {
    private GoldFile() {}

    /** The texts of a test resource beside this class. */
    static List<GoldText> resource(String name) {
        return parse(name, text(name));
    }

    static String text(String name) {
        try (InputStream in = Objects.requireNonNull(GoldFile.class.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The texts of a gold file.
     *
     * @param name for messages
     * @throws IllegalArgumentException with the place of the first line that does not fit
     */
    static List<GoldText> parse(String name, String file) {
        List<String> lines = file.lines().toList();
        List<GoldText.Draft> drafts = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            int at = i + 1;
            if (line.equals(">>>")) {
                int length = lines.subList(i, lines.size()).indexOf("<<<");
                if (length < 0) {
                    throw new IllegalArgumentException(name + ":" + at + ": no '<<<' ends this text");
                }
                drafts.add(new GoldText.Draft(at, String.join("\n", lines.subList(i + 1, i + length))));
                i += length;
            } else if (line.startsWith(">")) {
                drafts.add(new GoldText.Draft(at, line.substring(1).strip()));
            } else if (!line.isBlank() && !line.startsWith("#")) {
                if (drafts.isEmpty()) {
                    throw new IllegalArgumentException(name + ":" + at + ": no text stands above this line");
                }
                try {
                    drafts.get(drafts.size() - 1).add(line.strip());
                } catch (IllegalArgumentException e) {
                    throw new IllegalArgumentException(name + ":" + at + ": " + line + ": " + e.getMessage(), e);
                }
            }
        }
        return drafts.stream().map(GoldText.Draft::done).toList();
    }
}
