package org.benchlore.kb.reading.analysis;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * Everyday English words, which are right as they stand although a bench word is a letter away ("collar" and "cellar",
 * "precious" and "previous"). The list and its licence: {@value #LIST} beside this class. Read on first use.
 */
public final class CommonWords {
    private static final String LIST = "english-words.txt";
    private static final Words WORDS = read();

    private CommonWords() {}

    /** Whether a word, in lower case, is one of them. */
    public static boolean contains(String word) {
        return WORDS.contains(word);
    }

    private static Words read() {
        try (InputStream list = CommonWords.class.getResourceAsStream(LIST)) {
            if (list == null) {
                throw new IllegalStateException(LIST + " is missing from the kb-core jar");
            }
            return Words.of(new String(list.readAllBytes(), StandardCharsets.US_ASCII)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .toArray(String[]::new));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
