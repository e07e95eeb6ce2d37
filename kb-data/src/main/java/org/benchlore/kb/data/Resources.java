package org.benchlore.kb.data;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.benchlore.kb.knowledge.PackSource;

/** Reads this jar's own resources by name; nothing is scanned for. */
final class Resources {
    private Resources() {}

    static List<PackSource> packs(String folder, List<String> names) {
        return names.stream()
                .map(name -> new PackSource(name + ".yaml", text(folder + "/" + name + ".yaml")))
                .toList();
    }

    static String text(String path) {
        try (InputStream in = Resources.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new FileNotFoundException(path + " is missing from the kb-data jar");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
