package org.benchlore.kb.reading.analysis;

import java.util.Set;

/** Stems that say nothing where texts are compared by their words. "No", "not", "on" and "off" do say something. */
public final class SilentWords {
    public static final Set<String> ALL = Set.of(
            "a", "an", "the", "of", "be", "it", "its", "and", "or", "that", "this", "to", "in", "at", "as", "with",
            "for", "by", "have", "i", "when", "but", "do", "from", "so", "if", "than", "then", "they", "which", "what",
            "will", "would", "can", "could", "just", "very", "also", "get", "my", "we", "you", "he", "his", "their",
            "some", "been", "into");

    private SilentWords() {}
}
